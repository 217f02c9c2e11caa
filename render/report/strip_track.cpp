#include "render/report/strip_track.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace overbend::report {

using namespace picture;

namespace {

using stroke::Recording;
using stroke::State;

// Chords between two stations that are worth a division of an element, rad.
constexpr double finest_turn = 0.08;
// Steps by which a colour may differ from the middle of its interval.
constexpr double colour_slack = 3.0;

// The surfaces of one state at one place.
struct Cut {
    Place lower, upper;
};

Cut cut_at(const Recording& r, const State& s, double along) {
    const int last = static_cast<int>(s.stretch.size()) - 1;
    const int e = std::min(last, std::max(0, static_cast<int>(std::floor(along))));
    const double part = along - e;
    const material::SectionShape faces(r.thickness, {});
    const std::vector<double> before = heights_at_node(faces, r, s, e),
                              behind = heights_at_node(faces, r, s, e + 1);
    const auto height = [&](int face) { return (1.0 - part) * before[face] + part * behind[face]; };
    const Spot spot = spot_along(r, s, along);
    const Place normal(-std::sin(spot.theta), std::cos(spot.theta));
    return {spot.at + height(0) * normal, spot.at + height(1) * normal};
}

// Where stations may stand: the nodes, and between them as finely as an element is turned in any state.
std::vector<double> places(const Recording& r, const TrackOptions& options) {
    const int elements = static_cast<int>(r.blank_position.size()) - 1;
    std::vector<double> along;
    for (int e = 0; e < elements; ++e) {
        double turn = 0.0;
        for (const State& s : r.states) turn = std::max(turn, std::abs(s.theta[e + 1] - s.theta[e]));
        const int parts = std::min(8, std::max(1, static_cast<int>(std::ceil(turn / finest_turn))));
        for (int i = 0; i < parts; ++i) along.push_back(e + static_cast<double>(i) / parts);
    }
    along.push_back(elements);
    for (const double at : options.blank_positions) along.push_back(along_at(r, at));
    std::sort(along.begin(), along.end());
    along.erase(std::unique(along.begin(), along.end(), [](double a, double b) { return b - a < 1e-6; }),
                along.end());
    return along;
}

double off_chord(const Place& p, const Place& a, const Place& b) {
    const Place chord = b - a;
    const double square = chord.squaredNorm();
    const double part = square > 0.0 ? std::min(1.0, std::max(0.0, (p - a).dot(chord) / square)) : 0.0;
    return (p - a - part * chord).norm();
}

// Finds the places that are needed, by halving at the worst place until none is too far off.
class Choice {
  public:
    Choice(const Recording& r, const TrackOptions& o, std::vector<double> along)
        : r_(r), o_(o), along_(std::move(along)), needed_(along_.size(), 0) {
        for (const State& s : r.states) {
            std::vector<Cut> cuts;
            cuts.reserve(along_.size());
            for (const double a : along_) cuts.push_back(cut_at(r, s, a));
            cuts_.push_back(std::move(cuts));
        }
        needed_.front() = needed_.back() = 1;
        for (const double at : o.blank_positions) {
            const double wanted = along_at(r, at);
            const auto found = std::lower_bound(along_.begin(), along_.end(), wanted - 1e-6);
            if (found != along_.end()) needed_[found - along_.begin()] = 1;
        }
        std::vector<std::size_t> fixed;
        for (std::size_t i = 0; i < needed_.size(); ++i)
            if (needed_[i]) fixed.push_back(i);
        for (std::size_t i = 0; i + 1 < fixed.size(); ++i) halve(fixed[i], fixed[i + 1]);
    }
    std::vector<double> chosen() const {
        std::vector<double> result;
        for (std::size_t i = 0; i < along_.size(); ++i)
            if (needed_[i]) result.push_back(along_[i]);
        return result;
    }

