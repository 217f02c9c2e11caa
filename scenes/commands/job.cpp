#include "scenes/commands/job.h"

#include <iostream>
#include <stdexcept>

#include "render/output/whole_file.h"
#include "scenes/files/case/named_files.h"
#include "scenes/files/case/read_case.h"
#include "sim/errors.h"

namespace overbend::commands {

namespace {

[[noreturn]] void refuse(const std::string& out, const std::string& what) {
    complain("--out", "the folder '" + out + "' " + what + "; give one that can be written");
}

// Sees, before any work is done for it, that the folder is there or can be made, and takes files.
void check_folder(const std::string& out) {
    namespace fs = std::filesystem;
    if (out.empty()) refuse(out, "has no name");
    std::error_code error;
    fs::path there = fs::absolute(out, error).lexically_normal();
    if (error) refuse(out, "cannot be found from here: " + error.message());
    while (!fs::exists(fs::status(there, error)) && there.has_relative_path()) {
        if (error && error != std::errc::no_such_file_or_directory)
            refuse(out, "cannot be created: " + error.message());
        there = there.parent_path();
    }
    if (!fs::is_directory(there, error)) refuse(out, "cannot be created");
    try {
        const output::PartFile trial(there / "trial");
    } catch (const std::runtime_error&) {
        refuse(out, "cannot be written to");
    }
}

}  // namespace

files::Case read_job_case(const std::string& file, const std::optional<std::string>& out,
                          files::Needs needs) {
    if (file.empty()) complain("case", "no file given; give a case file");
    files::Case c = files::read_case(file, needs);
    output::never_replace(files::files_of(c));
    if (out) check_folder(*out);
    return c;
}

files::Case read_drawing_or_job(const std::string& file, const std::optional<std::string>& out) {
    files::Case c = read_job_case(file, out, files::Needs::drawing_alone);
    return c.steps.empty() ? c : read_job_case(file, out, files::Needs::steps);
}

job::ProcessOptions with_progress(const files::Case& c, const Output& output) {
    job::ProcessOptions how;
    if (shows_progress(output))
        how.progress = [&c](int step, double travel) {
            std::cerr << "\rstep " << step + 1 << " of " << c.steps.size() << ", " << c.steps[step].name
                      << ": " << fixed(travel, 2) << " mm   " << std::flush;
        };
    return how;
}

void clear_progress(const Output& output) {
    if (shows_progress(output)) std::cerr << "\r" << std::string(78, ' ') << "\r";
}

Job run_job(const std::string& file, const std::optional<std::string>& out, const Output& output,
            job::Spread spread) {
    Job job;
    job.c = read_job_case(file, out);
    job::JudgedJob judged = job::judge_job(job.c, with_progress(job.c, output), spread);
    clear_progress(output);
    job.result = std::move(judged.result), job.shop = std::move(judged.shop);
    return job;
}

job::FlatPattern judged_pattern(const files::Case& c, const Output& output) {
    if (c.steps.empty()) return job::flat_pattern(c, {});
    job::JudgedJob judged = job::judge_job(c, with_progress(c, output));
    clear_progress(output);
    return job::pattern_of(c, std::move(judged.result));
}

void require_solved(const files::Case& c, const job::JobResult& result) {
    if (!result.solved) throw NotSolved(job::why_not(c, result.findings));
}

void require_cost(const Job& job) {
    if (!job.result.solved)
        throw NotSolved("'" + job.c.title +
                        "' was not solved, so there is no cost: " + job::why_not(job.c, job.result.findings));
}

Job add_alternative(Job& job, const std::string& file, const std::optional<std::string>& out,
                    const Output& output) {
    Job other = run_job(file, out, output);
    require_cost(other);
    if (other.shop.cost.money != job.shop.cost.money)
        complain("--against", "one case counts in " + job.shop.cost.money + ", the other in " +
                                  other.shop.cost.money + "; give both cases the same money in [cost]");
    job.shop.against = job::CostAlternative{other.c.title, other.shop.cost};
    return other;
}

Exit verdict(const files::Case& c, const job::JobResult& result) {
    if (!result.solved) {
        std::cerr << "overbend: " << job::why_not(c, result.findings) << "\n";
        return Exit::not_computed;
    }
    return result.feasible() ? Exit::done : Exit::verdict_no;
}

std::filesystem::path make_folder(const std::string& out) {
    std::error_code error;
    std::filesystem::create_directories(out, error);
    if (error) refuse(out, "cannot be created: " + error.message());
    if (!std::filesystem::is_directory(out, error)) refuse(out, "cannot be created");
    return out;
}

}  // namespace overbend::commands
