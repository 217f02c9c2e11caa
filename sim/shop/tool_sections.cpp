#include "sim/shop/tool_sections.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::shop {

namespace {

using tool::Vec2;
constexpr double sag = 0.02;           // mm, of the chords for arcs
constexpr int directions = 12;         // of cuts, over half a turn
constexpr int even_cuts = 96;          // of each direction, evenly over the tool
constexpr double beside = 2e-3;        // mm, from a corner to the cuts on either side of it
constexpr double thinnest_cut = 0.05;  // mm: thinner ones only graze the boundary

// Where a line crosses the boundary.
struct Crossing {
    double across = 0.0;  // along the line
    double along = 0.0;   // along the boundary
};

std::vector<Crossing> crossings(const ToolSections& s, const Vec2& direction, const Vec2& normal,
                                double level) {
    std::vector<Crossing> found;
    const std::size_t n = s.boundary.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vec2 &a = s.boundary[i], &b = s.boundary[(i + 1) % n];
        const double above = normal.dot(a) - level, next = normal.dot(b) - level;
        if ((above > 0.0) == (next > 0.0)) continue;
        const double share = above / (above - next);
        found.push_back({direction.dot(a + share * (b - a)), s.along[i] + share * (b - a).norm()});
    }
    std::sort(found.begin(), found.end(),
              [](const Crossing& a, const Crossing& b) { return a.across < b.across; });
    return found;
}

void add_cuts(ToolSections& s, const Vec2& direction, const Vec2& normal, double level) {
    const std::vector<Crossing> found = crossings(s, direction, normal, level);
    // Solid between the first and the second, the third and the fourth ...
    for (std::size_t i = 0; i + 1 < found.size(); i += 2) {
        const Crossing &a = found[i], &b = found[i + 1];
        if (b.across - a.across < thinnest_cut) continue;
        Cut cut;
        const Crossing &first = a.along < b.along ? a : b, &second = a.along < b.along ? b : a;
        cut.from = first.across * direction + level * normal;
        cut.to = second.across * direction + level * normal;
        cut.thickness = b.across - a.across;
        cut.low = first.along, cut.high = second.along;
        s.cuts.push_back(cut);
    }
}

void cut_in_direction(ToolSections& s, double angle) {
    const Vec2 direction(std::cos(angle), std::sin(angle)), normal(-std::sin(angle), std::cos(angle));
    std::vector<double> heights;
    for (const Vec2& p : s.boundary) heights.push_back(normal.dot(p));
    const auto [low, high] = std::minmax_element(heights.begin(), heights.end());
    std::vector<double> levels;
    for (int i = 1; i < even_cuts; ++i) levels.push_back(*low + (*high - *low) * i / even_cuts);
    for (const double h : heights) levels.push_back(h - beside), levels.push_back(h + beside);
    std::sort(levels.begin(), levels.end());
    double last = -1e300;
    for (const double level : levels) {
        if (level - last < 0.5 * beside || level <= *low || level >= *high) continue;
        add_cuts(s, direction, normal, level);
        last = level;
    }
}

// The level stretches of the boundary at its top or bottom.
void find_held_face(ToolSections& s, HeldBy held) {
    const double sign = held == HeldBy::top ? 1.0 : -1.0;
    double extreme = -1e300;
    for (const Vec2& p : s.boundary) extreme = std::max(extreme, sign * p.y());
    for (std::size_t i = 0; i < s.boundary.size(); ++i) {
        const Vec2 &a = s.boundary[i], &b = s.boundary[(i + 1) % s.boundary.size()];
        const bool level = sign * a.y() > extreme - 1e-6 && sign * b.y() > extreme - 1e-6;
        if (level && (b - a).norm() > 1e-3) s.held.push_back({a, b, s.along[i]});
    }
    if (s.held.empty())
        throw OutOfRange("tool",
                         held == HeldBy::top ? "it has no horizontal top face to hold it by"
                                             : "it has no horizontal bottom face to stand on",
                         "add one to its outline");
}

// ---- corners of the held face

// The boundary from a point of the held face round one of its ends to where the cut comes out again.
struct Round {
    bool forward = true;
    double from = 0.0, to = 0.0;  // along the boundary
};

// Whether it leads away from the held face all the time, once it has left it.
bool leads_away(const ToolSections& s, const Round& way, double out_at) {
    const std::size_t n = s.boundary.size();
    const double whole = s.along.back(), held = s.held.front().from.y();
    const double walk = std::fmod(way.forward ? way.to - way.from + whole : way.from - way.to + whole, whole);
    std::vector<std::pair<double, double>> passed;  // how far along the way, how far from the held face
    for (std::size_t i = 0; i < n; ++i) {
        const double on = way.forward ? s.along[i] - way.from : way.from - s.along[i];
        const double at = std::fmod(on + whole, whole);
        if (at < walk) passed.emplace_back(at, std::abs(s.boundary[i].y() - held));
    }
    std::sort(passed.begin(), passed.end());
    passed.emplace_back(walk, std::abs(out_at - held));
    double last = 0.0;
    bool left = false;
    for (const auto& [at, away] : passed) {
        if (left && away <= last + 1e-9) return false;
        left = left || away > 1e-6;
        last = away;
    }
    return left;
}

bool is_chip(const ToolSections& s, const Cut& cut) {
    const double held = s.held.front().from.y();
    const bool low_held = std::abs(cut.from.y() - held) < 1e-6,
               high_held = std::abs(cut.to.y() - held) < 1e-6;
    if (low_held == high_held) return false;
    const double from = low_held ? cut.low : cut.high, to = low_held ? cut.high : cut.low;
    const double out_at = low_held ? cut.to.y() : cut.from.y();
    return leads_away(s, {true, from, to}, out_at) || leads_away(s, {false, from, to}, out_at);
}

}  // namespace

ToolSections sections_of(const tool::ArcOutline& outline, HeldBy held) {
    ToolSections s;
    s.boundary = tool::sample(outline, sag);
    double length = 0.0;
    for (std::size_t i = 0; i < s.boundary.size(); ++i) {
        s.along.push_back(length);
        length += (s.boundary[(i + 1) % s.boundary.size()] - s.boundary[i]).norm();
    }
    s.along.push_back(length);
    find_held_face(s, held);
    for (int k = 0; k < directions; ++k) cut_in_direction(s, pi * k / directions);
    for (Cut& cut : s.cuts) cut.chip = is_chip(s, cut);
    return s;
}

double held_length(const ToolSections& s) {
    double length = 0.0;
    for (const HeldStretch& h : s.held) length += h.length();
    return length;
}

double held_width(const ToolSections& s) {
    double left = 1e300, right = -1e300;
    for (const HeldStretch& h : s.held) {
        left = std::min({left, h.from.x(), h.to.x()});
        right = std::max({right, h.from.x(), h.to.x()});
    }
    return right - left;
}

Vec2 held_middle(const ToolSections& s) {
    Vec2 sum = Vec2::Zero();
    for (const HeldStretch& h : s.held) sum += 0.5 * h.length() * (h.from + h.to);
    return sum / held_length(s);
}

double place_along(const ToolSections& s, const Vec2& at) {
    double nearest = 1e300, place = 0.0;
    const std::size_t n = s.boundary.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vec2 &a = s.boundary[i], edge = s.boundary[(i + 1) % n] - a;
        const double share = std::clamp((at - a).dot(edge) / edge.squaredNorm(), 0.0, 1.0);
        const double distance = (at - a - share * edge).norm();
        if (distance >= nearest) continue;
        nearest = distance;
        place = s.along[i] + share * edge.norm();
    }
    return place;
}

}  // namespace overbend::shop
