#include "scenes/job/run/step_clearance.h"

#include <algorithm>

#include "sim/clearance/access.h"
#include "sim/clearance/sweep.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double small_press = 100.0;  // mm, its stroke; common practice, no source

std::string tool_words(const stroke::Recording& r, int k) {
    return std::string(tool::role_word(r.tools[k].role)) + " '" + r.tools[k].name + "'";
}

// Overlaps of states that follow one another with the same tool are one interference.
void collect(const std::vector<clearance::Closest>& states, std::vector<Interference>& found) {
    for (int i = 0; i < static_cast<int>(states.size()); ++i) {
        const clearance::Closest& at = states[i];
        if (at.distance >= 0.0) continue;
        if (found.empty() || found.back().last_state != i - 1 || found.back().deepest.tool != at.tool)
            found.push_back({i, i, at, ""});
        found.back().last_state = i;
        if (at.distance < found.back().deepest.distance) found.back().deepest = at;
    }
}

// Hits that only the way between two states shows.
void collect_between(const std::vector<clearance::Closest>& hits, std::vector<Interference>& found) {
    for (const clearance::Closest& hit : hits) {
        const bool known = std::any_of(found.begin(), found.end(), [&](const Interference& f) {
            return f.deepest.tool == hit.tool && hit.state >= f.first_state && hit.state <= f.last_state + 1;
        });
        if (!known) found.push_back({hit.state, hit.state, hit, ""});
    }
}

void remark(const clearance::Access& access, StepResult& result) {
    const stroke::Recording& r = result.stroke.recording;
    if (!access.in_plane_in) result.way_in = clearance::Way::along_the_bend_line;
    if (!access.in_plane_out) result.way_off = clearance::Way::along_the_bend_line;
    if (!access.in_plane_in)
        result.remarks.push_back(
            "the strip must be slid in along the bend line, under the lowered punch: the " +
            tool_words(r, access.blocked_in_by) + " blocks the way from the front");
    if (!access.in_plane_out)
        result.remarks.push_back("the strip must be slid off along the bend line: the " +
                                 tool_words(r, access.blocked_out_by) + " blocks the way to the front");
}

}  // namespace

double ram_rise(const files::Case& c) {
    return c.press ? c.press->stroke : small_press;
}

void read_clearance(const stroke::FormingZone& zone, double raised, StepResult& result) {
    const stroke::Recording& r = result.stroke.recording;
    const clearance::Surroundings all(r);
    result.clearance = clearance::least_distances(all, zone);
    for (const clearance::Closest& at : result.clearance)
        if (at.distance < result.least.distance) result.least = at;
    collect(result.clearance, result.interferences);
    collect_between(clearance::hits_between(all, zone), result.interferences);
    for (Interference& f : result.interferences)
        f.words = words(
            "the strip, %.1f mm from the blank's left end, is %.2f mm deep in the %s at %.2f mm of travel",
            f.deepest.blank_position, -f.deepest.distance, tool_words(r, f.deepest.tool).c_str(),
            f.deepest.travel);
    if (result.stroke.solved()) remark(clearance::access_of(all, raised), result);
}

}  // namespace overbend::job
