// What is worked out of a case beside the window: the job's run, then the film of it. What has been there
// before stays until the next is ready.

#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "scenes/window/job/playback.h"

namespace overbend::window {

// What a film is made for.
struct PlaybackShape {
    picture::PictureSize size;
    picture::Lens lens = picture::Lens::shown;
    picture::Charts charts = picture::Charts::shown;
};

class JobWork {
  public:
    // Instead of what is running: the same case, changed or not.
    void run(const files::Case& c);
    // Another case.
    void run_another(const files::Case& c);
    void cancel();
    bool running() const { return runner_.busy(); }
    // In words: "stroke 2 of 6, 3.41 mm"; and about what part of the whole is done, 0 to 1.
    std::string progress_words() const;
    double part_done() const;

    // To be told in every frame.
    void shape(const PlaybackShape& wanted);

    // The newest job that ran, even if it has no strokes; none yet.
    const SharedJob& job() const { return job_; }
    // The film that is shown; of an older job while the newest is being made ready.
    const SharedPlayback& playback() const { return playback_; }
    // Why there is nothing newer to be shown, in words.
    const std::string& trouble() const { return trouble_; }
    // What is shown is not the case as it is now: something is running, or being made ready, or was stopped.
    bool out_of_date() const;
    // The run was cancelled: what is shown is not what the case says now.
    bool behind() const { return behind_; }

    // Takes in what has been finished. True when something that is seen has changed.
    bool take();
    bool busy() const { return runner_.busy() || builder_.busy(); }

  private:
    void make_film(const SharedJob& of);
    bool take_strokes();  // of the job that is running
    files::Case running_case_;
    int opening_ = 0;  // of how many cases
    std::shared_ptr<RunProgress> progress_ = std::make_shared<RunProgress>();
    SharedJob job_;
    SharedJob begun_;  // the strokes of one that runs, of a case of which nothing has been shown
    SharedPlayback playback_;
    std::optional<PlaybackShape> wanted_;
    std::string trouble_;
    bool behind_ = false;
    std::vector<double> usual_travel_;  // mm, of each step's stop the last time
    std::chrono::steady_clock::time_point told_{};
    Background<RanJob> runner_;
    Background<SharedPlayback> builder_;
};

}  // namespace overbend::window
