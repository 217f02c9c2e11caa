#include "render/picture/strip_shape.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"
#include "sim/stroke/recorded_section.h"

namespace overbend::picture {

namespace {

using stroke::ContactForce;
using stroke::Recording;
using stroke::State;

Place normal(double theta) {
    return Place(-std::sin(theta), std::cos(theta));
}

double mix(double a, double b, double w) {
    return (1.0 - w) * a + w * b;
}

void check_state(const Recording& recording, size_t index) {
    const State& s = recording.states[index];
    const size_t nodes = recording.blank_position.size();
    const size_t layers = (nodes - 1) * recording.layer_height.size();
    if (s.x.size() == nodes && s.y.size() == nodes && s.theta.size() == nodes &&
        (s.warp.empty() || s.warp.size() == material::warps * nodes) && s.stretch.size() == nodes - 1 &&
        s.curvature.size() == nodes - 1 && s.hoop_stress.size() == layers &&
        s.plastic_strain.size() == layers)
        return;
    throw OutOfRange("recording", "state " + std::to_string(index) + " has lists of the wrong length",
                     "every state must have the recording's nodes and layers");
}

// Between the heights at an element's nodes.
std::vector<double> between(const std::vector<double>& a, const std::vector<double>& b, double part) {
    std::vector<double> result(a.size());
    for (size_t k = 0; k < result.size(); ++k) result[k] = mix(a[k], b[k], part);
    return result;
}

void blend_into(std::vector<double>& a, const std::vector<double>& b, double w) {
    for (size_t i = 0; i < a.size(); ++i) a[i] = mix(a[i], b[i], w);
}

void blend_into(std::vector<float>& a, const std::vector<float>& b, double w) {
    for (size_t i = 0; i < a.size(); ++i) a[i] = static_cast<float>(mix(a[i], b[i], w));
}

// The nearest force of the same tool within reach that is not taken yet; -1: none.
int partner(const ContactForce& of, const std::vector<ContactForce>& among, const std::vector<char>& taken,
            double reach) {
    int best = -1;
    for (size_t i = 0; i < among.size(); ++i) {
        if (taken[i] || among[i].tool != of.tool) continue;
        const double distance = (among[i].at - of.at).norm();
        if (distance > reach) continue;
        reach = distance;
        best = static_cast<int>(i);
    }
    return best;
}

std::vector<ContactForce> blended_contacts(const std::vector<ContactForce>& a,
                                           const std::vector<ContactForce>& b, double w, double reach) {
    std::vector<ContactForce> result;
    std::vector<char> taken(b.size(), 0);
    for (const ContactForce& c : a) {
        const int other = partner(c, b, taken, reach);
        ContactForce now = c;
        if (other >= 0) {
            taken[other] = 1;
            now.at = (1.0 - w) * c.at + w * b[other].at;
            now.force = (1.0 - w) * c.force + w * b[other].force;
        } else {
            now.force *= 1.0 - w;
        }
        result.push_back(now);
    }
    for (size_t i = 0; i < b.size(); ++i) {
        if (taken[i]) continue;
        result.push_back(b[i]);
        result.back().force *= w;
    }
    return result;
}

}  // namespace

Place Station::at(double height) const {
    return middle + height * normal(theta);
}

void check_recording(const Recording& recording) {
    if (recording.states.empty())
        throw OutOfRange("recording", "it has no states", "a picture needs at least one");
    if (recording.blank_position.size() < 2 || recording.layer_height.empty() || !(recording.thickness > 0.0))
        throw OutOfRange("recording", "the strip has no length, no layers or no thickness",
                         "it must have at least two nodes, one layer and a thickness above 0 mm");
    for (size_t i = 0; i < recording.states.size(); ++i) check_state(recording, i);
}

std::vector<double> heights_at_node(const material::SectionShape& shape, const Recording& recording,
                                    const State& state, int node) {
    material::LayerHeights h;
    if (!shape.heights(stroke::section_at_node(recording, state, node), h))
        throw OutOfRange("recording", "a section has no stretch left", "no strip can be bent so sharply");
    std::vector<double> result{h.y(shape.face(-1.0))};
    for (int i = 0; i < shape.layers(); ++i) result.push_back(h.y(i));
    result.push_back(h.y(shape.face(1.0)));
    return result;
}

std::vector<double> layer_edges(const Recording& recording) {
    const std::vector<double>& height = recording.layer_height;
    std::vector<double> edges{-0.5 * recording.thickness};
    for (size_t k = 1; k < height.size(); ++k) edges.push_back(0.5 * (height[k - 1] + height[k]));
    edges.push_back(0.5 * recording.thickness);
    return edges;
}

Spot spot_along(const Recording& recording, const State& state, double along) {
    const int elements = static_cast<int>(recording.blank_position.size()) - 1;
    const int e = std::min(elements - 1, std::max(0, static_cast<int>(std::floor(along))));
    const double part = std::min(1.0, std::max(0.0, along - e));
    const double xi = 2.0 * part - 1.0;
    const double length = std::abs(recording.blank_position[e + 1] - recording.blank_position[e]);
    const double theta = mix(state.theta[e], state.theta[e + 1], part);
    const Place chord(mix(state.x[e], state.x[e + 1], part), mix(state.y[e], state.y[e + 1], part));
    const double bow = 0.125 * length * (1.0 - xi * xi) * (state.theta[e] - state.theta[e + 1]);
    return {chord + bow * normal(theta), theta};
}

double along_at(const Recording& recording, double blank_position) {
    const std::vector<double>& s = recording.blank_position;
    const double sign = s.back() >= s.front() ? 1.0 : -1.0;
    const int elements = static_cast<int>(s.size()) - 1;
    if (sign * (blank_position - s.front()) <= 0.0) return 0.0;
    for (int e = 0; e < elements; ++e)
        if (sign * (blank_position - s[e + 1]) <= 0.0) return e + (blank_position - s[e]) / (s[e + 1] - s[e]);
    return elements;
}

Spot spot_on(const Recording& recording, const State& state, double blank_position) {
    return spot_along(recording, state, along_at(recording, blank_position));
}

std::vector<Station> stations(const Recording& recording, const State& state, double step) {
    return stations(recording, state, step, 0, static_cast<int>(recording.blank_position.size()) - 2);
}

std::vector<Station> stations(const Recording& recording, const State& state, double step, int first,
                              int last) {
    const int elements = static_cast<int>(recording.blank_position.size()) - 1;
    const std::vector<double> edges = layer_edges(recording);
    const material::SectionShape shape(recording.thickness, {edges.begin() + 1, edges.end() - 1});
    std::vector<std::vector<double>> own(elements + 1);
    for (int i = first; i <= last + 1; ++i) own[i] = heights_at_node(shape, recording, state, i);

    std::vector<Station> result;
    for (int e = first; e <= last; ++e) {
        const double length = std::abs(recording.blank_position[e + 1] - recording.blank_position[e]);
        const double turn = std::abs(state.theta[e + 1] - state.theta[e]);
        const int parts = std::max(1, static_cast<int>(std::ceil(std::max(length / step, turn / 0.06))));
        for (int i = 0; i < parts; ++i) {
            const double part = static_cast<double>(i) / parts;
            const Spot spot = spot_along(recording, state, e + part);
            result.push_back({e + part, spot.at, spot.theta, between(own[e], own[e + 1], part)});
        }
    }
    const Spot end = spot_along(recording, state, last + 1);
    result.push_back({last + 1.0, end.at, end.theta, own[last + 1]});
    return result;
}

Between between_elements(int elements, double along) {
    const double from_middle = along - 0.5;
    Between b;
    b.before = std::min(elements - 1, std::max(0, static_cast<int>(std::floor(from_middle))));
    b.after = std::min(elements - 1, b.before + 1);
    b.part = std::min(1.0, std::max(0.0, from_middle - b.before));
    return b;
}

double layer_value(const std::vector<float>& values, int layers, int layer, const Between& at) {
    return at.blend(static_cast<double>(values[at.before * layers + layer]),
                    static_cast<double>(values[at.after * layers + layer]));
}

double layer_value(const std::vector<float>& values, int layers, int layer, double along) {
    return layer_value(values, layers, layer,
                       between_elements(static_cast<int>(values.size()) / layers, along));
}

std::vector<int> first_layers(int layers, int bands) {
    std::vector<int> first;
    for (int k = 0; k <= bands; ++k) first.push_back(k * layers / bands);
    return first;
}

std::vector<Place> strip_outline(const std::vector<Station>& at) {
    std::vector<Place> outline;
    outline.reserve(2 * at.size());
    for (const Station& s : at) outline.push_back(s.at(s.edge.front()));
    for (auto s = at.rbegin(); s != at.rend(); ++s) outline.push_back(s->at(s->edge.back()));
    return outline;
}

State blended(const Recording& recording, const State& a, const State& b, double blend) {
    if (blend <= 0.0) return a;
    if (blend >= 1.0) return b;
    State now = a;
    if (blend >= 0.5) now.phase = b.phase;
    now.travel = mix(a.travel, b.travel, blend);
    now.punch_force = mix(a.punch_force, b.punch_force, blend);
    if (a.compression.size() == b.compression.size()) blend_into(now.compression, b.compression, blend);
    blend_into(now.x, b.x, blend);
    blend_into(now.y, b.y, blend);
    blend_into(now.theta, b.theta, blend);
    blend_into(now.stretch, b.stretch, blend);
    blend_into(now.curvature, b.curvature, blend);
    if (a.warp.size() == b.warp.size()) blend_into(now.warp, b.warp, blend);
    blend_into(now.hoop_stress, b.hoop_stress, blend);
    blend_into(now.plastic_strain, b.plastic_strain, blend);
    now.contacts = blended_contacts(a.contacts, b.contacts, blend, 3.0 * recording.thickness);
    return now;
}

}  // namespace overbend::picture
