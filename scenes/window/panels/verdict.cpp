#include "scenes/window/panels/verdict.h"

#include "sim/counted.h"
#include "sim/words.h"

namespace overbend::window {

Verdict verdict_of(const JobWork& work, const CaseEdits& edits) {
    if (work.running()) return {Standing::open, "Running " + work.progress_words()};
    if (edits.mistake() || work.behind()) return {Standing::open, "Out of date"};
    if (!work.job()) return {Standing::open, "Not run yet"};
    const RanJob& job = *work.job();
    if (!job.wrong.empty() || !job.result.solved) return {Standing::problem, "Not feasible: not solved"};
    const std::size_t problems = job::with(job.result.findings, Severity::stops).size(),
                      cautions = job::with(job.result.findings, Severity::caution).size();
    const std::string also = cautions > 0 ? counted(cautions, "caution") : "";
    if (problems > 0)
        return {Standing::problem,
                "Not feasible: " + counted(problems, "problem") + (also.empty() ? "" : ", " + also)};
    if (cautions > 0) return {Standing::caution, "Feasible, " + also};
    return {Standing::good, "Feasible"};
}

std::string out_of_date_words(const JobWork& work, const CaseEdits& edits) {
    if (!work.playback()) return "";
    const bool part = work.playback()->job->goes_on;
    if (work.running())
        return (part ? "The strokes up to now. Running " : "Of the run before. Running ") +
               work.progress_words() + ".";
    if (work.behind()) return "Before your change: the run was stopped.";
    if (edits.mistake()) return "Before your change, which cannot be run.";
    if (work.out_of_date()) return "Of the run before. The picture of the new one is being made.";
    return "";
}

}  // namespace overbend::window