  private:
    void halve(std::size_t a, std::size_t b) {
        if (b - a < 2) return;
        double worst = o_.chord * r_.thickness;
        std::size_t at = 0;
        for (const std::vector<Cut>& cuts : cuts_)
            for (std::size_t i = a + 1; i < b; ++i) {
                const double off = std::max(off_chord(cuts[i].lower, cuts[a].lower, cuts[b].lower),
                                            off_chord(cuts[i].upper, cuts[a].upper, cuts[b].upper));
                if (off > worst) worst = off, at = i;
            }
        if (at == 0 && colours_differ(a, b)) at = (a + b) / 2;
        if (at == 0) return;
        needed_[at] = 1;
        halve(a, at);
        halve(at, b);
    }
    // Whether any place of an interval is coloured otherwise than its middle, in any state.
    bool colours_differ(std::size_t a, std::size_t b) const {
        const int layers = r_.layers();
        const double middle = 0.5 * (along_[a] + along_[b]);
        const std::array<int, 3> asked = {0, layers / 2, layers - 1};
        const auto differ = [&](const std::vector<float>& values, double limit, int k) {
            const double here = layer_value(values, layers, k, middle);
            for (std::size_t i = a; i <= b; ++i)
                if (std::abs(layer_value(values, layers, k, along_[i]) - here) >
                    colour_slack / colour_steps * limit)
                    return true;
            return false;
        };
        for (const State& s : r_.states)
            for (const int k : asked)
                if (differ(s.hoop_stress, o_.stress_limit, k) || differ(s.plastic_strain, o_.strain_limit, k))
                    return true;
        return false;
    }

    const Recording& r_;
    const TrackOptions& o_;
    std::vector<double> along_;
    std::vector<char> needed_;
    std::vector<std::vector<Cut>> cuts_;  // of each state
};

// Mean over an interval and the layers of a band, in steps.
void add_colours(const std::vector<float>& values, const StripTrack& track, const std::vector<int>& first,
                 double limit, int least, std::vector<int>& colours) {
    const int layers = first.back();
    for (int i = 0; i + 1 < track.stations; ++i)
        for (int k = 0; k < track.bands; ++k) {
            double sum = 0.0;
            for (int layer = first[k]; layer < first[k + 1]; ++layer)
                for (const double part : {0.25, 0.5, 0.75})
                    sum += layer_value(values, layers, layer,
                                       (1.0 - part) * track.along[i] + part * track.along[i + 1]);
            const double mean = sum / (3.0 * (first[k + 1] - first[k]));
            const int step = static_cast<int>(std::lround(colour_steps * mean / limit));
            colours.push_back(std::min(colour_steps, std::max(least, step)));
        }
}

}  // namespace

int in_parts(double value, double part) {
    return static_cast<int>(std::lround(value / part));
}

int StripTrack::nearest(double wanted) const {
    int best = 0;
    for (int i = 1; i < stations; ++i)
        if (std::abs(along[i] - wanted) < std::abs(along[best] - wanted)) best = i;
    return best;
}

TrackOptions track_options(const ShownJob& job) {
    TrackOptions options;
    options.stress_limit = colour_limit(job, Colouring::hoop_stress);
    options.strain_limit = colour_limit(job, Colouring::plastic_strain);
    for (const BendLine& bend : job.bends) options.blank_positions.push_back(bend.blank_position);
    return options;
}

StripTrack track_strip(const Recording& r, const TrackOptions& options) {
    check_recording(r);
    StripTrack track;
    track.along = Choice(r, options, places(r, options)).chosen();
    track.states = static_cast<int>(r.states.size());
    track.stations = static_cast<int>(track.along.size());
    track.bands = std::min(r.layers(), options.most_bands);
    const std::vector<int> first = first_layers(r.layers(), track.bands);
    const std::vector<double> edges = layer_edges(r);
    for (const int layer : first) track.band_edge.push_back(edges[layer] / r.thickness + 0.5);
    for (const State& s : r.states) {
        for (const double along : track.along) {
            const Cut cut = cut_at(r, s, along);
            for (const double v : {cut.lower.x(), cut.lower.y(), cut.upper.x(), cut.upper.y()})
                track.surfaces.push_back(in_parts(v, place_quantum));
        }
        add_colours(s.hoop_stress, track, first, options.stress_limit, -colour_steps, track.stress);
        add_colours(s.plastic_strain, track, first, options.strain_limit, 0, track.strain);
    }
    return track;
}

std::vector<int> surface_differences(const StripTrack& track) {
    const int row = track.stations * 4;
    const std::vector<int>& v = track.surfaces;
    const auto moved = [&](int s, int i) { return v[s * row + i] - (s > 0 ? v[(s - 1) * row + i] : 0); };
    std::vector<int> result;
    for (int s = 0; s < track.states; ++s)
        for (int i = 0; i < row; ++i) result.push_back(moved(s, i) - (i >= 4 ? moved(s, i - 4) : 0));
    return result;
}

std::vector<int> colour_differences(const StripTrack& track, const std::vector<int>& colours) {
    const std::size_t row = static_cast<std::size_t>(track.stations - 1) * track.bands;
    std::vector<int> result = colours;
    for (std::size_t i = row; i < colours.size(); ++i) result[i] -= colours[i - row];
    return result;
}

}  // namespace overbend::report
