#include "render/film/frame_parts.h"

#include <cmath>

#include "render/picture/numbers.h"
#include "render/picture/turning.h"

namespace overbend::film {

using namespace picture;

namespace {

// Empty when not all have names.
std::string names(const std::vector<BendMark>& bends) {
    std::vector<std::string> all;
    for (const BendMark& bend : bends) {
        if (bend.name.empty()) return "";
        all.push_back(bend.name);
    }
    return listed(all);
}

std::string placed_words(const ShownStroke& stroke) {
    const std::string of = names(stroke.bends);
    if (of.empty()) return "the strip lies on the die";
    const std::string lines = stroke.bends.size() > 1 ? "the bend lines of " : "the bend line of ";
    return "the strip lies on the die, " + lines + of + " under the punch";
}

std::string unsigned_degrees(double angle) {
    return in_degrees(std::abs(angle));
}

std::string free_words(const std::vector<BendMark>& bends) {
    if (bends.empty() || !bends.front().springback()) return "the tools no longer touch the strip";
    if (bends.size() == 1) {
        const BendMark& bend = bends.front();
        const double sprung = *bend.springback();
        return std::string("the bend ") + (sprung < 0.0 ? "closes" : "opens") + " from " +
               unsigned_degrees(*bend.loaded) + " under load to " + unsigned_degrees(*bend.free) +
               "; springback " + in_degrees(sprung);
    }
    std::string words = "springback";
    for (size_t i = 0; i < bends.size(); ++i)
        if (const std::optional<double> sprung = bends[i].springback())
            words += (i > 0 ? ", " : " ") + bends[i].name + " " + in_degrees(*sprung);
    return words;
}

std::string dwell_words(const ShownStroke& stroke, const StrokeLook& look) {
    const double travel = stroke.recording->states[static_cast<size_t>(look.loaded_at)].travel;
    std::string words = "the punch holds the strip at " + fixed(travel, 2) + " mm of travel";
    if (look.bends.size() == 1 && look.bends.front().loaded)
        words += ", " + unsigned_degrees(*look.bends.front().loaded) + " under load";
    return words;
}

std::string press_words(const ShownStroke& stroke) {
    std::string of = names(stroke.bends);
    if (of == "bend") of = "";
    return "Press: the ram moves down slowly, and the punch bends the strip" +
           (of.empty() ? "" : " at " + of) + ".";
}

// "the wedge", "the wedge and the two-way block": what presses on one side, by its name.
std::string tool_names(const ShownStroke& stroke, const ToolChange& sides) {
    std::vector<std::string> words;
    for (const tool::RigidTool& t : stroke.recording->tools) {
        if (!tool::presses(t.role) || !(t.moves_with_ram() ? sides.upper : sides.lower)) continue;
        const std::string role = tool::role_word(t.role);
        const bool named = !t.name.empty();
        const bool role_in_name = t.name.find(role) != std::string::npos;
        words.push_back("the " + (named ? (role_in_name ? "" : role + " ") + t.name : role));
    }
    return listed(words);
}

// First what goes, then what comes. The same names before and after: a block is turned to another groove.
std::string change_words(const Instant& instant, const ShownStroke* before, const ShownStroke& after) {
    const ToolChange sides = tool_change(before, after);
    const std::string come = tool_names(after, sides);
    const std::string go = before ? tool_names(*before, sides) : "";
    if (go == come) return "Set up: " + come + ", turned for the next bend.";
    if (before && instant.part < new_tools_from) return "Remove: " + go + ".";
    return "Fit: " + come + ".";
}

std::string lay_in_words(const ShownStroke& after) {
    std::string words = after.way_in == clearance::Way::along_the_bend_line
                            ? "Load: slide the strip in along the bend line"
                            : "Load: place the strip on the die";
    const std::string of = names(after.bends);
    if (!of.empty()) words += " for " + of;
    return words + ".";
}

std::string away_words(const ShownStroke& before, bool last) {
    if (before.way_off == clearance::Way::along_the_bend_line)
        return "Unload: slide the part off along the bend line, towards you; the punch blocks every other "
               "direction.";
    return last ? "Unload: lift the finished part off." : "Unload: lift the part off the die.";
}

}  // namespace

std::string caption(Passage passage, const ShownStroke& stroke, const StrokeLook& look) {
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

std::string between_caption(const Instant& m, const ShownJob& job, const Carry& carry) {
    switch (m.passage) {
        case Passage::away:
            return away_words(job.strokes[m.from], m.to < 0);
        case Passage::turn:
            return std::string(carry.turning == Turning::none ? "Move: " : "Turn: ") +
                   turning_words(carry.turning).happens + ".";
        case Passage::change:
            return change_words(m, m.from >= 0 ? &job.strokes[m.from] : nullptr, job.strokes[m.to]);
        default:
            return lay_in_words(job.strokes[m.to]);
    }
}

std::string hit_caption(const std::vector<InterferenceMark>& hits) {
    std::string words = "Not feasible:";
    for (const InterferenceMark& hit : hits)
        words +=
            (&hit == &hits.front() ? " " : "; ") + hit.text + " overlap by " + fixed(hit.depth, 2) + " mm";
    return words + ".";
}

}  // namespace overbend::film
