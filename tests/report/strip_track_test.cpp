// The strip in whole numbers against the shape that pictures are drawn from (render/picture/strip_shape.h).
//
// Allowed  a station within half a quantum of each coordinate; a point between two stations within `chord`
//          and the quantum of the chord between them; a colour within half a step of the mean it stands for,
//          and within 4 steps of the layer where an interval is one of many.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "render/report/strip_track.h"
#include "sim/errors.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using namespace overbend::report;

namespace {

TrackOptions usual() {
    TrackOptions how;
    how.stress_limit = 600.0, how.strain_limit = 0.4;
    return how;
}

Place corner(const StripTrack& t, int state, int station, bool upper) {
    const std::size_t at = (static_cast<std::size_t>(state) * t.stations + station) * 4 + (upper ? 2 : 0);
    return Place(t.surfaces[at], t.surfaces[at + 1]) * place_quantum;
}

double off_polyline(const StripTrack& t, int state, const Place& p, bool upper) {
    double least = 1e300;
    for (int i = 0; i + 1 < t.stations; ++i) {
        const Place a = corner(t, state, i, upper), b = corner(t, state, i + 1, upper);
        const double square = std::max(1e-12, (b - a).squaredNorm());
        const double part = std::clamp((p - a).dot(b - a) / square, 0.0, 1.0);
        least = std::min(least, (p - a - part * (b - a)).norm());
    }
    return least;
}

}  // namespace

TEST_CASE("a track's surfaces lie where the strip's are, in every state") {
    for (const bool turned : {false, true}) {
        tests::SyntheticStroke stroke;
        stroke.turned = turned;
        const stroke::Recording r = tests::synthetic_recording(stroke);
        const StripTrack t = track_strip(r, usual());
        REQUIRE(t.states == static_cast<int>(r.states.size()));
        CHECK(t.along.front() == 0.0);
        CHECK(t.along.back() == doctest::Approx(static_cast<double>(r.blank_position.size() - 1)));
        CHECK(t.stations <
              static_cast<int>(r.blank_position.size()));  // a straight flat needs its ends alone
        double worst_station = 0.0, worst_between = 0.0;
        for (int s = 0; s < t.states; ++s)
            for (const Station& at : stations(r, r.states[s], 0.2)) {
                const Place lower = at.at(at.edge.front()), upper = at.at(at.edge.back());
                worst_between = std::max(
                    {worst_between, off_polyline(t, s, lower, false), off_polyline(t, s, upper, true)});
                for (int i = 0; i < t.stations; ++i)
                    if (std::abs(t.along[i] - at.along) < 1e-9)
                        worst_station =
                            std::max({worst_station, (corner(t, s, i, false) - lower).cwiseAbs().maxCoeff(),
                                      (corner(t, s, i, true) - upper).cwiseAbs().maxCoeff()});
            }
        CHECK(worst_station > 0.0);  // some were compared
        CHECK(worst_station <= 0.5 * place_quantum + 1e-9);
        CHECK(worst_between <= 0.01 * r.thickness + place_quantum);
    }
}

TEST_CASE("a track's colours are the layers' stress and strain") {
    const stroke::Recording r = tests::synthetic_recording(tests::SyntheticStroke{});
    const TrackOptions how = usual();
    const StripTrack t = track_strip(r, how);
    REQUIRE(t.bands == r.layers());
    double worst = 0.0;
    for (int s = 0; s < t.states; ++s)
        for (int i = 0; i + 1 < t.stations; ++i) {
            // An element's value is that of its middle; between two middles it changes evenly.
            const double middle = 0.5 * (t.along[i] + t.along[i + 1]) - 0.5;
            const int last = static_cast<int>(r.states[s].stretch.size()) - 1;
            const int e = std::clamp(static_cast<int>(std::floor(middle)), 0, last),
                      next = std::min(e + 1, last);
            const double part = std::clamp(middle - e, 0.0, 1.0);
            for (int k : {0, t.bands / 2, t.bands - 1}) {
                const std::size_t at = (static_cast<std::size_t>(s) * (t.stations - 1) + i) * t.bands + k;
                const auto of = [&](int element) {
                    return static_cast<double>(r.states[s].hoop_stress[element * r.layers() + k]);
                };
                const double stress = (1.0 - part) * of(e) + part * of(next);
                const double wanted = std::clamp(stress / how.stress_limit, -1.0, 1.0) * colour_steps;
                worst = std::max(worst, std::abs(t.stress[at] - wanted));
                CHECK(t.strain[at] >= 0);
            }
        }
    CHECK(worst > 0.1);
    CHECK(worst <= 4.0);
}

TEST_CASE("bend lines are stations, and many layers are taken together") {
    const stroke::Recording r = tests::synthetic_recording(tests::SyntheticStroke{});
    TrackOptions how = usual();
    how.blank_positions = {18.037, 3.21};
    how.most_bands = 4;
    const StripTrack t = track_strip(r, how);
    for (const double at : how.blank_positions)
        CHECK(t.along[t.nearest(along_at(r, at))] == doctest::Approx(along_at(r, at)));
    CHECK(t.bands == 4);
    CHECK(t.band_edge.size() == 5);
    CHECK(t.band_edge.front() == 0.0);
    CHECK(t.band_edge.back() == doctest::Approx(1.0));
    CHECK(std::is_sorted(t.band_edge.begin(), t.band_edge.end()));
}

TEST_CASE("a recording without states is refused") {
    CHECK_THROWS_AS(track_strip(stroke::Recording{}, usual()), OutOfRange);
}
