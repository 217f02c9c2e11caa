// The demo's job, run once for all checks of a program.

#pragma once

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

namespace overbend::tests {

inline const files::Case& demo() {
    static const files::Case c = files::read_case("cases/cable-hook/case.toml");
    return c;
}

inline const job::JobResult& demo_job() {
    static const job::JobResult job = job::run_process(demo(), {});
    return job;
}

}  // namespace overbend::tests
