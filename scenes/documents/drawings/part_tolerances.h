// What is written on a drawing of the part beside its sizes: a tolerance that the case states, always; the
// one that is judged by otherwise (scenes/job/run/measures.h), where general tolerances are asked for.
//
// Units  mm, rad.

#pragma once

#include <optional>

#include "render/drawing/sizes_in_words.h"
#include "scenes/job/run/measures.h"

namespace overbend::documents {

inline drawing::Allowed written(const files::Tolerance& own, const std::optional<double>& of_the_part,
                                double allowed, drawing::Tolerances general) {
    const bool stated = own.either_way || of_the_part;
    return {stated || general != drawing::Tolerances::none ? allowed : 0.0, own.reference};
}

inline drawing::Allowed written_angle(const files::Case& c, int bend, drawing::Tolerances general) {
    return written(c.part.bends[bend].tolerance, c.part.angle_tolerance, job::allowed_angle(c, bend),
                   general);
}

inline drawing::Allowed written_radius(const files::Case& c, int bend, drawing::Tolerances general) {
    return written(c.part.bends[bend].radius_tolerance, c.part.radius_tolerance, job::allowed_radius(c, bend),
                   general);
}

// Of the leg that the flat is part of.
inline drawing::Allowed written_leg(const files::Case& c, int flat, drawing::Tolerances general) {
    return written(c.part.leg_tolerance(static_cast<std::size_t>(flat)), c.part.length_tolerance,
                   job::allowed_leg(c, flat), general);
}

}  // namespace overbend::documents
