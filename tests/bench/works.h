// What is measured, the same for the clock and for the count of instructions.
//
// Work of a stroke is counted by iterations: of Newton's method in the increments that lead to the result.
// Each works out every layer of the strip once at least; those are the layer updates.

#pragma once

#include <memory>

#include "scenes/files/case/case.h"
#include "scenes/job/plan/attempt.h"
#include "scenes/job/run/process.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/stroke/solver_state.h"

namespace overbend::bench {

struct Counts {
    double strokes = 0, increments = 0, iterations = 0, layer_updates = 0;
};
Counts counts_of(const stroke::StrokeResult& stroke);
Counts counts_of(const job::JobResult& job);

// dc01 of 1 mm over an opening of 8 mm, with 11 layers.
job::VeeBend vee();
stroke::Stop to_right_angle();
stroke::Stop to_travel(double mm);

// Pure bending to a radius of three thicknesses and back, in a hundred states; what it leaves, 1/mm.
double bend_section(int layers);

// One increment of the bend above from 2 mm of travel, over and over.
class Increment {
  public:
    Increment();
    ~Increment();
    const stroke::SolverState& step();  // of a hundredth of the thickness
    const stroke::SolverState& before() const;
    int layers() const;  // of all elements

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

files::Case demo();

// Cranked strips with long flats: every order goes for most of their bends, so that the search has much to
// look at.
files::Case cranked(int bends);
std::unique_ptr<job::Attempt> order_of(const files::Case& c);

}  // namespace overbend::bench
