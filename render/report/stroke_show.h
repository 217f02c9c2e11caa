// What a page shows of one stroke, and how its instants follow one another in a player.
//
// Units  mm, rad, N per mm of strip width, seconds; press coordinates.

#pragma once

#include <string>
#include <vector>

#include "render/picture/bend_mark.h"
#include "sim/clearance/least_distance.h"
#include "sim/stroke/recording.h"

namespace overbend::report {

// An overlap where the tools should not press, and the recorded states in which it is there.
struct ShownHit {
    int first_state = 0, last_state = 0;
    picture::Place at = picture::Place::Zero();  // where it is deepest
    double depth = 0.0;                          // mm, >= 0
    std::string words;                           // the whole of it
};

// A bend line that travels with the strip.
struct ShownLine {
    std::string name;
    double blank_position = 0.0;
};

// The caption of each phase of the stroke, in whole sentences.
struct PassageWords {
    std::string placed, approach, press, dwell, retract, free;
};

struct StrokeShow {
    std::string name;
    int number = 1;
    const stroke::Recording* recording = nullptr;
    double strip_width = 0.0;              // mm, > 0
    std::vector<picture::BendMark> bends;  // of this stroke, complete: reach, loaded and free
    std::vector<ShownLine> lines;
    std::vector<ShownHit> hits;
    std::vector<clearance::Closest> clearance;  // one a recorded state
    PassageWords words;
    double stress_limit = 0.0;  // of the colours, MPa; the same for all strokes
    double strain_limit = 0.0;  // -
};

// An instant of the player: a recorded state, with the part of the way to the next, and where the punch is.
struct PaceKey {
    double seconds = 0.0;
    double state = 0.0;
    double travel = 0.0;  // mm; above first touch below 0
};

struct Passage {
    double seconds = 0.0;  // when it begins
    std::string name;      // "Press"
    std::string words;
};

struct Pace {
    std::vector<PaceKey> keys;  // rising in time; between two of them everything moves evenly
    std::vector<Passage> passages;
    double pressed = 0.0;  // seconds: the strip is held at the stop
    double seconds() const { return keys.empty() ? 0.0 : keys.back().seconds; }
};

// raised: how far above first touch the punch stands before and after, mm.
Pace pace_of(const StrokeShow& show, double raised);

// The last state under load.
int loaded_state(const stroke::Recording& recording);

// The name of a tool, where the strip never comes; one that has no room on its tool has a line that leads to
// it.
struct WindowLabel {
    int tool = 0;  // index into the recording's tools
    std::string words;
    picture::Place at = picture::Place::Zero();  // its middle
    double half_width = 0.0;                     // mm
    bool inside = false;
    picture::Place leads_to = picture::Place::Zero();  // on the tool, in its own coordinates
};

// The part of the press that a player shows, by its lower left corner.
struct Window {
    picture::Place low = picture::Place::Zero();
    double width = 0.0, height = 0.0;
    double raised = 0.0;  // how far up the punch goes before and after the stroke
    std::vector<WindowLabel> labels;
};
Window window_of(const stroke::Recording& recording);

}  // namespace overbend::report
