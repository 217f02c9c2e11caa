#include "scenes/job/run/legs.h"

#include <algorithm>
#include <cmath>

#include "sim/plan/bend_allowance.h"
#include "sim/strip/place.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

// The outer face of a flat beside a bend: a point of it and its direction, to the blank's right.
struct FaceLine {
    Place at, along;
};
FaceLine face_line(const Blank& blank, const BentStrip& strip, int flat, double side) {
    const double middle = blank.flat_middle(flat), turn = strip.turn_at(middle);
    return {strip.surface(middle, side), {std::cos(turn), std::sin(turn)}};
}

// Where a bend ends the leg of a flat beside it: how far along `way`, which points from the flat to the bend,
// from the flat's middle.
double end_at_bend(const files::Case& c, const Blank& blank, const BentStrip& strip, int flat, int bend) {
    const double from = blank.flat_middle(bend), to = blank.flat_middle(bend + 1);
    const double outer = -strip.inner_side(from, to);
    const FaceLine own = face_line(blank, strip, flat, outer);
    const Place way = flat == bend ? own.along : Place(-own.along);
    constexpr double square = 90.0 * degree + 1e-6;
    if (std::abs(c.part.bends[bend].angle) <= square) {
        const FaceLine other = face_line(blank, strip, flat == bend ? bend + 1 : bend, outer);
        const Place a = own.along, b = other.along, between = other.at - own.at;
        const double cross = a.x() * b.y() - a.y() * b.x();
        // Of a bend that is hardly bent the faces cross nowhere near: its bend line ends the leg.
        if (std::abs(cross) < 0.01) return std::abs(blank.bend_line[bend] - blank.flat_middle(flat));
        return (a * ((between.x() * b.y() - between.y() * b.x()) / cross)).dot(way);
    }
    double furthest = 0.0;
    const std::vector<Place>& face = outer > 0.0 ? strip.upper : strip.lower;
    for (std::size_t i = 0; i < face.size(); ++i)
        if (strip.blank[i] > from && strip.blank[i] < to)
            furthest = std::max(furthest, (face[i] - own.at).dot(way));
    return furthest;
}

// The strip's end from the middle of the flat that runs to it.
double end_of_strip(const Blank& blank, const BentStrip& strip, int flat, double position) {
    const double turn = strip.turn_at(blank.flat_middle(flat));
    return std::abs((strip.middle(position) - strip.middle(blank.flat_middle(flat)))
                        .dot(Place(std::cos(turn), std::sin(turn))));
}

}  // namespace

std::vector<double> drawn_legs(const files::Case& c) {
    std::vector<double> legs = c.part.flats;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        const double half = 0.5 * drawn_corner(c, static_cast<int>(b));
        legs[b] += half, legs[b + 1] += half;
    }
    return legs;
}

std::vector<double> made_legs(const files::Case& c, const Blank& used, const BentStrip& finished) {
    std::vector<double> legs;
    const int bends = static_cast<int>(c.part.bends.size());
    for (int i = 0; i <= bends; ++i)
        legs.push_back(
            (i == 0 ? end_of_strip(used, finished, i, 0.0) : end_at_bend(c, used, finished, i, i - 1)) +
            (i == bends ? end_of_strip(used, finished, i, finished.length())
                        : end_at_bend(c, used, finished, i, i)));
    return legs;
}

double drawn_corner(const files::Case& c, int bend) {
    const files::Bend& b = c.part.bends[bend];
    return 2.0 * plan::outer_corner(b.inside_radius, c.thickness, std::abs(b.angle));
}

double made_corner(const files::Case& c, const Blank& used, const BentStrip& finished, int bend) {
    return end_at_bend(c, used, finished, bend, bend) + end_at_bend(c, used, finished, bend + 1, bend);
}

strip::StripState as_drawn(strip::StripState s) {
    if (s.face_down) strip::turn_over(s);
    if (s.turned) strip::turn_end_for_end(s);
    return s;
}

}  // namespace overbend::job
