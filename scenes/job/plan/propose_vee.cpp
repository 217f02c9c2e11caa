#include "scenes/job/plan/propose_vee.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/usual_sizes.h"
#include "scenes/job/run/measures.h"
#include "sim/plan/shop_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

using files::ProposedTools;

namespace {

// Usual angles of grooves and sizes of noses: common practice, no source.
constexpr std::array<double, 8> angles_deg = {84, 78, 70, 60, 50, 40, 35, 30};
constexpr std::array<double, 20> noses = {0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0,  1.2,  1.5,  2.0,
                                          2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0};
constexpr double to_spare = 2.5 * degree;         // of a groove's angle over the strip's under load
constexpr double punch_to_spare = 4.0 * degree;   // of the groove's angle over the punch's
constexpr double radius_over_opening = 0.16;      // common practice
constexpr double narrowest = 4.0, widest = 24.0;  // openings that are looked at, thicknesses

// ---- openings

// A stroke with these sizes, for the straight that it needs.
plan::StrokePath path_over(const files::Case& c, const Blank& blank, int bend, double nose, double opening) {
    const tool::VeePunch punch{30.0 * degree, nose, files::usual_punch_height,
                               files::usual_shank_width(nose)};
    const tool::OpenDie die{opening, usual_shoulder(opening), 2.0 * opening, 3.0 * opening};
    return files::path_between(c, blank, {bend}, {"punch", punch}, {"die", die});
}

bool reaches(const files::Case& c, const plan::StrokePath& path) {
    const double between_centres = path.nose + c.thickness + path.shoulder;
    return path.shoulder_x / between_centres >= std::sin(std::min(0.5 * path.loaded + 0.5 * to_spare, 1.57));
}

// The shorter of the straights beside a bend: its flats when its neighbours are made before it, all of the
// strip when they come after.
enum class Neighbours { before, after };
double shorter_straight(const files::Case& c, const Blank& blank, int bend, Neighbours neighbours) {
    if (neighbours == Neighbours::before) return std::min(c.part.flats[bend], c.part.flats[bend + 1]);
    const double line = blank.bend_line[bend];
    return std::min(line, blank.length - line) - blank.half_arc[bend];
}

// Openings that the flanges beside the bend can span, those that suit the metal first.
std::vector<double> openings_for(const files::Case& c, const Blank& blank, int bend) {
    const double rule = plan::usual_opening(c.thickness);
    const double preferred =
        std::clamp(c.part.bends[bend].inside_radius / radius_over_opening, rule, 2.0 * rule);
    const double nose = std::max(0.2 * c.thickness, 0.7 * c.part.bends[bend].inside_radius);
    std::vector<double> found;
    for (const Neighbours neighbours : {Neighbours::before, Neighbours::after}) {
        const double straight = shorter_straight(c, blank, bend, neighbours);
        for (const double opening : standard_openings()) {
            if (opening < narrowest * c.thickness || opening > widest * c.thickness) continue;
            const plan::StrokePath path = path_over(c, blank, bend, nose, opening);
            if (plan::needed_straight(path) <= straight) found.push_back(opening);
        }
        if (!found.empty()) break;
    }
    const auto far = [&](double opening) { return std::abs(std::log(opening / preferred)); };
    std::stable_sort(found.begin(), found.end(), [&](double a, double b) { return far(a) < far(b); });
    return found;
}

std::string why_none(const files::Case& c, const Blank& blank, int bend) {
    const double shorter = shorter_straight(c, blank, bend, Neighbours::after);
    for (const double opening : standard_openings()) {
        const plan::StrokePath path = path_over(c, blank, bend, 0.2 * c.thickness, opening);
        if (opening < narrowest * c.thickness || !reaches(c, path)) continue;
        return words(
            "bend '%s': a flange of %.1f mm is too short for any groove; the narrowest one, %g mm, needs "
            "%.1f mm",
            c.part.bends[bend].name.c_str(), shorter, opening, plan::needed_straight(path));
    }
    return words("bend '%s': no groove can bend it by %.0f degrees", c.part.bends[bend].name.c_str(),
                 std::abs(c.part.bends[bend].angle) / degree);
}

// ---- grooves: an opening, and the bends that it serves

struct Served {
    int bend = 0;
    NoseFor nose;
};
struct Groove {
    double opening = 0.0;
    std::vector<Served> bends;
};

bool is_in(const std::vector<double>& openings, double opening) {
    return std::count(openings.begin(), openings.end(), opening) > 0;
}

// The first opening over which a nose makes the radius; else that over which one comes nearest.
std::optional<Groove> groove_of(const files::Case& c, int bend, const std::vector<double>& openings,
                                VeeTrials& trials) {
    std::optional<Groove> nearest;
    const double wanted = c.part.bends[bend].inside_radius;
    for (const double opening : openings) {
        const std::optional<NoseFor> nose = trials.nose_for(bend, opening, usual_shoulder(opening));
        if (!nose) continue;
        if (!nearest ||
            std::abs(nose->radius - wanted) < std::abs(nearest->bends.front().nose.radius - wanted))
            nearest = Groove{opening, {{bend, *nose}}};
        if (nose->within) break;
    }
    return nearest;
}

// Each further bend goes to a groove that there is, when that suits it.
std::vector<Groove> grooves_for(const files::Case& c, const Blank& blank, const std::vector<int>& bends,
                                VeeTrials& trials, std::vector<std::string>& cannot) {
    std::vector<Groove> grooves;
    for (const int b : bends) {
        const std::vector<double> openings = openings_for(c, blank, b);
        bool served = false;
        for (Groove& g : grooves) {
            if (!is_in(openings, g.opening)) continue;
            const std::optional<NoseFor> nose = trials.nose_for(b, g.opening, usual_shoulder(g.opening));
            served = nose && nose->within;
            if (served) g.bends.push_back({b, *nose});
            if (served) break;
        }
        if (served) continue;
        const std::optional<Groove> own = groove_of(c, b, openings, trials);
        if (!own) {
            cannot.push_back(why_none(c, blank, b));
            continue;
        }
        const auto same = std::find_if(grooves.begin(), grooves.end(),
                                       [&](const Groove& g) { return g.opening == own->opening; });
        if (same == grooves.end())
            grooves.push_back(*own);
        else
            same->bends.push_back(own->bends.front());
    }
    return grooves;
}

double angle_of_groove(double loaded) {
    for (const double angle : angles_deg)
        if (angle * degree + to_spare <= pi - loaded) return angle * degree;
    return pi - loaded - to_spare;
}

double most_loaded(const Groove& g) {
    double loaded = 0.0;
    for (const Served& s : g.bends) loaded = std::max(loaded, s.nose.loaded);
    return loaded;
}

tool::VeeFace face_of(double opening, double loaded) {
    tool::VeeFace face;
    face.die_opening = opening;
    face.shoulder_radius = usual_shoulder(opening);
    face.angle = angle_of_groove(loaded);
    const double fits = 0.5 * opening / std::cos(0.5 * face.angle);
    face.bottom_radius = std::min(0.4, 0.5 * (fits - face.shoulder_radius));
    return face;
}

double width_with(const tool::VeeFace& face, double land) {
    return files::halves_up(face.die_opening + 2.0 * face.shoulder_radius + 2.0 * land);
}

void add_blocks(const files::Case& c, const std::vector<Groove>& grooves, ProposedTools& proposed) {
    for (std::size_t i = 0; i < grooves.size(); i += 2) {
        tool::VeeDie die;
        std::string name = "block", reason;
        double depths = 0.0;
        for (std::size_t k = i; k < std::min(i + 2, grooves.size()); ++k) {
            const double loaded = most_loaded(grooves[k]);
            const tool::VeeFace face = face_of(grooves[k].opening, loaded);
            die.faces.push_back(face);
            die.width = std::max(die.width, width_with(face, usual_land(c.thickness)));
            depths += tool::groove_depth(face);
            name += words(k == i ? " %g" : " and %g", face.die_opening);
            reason += words(
                "%sopening of %g mm, %.1f thicknesses (rule: 6 to 12); %g degrees, for at most %.1f "
                "under load",
                k == i ? "" : "; and, turned over, ", face.die_opening, face.die_opening / c.thickness,
                face.angle / degree, loaded / degree);
        }
        die.height = files::usual_die_height(depths);
        proposed.add(name, die, reason);
    }
}

// ---- noses

// Of the sizes within all ranges a trade size nearest to their middle, else a round one.
double common_nose(const std::vector<SizeRange>& group) {
    double low = 0.0, high = 1e300;
    for (const SizeRange& r : group) low = std::max(low, r.low), high = std::min(high, r.high);
    const double middle = 0.5 * (low + high);
    double best = 0.0;
    for (const double nose : noses)
        if (nose >= low && nose <= high && std::abs(nose - middle) < std::abs(best - middle)) best = nose;
    if (best > 0.0) return best;
    const double tenths = std::round(10.0 * middle) / 10.0;
    return tenths >= low && tenths <= high ? tenths : files::hundredth(middle);
}

void add_punches(const files::Case& c, const std::vector<Groove>& grooves, ProposedTools& proposed) {
    std::vector<SizeRange> ranges;
    for (const Groove& g : grooves)
        for (const Served& s : g.bends) {
            const files::Bend& bend = c.part.bends[s.bend];
            const double off = s.nose.radius - bend.inside_radius;
            const double spare = aimed_at * allowed_radius(c, s.bend);
            const double low = s.nose.nose - (spare + off) / s.nose.slope;
            const double high = s.nose.nose + (spare - off) / s.nose.slope;
            // Where no nose makes the radius, the one that comes nearest.
            const bool makes = s.nose.within && low < high;
            constexpr double about = 0.05;
            ranges.push_back(
                makes ? SizeRange{s.bend, std::max(low, 0.2 * c.thickness), high}
                      : SizeRange{s.bend, s.nose.nose * (1.0 - about), s.nose.nose * (1.0 + about)});
        }
    for (const std::vector<SizeRange>& group : fewest_sizes(ranges)) {
        tool::VeePunch punch;
        double angle = pi;
        std::vector<std::string> names;
        for (const SizeRange& r : group) {
            names.push_back("'" + c.part.bends[r.bend].name + "'");
            for (const Groove& g : grooves)
                for (const Served& s : g.bends)
                    if (s.bend == r.bend) angle = std::min(angle, angle_of_groove(most_loaded(g)));
        }
        punch.nose_radius = common_nose(group);
        punch.angle = angle - punch_to_spare;
        punch.height = punch_height(c);
        punch.shank_width = files::usual_shank_width(punch.nose_radius);
        proposed.add(
            words("wedge %g", punch.angle / degree), punch,
            words("nose of %g mm, for the inside radius of %s by single strokes of the mechanics; %g "
                  "degrees, %g less than its groove",
                  punch.nose_radius, files::listed(names, " and ").c_str(), punch.angle / degree,
                  punch_to_spare / degree));
    }
}

}  // namespace

