#include "scenes/files/case/propose_vee.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "scenes/files/case/usual_sizes.h"
#include "sim/plan/shop_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

// Usual openings and angles of grooves: common practice, no source.
constexpr std::array<double, 22> openings = {3,  4,  5,  6,  7,  8,  9,  10, 12, 14,  16,
                                             18, 20, 24, 28, 32, 40, 50, 63, 80, 100, 125};
constexpr std::array<double, 8> angles_deg = {84, 78, 70, 60, 50, 40, 35, 30};
constexpr double to_spare = 2.5 * degree;        // of a groove's angle over the strip's under load
constexpr double punch_to_spare = 4.0 * degree;  // of the groove's angle over the punch's
constexpr double nose_over_radius = 0.65;        // an air bend is wider than the nose: simulated V bends of
                                                 // 6 to 10 t openings, 0.6 to 0.75
constexpr double radius_over_opening = 0.16;     // common practice
constexpr double same_nose = 0.15;               // two noses so near to one another are one

double tenth(double value) {
    return std::max(0.1, std::round(10.0 * value) / 10.0);
}

double wanted_nose(const Case& c, int bend) {
    return tenth(std::max(nose_over_radius * c.part.bends[bend].inside_radius, 0.2 * c.thickness));
}

double shoulder_of(double opening) {
    return std::max(0.5, std::round(opening / 5.0) / 2.0);
}

// A stroke with these sizes, for its angle under load and the straight that it needs.
plan::StrokePath trial(const Case& c, const Blank& blank, int bend, double nose, double opening) {
    const tool::VeePunch punch{30.0 * degree, nose, usual_punch_height, usual_shank_width(nose)};
    const tool::OpenDie die{opening, shoulder_of(opening), 2.0 * opening, 3.0 * opening};
    return path_between(c, blank, {bend}, {"punch", punch}, {"die", die});
}

bool reaches(const Case& c, const plan::StrokePath& path) {
    const double between_centres = path.nose + c.thickness + path.shoulder;
    return path.shoulder_x / between_centres >= std::sin(std::min(0.5 * path.loaded + 0.5 * to_spare, 1.57));
}

// The shorter of the straights beside a bend: its flats when its neighbours are made before it, all of the
// strip when they come after.
enum class Neighbours { before, after };
double shorter_straight(const Case& c, const Blank& blank, int bend, Neighbours neighbours) {
    if (neighbours == Neighbours::before) return std::min(c.part.flats[bend], c.part.flats[bend + 1]);
    const double line = blank.bend_line[bend];
    return std::min(line, blank.length - line) - blank.half_arc[bend];
}

void find_openings(const Case& c, const Blank& blank, double straight, OpeningRange& range) {
    const double nose = wanted_nose(c, range.bend);
    range.low = 1e300, range.high = -1e300;
    for (const double opening : openings) {
        if (opening < 4.0 * c.thickness || opening > 2.0 * range.preferred) continue;
        const plan::StrokePath path = trial(c, blank, range.bend, nose, opening);
        if (!reaches(c, path) || plan::needed_straight(path) > straight) continue;
        range.low = std::min(range.low, opening);
        range.high = std::max(range.high, opening);
    }
}

// Openings that can make the bend, and the one that suits it best.
OpeningRange range_of(const Case& c, const Blank& blank, int bend) {
    const double rule = plan::usual_opening(c.thickness);
    OpeningRange range;
    range.bend = bend;
    range.preferred = std::clamp(c.part.bends[bend].inside_radius / radius_over_opening, rule, 2.0 * rule);
    for (const Neighbours neighbours : {Neighbours::before, Neighbours::after}) {
        find_openings(c, blank, shorter_straight(c, blank, bend, neighbours), range);
        if (range.low <= range.high) break;
    }
    if (range.low > range.high) return range;
    range.preferred = std::clamp(range.preferred, range.low, range.high);
    // within a third of what suits it, as far as that goes
    range.low = std::max(range.low, 0.67 * range.preferred);
    range.high = std::min(range.high, 1.5 * range.preferred);
    return range;
}

std::string why_none(const Case& c, const Blank& blank, int bend) {
    const double shorter = shorter_straight(c, blank, bend, Neighbours::after);
    for (const double opening : openings) {
        const plan::StrokePath path = trial(c, blank, bend, wanted_nose(c, bend), opening);
        if (opening < 4.0 * c.thickness || !reaches(c, path)) continue;
        return words(
            "bend '%s': a flange of %.1f mm is too short for any groove; the narrowest one, %g mm, needs "
            "%.1f mm",
            c.part.bends[bend].name.c_str(), shorter, opening, plan::needed_straight(path));
    }
    return words("bend '%s': no groove can bend it by %.0f degrees", c.part.bends[bend].name.c_str(),
                 std::abs(c.part.bends[bend].angle) / degree);
}

// The usual opening within all ranges that lies nearest to what they prefer.
double common_opening(const std::vector<OpeningRange>& group) {
    double low = 0.0, high = 1e300, preferred = 0.0;
    for (const OpeningRange& r : group) {
        low = std::max(low, r.low), high = std::min(high, r.high);
        preferred += r.preferred / static_cast<double>(group.size());
    }
    double best = high;
    for (const double opening : openings)
        if (opening >= low && opening <= high && std::abs(opening - preferred) < std::abs(best - preferred))
            best = opening;
    return best;
}

