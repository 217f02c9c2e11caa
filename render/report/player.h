// The player of a page: how the instants of a stroke follow one another, and what part of the press it shows.
//
// Units  mm, seconds; press coordinates.

#pragma once

#include <string>
#include <vector>

#include "render/picture/strip_shape.h"

namespace overbend::report {

// What is told in each passage of the stroke, in whole sentences.
struct PassageWords {
    std::string placed, approach, press, dwell, retract, free;
};

// An instant of the player: a recorded state, with the part of the way to the next, and where the punch is.
struct PaceKey {
    double seconds = 0.0;
    double state = 0.0;
    double travel = 0.0;  // mm; above first touch below 0
};

struct PlayerPassage {
    double seconds = 0.0;  // when it begins
    std::string name;      // "Press"
    std::string words;
};

struct Pace {
    std::vector<PaceKey> keys;  // rising in time; between two of them everything moves evenly
    std::vector<PlayerPassage> passages;
    double pressed = 0.0;  // seconds: the strip is held at the stop
    double seconds() const { return keys.empty() ? 0.0 : keys.back().seconds; }
};

// raised: how far above first touch the punch stands before and after, mm.
Pace pace_of(const stroke::Recording& recording, const PassageWords& words, double raised);

// The name of a tool, where the strip never comes; one without room on its tool has a line that leads to it.
struct PlayerLabel {
    int tool = 0;  // index into the recording's tools
    std::string words;
    picture::Place at = picture::Place::Zero();  // its middle
    double half_width = 0.0;                     // mm
    bool inside = false;
    picture::Place leads_to = picture::Place::Zero();  // on the tool, in its own coordinates
};

// The part of the press that a player shows, by its lower left corner.
struct PlayerView {
    picture::Place low = picture::Place::Zero();
    double width = 0.0, height = 0.0;
    double raised = 0.0;  // how far up the punch goes before and after the stroke
    std::vector<PlayerLabel> labels;
};
PlayerView player_view(const stroke::Recording& recording);

}  // namespace overbend::report
