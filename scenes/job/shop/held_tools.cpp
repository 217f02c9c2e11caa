// What holds the tools: the side thrust of a stroke, and loads beside the face that a tool is held by.

#include <algorithm>
#include <cmath>

#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

constexpr double worth_telling = 0.1;       // of the stroke's greatest load: less is mostly friction
constexpr double middle_third = 1.0 / 6.0;  // of the held face, to either side: beyond it the face gapes

// Sideways on the punch, N per mm, positive to the right; the die gets the opposite.
double thrust_on_punch(const stroke::State& s) {
    double sum = 0.0;
    for (const stroke::ContactForce& f : s.contacts)
        if (f.tool == 0) sum -= f.force.x();
    return sum;
}

}  // namespace

void tell_of_side_thrust(const files::Case& c, const JobResult& job, Findings& findings) {
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i) {
        const stroke::StrokeResult& stroke = job.steps[i].stroke;
        if (!stroke.solved()) continue;
        const std::vector<stroke::State>& states = stroke.recording.states;
        double most = 0.0;
        int at = -1;
        for (int k = 0; k < static_cast<int>(states.size()); ++k) {
            const double thrust = thrust_on_punch(states[k]);
            if (std::abs(thrust) > std::abs(most)) most = thrust, at = k;
        }
        if (std::abs(most) <= worth_telling * stroke.peak_force) continue;
        Finding f{Severity::note, Rule::side_thrust, std::abs(most), 0.0};
        f.further = {most > 0.0 ? 1.0 : -1.0, std::abs(most) * c.width / 1000.0};
        f.detail = "good guides of the ram, and a key or a stop beside either tool";
        f.place = on_step(i, at);
        add(findings, f);
    }
}

void judge_holding(const files::Case& c, const JobResult& job, ToolInShop& t) {
    if (!t.held) return;
    const int step = t.held->step;
    const bool punch = c.steps[step].punch == t.tool;
    if (!punch && c.steps[step].die != t.tool) return;
    const shop::HolderLoad& load = t.held->load;
    const double most = middle_third * load.width, beside = std::abs(load.beside);
    if (load.pressed <= worth_telling * job.steps[step].stroke.peak_force || beside <= most) return;
    Finding f{Severity::note, Rule::tilting, beside, most};
    f.further = {load.width, load.pressed * beside * c.width / 1000.0};
    f.detail = punch ? "a holder that clamps it over its height" : "clamps on both sides of the die";
    t.checks.push_back(f);
}

}  // namespace overbend::job
