// The bench at work, without a window: strips that are bent alike, as far as asked, and released.
//
//   BenchPress press(setup);
//   press.bend_to(3.2);                 // mm of travel, or 1/mm in pure bending
//   press.strips()[0].free              // rad
//
// Units  mm, rad, 1/mm.

#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "render/picture/panel.h"
#include "scenes/window/bench/setup.h"
#include "sim/stroke/live_stroke.h"

namespace overbend::window {

// One strip as it was bent last: from placed to free.
struct BentStrip {
    BenchMetal metal;
    stroke::Recording recording;
    double loaded = 0.0, free = 0.0;                // bend angle, rad
    double radius_loaded = 0.0, radius_free = 0.0;  // inside, mm
    double section_at = 0.0;                        // mm of the blank: where it is bent most
    std::string held_by;                            // why it went no further; empty: it did
    double springback() const { return loaded - free; }
    double held_instant() const { return stroke::loaded_state(recording); }
    double free_instant() const { return static_cast<double>(recording.states.size()) - 1.0; }
};

class BenchPress {
  public:
    // Bends to the deepest way at once, so that everything that is chosen once, such as a picture's view, can
    // be chosen of it. Throws OutOfRange: see trouble_of.
    explicit BenchPress(const BenchSetup& setup);
    ~BenchPress();

    const BenchSetup& setup() const;
    double way_limit() const;               // how far all strips go along, at most deepest()
    const std::string& limited_by() const;  // in words; empty: deepest()
    const std::vector<BentStrip>& deepest_strips() const;

    // All strips by the same way, held within 0 and the limit. Returns it.
    double bend_to(double way);
    const std::vector<BentStrip>& strips() const;

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

// One strip in pure bending to a curvature, and back until no moment is left.
BentStrip bend_purely(const BenchSetup& setup, int metal, double curvature);

// How far a strip has to be bent so that so much of it stays.
struct Overbend {
    BenchSetup setup;
    double wanted = 0.0;  // rad
    double loaded = 0.0, free = 0.0;
    double way = 0.0;
    std::string reason;  // why it cannot be, in words; empty: it can
};
Overbend overbend_for(const BenchSetup& setup, int metal, double wanted,
                      const std::function<bool()>& goes_on);

}  // namespace overbend::window
