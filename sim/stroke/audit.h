// The balance of work of a stroke.
//
// Units  N mm per mm width.

#pragma once

namespace overbend::stroke {

// Work and where it went, N mm per mm width, since the stroke's start.
struct Audit {
    double tools = 0.0;    // work of the moving tools on the strip
    double elastic = 0.0;  // stored in the strip, less what was stored in it at the start
    double plastic = 0.0;
    double friction = 0.0;
    double contact = 0.0;                             // stored in the contacts
    double springs = 0.0;                             // stored in the springs of pads and clamps
    double weight = 0.0;                              // work of the strip's own weight on it
    double set_free = 0.0;                            // where the strip jumped: it sways and rings with it
    double regularisation = 0.0;                      // hold of rigid modes and length-scale term
    double contact_start = 0.0, springs_start = 0.0;  // stored in them when the balance began
    double largest = 0.0;  // largest work put in up to now: reference of the residue,
    double least = 0.0;    // but no less than this: a strip that is touched, not bent
    double residue() const {
        return tools + weight - elastic - plastic - friction - contact - springs - regularisation - set_free;
    }
    double residue_percent() const {
        const double whole = largest > least ? largest : least;
        return whole > 0.0 ? 100.0 * (residue() < 0.0 ? -residue() : residue()) / whole : 0.0;
    }
};

}  // namespace overbend::stroke
