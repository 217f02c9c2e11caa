#include "tests/bench/works.h"

#include <algorithm>
#include <string>
#include <vector>

#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_case.h"
#include "sim/material/pure_bending.h"
#include "sim/stroke/increment.h"
#include "sim/stroke/pressed_part.h"
#include "sim/units.h"

namespace overbend::bench {

Counts counts_of(const stroke::StrokeResult& s) {
    Counts c;
    c.strokes = 1;
    c.increments = s.increments;
    c.iterations = s.iterations;
    c.layer_updates = c.iterations * s.free.elements() * s.free.layers();
    return c;
}

Counts counts_of(const job::JobResult& job) {
    Counts all;
    for (const job::StepResult& step : job.steps) {
        const Counts c = counts_of(step.stroke);
        all.strokes += c.strokes;
        all.increments += c.increments;
        all.iterations += c.iterations;
        all.layer_updates += c.layer_updates;
    }
    return all;
}

job::VeeBend vee() {
    job::VeeBend bend;
    bend.material = files::read_card("dc01", ".");
    bend.layers = 11;
    return bend;
}

stroke::Stop to_right_angle() {
    return {stroke::StopKind::free_angle, 0.5 * pi};
}

stroke::Stop to_travel(double mm) {
    return {stroke::StopKind::travel, mm};
}

double bend_section(int layers) {
    static const material::Card card = files::read_card("dc01", ".");
    std::vector<double> curvatures;
    for (int i = 1; i <= 50; ++i) curvatures.push_back(i / 150.0);
    for (int i = 49; i >= 0; --i) curvatures.push_back(i / 150.0);
    return material::bend_in_pure_moment(card, 1.0, curvatures, layers).back().free_curvature;
}

struct Increment::Inside {
    stroke::StrokeScene whole = job::vee_stroke(vee()).scene;
    stroke::Pressed pressed = stroke::pressed_part(whole);
    stroke::IncrementSolver solver{pressed.scene, {}};
    stroke::SolverState at, after;
};

Increment::Increment() : in_(std::make_unique<Inside>()) {
    in_->at.strip = in_->pressed.scene.strip;
    in_->solver.start(in_->at);
    for (double move = 0.01; in_->at.travel < 2.0; move = std::min(0.05, 1.5 * move))
        in_->solver.step(in_->at, move);
    in_->solver.step(in_->at, 0.01);
}
Increment::~Increment() = default;

const stroke::SolverState& Increment::step() {
    in_->after = in_->at;
    in_->solver.step(in_->after, 0.01);
    return in_->after;
}

const stroke::SolverState& Increment::before() const {
    return in_->at;
}

int Increment::layers() const {
    return in_->at.strip.elements() * in_->at.strip.layers();
}

files::Case demo() {
    return files::read_case("cases/cable-hook/case.toml");
}

files::Case cranked(int bends) {
    files::Case c;
    c.title = "cranked strip";
    c.material = files::read_card("dc01", ".");
    c.thickness = 1.0;
    c.width = 20.0;
    for (int i = 0; i <= bends; ++i) c.part.flats.push_back(18.0 + 4.0 * (i % 3));
    for (int i = 0; i < bends; ++i)
        c.part.bends.push_back(
            {"bend " + std::to_string(i + 1), (i % 2 ? -1.0 : 1.0) * (i % 3 ? 60.0 : 90.0) * degree, 1.1});
    c.part.angle_tolerance = degree;
    c.tools = {{"wedge", tool::VeePunch{50.0 * degree, 1.0, 60.0, 12.0}},
               {"blade", tool::VeePunch{30.0 * degree, 1.0, 80.0, 8.0}},
               {"block",
                tool::VeeDie{{{84.0 * degree, 8.0, 1.0, 0.4}, {84.0 * degree, 10.0, 1.0, 0.4}}, 30.0, 40.0}}};
    return c;
}

std::unique_ptr<job::Attempt> order_of(const files::Case& c) {
    return job::search_with(c, {5});
}

}  // namespace overbend::bench
