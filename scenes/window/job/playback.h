// A job that has been run, as a film for the window: its frames, where its strokes and interferences are
// among them, and where every state of a stroke is. Made on a thread that is not the window's, never changed
// afterwards, and shared with those that paint it.

#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "render/film/timeline.h"
#include "scenes/window/job/job_run.h"

namespace overbend::window {

// Frames first to last, both among them.
struct Stretch {
    int stroke = 0;  // index into the shown strokes
    int first = 0, last = 0;
};

struct Playback {
    SharedJob job;
    picture::ShownJob shown;    // points into the job
    film::FilmOptions options;  // springback drawn twice as large: see instant_of
    film::FrameList frames;
    double stress_limit = 0.0, strain_limit = 0.0;  // ends of the colours' scales
    std::vector<Stretch> strokes;                   // one a stroke: all that is in it
    std::vector<Stretch> interferences;             // in their order

    double last() const { return static_cast<double>(frames.instants.size()) - 1.0; }
};
using SharedPlayback = std::shared_ptr<const Playback>;

// Throws OutOfRange: a size that cannot be, a job without strokes.
SharedPlayback make_playback(const SharedJob& job, const picture::PictureSize& size, picture::Lens lens,
                             picture::Charts charts);

// What is seen at a frame, between two of them in proportion.
film::Instant instant_of(const Playback& playback, double at, double springback_scale);

// Index of a shown stroke among the job's steps.
int step_of(const Playback& playback, int stroke);

// The strip at an instant within a stroke, with its springback as large as it is drawn.
stroke::State drawn_state(const Playback& playback, const film::Instant& instant);

// The stroke at a frame; between two the one to come, at the end the last one.
int stroke_at(const Playback& playback, double at);

// The frame that shows a recorded state best; none when the film does not show the step.
std::optional<double> frame_of_state(const Playback& playback, int step, double state);

// The same place in another playback: the same stroke and part of its way.
double same_place(const Playback& from, double at, const Playback& to);

}  // namespace overbend::window
