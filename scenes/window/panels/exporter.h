// Writes what the window shows to files, beside it.

#pragma once

#include <atomic>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "scenes/window/job/picture_painter.h"
#include "scenes/window/shared/background.h"

namespace overbend::window {

enum class FrameForm { png, svg, pdf };

class Exporter {
  public:
    // All into the folder, which is created if needed; files of the same name are replaced, each whole
    // or not at all. What is being written is given up.
    //
    // The picture as it was last wished for, as frame_SECONDS.png and so on.
    void frame(PictureRequest seen, FrameForm form, const std::filesystem::path& folder);
    // film.mp4, 1920 x 1080, in the colours that are shown.
    void film(const PictureRequest& seen, const std::filesystem::path& folder);
    // report.html and sheets.pdf.
    void report(const SharedJob& job, const std::filesystem::path& folder);
    void cancel();

    bool busy() const { return background_.busy(); }
    std::string progress_words() const;
    double part_done() const;  // 0 to 1

    // Takes in what has been finished. True when there is something new to be told.
    bool take();
    // Where it lies, a line a file; or what went wrong. Empty: nothing has been written.
    const std::vector<std::string>& told() const { return told_; }
    bool failed() const { return failed_; }

  private:
    struct Progress {
        std::atomic<int> done{0}, wanted{0};
    };
    using Written = std::vector<std::string>;
    std::shared_ptr<Progress> begin(const std::string& what);
    std::shared_ptr<Progress> progress_;
    int seen_ = -1;  // of the progress
    std::string what_;
    std::vector<std::string> told_;
    bool failed_ = false;
    Background<Written> background_;
};

}  // namespace overbend::window
