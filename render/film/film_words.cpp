#include "render/film/film_words.h"

#include <cmath>

#include "render/film/interlude.h"
#include "render/picture/text_width.h"
#include "sim/units.h"

namespace overbend::film {

namespace {

std::string in_degrees(double angle) {
    return picture::fixed(std::abs(angle) / degree, 1) + "\u00b0";
}

// "lip", "lip and root", "lip, root and hem"; empty when they have no names.
std::string names(const std::vector<picture::BendMark>& bends) {
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
double opened(const picture::BendMark& bend) {
    return (*bend.loaded - *bend.free) * (*bend.loaded < 0.0 ? -1.0 : 1.0);
}

std::string free_words(const std::vector<picture::BendMark>& bends) {
    if (bends.empty() || !bends.front().loaded || !bends.front().free)
        return "the tools no longer touch the strip";
    if (bends.size() == 1) {
        const picture::BendMark& bend = bends.front();
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
    std::string words = "the punch holds the strip at " + picture::fixed(travel, 2) + " mm of travel";
    if (look.bends.size() == 1 && look.bends.front().loaded)
        words += ", " + in_degrees(*look.bends.front().loaded) + " under load";
    return words;
}

std::string press_words(const StrokeFilm& stroke) {
    std::string of = names(stroke.bends);
    if (of == "bend") of = "";
    return "Press: the ram goes on slowly, and the punch bends the strip" + (of.empty() ? "" : " at " + of) +
           ".";
}

// "the wedge", "the wedge and the two-way block": what presses on one side, by its name.
std::string tool_names(const StrokeFilm& stroke, const ToolChange& sides) {
    std::vector<std::string> words;
    for (const tool::RigidTool& t : stroke.recording->tools) {
        if (!tool::presses(t.role) || !(t.moves_with_ram() ? sides.upper : sides.lower)) continue;
        const std::string role = tool::role_word(t.role);
        const bool named = !t.name.empty();
        const bool role_in_name = t.name.find(role) != std::string::npos;
        words.push_back("the " + (named ? (role_in_name ? "" : role + " ") + t.name : role));
    }
    std::string all;
    for (std::size_t i = 0; i < words.size(); ++i)
        all += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    return all;
}

// First what goes, then what comes. The same names before and after: a tool is set another way, as the other
// groove of a block.
std::string change_words(const Instant& instant, const StrokeFilm* before, const StrokeFilm& after) {
    const ToolChange sides = tool_change(before, after);
    const std::string come = tool_names(after, sides);
    const std::string go = before ? tool_names(*before, sides) : "";
    if (go == come) return "Set up: " + come + ", turned for the next bend.";
    if (before && instant.part < new_tools_from) return "Remove: " + go + ".";
    return "Fit: " + come + ".";
}

std::string lay_in_words(const StrokeFilm& after) {
    std::string words = after.way_in == Way::along_the_bend_line
                            ? "Load: slide the strip in along the bend line"
                            : "Load: place the strip on the die";
    const std::string of = names(after.bends);
    if (!of.empty()) words += " for " + of;
    return words + ".";
}

std::string away_words(const StrokeFilm& before, bool last) {
    if (before.way_off == Way::along_the_bend_line)
        return "Unload: slide the part off along the bend line, towards you; the punch blocks every other "
               "direction.";
    return last ? "Unload: lift the finished part off." : "Unload: lift the part off the die.";
}

}  // namespace

std::string caption(Passage passage, const StrokeFilm& stroke, const StrokeLook& look) {
    switch (passage) {
        case Passage::placed:
            return "Place: " + placed_words(stroke) + ".";
        case Passage::approach:
            return "Approach: the ram comes down fast until the punch touches the strip.";
        case Passage::press:
            return press_words(stroke);
        case Passage::dwell:
            return "Dwell: " + dwell_words(stroke, look) + ".";
        case Passage::retract:
            return "Retract: the punch goes up, and the strip springs back.";
        case Passage::free:
            return "Free: " + free_words(look.bends) + ".";
        default:
            return "";
    }
}

std::string between_caption(const Instant& m, const FilmJob& job, const Carry& carry) {
    switch (m.passage) {
        case Passage::away:
            return away_words(job.strokes[m.from], m.to < 0);
        case Passage::turn:
            return std::string(carry.turning == Turning::none ? "Move: " : "Turn: ") + carry_words(carry) +
                   ".";
        case Passage::change:
            return change_words(m, m.from >= 0 ? &job.strokes[m.from] : nullptr, job.strokes[m.to]);
        default:
            return lay_in_words(job.strokes[m.to]);
    }
}

}  // namespace overbend::film
