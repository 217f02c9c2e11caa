// The strip of a recording as whole numbers, few enough for a page: its two surfaces at stations that are the
// same in every state, and the colours of its layers between them.
//
// Stations stand so close that no surface is further than `chord` from its chords in any state, and no colour
// changes by more than a few steps between two of them. Between the surfaces the layers' edges lie in
// proportion to their reference heights, which is 5 per cent of the thickness off in a bend as sharp as the
// strip is thick.
//
// Units  mm, press coordinates, y up.

#pragma once

#include <vector>

#include "render/picture/shown_job.h"

namespace overbend::report {

constexpr double place_quantum = 0.005;  // mm; every coordinate of a page is a multiple of it
constexpr int colour_steps = 40;         // on either side of zero

struct StripTrack {
    int states = 0;
    int stations = 0;
    int bands = 0;                  // layers, or neighbours of them taken together where there are many
    std::vector<double> along;      // of each station: element's index + part of the element, rising
    std::vector<double> band_edge;  // bands + 1, parts of the thickness from the lower surface, 0 to 1
    std::vector<int>
        surfaces;  // quanta; state s, station i: lower x, y, upper x, y from (s * stations + i) * 4
    std::vector<int> stress;  // steps of the limit, -colour_steps to colour_steps; state s, interval i, band
                              // k at (s * (stations - 1) + i) * bands + k
    std::vector<int> strain;  // the same, 0 to colour_steps
    // Index of the station nearest to a place along the strip.
    int nearest(double wanted) const;
};

struct TrackOptions {
    double stress_limit = 0.0;            // MPa, of the outermost step, > 0
    double strain_limit = 0.0;            // -
    double chord = 0.01;                  // parts of the thickness
    int most_bands = 11;                  // 1 or more
    std::vector<double> blank_positions;  // that have to be stations
};

// The same for all strokes of the job, with all its bend lines.
TrackOptions track_options(const picture::ShownJob& job);

// Throws OutOfRange: a recording that cannot be.
StripTrack track_strip(const stroke::Recording& recording, const TrackOptions& options);

// In the order in which a page keeps them, so that what moves evenly or not at all comes out small: each
// number less the one of the state before, and of the surfaces that difference less the one of the station
// before.
std::vector<int> surface_differences(const StripTrack& track);
std::vector<int> colour_differences(const StripTrack& track, const std::vector<int>& colours);

// Whole quanta, steps or other parts of a value.
int in_parts(double value, double part);

}  // namespace overbend::report
