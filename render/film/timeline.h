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
#include <utility>
#include <vector>

#include "render/film/carry.h"
#include "render/picture/stage.h"

namespace overbend::film {

// An interference and the recorded states in which it is there.
struct TimedInterference {
    picture::InterferenceMark mark;
    int first_state = 0;
    int last_state = -1;  // -1: to the end
    // Where and how deep it is in each of these states, if that is known; else as above all the time.
    std::vector<std::pair<picture::Place, double>> in_states = {};
};

// How the strip gets to its place, or off it: in the plane of the picture, or towards the viewer.
enum class Way { in_the_plane, along_the_bend_line };

struct StrokeFilm {
    std::string step_name;
    const stroke::Recording* recording = nullptr;
    std::vector<picture::BendMark>
        bends;  // angles that are left out are measured: loaded under the punch at its
                // stop, free at the end
    std::vector<TimedInterference> interferences;
    std::vector<double> clearance;  // mm, least in each recorded state; empty: not shown
    std::string placing;            // how the strip comes to lie so, in words; empty: worked out
    int number = 0;  // among the job's strokes, from 1; 0: its place in this film. Where a number is
                     // left out the film makes a cut: no strip is carried over a gap.
    Way way_in = Way::in_the_plane;
    Way way_off = Way::in_the_plane;
};

// A bend of the finished part, for the card at the end.
struct FinishedBend {
    std::string name;
    double blank_position = 0.0;  // of its bend line, mm from the blank's left end
    double drawing = 0.0;         // bend angles, rad, signed as drawn
    double made = 0.0;
};

struct FinishedPart {
    const stroke::Recording* recording = nullptr;  // of the job's last stroke, shown or not
    std::vector<FinishedBend> bends;
};

struct FilmJob {
    std::string title;
    double strip_width = 0.0;              // mm, > 0
    std::vector<StrokeFilm> strokes;       // those that are shown, in their order
    int step_count = 0;                    // strokes of the whole job; 0: those that are shown
    std::string material;                  // in words, for the title card; may be empty
    std::optional<FinishedPart> finished;  // none: the part is not finished, and there is no card of it
};

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

// The number of a shown stroke among the job's.
int number_of(const FilmJob& job, int index);

// Throws OutOfRange: no strokes, a stroke without a recording, options out of their ranges.
FrameList timeline(const FilmJob& job, const FilmOptions& options);

// One frame of it. Throws OutOfRange: no such frame.
picture::DrawingList draw_frame(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                                int index);

// Between two frames, for slow playback: 0 to the last one's index, held there. Within a passage
// of a stroke, or between strokes, all that moves is blended in proportion; from one passage to the next it
// is the frame before.
Instant instant_at(const FrameList& frames, double index);

// Any instant; of the frames only the looks and the colours' limit are needed.
picture::DrawingList draw_instant(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                                  const Instant& instant);

}  // namespace overbend::film
