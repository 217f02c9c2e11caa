#include "render/picture/cautions.h"

namespace overbend::picture {

const std::string& estimate_words() {
    static const std::string words = "Estimates: prove them by a trial bend.";
    return words;
}

const std::string& brief_caution() {
    static const std::string words =
        estimate_words() +
        " Guard the press, keep hands out of the tools, and mind the swinging flange and the sharp edges.";
    return words;
}

const std::vector<std::string>& cautions() {
    static const std::vector<std::string> paragraphs = {
        std::string(
            "Presses and their tools maim. What overbend tells is an estimate made from a card of a metal, "
            "not of your coil: prove every job by a trial bend, at low force first."),
        std::string(
            "Keep hands and sleeves out of the tools; work only with the guards on and tested, and never "
            "with a press that somebody else can set going."),
        std::string(
            "The free flange swings up fast and far, and pinches against punch, ram and whatever stands "
            "near. The moving pictures show its path; keep out of it."),
        std::string(
            "Cut edges and corners of strip are knives. Wear gloves to carry it, and mind that gloves get "
            "caught."),
        std::string(
            "A tool loaded beyond what it bears bursts, hardened ones without a warning. The force grows "
            "steeply once the strip is clamped between the tools. What is said here of the strength of tools "
            "and press is nominal, for cards of steels and not for your block: whoever made the tool and the "
            "press has the last word."),
        std::string("Hardened strip can snap in the bend and fly. Wear eye protection."),
        std::string(
            "Local codes, the instructions of those who made the press and the tools, and licensed or "
            "qualified people come before anything written here.")};
    return paragraphs;
}

const std::vector<std::string>& sheet_cautions() {
    static const std::vector<std::string> paragraphs = {
        std::string(
            "All figures are estimates, made from a card of the metal and not from your coil. Prove each "
            "stroke by a trial bend, at low force first."),
        std::string(
            "Hands and sleeves stay out of the tools; guards are on and tested; nobody else can set the "
            "press going. The free flange swings up fast and pinches: keep out of its path."),
        std::string(
            "Edges and corners of strip cut: gloves to carry it, and mind that gloves get caught. Hardened "
            "strip can snap and fly: wear eye protection."),
        std::string(
            "An overloaded tool bursts, and the force climbs steeply once the strip is clamped; strengths "
            "given "
            "here are nominal. Local codes, the makers' instructions and qualified people come first.")};
    return paragraphs;
}

}  // namespace overbend::picture
