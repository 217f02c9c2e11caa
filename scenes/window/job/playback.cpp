#include "scenes/window/job/playback.h"

#include <algorithm>
#include <cmath>

#include "render/picture/drawn_springback.h"
#include "scenes/documents/report/shown_job.h"

namespace overbend::window {

namespace {

// Frames of strokes, one stretch each, and of interferences in them.
void find_stretches(Playback& playback) {
    const std::vector<film::Instant>& instants = playback.frames.instants;
    for (int i = 0; i < static_cast<int>(instants.size()); ++i) {
        const film::Instant& m = instants[i];
        if (!film::in_a_stroke(m.passage)) continue;
        if (playback.strokes.empty() || playback.strokes.back().stroke != m.stroke)
            playback.strokes.push_back({m.stroke, i, i});
        playback.strokes.back().last = i;
        const std::vector<picture::ShownHit>& hits = playback.shown.strokes[m.stroke].hits;
        if (std::none_of(hits.begin(), hits.end(), [&](const auto& hit) { return hit.is_there(m.at); }))
            continue;
        const bool goes_on = !playback.interferences.empty() && playback.interferences.back().last == i - 1 &&
                             playback.interferences.back().stroke == m.stroke;
        if (!goes_on) playback.interferences.push_back({m.stroke, i, i});
        playback.interferences.back().last = i;
    }
}

}  // namespace

SharedPlayback make_playback(const SharedJob& job, const picture::PictureSize& size, picture::Lens lens,
                             picture::Charts charts) {
    const auto playback = std::make_shared<Playback>();
    playback->job = job;
    playback->shown = documents::shown_job(job->c, job->result, job->recorded());
    playback->options.size = size;
    playback->options.lens = lens;
    playback->options.charts = charts;
    playback->options.springback_scale = 2.0;
    playback->options.seconds_between = 4.0;
    // With the finished part at its end; a title is not needed in a window that has one.
    playback->options.cards = film::Cards::shown;
    playback->frames = film::timeline(playback->shown, playback->options);
    std::vector<film::Instant>& instants = playback->frames.instants;
    instants.erase(std::remove_if(instants.begin(), instants.end(),
                                  [&](const auto& m) {
                                      return m.passage == film::Passage::title ||
                                             (job->goes_on && m.passage == film::Passage::finished);
                                  }),
                   instants.end());
    playback->stress_limit = picture::colour_limit(playback->shown, picture::Colouring::hoop_stress);
    playback->strain_limit = picture::colour_limit(playback->shown, picture::Colouring::plastic_strain);
    find_stretches(*playback);
    return playback;
}

film::Instant instant_of(const Playback& playback, double at, double springback_scale) {
    film::Instant m = film::instant_at(playback.frames, at);
    if (m.passage == film::Passage::finished) {
        m.stroke = static_cast<int>(playback.shown.strokes.size()) - 1;
        m.at = static_cast<double>(playback.shown.strokes.back().recording->states.size()) - 1.0;
    }
    m.springback_scale = 1.0 + (m.springback_scale - 1.0) * (springback_scale - 1.0);
    return m;
}

int step_of(const Playback& playback, int stroke) {
    return playback.shown.strokes[stroke].number - 1;
}

stroke::State drawn_state(const Playback& playback, const film::Instant& m) {
    const stroke::Recording& recording = *playback.shown.strokes[m.stroke].recording;
    const film::StrokeLook& look = playback.frames.looks[m.stroke];
    stroke::State actual = picture::state_at(recording, m.at);
    if (m.passage < film::Passage::retract || m.springback_scale == 1.0 || m.at <= look.loaded_at)
        return actual;
    double low = 1e300, high = -1e300;
    for (const picture::BendMark& b : look.bends)
        low = std::min(low, b.blank_position), high = std::max(high, b.blank_position);
    return picture::with_larger_springback(recording, picture::state_at(recording, look.loaded_at), actual,
                                           m.springback_scale, 0.5 * (low + high));
}

int stroke_at(const Playback& playback, double at) {
    for (const Stretch& s : playback.strokes)
        if (at < s.last + 1.0) return s.stroke;
    return static_cast<int>(playback.strokes.size()) - 1;
}

std::optional<double> frame_of_state(const Playback& playback, int step, double state) {
    std::optional<double> best;
    double least = 1e300;
    for (const Stretch& s : playback.strokes) {
        if (step_of(playback, s.stroke) != step) continue;
        for (int i = s.first; i <= s.last; ++i) {
            const double off = std::abs(playback.frames.instants[i].at - state);
            if (off < least) least = off, best = i;
        }
    }
    return best;
}

double same_place(const Playback& from, double at, const Playback& to) {
    if (from.frames.instants.size() == to.frames.instants.size()) return at;
    const int stroke = stroke_at(from, at);
    const auto found = std::find_if(to.strokes.begin(), to.strokes.end(),
                                    [&](const Stretch& s) { return s.stroke == stroke; });
    if (found == to.strokes.end()) return std::min(at, to.last());
    const Stretch& old = from.strokes[stroke];
    const double part = std::clamp((at - old.first) / std::max(1, old.last - old.first), 0.0, 1.0);
    return found->first + part * (found->last - found->first);
}

}  // namespace overbend::window
