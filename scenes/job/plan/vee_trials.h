// What V tools make of the strip, by single strokes of the mechanics: the inside radius over nose and
// opening, and the nose that makes the drawn radius. Each stroke is pressed once, on a coarse mesh.
//
// A rule of thumb is no better than a third here: strip lifts off the nose and is bent sharper than it where
// it hardens little, and rounder where the groove is wide.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <map>
#include <optional>
#include <tuple>

#include "scenes/files/case/case.h"

namespace overbend::job {

struct VeeTrial {
    bool reached = false;  // the drawing's angle, free
    double radius = 0.0;   // inside, free, as a gauge reads it
    double loaded = 0.0;   // bend angle under load
    double force = 0.0;    // the greatest
};

// A nose and the radius that it makes.
struct NoseFor {
    double nose = 0.0;
    double radius = 0.0;
    double slope = 1.0;   // of the radius over the nose, about here, 0.2 to 1.5
    double loaded = 0.0;  // bend angle under load
    bool within = false;  // the radius is, of its tolerance
};

class VeeTrials {
  public:
    explicit VeeTrials(const files::Case& c) : c_(c) {}

    // angle: free, > 0.
    const VeeTrial& trial(double angle, double nose, double opening, double shoulder);

    // Nothing: no nose fits between the shoulders at the angle under load, or none was pressed to it.
    std::optional<NoseFor> nose_for(int bend, double opening, double shoulder);

    int strokes() const { return static_cast<int>(known_.size()); }

  private:
    const files::Case& c_;
    std::map<std::tuple<long, long, long, long>, VeeTrial> known_;  // by angle and sizes, in thousandths
};

// Of its tolerance, that a nose is chosen to come within: the rest is for the coil.
constexpr double aimed_at = 0.5;

}  // namespace overbend::job
