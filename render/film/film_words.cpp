#include "render/film/film_words.h"

#include <cmath>

#include "render/picture/text_width.h"

namespace overbend::render {

namespace {

std::string in_degrees(double angle) {
    return fixed(std::abs(angle) * 180.0 / 3.14159265358979323846, 1) + "\u00b0";
}

// "lip", "lip and root", "lip, root and hem"; empty when they have no names.
std::string names(const std::vector<BendMark>& bends) {
    std::string words;
    for (size_t i = 0; i < bends.size(); ++i) {
        if (bends[i].name.empty()) return "";
        if (i > 0) words += i + 1 == bends.size() ? " and " : ", ";
        words += bends[i].name;
    }
    return words;
}

std::string placed_words(const StrokeFilm& stroke) {
    if (!stroke.placing.empty()) return stroke.placing;
    const std::string of = names(stroke.bends);
    if (of.empty()) return "the strip lies on the die";
    const std::string lines = stroke.bends.size() > 1 ? "the bend lines of " : "the bend line of ";
    return "the strip lies on the die, " + lines + of + " under the punch";
}

// How far a bend opens when it springs back, whichever way it is turned.
double opened(const BendMark& bend) {
    return (*bend.loaded - *bend.free) * (*bend.loaded < 0.0 ? -1.0 : 1.0);
}

std::string free_words(const std::vector<BendMark>& bends) {
    if (bends.empty() || !bends.front().loaded || !bends.front().free) return "nothing touches the strip";
    if (bends.size() == 1) {
        const BendMark& bend = bends.front();
        return std::string("the bend ") + (opened(bend) < 0.0 ? "closes" : "opens") + " from " +
               in_degrees(*bend.loaded) + " under load to " + in_degrees(*bend.free) + "; springback " +
               (opened(bend) < 0.0 ? "\u2212" : "") + in_degrees(opened(bend));
    }
    std::string words = "springback";
    for (size_t i = 0; i < bends.size(); ++i) {
        if (!bends[i].loaded || !bends[i].free) continue;
        words += (i > 0 ? ", " : " ") + bends[i].name + " " + (opened(bends[i]) < 0.0 ? "\u2212" : "") +
                 in_degrees(opened(bends[i]));
    }
    return words;
}

std::string dwell_words(const StrokeFilm& stroke, const StrokeLook& look) {
    const double travel = stroke.recording->states[static_cast<size_t>(look.loaded_at)].travel;
    std::string words = "the punch holds the strip at " + fixed(travel, 2) + " mm of travel";
    if (look.bends.size() == 1 && look.bends.front().loaded)
        words += ", " + in_degrees(*look.bends.front().loaded) + " under load";
    return words;
}

}  // namespace

std::string caption(Passage passage, const StrokeFilm& stroke, const StrokeLook& look) {
    switch (passage) {
        case Passage::placed:
            return "Place: " + placed_words(stroke) + ".";
        case Passage::approach:
            return "Approach: the punch comes down to the strip.";
        case Passage::press:
            return "Press: the punch goes down and bends the strip.";
        case Passage::dwell:
            return "Dwell: " + dwell_words(stroke, look) + ".";
        case Passage::retract:
            return "Retract: the punch goes back, and the strip springs back.";
        case Passage::free:
            return "Free: " + free_words(look.bends) + ".";
        default:
            return "";
    }
}

std::string carry_caption(const StrokeFilm& next, const Carry& carry) {
    return "Next: " + (next.placing.empty() ? carry_words(carry) : next.placing) + ".";
}

}  // namespace overbend::render
