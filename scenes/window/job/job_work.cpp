#include "scenes/window/job/job_work.h"

#include <algorithm>

#include "sim/words.h"

namespace overbend::window {

namespace {

constexpr auto tell_every = std::chrono::milliseconds(100);

bool same(const PlaybackShape& a, const PlaybackShape& b) {
    return a.size.width == b.size.width && a.size.height == b.size.height && a.lens == b.lens &&
           a.charts == b.charts;
}

}  // namespace

void JobWork::run(const files::Case& c) {
    running_case_ = c;
    trouble_.clear();
    behind_ = false;
    begun_.reset();
    progress_ = std::make_shared<RunProgress>();  // what is cancelled may still tell the old one
    runner_.start([c, opening = opening_, progress = progress_](const Wanted& wanted) {
        RanJob job = run_job(c, wanted, *progress);
        job.opening = opening;
        return job;
    });
}

void JobWork::run_another(const files::Case& c) {
    ++opening_;
    usual_travel_.clear();
    run(c);
}

void JobWork::cancel() {
    behind_ = behind_ || runner_.busy();
    runner_.cancel();
}

std::string JobWork::progress_words() const {
    return words("stroke %d of %d, %.2f mm", progress_->step + 1,
                 static_cast<int>(running_case_.steps.size()), progress_->travel.load());
}

double JobWork::part_done() const {
    const int step = progress_->step, count = static_cast<int>(running_case_.steps.size());
    const double travel = progress_->travel;
    const double usual = step < static_cast<int>(usual_travel_.size()) ? usual_travel_[step] : 0.0;
    // The way back is short.
    const double part = usual > 0.0 ? std::clamp(travel / usual, 0.0, 1.0) : 0.5;
    return count > 0 ? (step + part) / count : 0.0;
}

void JobWork::shape(const PlaybackShape& wanted) {
    if (wanted_ && same(*wanted_, wanted)) return;
    wanted_ = wanted;
    make_film(begun_ ? begun_ : job_);
}

void JobWork::make_film(const SharedJob& of) {
    if (!of || !of->has_strokes() || !wanted_) return;
    builder_.start([job = of, shape = *wanted_](const Wanted&) {
        return make_playback(job, shape.size, shape.lens, shape.charts);
    });
}

bool JobWork::out_of_date() const {
    return playback_ && (behind_ || runner_.busy() || playback_->job != job_);
}

// A changed case keeps its last picture until the whole job has run: a film that is cut short would take the
// place away that one looks at.
bool JobWork::take_strokes() {
    std::optional<RanJob> part = progress_->take();
    const bool shown = playback_ && playback_->job->opening == opening_ && !playback_->job->goes_on;
    if (!part || shown || !part->has_strokes()) return false;
    part->opening = opening_;
    begun_ = std::make_shared<const RanJob>(std::move(*part));
    make_film(begun_);
    return true;
}

bool JobWork::take() {
    bool changed = runner_.busy() && take_strokes();
    if (std::optional<RanJob> ran = runner_.take()) {
        trouble_ = ran->wrong;
        usual_travel_.clear();
        for (const job::StepResult& step : ran->result.steps)
            usual_travel_.push_back(step.stroke.stop_travel);
        const bool to_be_shown = ran->has_strokes();
        if (to_be_shown || !job_) job_ = std::make_shared<const RanJob>(std::move(*ran));
        begun_.reset();
        progress_->take();
        if (to_be_shown) make_film(job_);
        behind_ = !to_be_shown;
        changed = true;
    }
    try {
        if (std::optional<SharedPlayback> made = builder_.take()) {
            playback_ = *made;
            changed = true;
        }
    } catch (const std::exception& error) {
        trouble_ = error.what();
        changed = true;
    }
    // Progress is reported only now and then: reporting it slows the run. Its end is seen even if it was
    // cancelled and left nothing.
    const bool running = runner_.busy(), was_told = told_ != std::chrono::steady_clock::time_point();
    const auto now = std::chrono::steady_clock::now();
    if (running ? now - told_ > tell_every : was_told) {
        told_ = running ? now : std::chrono::steady_clock::time_point();
        changed = true;
    }
    return changed;
}

}  // namespace overbend::window
