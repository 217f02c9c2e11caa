// What every page says: the cautions, and the words of the trade that it uses.

#include "scenes/report/page_parts.h"

namespace overbend::scenes {

std::vector<std::string> caution_lines() {
    return {
        std::string(
            "Presses and their tools maim. This report is an estimate made from a card of a metal, not of "
            "your coil: prove every job by a trial bend, at low force first."),
        std::string(
            "Keep hands and sleeves out of the tools. Work only with the guards on and tested, and never "
            "with a press that somebody else can set going."),
        std::string(
            "The free flange swings up fast and far, and pinches against punch, ram and whatever stands "
            "near. The players show its path; keep out of it."),
        std::string(
            "Cut edges and corners of strip are knives. Wear gloves to carry it, and mind that gloves get "
            "caught."),
        std::string(
            "A tool loaded beyond what it bears bursts, hardened ones without a warning. The force grows "
            "steeply once the strip is clamped between the tools; nothing here proves what your tool or "
            "your press can bear."),
        std::string("Hardened strip can snap in the bend and fly. Wear eye protection."),
        std::string("Local codes, the instructions of those who made the press and the tools, and qualified "
                    "people come before anything written here.")};
}

std::vector<render::Term> glossary() {
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

}  // namespace overbend::scenes
