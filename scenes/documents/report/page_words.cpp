// What every page says: the words of the trade that it uses.

#include "scenes/documents/report/page_parts.h"

namespace overbend::documents {

std::vector<report::Term> glossary() {
    return {
        {"air bending",
         "the punch stops before the strip lies on the die's flanks; the angle follows from its travel"},
        {"allowance", "the length of blank that goes into a bend"},
        {"bend angle",
         "how far the strip is turned: 0\u00b0 is flat, 90\u00b0 a square corner, 180\u00b0 doubled back"},
        {"bend line", "where the middle of a bend lies on the flat blank"},
        {"clearance", "least distance between the strip and anything that should not touch it"},
        {"developed length", "length of the flat blank that makes the part"},
        {"die opening", "distance between the die's two shoulders, which carry the strip"},
        {"flange", "the straight length at a free end of the part"},
        {"gauge", "the stop against which the strip is laid, so that its bend line comes under the punch"},
        {"hoop stress", "stress along the strip: pulled on the outside of a bend, pressed on the inside"},
        {"inside radius", "radius of a bend's inner surface"},
        {"interference",
         "an overlap of the strip with a tool or the press where nothing should touch: it would hit"},
        {"loaded, free", "under the punch at the end of its stroke; after the tools have let go"},
        {"nose", "the rounded edge of the punch that presses the strip"},
        {"offset", "two opposite bends made in one stroke, like an S"},
        {"outer fibre", "the convex surface of a bend, which is stretched most"},
        {"overbend",
         "what is bent further under load, so that the strip springs back to the drawing's angle"},
        {"pad", "a block on a spring that holds the strip against the punch from below"},
        {"plastic strain", "the part of the stretch that stays; 0 where the metal is still elastic"},
        {"springback", "bend angle under load less the free one; positive opens the bend"},
        {"stroke", "one press of the ram: approach, press, dwell, retract"},
        {"travel", "how far the punch has moved since it first touched the strip"}};
}

}  // namespace overbend::documents
