#include "render/picture/cautions.h"

namespace overbend::picture {

const std::string& estimate_words() {
    static const std::string words = "Estimates: check them with a trial bend.";
    return words;
}

const std::string& brief_caution() {
    static const std::string words = estimate_words() +
                                     " Use the press guards, keep hands out of the tools, and watch for the "
                                     "swinging flange and sharp edges.";
    return words;
}

const std::vector<std::string>& cautions() {
    static const std::vector<std::string> paragraphs = {
        std::string("Presses and press tools can maim. All figures are estimates for a nominal material, not "
                    "for your coil. Prove every job with a trial bend, at low force first."),
        std::string("Keep hands and sleeves out of the tools. Work only with guards fitted and tested. Make "
                    "sure that nobody else can start the press."),
        std::string("The free flange swings up fast and far. It can pinch you against the punch, the ram or "
                    "anything nearby. The animations show its path: stay clear of it."),
        std::string("Cut edges and corners of strip are sharp. Wear gloves to carry it, and keep gloves away "
                    "from moving tools: they can get caught."),
        std::string(
            "An overloaded tool can burst; a hardened tool breaks without warning. The force rises steeply "
            "once the strip is clamped between the tools. The strengths given here are nominal, for a grade "
            "of steel and not for your tool. The ratings of the tool maker and the press maker apply."),
        std::string("Hardened strip can snap at the bend, and pieces can fly off. Wear eye protection."),
        std::string("Local codes, the instructions of the press maker and the tool maker, and licensed or "
                    "qualified people take precedence over anything written here.")};
    return paragraphs;
}

const std::vector<std::string>& sheet_cautions() {
    static const std::vector<std::string> paragraphs = {
        std::string("All figures are estimates for a nominal material, not for your coil. Prove each stroke "
                    "with a trial bend, at low force first."),
        std::string(
            "Keep hands and sleeves out of the tools. Fit and test the guards. Make sure that nobody else "
            "can start the press. The free flange swings up fast and can pinch: stay clear of its path."),
        std::string("Edges and corners are sharp: wear gloves to carry strip, but keep gloves away from "
                    "moving tools. Hardened strip can snap and fly: wear eye protection."),
        std::string("An overloaded tool can burst. The force rises steeply once the strip is clamped. "
                    "Strengths given here are nominal. Local codes, the makers' instructions and qualified "
                    "people take precedence.")};
    return paragraphs;
}

}  // namespace overbend::picture
