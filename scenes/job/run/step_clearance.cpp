#include "scenes/job/run/step_clearance.h"

#include <algorithm>

#include "sim/clearance/access.h"
#include "sim/clearance/sweep.h"

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
            found.push_back({i, i, at});
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
        if (!known) found.push_back({hit.state, hit.state, hit});
    }
}

void find_ways(const clearance::Access& access, int step, StepResult& result, Findings& findings) {
    const stroke::Recording& r = result.stroke.recording;
    if (!access.in_plane_in) {
        result.way_in = clearance::Way::along_the_bend_line;
        add_note(Rule::slide_in, tool_words(r, access.blocked_in_by), step, findings);
    }
    if (!access.in_plane_out) {
        result.way_off = clearance::Way::along_the_bend_line;
        add_note(Rule::slide_off, tool_words(r, access.blocked_out_by), step, findings);
    }
}

}  // namespace

double ram_rise(const files::Case& c) {
    return c.press ? c.press->stroke : small_press;
}

Finding finding_of(const StepResult& result, int step, const Interference& hit) {
    const clearance::Closest& at = hit.deepest;
    Finding f{Severity::stops, Rule::interference, -at.distance, 0.0, {at.blank_position, at.travel}};
    f.detail = tool_words(result.stroke.recording, at.tool);
    f.place = on_step(step, at.state >= 0 ? at.state : hit.first_state);
    f.place.at = at.at;
    return f;
}

void add_note(Rule rule, const std::string& detail, int step, Findings& findings) {
    add(findings, {Severity::note, rule, 0.0, 0.0, {}, detail, on_step(step, 0)});
}

void read_clearance(const stroke::FormingZone& zone, double raised, int step, StepResult& result,
                    Findings& findings) {
    const stroke::Recording& r = result.stroke.recording;
    const clearance::Surroundings all(r);
    result.clearance = clearance::least_distances(all, zone);
    for (const clearance::Closest& at : result.clearance)
        if (at.distance < result.least.distance) result.least = at;
    collect(result.clearance, result.interferences);
    collect_between(clearance::hits_between(all, zone), result.interferences);
    for (const Interference& hit : result.interferences) add(findings, finding_of(result, step, hit));
    if (result.stroke.solved()) find_ways(clearance::access_of(all, raised), step, result, findings);
}

}  // namespace overbend::job
