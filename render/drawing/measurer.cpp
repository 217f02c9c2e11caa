#include "render/drawing/measurer.h"

#include <algorithm>
#include <cmath>

namespace overbend::drawing {

namespace {

Dimension linear(Measure measure, const Vec2& from, const Vec2& to, Beside beside,
                 std::vector<double> lanes) {
    Dimension d;
    d.measure = measure;
    d.from = from;
    d.to = to;
    d.beside = beside;
    d.lanes = std::move(lanes);
    return d;
}

}  // namespace

void Measurer::across(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes) const {
    sheet.dimensions.push_back(linear(Measure::across, from, to, beside, std::move(lanes)));
    sheet.dimensions.back().words = length(std::abs(to.x() - from.x()));
}

void Measurer::upright(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes) const {
    sheet.dimensions.push_back(linear(Measure::upright, from, to, beside, std::move(lanes)));
    sheet.dimensions.back().words = length(std::abs(to.y() - from.y()));
}

void Measurer::angle(const Vec2& vertex, double start, double sweep, double first_from, double first_to,
                     double second_from, double second_to) const {
    Dimension d;
    d.measure = Measure::angle;
    d.centre = vertex;
    d.start = start;
    d.sweep = sweep;
    d.first_from = first_from;
    d.first_to = first_to;
    d.second_from = second_from;
    d.second_to = second_to;
    d.words = angle_words(sweep, std::min(first_to - first_from, second_to - second_from), tolerances);
    sheet.dimensions.push_back(std::move(d));
}

void Measurer::axis() const {
    const double past = 0.04 * (box.high.y() - box.low.y());
    sheet.lines.push_back({Vec2(0.0, box.low.y() - past), Vec2(0.0, box.high.y() + past)});
}

void Measurer::size(Beside width_beside) const {
    const double y = width_beside == Beside::above ? box.high.y() : box.low.y();
    across({box.low.x(), y}, {box.high.x(), y}, width_beside);
    upright(box.low.x() < box.high.x() ? Vec2(box.high.x(), box.low.y()) : Vec2(box.low.x(), box.low.y()),
            {box.high.x(), box.high.y()}, Beside::right);
}

}  // namespace overbend::drawing
