#include "scenes/case/read_step.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scenes/case/nearest_key.h"
#include "scenes/case/strict_table.h"
#include "sim/errors.h"

namespace overbend::scenes {

namespace {

// ---- what a step names

int index_of(const Words& names, const std::string& name) {
    const auto found = std::find(names.begin(), names.end(), name);
    return found == names.end() ? -1 : static_cast<int>(found - names.begin());
}

Words names_of(const std::vector<Bend>& bends) {
    Words names;
    for (const Bend& bend : bends) names.push_back(bend.name);
    return names;
}

int read_tool_name(const StrictTable& table, const char* key, const std::vector<Tool>& tools) {
    Words names;
    for (const Tool& tool : tools) names.push_back(tool.name);
    const std::string name = table.text(key);
    const int index = index_of(names, name);
    if (index >= 0) return index;
    table.complain(key, "there is no tool " + in_quotes(name),
                   "the nearest is " + nearest_key(name, names) + "; tools here: " + listed(names));
}

int read_punch(const StrictTable& table, const std::vector<Tool>& tools) {
    const int index = read_tool_name(table, "punch", tools);
    if (tools[index].is_punch()) return index;
    table.complain("punch",
                   in_quotes(tools[index].name) + " is of the kind " + kind_word(tools[index]) + ", a die",
                   "name a punch");
}

int face_count(const Tool& die) {
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    return vee ? static_cast<int>(vee->faces.size()) : 1;
}

// A name alone, or a name and the face that is up.
void read_die(const StrictTable& table, const std::vector<Tool>& tools, Step& step) {
    const char* const right = "give a die's name, or { tool = \"name\", face = 1 }";
    if (!table.has("die")) table.complain_missing("die", right);
    if (!table.is_text("die") && !table.is_table("die")) {
        table.complain("die", "it is neither a name nor a table", right);
    }
    const bool named = table.is_text("die");
    const StrictTable place = named ? table : table.table("die", {"tool", "face"});
    const char* const key = named ? "die" : "tool";
    step.die = read_tool_name(place, key, tools);
    const Tool& die = tools[step.die];
    if (!die.is_die()) {
        place.complain(key, in_quotes(die.name) + " is of the kind " + kind_word(die) + ", a punch",
                       "name a die");
    }
    if (named) return;
    step.die_face = place.whole_number_or("face", 1, 1, 2);
    if (step.die_face > face_count(die)) {
        place.complain("face", in_quotes(die.name) + " has no face " + std::to_string(step.die_face),
                       "give face = 1, its only one");
    }
}

std::vector<int> read_bends(const StrictTable& table, const std::vector<Bend>& bends,
                            const std::vector<Step>& before) {
    std::vector<int> found;
    const Words known = names_of(bends);
    const Words names = table.texts("bends");
    for (std::size_t i = 0; i < names.size(); ++i) {
        const int bend = index_of(known, names[i]);
        if (bend < 0) {
            table.complain_in_list(
                "bends", i, "there is no bend " + in_quotes(names[i]),
                "the nearest is " + nearest_key(names[i], known) + "; bends here: " + listed(known));
        }
        const auto makes_it = [&](const Step& step) {
            return std::count(step.bends.begin(), step.bends.end(), bend) > 0;
        };
        const bool made = std::any_of(before.begin(), before.end(), makes_it);
        if (made || std::count(found.begin(), found.end(), bend) > 0) {
            table.complain_in_list("bends", i, in_quotes(names[i]) + " has been made already",
                                   "name every bend in one step alone");
        }
        found.push_back(bend);
    }
    if (found.size() > 2) {
        table.complain("bends", std::to_string(found.size()) + " bends in one step", "give one or two");
    }
    std::sort(found.begin(), found.end());
    return found;
}

// ---- what the tools make of it

enum class Work { vee, offset, channel, any };

Work work_of(const Tool& tool) {
    struct Visitor {
        Work operator()(const tool::VeePunch&) const { return Work::vee; }
        Work operator()(const tool::VeeDie&) const { return Work::vee; }
        Work operator()(const tool::OpenDie&) const { return Work::vee; }
        Work operator()(const tool::OffsetPunch&) const { return Work::offset; }
        Work operator()(const tool::OffsetDie&) const { return Work::offset; }
        Work operator()(const tool::ChannelPunch&) const { return Work::channel; }
        Work operator()(const tool::ChannelDie&) const { return Work::channel; }
        Work operator()(const OutlineTool&) const { return Work::any; }
    };
    return std::visit(Visitor{}, tool.shape);
}

Work work_of(const StrictTable& table, const Tool& punch, const Tool& die) {
    const Work by_punch = work_of(punch), by_die = work_of(die);
    if (by_punch == Work::any) return by_die;
    if (by_die == Work::any || by_die == by_punch) return by_punch;
    table.complain("die",
                   std::string("a ") + kind_word(die) +
                       " does not work with the punch, which is of the kind " + kind_word(punch),
                   "pair a vee-punch with a vee-die or an open-die, an offset-punch with an offset-die, a "
                   "channel-punch with a channel-die, an outline with any");
}

// The sense of a bend as it stands in the press: +1 turns the right-hand side up.
int sense(const Step& step, const Bend& bend) {
    const int drawn = bend.angle > 0.0 ? 1 : -1;
    return step.face == Face::up ? drawn : -drawn;
}

void check_one_bend(const StrictTable& table, const Step& step) {
    if (step.bends.size() == 1) return;
    table.complain("bends", "a V stroke makes one bend, not " + std::to_string(step.bends.size()),
                   "name one bend");
}

void check_two_bends(const StrictTable& table, const Step& step, const std::vector<Bend>& bends, Work work) {
    const bool offset = work == Work::offset;
    const std::string stroke = offset ? "an offset stroke" : "a channel stroke";
    const std::string right =
        offset ? "name two neighbouring bends of opposite sense, such as 40 and -40 degrees"
               : "name two neighbouring bends of like sense, such as 90 and 90 degrees";
    if (step.bends.size() != 2) table.complain("bends", stroke + " makes two bends at once, not one", right);
    if (step.bends[1] != step.bends[0] + 1) {
        table.complain("bends", stroke + " cannot make two bends with another between them", right);
    }
    const bool alike = (bends[step.bends[0]].angle > 0.0) == (bends[step.bends[1]].angle > 0.0);
    if (alike != offset) return;
    table.complain("bends",
                   stroke + " makes bends of " + (offset ? "opposite" : "like") + " sense, these are of " +
                       (offset ? "like" : "opposite") + " sense",
                   right);
}

// The strip bends up round a punch; an offset die is high on the right, so its left bend turns up.
void check_sense(const StrictTable& table, const Step& step, const std::vector<Bend>& bends, Work work) {
    const bool from_right = work == Work::offset && step.first == First::right;
    const Bend& bend = bends[from_right ? step.bends.back() : step.bends.front()];
    if (sense(step, bend) > 0) return;
    const std::string other = step.face == Face::up ? "down" : "up";
    table.complain("place",
                   "placed like this, the stroke would turn " + in_quotes(bend.name) + " the wrong way",
                   "give place = { face = \"" + other + "\" }" +
                       (work == Work::offset ? " or put the blank's other end first" : ""));
}

void check_pair_of(const Tool& punch, const Tool& die, int die_face, double thickness) {
    if (const auto* vee = std::get_if<tool::VeePunch>(&punch.shape)) {
        const auto* grooves = std::get_if<tool::VeeDie>(&die.shape);
        if (grooves) tool::check_pair(*vee, grooves->faces[die_face - 1], thickness);
    }
    if (const auto* upper = std::get_if<tool::OffsetPunch>(&punch.shape)) {
        const auto* lower = std::get_if<tool::OffsetDie>(&die.shape);
        if (lower) tool::check_pair(*upper, *lower, thickness);
    }
    if (const auto* foot = std::get_if<tool::ChannelPunch>(&punch.shape)) {
        const auto* channel = std::get_if<tool::ChannelDie>(&die.shape);
        if (channel) tool::check_pair(*foot, *channel, thickness);
    }
}

void check_work(const StrictTable& table, const Step& step, const Case& job) {
    const Tool& punch = job.tools[step.punch];
    const Tool& die = job.tools[step.die];
    const Work work = work_of(table, punch, die);
    if (work == Work::any) return;
    if (work == Work::vee) check_one_bend(table, step);
    if (work != Work::vee) check_two_bends(table, step, job.part.bends, work);
    check_sense(table, step, job.part.bends, work);
    try {
        check_pair_of(punch, die, step.die_face, job.thickness);
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
}

// ---- how it is placed, and when it stops

void read_place(const StrictTable& table, Step& step) {
    if (!table.has("place")) return;
    const StrictTable place = table.table("place", {"face", "first", "shift_mm"});
    if (place.word_or("face", "up", {"up", "down"}) == "down") step.face = Face::down;
    if (place.word_or("first", "left", {"left", "right"}) == "right") step.first = First::right;
    step.shift = place.number_or("shift_mm", 0.0, from_to(-1000.0, 1000.0));
}

void read_stop(const StrictTable& table, Step& step) {
    if (!table.has("stop")) return;
    const StrictTable stop = table.table("stop", {"free_deg", "travel_mm", "force_kN"});
    if (stop.present().size() != 1) {
        stop.complain("", stop.present().empty() ? "it does not say when" : "it names more than one",
                      "give one of free_deg, travel_mm and force_kN");
    }
    if (stop.has("free_deg")) {
        step.stop = StopKind::free_angle;
        step.stop_value = stop.angle("free_deg", above_below(0.0, 180.0));
    } else if (stop.has("travel_mm")) {
        step.stop = StopKind::travel;
        step.stop_value = stop.number("travel_mm", above_to(0.0, 1000.0));
    } else {
        step.stop = StopKind::force;
        step.stop_value = stop.number("force_kN", above_to(0.0, 1e5));
    }
}

void check_new(const StrictTable& table, const std::string& name, const std::vector<Step>& before) {
    const bool taken =
        std::any_of(before.begin(), before.end(), [&](const Step& other) { return other.name == name; });
    if (!taken) return;
    table.complain("name", "there is a step " + in_quotes(name) + " before this one",
                   "give every step a name of its own");
}

}  // namespace

const std::vector<std::string>& step_keys() {
    static const Words keys = {"name", "bends", "punch", "die", "place", "stop"};
    return keys;
}

Step read_step(const StrictTable& table, const Case& job, const std::vector<Step>& before) {
    Step step;
    step.name = table.text("name");
    check_new(table, step.name, before);
    step.bends = read_bends(table, job.part.bends, before);
    step.punch = read_punch(table, job.tools);
    read_die(table, job.tools, step);
    read_place(table, step);
    read_stop(table, step);
    check_work(table, step, job);
    return step;
}

}  // namespace overbend::scenes
