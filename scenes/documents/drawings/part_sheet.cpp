#include "scenes/documents/drawings/part_sheet.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "render/drawing/measurer.h"
#include "scenes/documents/drawings/part_tolerances.h"
#include "sim/units.h"

namespace overbend::documents {

namespace {

using drawing::Dimension;
using drawing::Measure;
using tool::Piece;
using tool::Vec2;

Vec2 towards(double direction) {
    return Vec2(std::cos(direction), std::sin(direction));
}
Vec2 left_of(double direction) {
    return Vec2(-std::sin(direction), std::cos(direction));
}

// The mid-line's flats and bends, walked from the left end.
struct Walk {
    struct Flat {
        Vec2 from, to;
        double direction;
    };
    struct Corner {
        Vec2 centre;
        double turn_before;  // direction before the bend
        double angle;        // signed
        double mid_radius;
    };
    std::vector<Flat> flats;
    std::vector<Corner> corners;
};

Walk walk_of(const files::Case& c) {
    Walk walk;
    Vec2 at = Vec2::Zero();
    double direction = 0.0;
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        const Vec2 end = at + c.part.flats[i] * towards(direction);
        walk.flats.push_back({at, end, direction});
        at = end;
        if (i == c.part.bends.size()) break;
        const files::Bend& bend = c.part.bends[i];
        const double radius = bend.inside_radius + 0.5 * c.thickness;
        const double sign = bend.angle > 0.0 ? 1.0 : -1.0;
        const Vec2 centre = at + sign * radius * left_of(direction);
        walk.corners.push_back({centre, direction, bend.angle, radius});
        direction += bend.angle;
        at = centre - sign * radius * left_of(direction);
    }
    return walk;
}

// One face, left to right; side: 1 the upper, -1 the lower.
std::vector<Piece> face_of(const Walk& walk, double half, double side) {
    std::vector<Piece> face;
    for (std::size_t i = 0; i < walk.flats.size(); ++i) {
        const Walk::Flat& flat = walk.flats[i];
        const Vec2 off = side * half * left_of(flat.direction);
        const Piece line{flat.from + off, flat.to + off};
        face.push_back(line);
        if (i == walk.corners.size()) break;
        const Walk::Corner& corner = walk.corners[i];
        const double sign = corner.angle > 0.0 ? 1.0 : -1.0;
        const double radius = corner.mid_radius - sign * side * half;
        if (radius < 1e-9) continue;  // the inner face of a sharp bend
        const Vec2 end = corner.centre - sign * radius * left_of(corner.turn_before + corner.angle);
        face.push_back({line.end, end, radius, corner.centre, corner.angle});
    }
    return face;
}

// Its start, and where an arc is furthest left, right, up or down.
std::vector<Vec2> extremes_of(const Piece& piece) {
    std::vector<Vec2> found = {piece.start};
    if (!piece.is_arc()) return found;
    const Vec2 arm = piece.start - piece.centre;
    const double begin = std::atan2(arm.y(), arm.x());
    for (int k = 0; k < 4; ++k) {
        double turn = std::fmod(0.5 * pi * k - begin, 2.0 * pi);
        if (piece.sweep > 0.0 && turn < 0.0) turn += 2.0 * pi;
        if (piece.sweep < 0.0 && turn > 0.0) turn -= 2.0 * pi;
        if (std::abs(turn) <= std::abs(piece.sweep))
            found.push_back(piece.centre + piece.radius * towards(0.5 * pi * k));
    }
    return found;
}

struct PartMeasurer {
    const files::Case& c;
    const Walk& walk;
    drawing::DrawingSheet& sheet;
    drawing::Tolerances tolerances;

    void flats() const {
        for (std::size_t i = 0; i < walk.flats.size(); ++i) {
            Dimension d;
            d.measure = Measure::along;
            d.from = walk.flats[i].from;
            d.to = walk.flats[i].to;
            d.half_thickness = 0.5 * c.thickness;
            d.words = length_words(c.part.flats[i], written_leg(c, static_cast<int>(i), tolerances));
            sheet.dimensions.push_back(d);
        }
    }

    // Between the inner faces, at the corner where they meet.
    void angles() const {
        for (std::size_t i = 0; i < walk.corners.size(); ++i) {
            const Walk::Corner& corner = walk.corners[i];
            const double turn = std::abs(corner.angle), included = pi - turn;
            if (included < 0.03) continue;  // a hem's legs lie beside one another
            const double inside = c.part.bends[i].inside_radius, sign = corner.angle > 0.0 ? 1.0 : -1.0;
            const double tangent = inside * std::tan(0.5 * turn);
            const Vec2 bisector = -sign * left_of(corner.turn_before + 0.5 * corner.angle);
            const double back = corner.turn_before + pi, ahead = corner.turn_before + corner.angle;
            Dimension d;
            d.measure = Measure::angle;
            d.centre = corner.centre + inside / std::cos(0.5 * turn) * bisector;
            d.start = sign > 0.0 ? ahead : back;
            d.sweep = included;
            const double before = tangent + c.part.flats[i], after = tangent + c.part.flats[i + 1];
            d.first_from = d.second_from = tangent;
            d.first_to = sign > 0.0 ? after : before;
            d.second_to = sign > 0.0 ? before : after;
            d.words = angle_words(included, written_angle(c, static_cast<int>(i), tolerances));
            sheet.dimensions.push_back(d);
        }
    }

