// The finished part measured: every bend angle, leg and inside radius, and the profile as a whole, each
// beside the drawing with what it may be off. A part is right when all are within.
//
// Allowed, where the drawing has no tolerance of its own: legs and angles by ISO 2768-m
// (sim/plan/general_tolerance.h), an angle by the shorter of the legs beside it, a leg below 0.5 mm as one of
// it; inside radii 0.2 mm or 15 per cent, whichever is more (common practice, no source). The profile may be
// off at a place what legs, angles and radii that are all off by their tolerance could put it off there.
//
// Units  mm, rad.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/bent_strip.h"
#include "scenes/job/run/drawing.h"
#include "scenes/job/run/profile_fit.h"

namespace overbend::job {

enum class SizeKind { angle, leg, radius, profile };

struct MeasuredSize {
    SizeKind what = SizeKind::angle;
    int index = 0;  // of its bend or flat; of the profile's point that is nearest to its limit
    double drawn = 0.0, made = 0.0;  // angles signed as drawn; of the profile 0 and its distance
    double allowed = 0.0;            // either way
    bool reference = false;          // not judged

    double off() const { return made - drawn; }
    bool within() const;
};

// "angle of 'lip'", "leg 2", "inside radius of 'lip'", "profile"
std::string size_name(const files::Case& c, const MeasuredSize& measure);

double allowed_angle(const files::Case& c, int bend);
double allowed_leg(const files::Case& c, int flat);
double allowed_radius(const files::Case& c, int bend);
// One a point of drawing_points(c); greater than any distance where the drawing has sizes for reference.
std::vector<double> allowed_profile(const files::Case& c);

// Along the part, angles, legs and radii, then the profile.
// angles  of the finished bends, signed as drawn
std::vector<MeasuredSize> measure_part(const files::Case& c, const Blank& used, const BentStrip& finished,
                                       const std::vector<double>& angles, const ProfileFit& profile);

}  // namespace overbend::job
