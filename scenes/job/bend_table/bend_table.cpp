#include "scenes/job/bend_table/bend_table.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <mutex>
#include <thread>

#include "scenes/files/case/work.h"
#include "scenes/job/run/bent_strip.h"
#include "scenes/job/run/legs.h"
#include "scenes/job/run/spread.h"
#include "sim/errors.h"
#include "sim/plan/bend_allowance.h"
#include "sim/plan/tool_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

// The case with the radius that came out as drawn.
void read_row(const files::Case& c, const JobResult& job, const TableTools& tools, BendTableRow& row) {
    const StepResult& step = job.steps.back();
    const BendResult& bend = step.bends.front();
    const double t = c.thickness, r = bend.shape_free.inside_radius, angle = std::abs(bend.free);
    row.loaded = std::abs(bend.loaded);
    row.springback = bend.springback();
    row.inside_radius = r;
    row.travel = step.stroke.stop_travel;
    row.force = step.stroke.peak_force;
    const BentStrip finished = bent_strip(step.stroke.free);
    const double flat_to_flat = job.blank.flat_middle(1) - job.blank.flat_middle(0);
    row.deduction = made_corner(c, job.blank, finished, 0) - flat_to_flat;
    row.allowance = 2.0 * plan::outer_corner(r, t, angle) - row.deduction;
    row.k_factor = (row.allowance / angle - r) / t;
    row.din_allowance = plan::din_allowance(r, t, angle);
    row.din_deduction = plan::din_compensation(r, t, angle);
    const plan::FlangeOnDie on{tools.die_opening, tools.shoulder_radius, t, bend.shape_loaded.inside_radius,
                               std::min(row.loaded, 179.0 * degree)};
    row.least_flange = plan::flange_needed(on) + 0.5 * row.deduction;
}

BendTableRow make_row(const BendTableOrder& order, std::size_t tools, double angle) {
    BendTableRow row;
    row.tools = tools;
    row.angle = angle;
    try {
        const files::Case c = table_case(order, order.tools[tools], angle);
        ProcessOptions brief;
        brief.record = false;
        const JobResult job = run_process(c, brief);
        const stroke::StrokeResult& stroke = job.steps.back().stroke;
        row.made = job.solved && stroke.outcome == stroke::Outcome::reached;
        row.why = row.made                ? ""
                  : stroke.reason.empty() ? stroke::outcome_words(stroke.outcome)
                                          : stroke.reason;
        if (!row.made) return row;
        read_row(c, job, order.tools[tools], row);
        const std::vector<AngleSpread> spread = angle_spread(c, job);
        if (!spread.empty()) row.spread = spread.front();
    } catch (const NotSolved& error) {
        row.made = false;
        row.why = error.what();
    }
    return row;
}

void check(const BendTableOrder& order) {
    if (order.tools.empty())
        throw OutOfRange("tools of a bend table", "there are none", "give at least one pair");
    if (order.angles.empty())
        throw OutOfRange("angles of a bend table", "there are none", "give at least one");
    for (const double angle : order.angles)
        if (!(angle > 0.0 && angle < pi))
            throw OutOfRange("angles of a bend table", words("%.4g deg cannot be", angle / degree),
                             "give more than 0 and less than 180 deg");
    material::check(order.material);
    for (const TableTools& t : order.tools) files::check_pair(t.punch, t.die, t.die_face, order.thickness);
}

}  // namespace

files::Case table_case(const BendTableOrder& order, const TableTools& tools, double angle) {
    files::Case c;
    c.title = "bend table";
    c.material = order.material;
    c.thickness = order.thickness;
    c.thickness_tolerance = order.thickness_tolerance;
    c.width = order.width.value_or(std::max(1000.0, 10.0 * order.thickness));  // wide: in plane strain
    c.run.friction = order.friction, c.run.layers = order.layers;
    c.tools = {tools.punch, tools.die};
    // Long enough to lie on the shoulders to the end, as of `bend`.
    const double flat = 2.0 * tools.die_opening;
    c.part.flats = {flat, flat};
    c.part.bends = {{"bend", angle, tools.nose_radius}};
    const double arc = plan::din_allowance(tools.nose_radius, order.thickness, angle);
    c.blank_length = 2.0 * flat + arc;
    c.bend_lines = {flat + 0.5 * arc};
    files::Step step;
    step.name = "bend";
    step.bends = {0};
    step.punch = 0, step.die = 1, step.die_face = tools.die_face;
    step.stop = files::StopKind::free_angle, step.stop_value = angle;
    c.steps = {step};
    return c;
}

std::vector<BendTableRow> bend_table(const BendTableOrder& order) {
    check(order);
    const std::size_t angles = order.angles.size(), count = order.tools.size() * angles;
    std::vector<BendTableRow> rows(count);
    std::vector<std::exception_ptr> failed(count);
    std::atomic<std::size_t> next{0};
    std::mutex telling;
    int done = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < count; i = next++) {
            try {
                rows[i] = make_row(order, i / angles, order.angles[i % angles]);
            } catch (...) {
                failed[i] = std::current_exception();
            }
            const std::lock_guard<std::mutex> one(telling);
            ++done;
            if (order.progress) order.progress(done, static_cast<int>(count));
        }
    };
    std::vector<std::thread> workers;
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    for (std::size_t w = 0; w < std::min(cores, count); ++w) workers.emplace_back(work);
    for (std::thread& w : workers) w.join();
    for (const std::exception_ptr& error : failed)
        if (error) std::rethrow_exception(error);
    return rows;
}

}  // namespace overbend::job
