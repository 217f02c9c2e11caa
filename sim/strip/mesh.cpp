#include "sim/strip/mesh.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"
#include "sim/material/section.h"

namespace overbend::strip {

namespace {

double wanted_size(double at, double thickness, const std::vector<FineZone>& zones,
                   const MeshOptions& options) {
    const double finest = thickness / options.elements_per_thickness;
    double size = options.far * thickness;
    for (const FineZone& zone : zones) {
        const double off_core = std::max(0.0, std::abs(at - zone.centre) - zone.core);
        const double off_reach = std::max(0.0, std::abs(at - zone.centre) - zone.reach);
        const double touched = options.touched * thickness * 8.0 / options.elements_per_thickness;
        const double near = std::min(finest + options.growth * off_core, std::max(finest, touched));
        size = std::min(size, near + options.growth * off_reach);
    }
    return size;
}

}  // namespace

std::vector<double> mesh_blank(double length, double thickness, const std::vector<FineZone>& zones,
                               const MeshOptions& options) {
    if (!(length > thickness))
        throw OutOfRange("blank length", std::to_string(length) + " mm", "give more than the thickness");
    // The number of elements up to each of many fine stations, from both ends so that symmetry is exact;
    // nodes stand where it is whole.
    const int stations = std::max(2000, static_cast<int>(length / thickness * 40.0));
    std::vector<double> count(stations + 1, 0.0);
    for (int i = 0; i < stations; ++i) {
        const double mid = length * (i + 0.5) / stations;
        count[i + 1] = count[i] + length / stations / wanted_size(mid, thickness, zones, options);
    }
    const int elements = std::max(4, 2 * static_cast<int>(std::ceil(count.back() / 2.0)));
    std::vector<double> nodes{0.0};
    int station = 0;
    for (int i = 1; i < elements; ++i) {
        const double wanted = count.back() * i / elements;
        while (count[station + 1] < wanted) ++station;
        const double share = (wanted - count[station]) / (count[station + 1] - count[station]);
        nodes.push_back(length * (station + share) / stations);
    }
    nodes.push_back(length);
    return nodes;
}

StripState flat_strip(double thickness, const std::vector<double>& blank_positions, int layers) {
    StripState s;
    s.thickness = thickness;
    s.blank_position = blank_positions;
    s.x = blank_positions;
    s.y.assign(s.x.size(), 0.0);
    s.theta.assign(s.x.size(), 0.0);
    s.warp.assign(material::warps * s.x.size(), 0.0);
    const material::Layers gauss = material::gauss_layers(thickness, layers);
    s.layer_height = gauss.height;
    s.layer_weight = gauss.weight;
    s.history.resize(static_cast<std::size_t>(s.elements()) * layers);
    return s;
}

}  // namespace overbend::strip
