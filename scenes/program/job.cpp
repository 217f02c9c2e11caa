#include "scenes/program/job.h"

#include <unistd.h>

#include <fstream>
#include <iostream>
#include <system_error>

#include "scenes/case/read_case.h"

namespace overbend::program {

namespace {

[[noreturn]] void refuse(const std::string& out, const std::string& what) {
    complain("--out", "the folder '" + out + "' " + what + "; give one that can be written");
}

}  // namespace

void check_folder(const std::string& out) {
    if (out.empty()) refuse(out, "has no name");
    std::filesystem::path there = std::filesystem::absolute(out).lexically_normal();
    while (!std::filesystem::exists(there) && there.has_relative_path()) there = there.parent_path();
    if (!std::filesystem::is_directory(there)) refuse(out, "cannot be made");
    const std::filesystem::path trial = there / (".trial" + std::to_string(::getpid()));
    if (!std::ofstream(trial)) refuse(out, "takes no files");
    std::error_code error;
    std::filesystem::remove(trial, error);
}

Job run_job(const std::string& file, const std::optional<std::string>& out, const Output& output) {
    Job job;
    if (file.empty()) complain("case", "no file is named; give a case file");
    job.c = scenes::read_case(file);
    if (out) check_folder(*out);
    scenes::ProcessOptions how;
    if (shows_progress(output))
        how.progress = [&](int step, double travel) {
            std::cerr << "\rstep " << step + 1 << " of " << job.c.steps.size() << ", "
                      << job.c.steps[step].name << ": " << fixed(travel, 2) << " mm   " << std::flush;
        };
    job.result = scenes::run_process(job.c, how);
    if (how.progress) std::cerr << "\r" << std::string(78, ' ') << "\r";
    return job;
}

Exit verdict(const scenes::JobResult& result) {
    if (!result.solved) return Exit::not_computed;
    return result.findings.empty() ? Exit::done : Exit::verdict_no;
}

std::filesystem::path make_folder(const std::string& out) {
    std::error_code error;
    std::filesystem::create_directories(out, error);
    if (error || !std::filesystem::is_directory(out)) refuse(out, "cannot be made");
    return out;
}

}  // namespace overbend::program
