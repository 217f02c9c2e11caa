// What a film shows and when: a job's strokes as a list of moments, one a frame.
//
// A stroke: the strip lies placed, the punch comes down, presses, dwells, goes back, and the free strip is
// shown beside its shape under load. Between two strokes the strip is carried to its next place, turned as it
// has to be. Units  mm, rad, seconds, N per mm; press coordinates.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/film/carry.h"
#include "render/picture/stage.h"

namespace overbend::render {

// An interference and the recorded states in which it is there.
struct TimedInterference {
    InterferenceMark mark;
    int first_state = 0;
    int last_state = -1;  // -1: to the end
};

struct StrokeFilm {
    std::string step_name;
    const stroke::Recording* recording = nullptr;
    std::vector<BendMark> bends;  // angles that are left out are measured: loaded under the punch at its
                                  // stop, free at the end
    std::vector<TimedInterference> interferences;
    std::vector<double> clearance;  // mm, least in each recorded state; empty: not shown
    std::string placing;            // how the strip comes to lie so, in words; empty: worked out
};

struct FilmJob {
    std::string title;
    double strip_width = 0.0;         // mm, > 0
    std::vector<StrokeFilm> strokes;  // in their order
};

struct FilmOptions {
    PictureSize size;
    Theme theme = Theme::light;
    Colouring colouring = Colouring::hoop_stress;
    Arrows arrows = Arrows::shown;
    double frames_per_second = 30.0;  // 1 to 120
    double seconds_per_stroke = 8.0;  // 1 to 120
    double seconds_between = 2.0;     // for carrying the strip, 0.1 to 60
};

enum class Passage { placed, approach, press, dwell, retract, free, carry };

struct Moment {
    int stroke = 0;  // index into the job's strokes; carrying: the one that is over
    Passage passage = Passage::placed;
    double at = 0.0;                     // index of a recorded state, with the part of the way to the next
    std::optional<double> punch_travel;  // where the punch is when it is not where the state has it
    double carried = 0.0;                // part of the way to the next stroke's place, 0 to 1
    std::string caption;
};

// What stays the same through a stroke.
struct StrokeLook {
    View view;
    double raised = 0.0;          // the punch before and after the stroke, above first touch
    double loaded_at = 0.0;       // the moment at the stop
    std::vector<BendMark> bends;  // complete
    Carry carry;                  // to the next stroke
};

struct FrameList {
    double frames_per_second = 30.0;
    double colour_limit = 0.0;  // the same for all strokes
    std::vector<StrokeLook> looks;
    std::vector<Moment> moments;
};

// Throws OutOfRange: no strokes, a stroke without a recording, options out of their ranges.
FrameList timeline(const FilmJob& job, const FilmOptions& options);

// One frame of it. Throws OutOfRange: no such frame.
DrawingList draw_frame(const FilmJob& job, const FilmOptions& options, const FrameList& frames, int index);

}  // namespace overbend::render