const std::vector<double>& standard_openings() {
    static const std::vector<double> openings = {2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 50, 63, 80};
    return openings;
}

double punch_height(const files::Case& c) {
    constexpr double step = 20.0, most = 200.0;
    const double longest = *std::max_element(c.part.flats.begin(), c.part.flats.end());
    return std::clamp(step * std::ceil((longest + step) / step), files::usual_punch_height, most);
}

double usual_shoulder(double opening) {
    return std::max(0.5, std::round(opening / 5.0) / 2.0);
}

tool::VeeFace groove_over(const files::Case& c, const std::vector<int>& bends, double opening,
                          VeeTrials& trials) {
    double loaded = 0.0;
    for (const int b : bends) {
        const std::optional<NoseFor> nose = trials.nose_for(b, opening, usual_shoulder(opening));
        loaded = std::max(loaded, nose ? nose->loaded : std::abs(c.part.bends[b].angle));
    }
    return face_of(opening, loaded);
}

double usual_land(double thickness) {
    return std::max(3.0, thickness);
}
double least_land(double thickness) {
    return std::max(1.0, thickness);
}

tool::VeeDie block_of(const tool::VeeFace& groove, double land) {
    tool::VeeDie die;
    die.faces = {groove};
    die.width = width_with(groove, land);
    die.height = files::usual_die_height(tool::groove_depth(groove));
    return die;
}

std::vector<std::vector<SizeRange>> fewest_sizes(std::vector<SizeRange> ranges) {
    ranges.erase(
        std::remove_if(ranges.begin(), ranges.end(), [](const SizeRange& r) { return r.low > r.high; }),
        ranges.end());
    std::sort(ranges.begin(), ranges.end(),
              [](const SizeRange& a, const SizeRange& b) { return a.high < b.high; });
    std::vector<std::vector<SizeRange>> groups;
    double point = -1e300;  // the last one set; every earlier range holds one
    for (const SizeRange& r : ranges) {
        if (r.low > point) {
            groups.emplace_back();
            point = r.high;
        }
        groups.back().push_back(r);
    }
    return groups;
}

ProposedTools propose_vee(const files::Case& c, const Blank& blank, const std::vector<int>& bends,
                          VeeTrials& trials) {
    ProposedTools proposed;
    const std::vector<Groove> grooves = grooves_for(c, blank, bends, trials, proposed.cannot);
    add_punches(c, grooves, proposed);
    add_blocks(c, grooves, proposed);
    return proposed;
}

}  // namespace overbend::job
