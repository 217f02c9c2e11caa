#include "scenes/files/case/propose_vee.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

constexpr double least_neck = 6.0, neck_thicknesses = 6.0;  // mm, -; common practice, no source
constexpr double room_thicknesses = 2.0;                    // between the flange and the cut
constexpr double above = 20.0;                              // mm of whole shank above the cut

// Where the return flange begins and ends at the stroke's end, from the punch's nose.
struct Flange {
    double begin_x = 0.0, begin_y = 0.0, end_x = 0.0, end_y = 0.0;
};
Flange flange_of(const Case& c, int bend, int other) {
    const int outwards = other > bend ? 1 : -1;
    const Bend &own = c.part.bends[bend], &over = c.part.bends[other];
    const double lean = 0.5 * std::abs(own.angle), turn = std::abs(over.angle);
    const double corner = over.inside_radius * std::tan(0.5 * std::min(turn, 2.0));
    const double base = c.part.flats[outwards > 0 ? bend + 1 : bend] + corner;
    const double length = c.part.flats[outwards > 0 ? other + 1 : other] + corner;
    Flange f;
    f.begin_x = base * std::cos(lean), f.begin_y = base * std::sin(lean);
    f.end_x = f.begin_x + length * std::cos(lean + turn);
    f.end_y = f.begin_y + length * std::sin(lean + turn);
    return f;
}

// The cut that leaves room for all of them.
tool::Relief cut_for(const Case& c, const std::vector<std::pair<int, int>>& pairs,
                     const tool::VeePunch& punch) {
    const double room = room_thicknesses * c.thickness;
    tool::Relief cut;
    cut.side = tool::Side::right;
    cut.neck = std::max(least_neck, neck_thicknesses * c.thickness);
    cut.root_radius = 2.0;
    cut.from = 1e300;
    double highest = 0.0;
    cut.set_back = -0.4 * punch.shank_width;
    for (const auto& [bend, other] : pairs) {
        const Flange f = flange_of(c, bend, other);
        cut.set_back = std::max(cut.set_back, room - f.end_x);
        cut.from = std::min(cut.from, 0.5 * (f.begin_x + f.begin_y));
        highest = std::max(highest, f.end_y);
    }
    cut.to = std::ceil(highest + room + cut.set_back + 0.5 * punch.shank_width);
    cut.set_back = std::ceil(2.0 * cut.set_back) / 2.0;
    cut.from = std::floor(2.0 * cut.from) / 2.0;
    return cut;
}

}  // namespace

ProposedTools propose_relieved(const Case& c, const std::vector<std::pair<int, int>>& pairs) {
    ProposedTools proposed;
    if (pairs.empty()) return proposed;
    for (const Tool& t : c.tools) {
        const auto* wedge = std::get_if<tool::VeePunch>(&t.shape);
        if (!wedge || wedge->relief) continue;
        tool::VeePunch punch = *wedge;
        punch.relief = cut_for(c, pairs, punch);
        punch.height = std::max(punch.height, punch.relief->to + above);
        try {
            make_outline(punch);
        } catch (const OutOfRange&) {
            continue;  // there is no room for such a cut in this wedge
        }
        proposed.add(
            "relieved " + t.name, punch,
            words("like '%s', cut away to %g mm past its axis from %g to %g mm above the nose, to clear "
                  "flanges that overhang the bend; the load bends its neck of %g mm: check its strength",
                  t.name.c_str(), punch.relief->set_back, punch.relief->from, punch.relief->to,
                  punch.relief->neck));
    }
    return proposed;
}

}  // namespace overbend::files