    // Inside radii, equal ones once.
    void radii() const {
        const auto allowed = [&](std::size_t i) {
            return written_radius(c, static_cast<int>(i), tolerances);
        };
        std::map<std::string, std::vector<std::size_t>> same;
        for (std::size_t i = 0; i < walk.corners.size(); ++i)
            if (c.part.bends[i].inside_radius > 0.0)
                same[radius_words(c.part.bends[i].inside_radius, 1, allowed(i))].push_back(i);
        for (const auto& [words, bends] : same) {
            const Walk::Corner& corner = walk.corners[bends.front()];
            const double sign = corner.angle > 0.0 ? 1.0 : -1.0;
            Dimension d;
            d.measure = Measure::radius;
            d.centre = corner.centre;
            d.radius = c.part.bends[bends.front()].inside_radius;
            d.start = corner.turn_before + (sign > 0.0 ? -0.5 * pi : 0.5 * pi + corner.angle);
            d.sweep = std::abs(corner.angle);
            d.convex = false;
            d.words = radius_words(d.radius, static_cast<int>(bends.size()), allowed(bends.front()));
            sheet.dimensions.push_back(d);
        }
    }

    void over_all(const std::vector<Piece>& outline) const {
        // where the extremes are: left, right, low, high; of several the one nearest to its dimension line
        const auto take = [](Vec2& best, const Vec2& p, double further, double nearer) {
            if (further > 1e-9 || (further > -1e-9 && nearer > 0.0)) best = p;
        };
        std::vector<Vec2> ends(4, outline.front().start);
        for (const Piece& piece : outline)
            for (const Vec2& p : extremes_of(piece)) {
                take(ends[0], p, -p.x() + ends[0].x(), ends[0].y() - p.y());
                take(ends[1], p, p.x() - ends[1].x(), ends[1].y() - p.y());
                take(ends[2], p, -p.y() + ends[2].y(), p.x() - ends[2].x());
                take(ends[3], p, p.y() - ends[3].y(), p.x() - ends[3].x());
            }
        const tool::Box box{{ends[0].x(), ends[2].y()}, {ends[1].x(), ends[3].y()}};
        // An end that is nearly in line with the box's edge is taken to it: the extension line would run
        // along it.
        const double near = 1.5 * c.thickness;
        for (const int i : {0, 1})
            if (ends[i].y() - box.low.y() < near) ends[i].y() = box.low.y();
        for (const int i : {2, 3})
            if (box.high.x() - ends[i].x() < near) ends[i].x() = box.high.x();
        const drawing::Measurer m{sheet, box, tolerances};
        m.across({box.low.x(), ends[0].y()}, {box.high.x(), ends[1].y()}, drawing::Beside::below);
        if (box.high.y() - box.low.y() > c.thickness + 1e-6)
            m.upright({ends[2].x(), box.low.y()}, {ends[3].x(), box.high.y()}, drawing::Beside::right);
    }
};

}  // namespace

std::vector<Piece> part_outline(const files::Case& c) {
    const Walk walk = walk_of(c);
    std::vector<Piece> outline = face_of(walk, 0.5 * c.thickness, -1.0);
    std::vector<Piece> upper = face_of(walk, 0.5 * c.thickness, 1.0);
    outline.push_back({outline.back().end, upper.back().end});
    for (auto piece = upper.rbegin(); piece != upper.rend(); ++piece) {
        std::swap(piece->start, piece->end);
        piece->sweep = -piece->sweep;
        outline.push_back(*piece);
    }
    outline.push_back({outline.back().end, outline.front().start});
    return outline;
}

drawing::DrawingSheet part_sheet(const files::Case& c, drawing::Tolerances tolerances) {
    drawing::DrawingSheet sheet;
    sheet.name = "finished part, section";
    sheet.material = c.material.title;
    sheet.tolerances = tolerances == drawing::Tolerances::none ? "as written" : tolerances_words(tolerances);
    sheet.outlines = {part_outline(c)};
    const Walk walk = walk_of(c);
    const PartMeasurer measurer{c, walk, sheet, tolerances};
    measurer.flats();
    measurer.angles();
    measurer.radii();
    measurer.over_all(sheet.outlines.front());
    sheet.notes.push_back("Strip " + length_words(c.thickness, drawing::Tolerances::none) + " mm thick, " +
                          length_words(c.width, drawing::Tolerances::none) +
                          " mm wide. Straight lengths run between the ends of the bends; radii are inside.");
    bool of_legs = false;
    for (int i = 0; i < static_cast<int>(c.part.flats.size()); ++i)
        of_legs = of_legs || written_leg(c, i, tolerances).either_way > 0.0;
    if (of_legs) sheet.notes.push_back("Tolerances of lengths are those of the legs, measured outside.");
    return sheet;
}

}  // namespace overbend::documents
