// Reading and running a case for the commands that need it, with progress on the terminal.

#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "scenes/commands/options.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/shop/shop.h"

namespace overbend::commands {

struct Job {
    files::Case c;
    job::JobResult result;  // with what the shop finds against it
    job::ShopReport shop;
};

// Reads the case, whose files are not replaced from then on, and sees that the folder `out` can be written
// where one is given.
// Throws CaseError; WrongUsage naming --out when the folder cannot be made or takes no files.
files::Case read_job_case(const std::string& file, const std::optional<std::string>& out,
                          files::Needs needs = files::Needs::steps);

// The same; a drawing without steps is laid out by the rules, one with steps has to be a whole job.
files::Case read_drawing_or_job(const std::string& file, const std::optional<std::string>& out);

// Progress on the terminal; the case must outlive it.
job::ProcessOptions with_progress(const files::Case& c, const Output& output);
void clear_progress(const Output& output);

// Reads the case as above, and runs the job.
Job run_job(const std::string& file, const std::optional<std::string>& out, const Output& output,
            job::Spread spread = job::Spread::left_out);

// The pattern of a job with the verdict on it; of a drawing without steps, by the rules.
job::FlatPattern judged_pattern(const files::Case& c, const Output& output);

// Throws NotSolved with the reason: for what nothing can be shown of when a stroke was not solved.
void require_solved(const files::Case& c, const job::JobResult& result);
// The same, for the cost of a job.
void require_cost(const Job& job);

// Runs another case, in the same money, and sets its cost beside the job's. Returns it.
// Throws as run_job and require_cost; WrongUsage naming --against when they count in another money.
Job add_alternative(Job& job, const std::string& file, const std::optional<std::string>& out,
                    const Output& output);

// done, verdict_no or not_computed, from the findings and whether all strokes were solved; for the last one
// the reason goes to standard error.
Exit verdict(const files::Case& c, const job::JobResult& result);

// Makes the folder. Throws as run_job.
std::filesystem::path make_folder(const std::string& out);

}  // namespace overbend::commands
