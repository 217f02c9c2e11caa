#include "scenes/program/job.h"

#include <iostream>
#include <system_error>

#include "scenes/case/read_case.h"

namespace overbend::program {

Job run_job(const std::string& file, const Output& output) {
    Job job;
    job.c = scenes::read_case(file);
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
    if (error || !std::filesystem::is_directory(out))
        complain("--out", "the folder '" + out + "' cannot be made; give one that can be written");
    return out;
}

}  // namespace overbend::program
