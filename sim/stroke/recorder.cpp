#include "sim/stroke/recorder.h"

namespace overbend::stroke {

Recording begin_recording(const strip::StripState& strip, const tool::ToolSet& tools) {
    Recording r;
    r.thickness = strip.thickness;
    r.blank_position = strip.blank_position;
    r.layer_height = strip.layer_height;
    r.layer_weight = strip.layer_weight;
    r.tools = tools;
    return r;
}

void record(Recording& recording, const SolverState& c, Phase phase) {
    State s;
    s.phase = phase;
    s.travel = c.travel;
    s.punch_force = c.punch_force;
    s.x = c.strip.x, s.y = c.strip.y, s.theta = c.strip.theta, s.warp = c.strip.warp;
    s.stretch = c.stretch, s.curvature = c.curvature;
    s.hoop_stress.assign(c.stress.begin(), c.stress.end());
    s.plastic_strain.clear();
    for (const material::LayerHistory& layer : c.strip.history)
        s.plastic_strain.push_back(static_cast<float>(layer.accumulated));
    s.contacts = c.contacts;
    s.compression = c.compression;
    recording.states.push_back(std::move(s));
}

}  // namespace overbend::stroke
