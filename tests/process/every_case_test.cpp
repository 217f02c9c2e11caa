// Properties that every stroke of every case has, whatever the metal and the tools: work and forces balance.
//
//   tools' work = elastic + plastic + friction + contact + regularisation
//   sum of the contact forces on the strip = 0;  the ram's share of it = the punch force
//
// Here    all folders of cases/ that hold a case.toml, with the mesh that each asks for.
// Allowed work: 1 per cent of the largest work put in. Forces, in every recorded state, of the stroke's peak
//         force: 1e-4 along the ram, 1e-3 across it (where the hold of rigid modes has its share), and
//         rounding between the contacts and the punch force that is told.
// Measured work 0.04 to 0.21 per cent, 0.27 with the pad and 0.58 wiped; forces 7e-8 to 3e-5 along, up to
//          4e-4 across (the channel), 4e-16.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <vector>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> all_cases() {
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::directory_iterator("cases"))
        if (fs::exists(entry.path() / "case.toml")) files.push_back(entry.path() / "case.toml");
    std::sort(files.begin(), files.end());
    return files;
}

struct Balance {
    double up = 0.0, across = 0.0;  // what is left of all contact forces on the strip, N per mm
    double ram = 0.0;               // upward on what moves with the ram, less the punch force told
};

Balance balance_of(const tool::ToolSet& tools, const stroke::State& state) {
    Balance sum;
    for (const stroke::ContactForce& f : state.contacts) {
        sum.up += f.force.y();
        sum.across += f.force.x();
        if (tools[f.tool].moves_with_ram()) sum.ram -= f.force.y();
    }
    sum.ram -= state.punch_force;
    return sum;
}

void check_forces(const stroke::StrokeResult& s) {
    REQUIRE(s.peak_force > 0.0);
    double up = 0.0, across = 0.0, ram = 0.0, punch = 0.0;  // greatest over the states
    for (const stroke::State& state : s.recording.states) {
        const Balance left = balance_of(s.recording.tools, state);
        up = std::max(up, std::abs(left.up));
        across = std::max(across, std::abs(left.across));
        ram = std::max(ram, std::abs(left.ram));
        punch = std::max(punch, state.punch_force);
    }
    CHECK(punch == s.peak_force);  // or the states would not be those of the stroke
    CHECK(up < 1e-4 * s.peak_force);
    CHECK(across < 1e-3 * s.peak_force);
    CHECK(ram < 1e-9 * s.peak_force);
    CHECK(s.balance_error < 1e-4);
}

}  // namespace

TEST_CASE("work and forces balance in every stroke of every case") {
    const std::vector<fs::path> files = all_cases();
    REQUIRE(files.size() >= 6);
    for (const fs::path& file : files) {
        CAPTURE(file);
        const JobResult job = run_process(read_case(file), {});
        CHECK(job.solved);
        CHECK_FALSE(job.steps.empty());
        for (const StepResult& step : job.steps) {
            CAPTURE(step.name);
            CHECK(step.stroke.audit.residue_percent() < 1.0);
            check_forces(step.stroke);
        }
    }
}
