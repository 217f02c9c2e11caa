// A case run with all that the window tells of it, on a thread that is not the window's.

#pragma once

#include <atomic>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "scenes/files/case/case.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/run/process.h"
#include "scenes/job/shop/shop.h"
#include "scenes/window/shared/background.h"

namespace overbend::window {

struct RanJob {
    files::Case c;
    job::JobResult result;  // with what the shop finds against it; ends after a stroke that was not solved
    job::ShopReport shop;
    job::FlatPattern pattern;  // its job is empty: it is the result beside it
    int opening = 0;       // jobs of the same opened case, changed or saved under another name, have the same
    bool goes_on = false;  // strokes are still to come: it is not judged
    std::string wrong;     // why there are no strokes, or no shop report of them; empty: both are there

    // The steps that can be shown: those whose strokes are recorded. None: the job cannot.
    std::vector<int> recorded() const;
    bool has_strokes() const { return !recorded().empty(); }
};

// Threads that paint or export a job keep it until they are done, while the window may show the next one
// already. Nobody changes it.
using SharedJob = std::shared_ptr<const RanJob>;

// Where a run is; written by the thread that runs, read by the window.
struct RunProgress {
    std::atomic<int> step{0};         // index into the case's steps
    std::atomic<double> travel{0.0};  // mm, of the punch in that step
    // The strokes that are done, as they come; each is handed over once.
    void put(RanJob so_far);
    std::optional<RanJob> take();

  private:
    std::mutex mutex_;
    std::optional<RanJob> so_far_;
};

// Throws only Cancelled, when it is no longer wanted: failures are described in words, in `wrong` and
// in the result's findings. A job that was not solved is there as far as it went.
RanJob run_job(const files::Case& c, const Wanted& wanted, RunProgress& progress);

}  // namespace overbend::window
