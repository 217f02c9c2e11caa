#include "render/picture/elastic_core.h"

#include <algorithm>
#include <cmath>

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

constexpr double flowed = 1e-6;         // plastic strain above which a layer counts as yielded
constexpr double least_bending = 0.03;  // curvature times thickness

// Plastic strain of a layer at a station.
double strain_of(const Recording& recording, const State& state, const Between& at, int layer) {
    return layer_value(state.plastic_strain, recording.layers(), layer, at);
}

// Reference height of the front between layer k, not yielded, and the next one outwards (way +1 up, -1 down).
double front(const Recording& recording, const State& state, const Between& at, int k, int way) {
    const std::vector<double>& z = recording.layer_height;
    const int next = k + way;
    const int beyond = next + way;
    if (beyond < 0 || beyond >= recording.layers()) return 0.5 * (z[k] + z[next]);
    const double p = strain_of(recording, state, at, next);
    const double rise = strain_of(recording, state, at, beyond) - p;
    if (rise <= 0.0) return 0.5 * (z[k] + z[next]);
    const double found = z[next] - p * (z[beyond] - z[next]) / rise;
    return std::min(std::max(found, std::min(z[k], z[next])), std::max(z[k], z[next]));
}

// Height of what was at z, with the station's heights of the layers' edges.
double lifted(const std::vector<double>& edges, const Station& station, double z) {
    const auto next = std::upper_bound(edges.begin() + 1, edges.end() - 1, z);
    const std::size_t i = static_cast<std::size_t>(next - edges.begin());
    const double part = (z - edges[i - 1]) / (edges[i] - edges[i - 1]);
    return station.edge[i - 1] + part * (station.edge[i] - station.edge[i - 1]);
}

}  // namespace

std::optional<Core> elastic_core(const Recording& recording, const State& state, const Station& station) {
    const Between at = between_elements(static_cast<int>(state.stretch.size()), station.along);
    const int layers = recording.layers();
    // The layers without plastic strain that are nearest to the middle; those that lie between yielded ones.
    int best = -1;
    for (int k = 0; k < layers; ++k)
        if (strain_of(recording, state, at, k) <= flowed &&
            (best < 0 || std::abs(recording.layer_height[k]) < std::abs(recording.layer_height[best])))
            best = k;
    if (best < 0) return {};
    int low = best;
    int high = best;
    while (low > 0 && strain_of(recording, state, at, low - 1) <= flowed) --low;
    while (high + 1 < layers && strain_of(recording, state, at, high + 1) <= flowed) ++high;
    const std::vector<double> edges = layer_edges(recording);
    Core core;
    core.whole = low == 0 && high + 1 == layers;
    core.low = low == 0 ? station.edge.front() : lifted(edges, station, front(recording, state, at, low, -1));
    core.high = high + 1 == layers ? station.edge.back()
                                   : lifted(edges, station, front(recording, state, at, high, 1));
    return core;
}

// A layer's stretch is its height at first over its height now; between the layers' middles in proportion.
std::optional<double> neutral_height(const Recording& recording, const State& state, const Station& station) {
    const Between at = between_elements(static_cast<int>(state.stretch.size()), station.along);
    const double curvature = at.blend(state.curvature[at.before], state.curvature[at.after]);
    if (std::abs(curvature) * recording.thickness < least_bending) return {};
    const std::vector<double> edges = layer_edges(recording);
    std::optional<double> nearest;      // a folded section has more crossings than one
    double before = 0.0, middle = 0.0;  // of the layer below
    for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
        const double rise = station.edge[i + 1] - station.edge[i], y = station.edge[i] + 0.5 * rise;
        const double over = (edges[i + 1] - edges[i]) / rise - 1.0;
        if (i > 0 && over * before <= 0.0 && (over - before) * curvature < 0.0) {
            const double crossing = middle + (y - middle) * before / (before - over);
            if (!nearest || std::abs(crossing) < std::abs(*nearest)) nearest = crossing;
        }
        before = over, middle = y;
    }
    return nearest;
}

}  // namespace overbend::picture
