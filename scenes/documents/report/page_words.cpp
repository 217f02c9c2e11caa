// What every page says: the words of the trade that it uses.

#include "scenes/documents/report/page_parts.h"

namespace overbend::documents {

std::vector<report::Term> glossary() {
    return {
        {"air bending",
         "bending in which the punch stops before the strip touches the flanks of the die; its travel sets "
         "the angle"},
        {"allowance", "the length of blank used by a bend"},
        {"bend angle",
         "angle through which the strip is bent: 0\u00b0 is flat, 90\u00b0 a square corner, 180\u00b0 folded "
         "back"},
        {"bend line", "line on the flat blank at the middle of a bend"},
        {"clearance", "smallest distance between the strip and anything that must not touch it"},
        {"developed length", "length of the flat blank that makes the part"},
        {"die opening", "distance between the two shoulders of the die that support the strip"},
        {"flange", "the straight length at a free end of the part"},
        {"gauge", "the stop that the strip is pushed against, so that its bend line is under the punch"},
        {"hoop stress",
         "stress along the strip: tension on the outside of a bend, compression on the inside"},
        {"inside radius", "radius of a bend's inner surface"},
        {"interference", "the strip hits a tool or the press where it must not touch"},
        {"loaded, free", "under the punch at the end of the stroke; after release"},
        {"nose", "the rounded edge of the punch that presses on the strip"},
        {"offset", "two opposite bends made in one stroke, like an S"},
        {"outer fibre", "the convex surface of a bend, where the stretch is greatest"},
        {"overbend", "extra bend angle under load, so that the strip springs back to the drawing's angle"},
        {"pad", "a spring-loaded block that presses the strip against the punch from below"},
        {"plastic strain", "the part of the stretch that remains; 0 where the metal is still elastic"},
        {"springback", "bend angle under load minus bend angle after release; positive if the bend opens"},
        {"stroke", "one press of the ram: approach, press, dwell, retract"},
        {"travel", "how far the punch has moved since it first touched the strip"}};
}

}  // namespace overbend::documents
