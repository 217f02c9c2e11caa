#include "scenes/window/job/reel.h"

#include <algorithm>
#include <cmath>

#include "render/picture/drawn_springback.h"
#include "scenes/documents/report/film_data.h"

namespace overbend::window {

namespace {

// Frames of strokes, one stretch each, and of interferences in them.
void find_stretches(Reel& reel) {
    const std::vector<film::Moment>& moments = reel.frames.moments;
    for (int i = 0; i < static_cast<int>(moments.size()); ++i) {
        const film::Moment& m = moments[i];
        if (!film::in_a_stroke(m.passage)) continue;
        if (reel.strokes.empty() || reel.strokes.back().stroke != m.stroke)
            reel.strokes.push_back({m.stroke, i, i});
        reel.strokes.back().last = i;
        const auto& there = reel.film.strokes[m.stroke].interferences;
        const bool hit = std::any_of(there.begin(), there.end(), [&](const auto& f) {
            return m.at >= f.first_state && (f.last_state < 0 || m.at <= f.last_state);
        });
        if (!hit) continue;
        const bool goes_on = !reel.interferences.empty() && reel.interferences.back().last == i - 1 &&
                             reel.interferences.back().stroke == m.stroke;
        if (!goes_on) reel.interferences.push_back({m.stroke, i, i});
        reel.interferences.back().last = i;
    }
}

}  // namespace

SharedReel make_reel(const SharedJob& job, const picture::PictureSize& size, picture::Lens lens,
                     picture::Charts charts) {
    const auto reel = std::make_shared<Reel>();
    reel->job = job;
    for (int i = 0; i < static_cast<int>(job->result.steps.size()); ++i)
        if (job->result.steps[i].stroke.recording.states.size() > 1) reel->steps.push_back(i);
    reel->film = documents::film_data(job->c, job->result, reel->steps);
    reel->film.step_count = static_cast<int>(job->c.steps.size());
    reel->options.size = size;
    reel->options.lens = lens;
    reel->options.charts = charts;
    reel->options.springback_scale = 2.0;
    reel->options.seconds_between = 4.0;
    // With the finished part at its end; a title is not needed in a window that has one.
    reel->options.cards = film::Cards::shown;
    reel->frames = film::timeline(reel->film, reel->options);
    std::vector<film::Moment>& moments = reel->frames.moments;
    moments.erase(std::remove_if(moments.begin(), moments.end(),
                                 [](const auto& m) { return m.passage == film::Passage::title; }),
                  moments.end());
    std::vector<const stroke::Recording*> recordings;
    for (const film::StrokeFilm& s : reel->film.strokes) recordings.push_back(s.recording);
    reel->stress_limit = picture::colour_limit(recordings, picture::Colouring::hoop_stress);
    reel->strain_limit = picture::colour_limit(recordings, picture::Colouring::plastic_strain);
    find_stretches(*reel);
    return reel;
}

film::Moment moment_of(const Reel& reel, double at, double springback_scale) {
    film::Moment m = film::moment_at(reel.frames, at);
    if (m.passage == film::Passage::finished) {
        m.stroke = static_cast<int>(reel.film.strokes.size()) - 1;
        m.at = static_cast<double>(reel.film.strokes.back().recording->states.size()) - 1.0;
    }
    m.springback_scale = 1.0 + (m.springback_scale - 1.0) * (springback_scale - 1.0);
    return m;
}

stroke::State drawn_state(const Reel& reel, const film::Moment& m) {
    const stroke::Recording& recording = *reel.film.strokes[m.stroke].recording;
    const film::StrokeLook& look = reel.frames.looks[m.stroke];
    stroke::State actual = picture::state_at(recording, m.at);
    if (m.passage < film::Passage::retract || m.springback_scale == 1.0 || m.at <= look.loaded_at)
        return actual;
    double low = 1e300, high = -1e300;
    for (const picture::BendMark& b : look.bends)
        low = std::min(low, b.blank_position), high = std::max(high, b.blank_position);
    return picture::with_larger_springback(recording, picture::state_at(recording, look.loaded_at), actual,
                                           m.springback_scale, 0.5 * (low + high));
}

int stroke_at(const Reel& reel, double at) {
    for (const Stretch& s : reel.strokes)
        if (at < s.last + 1.0) return s.stroke;
    return static_cast<int>(reel.strokes.size()) - 1;
}

std::optional<double> frame_of_state(const Reel& reel, int step, double state) {
    std::optional<double> best;
    double least = 1e300;
    for (const Stretch& s : reel.strokes) {
        if (reel.steps[s.stroke] != step) continue;
        for (int i = s.first; i <= s.last; ++i) {
            const double off = std::abs(reel.frames.moments[i].at - state);
            if (off < least) least = off, best = i;
        }
    }
    return best;
}

double same_place(const Reel& from, double at, const Reel& to) {
    if (from.frames.moments.size() == to.frames.moments.size()) return at;
    const int stroke = stroke_at(from, at);
    const auto found = std::find_if(to.strokes.begin(), to.strokes.end(),
                                    [&](const Stretch& s) { return s.stroke == stroke; });
    if (found == to.strokes.end()) return std::min(at, to.last());
    const Stretch& old = from.strokes[stroke];
    const double part = std::clamp((at - old.first) / std::max(1, old.last - old.first), 0.0, 1.0);
    return found->first + part * (found->last - found->first);
}

}  // namespace overbend::window
