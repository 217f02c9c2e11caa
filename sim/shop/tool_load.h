// What the forces of the strip do to a tool: compression and bending of its sections.
//
// Units  mm, MPa; forces N per mm of strip width, moments N mm per mm. The tool carries them on the strip's
//        width alone: a tool that is longer helps little where it is thin.
// Source beam theory: sigma = N / h +- 6 M / h^2 of a section h thick, any handbook of mechanical engineering
//        (Roark's Formulas for Stress and Strain, chapters 8 and 12, from memory: straight and eccentrically
//        loaded bars).
// Holds  nominally. A cut that a force acts on within three quarters of its thickness is left out: there the
//        stress is not a beam's (Saint-Venant), and what presses is judged as contact. An inner corner raises
//        the stress beside it, a sharp one by two or three times. The held face is taken as held firmly all
//        along: what it gives back rises or falls evenly from one end to the other. A chip of its corner
//        does not count (tool_sections.h).

#pragma once

#include <optional>
#include <vector>

#include "sim/shop/tool_sections.h"
#include "sim/shop/tool_steel.h"

namespace overbend::shop {

struct ToolForce {
    tool::Vec2 at = tool::Vec2::Zero();     // in the tool's own coordinates
    tool::Vec2 force = tool::Vec2::Zero();  // on the tool, N per mm
};

struct SectionLoad {
    Cut cut;
    double axial = 0.0;        // N per mm, tension positive
    double shear = 0.0;        // N per mm
    double bending = 0.0;      // N mm per mm
    double tension = 0.0;      // MPa, of the fibre with most tension; 0 without tension
    double compression = 0.0;  // MPa, > 0, of the fibre with most compression
    // The larger part of the steel's allowable stress.
    double share(const Allowable& steel) const;
};

// Of one cut. nothing: it takes off a corner of the held face, or a force acts too near for it to be a
// beam's.
std::optional<SectionLoad> load_of(const ToolSections& sections, const Cut& cut,
                                   const std::vector<ToolForce>& forces);

// The section with the largest share; with equal limits (Allowable{1, 1}) the one that is stressed most. The
// held face counts too, as if it were pressed evenly: a stout block has no other section. nothing: no force.
std::optional<SectionLoad> weakest_section(const ToolSections& sections, const std::vector<ToolForce>& forces,
                                           const Allowable& steel);

// What the forces ask of the holder, beside bearing them.
struct HolderLoad {
    double pressed = 0.0;  // N per mm, >= 0, across the held face: what the tool is pressed with
    double thrust = 0.0;   // N per mm along the held face, positive to the right
    double beside = 0.0;   // mm from the face's middle to where the load comes in, positive to the right; as
                           // the parts across the face alone have it, without the thrust
    double width = 0.0;    // mm, of the held face
};
HolderLoad holder_load(const ToolSections& sections, const std::vector<ToolForce>& forces);

// How thick the section would have to be for the same forces about its middle, mm:
// from sigma h^2 = |N| h + 6 |M|.
double thickness_that_bears(const SectionLoad& load, const Allowable& steel);

}  // namespace overbend::shop
