#include "render/drawing/place_dimensions.h"

#include <algorithm>

namespace overbend::drawing {

using namespace picture;

namespace {

std::vector<Placing> ways_of(const Dimension& dimension, const OnPaper& paper, const Rect& box) {
    switch (dimension.measure) {
        case Measure::radius:
            return radius_ways(dimension, paper);
        case Measure::angle:
            return angle_ways(dimension, paper);
        default:
            return linear_ways(dimension, paper, box);
    }
}

// Lengths first, the shorter within the longer; then angles, then radii, which bend to what is there.
double turn(const Dimension& dimension) {
    if (dimension.measure == Measure::radius) return 2e6;
    if (dimension.measure == Measure::angle) return 1e6;
    if (dimension.measure == Measure::across) return std::abs(dimension.to.x() - dimension.from.x());
    if (dimension.measure == Measure::upright) return std::abs(dimension.to.y() - dimension.from.y());
    return (dimension.to - dimension.from).norm();
}

// The rows of marks; those without a row are missing.
Placed place_marks(const std::vector<Dimension>& dimensions, const OnPaper& paper, const Rect& box,
                   const Rect& area) {
    Placed placed;
    for (const Beside side : {Beside::above, Beside::below}) {
        std::vector<int> which;
        std::vector<Dimension> marks;
        for (std::size_t i = 0; i < dimensions.size(); ++i) {
            if (dimensions[i].measure != Measure::mark || dimensions[i].beside != side) continue;
            which.push_back(static_cast<int>(i));
            marks.push_back(dimensions[i]);
        }
        const std::vector<Ink> row = mark_row(marks, paper, box, area);
        for (const Ink& mark : row) add(placed.ink, mark);
        if (row.empty()) placed.missing.insert(placed.missing.end(), which.begin(), which.end());
    }
    return placed;
}

Placed one_round(const std::vector<std::vector<Placing>>& ways, const std::vector<int>& order, Placed placed,
                 const Ink& there, const Rect& area) {
    Ink all = there;
    add(all, placed.ink);
    for (const int i : order) {
        const Placing* best = nullptr;
        double least = spoilt;
        for (const Placing& way : ways[i]) {
            if (way.effort >= least) continue;
            const double sum = way.effort + cost(all, way.ink, area);
            if (sum < least) least = sum, best = &way;
        }
        if (!best) {
            placed.missing.push_back(i);
            continue;
        }
        add(all, best->ink);
        add(placed.ink, best->ink);
    }
    return placed;
}

}  // namespace

Placed place_dimensions(const std::vector<Dimension>& dimensions, const OnPaper& paper, const Ink& there,
                        const Rect& box, const Rect& area) {
    const Placed marks = place_marks(dimensions, paper, box, area);
    std::vector<std::vector<Placing>> ways(dimensions.size());
    std::vector<int> order;
    for (std::size_t i = 0; i < dimensions.size(); ++i) {
        if (dimensions[i].measure == Measure::mark) continue;
        ways[i] = ways_of(dimensions[i], paper, box);
        order.push_back(static_cast<int>(i));
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return turn(dimensions[a]) < turn(dimensions[b]); });
    Placed best;
    for (int round = 0; round < 4; ++round) {
        const Placed tried = one_round(ways, order, marks, there, area);
        if (round == 0 || tried.missing.size() < best.missing.size()) best = tried;
        if (best.missing.size() == marks.missing.size()) break;
        for (const int i : tried.missing) {
            const auto found = std::find(order.begin(), order.end(), i);
            if (found == order.end()) continue;
            order.erase(found);
            order.insert(order.begin(), i);
        }
    }
    return best;
}

}  // namespace overbend::drawing
