// What a film shows and when: a job's strokes as a list of instants, one a frame.
//
// A stroke: the strip lies placed, the ram comes down fast, presses slowly, dwells, goes back, and the free
// strip is shown beside its shape under load. Between two strokes the part is taken away, turned as it has to
// be, tools are changed where others are needed, and the part is loaded. At either end there may be a card:
// the title, and the finished part.
//
// Units  mm, rad, seconds, N per mm; press coordinates.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/film/carry.h"
#include "render/picture/shown_job.h"

namespace overbend::film {

using picture::ShownJob;
using picture::ShownStroke;

enum class Cards { hidden, shown };

struct FilmOptions {
    picture::PictureSize size;
    picture::Theme theme = picture::Theme::light;
    picture::Colouring colouring = picture::Colouring::hoop_stress;
    picture::Arrows arrows = picture::Arrows::shown;
    picture::Lens lens = picture::Lens::hidden;
    picture::Charts charts = picture::Charts::shown;
    picture::Backdrop backdrop = picture::Backdrop::page;
    Cards cards = Cards::hidden;
    double springback_scale = 1.0;    // 1 to 20: how much larger than it is the springback is drawn
    double frames_per_second = 30.0;  // 1 to 120
    double seconds_per_stroke = 8.0;  // 1 to 120
    double seconds_between = 6.0;     // between two strokes with a change of tools; less without, 0.1 to 60
};

// In the order in which they come. The cards belong to no stroke; away to lay_in are between two.
enum class Passage {
    title,
    placed,
    approach,
    press,
    dwell,
    retract,
    free,
    away,
    turn,
    change,
    lay_in,
    finished
};

inline bool in_a_stroke(Passage p) {
    return p >= Passage::placed && p <= Passage::free;
}
inline bool between_strokes(Passage p) {
    return p >= Passage::away && p <= Passage::lay_in;
}

struct Instant {
    int stroke = 0;  // index into the job's strokes; between two: the one that is drawn
    Passage passage = Passage::placed;
    double at = 0.0;                     // index of a recorded state, with the part of the way to the next
    std::optional<double> punch_travel;  // where the punch is when it is not where the state has it
    std::string caption;
    int from = -1, to = -1;  // between strokes: the one that is over and the one to come; -1: none, at an end
    double part = 0.0;       // of the passage, 0 to 1, between strokes
    double springback_scale = 1.0;  // see FilmOptions
};

// What stays the same through a stroke.
struct StrokeLook {
    picture::View view;
    double raised = 0.0;                   // the punch before and after the stroke, above first touch
    double loaded_at = 0.0;                // the instant at the stop
    std::vector<picture::BendMark> bends;  // complete
    Carry carry;                           // to the next stroke
    picture::View turning_view;            // meanwhile
};

struct FrameList {
    double frames_per_second = 30.0;
    double colour_limit = 0.0;  // the same for all strokes
    std::vector<StrokeLook> looks;
    std::vector<Instant> instants;
};

// A job's bends whose angles or reach are left out are measured. Where a stroke is left out the film makes a
// cut: no strip is carried over a gap.
// Throws OutOfRange: no strokes, a stroke without a recording, options out of their ranges.
FrameList timeline(const ShownJob& job, const FilmOptions& options);

// One frame of it. Throws OutOfRange: no such frame.
picture::DrawingList draw_frame(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                                int index);

// Between two frames, for slow playback: 0 to the last one's index, held there. Within a passage
// of a stroke, or between strokes, all that moves is blended in proportion; else it is the frame before.
Instant instant_at(const FrameList& frames, double index);

// Any instant; of the frames only the looks and the colours' limit are needed.
picture::DrawingList draw_instant(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                                  const Instant& instant);

}  // namespace overbend::film