double angle_of_groove(double loaded) {
    for (const double angle : angles_deg)
        if (angle * degree + to_spare <= pi - loaded) return angle * degree;
    return pi - loaded - to_spare;
}

struct Groove {
    tool::VeeFace face;
    std::vector<int> bends;
    std::string reason;
};

Groove groove_for(const Case& c, const Blank& blank, const std::vector<OpeningRange>& group) {
    Groove groove;
    groove.face.die_opening = common_opening(group);
    groove.face.shoulder_radius = shoulder_of(groove.face.die_opening);
    double loaded = 0.0;
    for (const OpeningRange& r : group) {
        groove.bends.push_back(r.bend);
        const double own = trial(c, blank, r.bend, wanted_nose(c, r.bend), groove.face.die_opening).loaded;
        loaded = std::max(loaded, own);
    }
    groove.face.angle = angle_of_groove(loaded);
    const double fits = 0.5 * groove.face.die_opening / std::cos(0.5 * groove.face.angle);
    groove.face.bottom_radius = std::min(0.4, 0.5 * (fits - groove.face.shoulder_radius));
    groove.reason = words(
        "opening of %g mm, %.1f thicknesses (rule: 6 to 12, and inside radius over 0.16); %g degrees, "
        "for at most %.1f under load",
        groove.face.die_opening, groove.face.die_opening / c.thickness, groove.face.angle / degree,
        loaded / degree);
    return groove;
}

void add_blocks(const std::vector<Groove>& grooves, ProposedTools& proposed) {
    for (std::size_t i = 0; i < grooves.size(); i += 2) {
        tool::VeeDie die;
        std::string name = "block", reason;
        double depths = 0.0;
        for (std::size_t k = i; k < std::min(i + 2, grooves.size()); ++k) {
            const tool::VeeFace& face = grooves[k].face;
            die.faces.push_back(face);
            die.width = std::max(die.width, usual_die_width(face.die_opening, face.shoulder_radius));
            depths += tool::groove_depth(face);
            name += words(k == i ? " %g" : " and %g", face.die_opening);
            reason += (k == i ? "" : "; and, turned over, ") + grooves[k].reason;
        }
        die.height = usual_die_height(depths);
        proposed.add(name, die, reason);
    }
}

void add_punches(const Case& c, const std::vector<Groove>& grooves, ProposedTools& proposed) {
    std::vector<OpeningRange> noses;  // ranges of noses are stabbed as those of openings are
    for (const Groove& g : grooves)
        for (const int b : g.bends) {
            const double nose = wanted_nose(c, b);
            noses.push_back({b, (1.0 - same_nose) * nose, (1.0 + same_nose) * nose, nose});
        }
    for (const std::vector<OpeningRange>& group : fewest_openings(noses)) {
        tool::VeePunch punch;
        double mean = 0.0, angle = pi;
        for (const OpeningRange& r : group) {
            mean += r.preferred / static_cast<double>(group.size());
            for (const Groove& g : grooves)
                if (std::count(g.bends.begin(), g.bends.end(), r.bend) > 0)
                    angle = std::min(angle, g.face.angle);
        }
        punch.nose_radius = tenth(mean);
        punch.angle = angle - punch_to_spare;
        punch.height = usual_punch_height;
        punch.shank_width = usual_shank_width(punch.nose_radius);
        proposed.add(
            words("wedge %g", punch.angle / degree), punch,
            words("nose of %g mm, %.2f of the drawn inside radius, because air bending gives a larger radius "
                  "than the nose; "
                  "%g degrees, %g less than its groove",
                  punch.nose_radius, nose_over_radius, punch.angle / degree, punch_to_spare / degree));
    }
}

}  // namespace

std::vector<std::vector<OpeningRange>> fewest_openings(std::vector<OpeningRange> ranges) {
    ranges.erase(
        std::remove_if(ranges.begin(), ranges.end(), [](const OpeningRange& r) { return r.low > r.high; }),
        ranges.end());
    std::sort(ranges.begin(), ranges.end(),
              [](const OpeningRange& a, const OpeningRange& b) { return a.high < b.high; });
    std::vector<std::vector<OpeningRange>> groups;
    double point = -1e300;  // the last one set; every earlier range holds one
    for (const OpeningRange& r : ranges) {
        if (r.low > point) {
            groups.emplace_back();
            point = r.high;
        }
        groups.back().push_back(r);
    }
    return groups;
}

ProposedTools propose_vee(const Case& c, const Blank& blank, const std::vector<int>& bends) {
    ProposedTools proposed;
    std::vector<OpeningRange> ranges;
    for (const int b : bends) {
        ranges.push_back(range_of(c, blank, b));
        if (ranges.back().low > ranges.back().high) proposed.cannot.push_back(why_none(c, blank, b));
    }
    std::vector<Groove> grooves;
    for (const std::vector<OpeningRange>& group : fewest_openings(ranges))
        grooves.push_back(groove_for(c, blank, group));
    add_punches(c, grooves, proposed);
    add_blocks(grooves, proposed);
    return proposed;
}

}  // namespace overbend::files
