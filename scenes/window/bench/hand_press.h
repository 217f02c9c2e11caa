// One strip in the V tools, pressed by hand: press after press, each from what the last one left.
//
// Units  mm, rad.

#pragma once

#include <memory>
#include <vector>

#include "scenes/window/bench/press.h"

namespace overbend::window {

class HandPress {
  public:
    HandPress(const BenchSetup& setup, int metal);
    ~HandPress();
    // A new strip goes all these ways; see BenchPress.
    BentStrip follow(const std::vector<BenchMove>& moves);

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::window
