#include "scenes/files/case/read_step.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/read_work.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

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
                   in_quotes(tools[index].name) + " is of the kind " + kind_word(tools[index]) +
                       (tools[index].is_die() ? ", a die" : ""),
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
        place.complain(
            key,
            in_quotes(die.name) + " is of the kind " + kind_word(die) + (die.is_punch() ? ", a punch" : ""),
            "name a die");
    }
    if (named) return;
    step.die_face = place.whole_number_or("face", 1, 1, 2);
    if (step.die_face > face_count(die)) {
        place.complain("face", in_quotes(die.name) + " has no face " + std::to_string(step.die_face),
                       "give face = 1, its only one");
    }
}

void take_pad(const StrictTable& table, const std::vector<Tool>& tools, Step& step) {
    if (!table.has("pad")) return;
    step.pad = read_tool_name(table, "pad", tools);
    const Tool& pad = tools[*step.pad];
    if (!pad.is_pad())
        table.complain("pad", in_quotes(pad.name) + " is of the kind " + kind_word(pad), "name a pad");
}

// A name alone, or a name and where its spring stands.
void take_clamp(const StrictTable& table, const std::vector<Tool>& tools, Step& step) {
    if (!table.has("clamp")) return;
    if (!table.is_text("clamp") && !table.is_table("clamp"))
        table.complain("clamp", "it is neither a name nor a table",
                       "give a clamp's name, or { tool = \"name\", on = \"frame\" }");
    const bool named = table.is_text("clamp");
    const StrictTable place = named ? table : table.table("clamp", {"tool", "on"});
    const char* const key = named ? "clamp" : "tool";
    step.clamp = read_tool_name(place, key, tools);
    const Tool& clamp = tools[*step.clamp];
    if (!clamp.is_clamp())
        place.complain(key, in_quotes(clamp.name) + " is of the kind " + kind_word(clamp), "name a clamp");
    if (!named && place.word_or("on", "frame", {"frame", "ram"}) == "ram") step.clamp_on = ClampOn::ram;
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
        if (std::count(found.begin(), found.end(), bend) > 0) {
            table.complain_in_list("bends", i, in_quotes(names[i]) + " is named twice",
                                   "name each bend once in a step");
        }
        // A bend is pressed again, or is made already.
        for (const Step& step : before) {
            const bool makes_it = std::count(step.bends.begin(), step.bends.end(), bend) > 0;
            if (!makes_it || step.stop != StopKind::drawing_angle) continue;
            table.complain_in_list(
                "bends", i,
                in_quotes(names[i]) + " is already bent to the drawing's angle in step " +
                    in_quotes(step.name),
                "name it in one step only, or give step " + in_quotes(step.name) + " a stop");
        }
        found.push_back(bend);
    }
    if (found.size() > 2) {
        table.complain("bends", std::to_string(found.size()) + " bends in one step", "give one or two");
    }
    std::sort(found.begin(), found.end());
    return found;
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
    const StrictTable stop = table.table("stop", {"free_deg", "travel_mm", "force_kN", "gap_mm"});
    if (stop.present().size() != 1) {
        stop.complain("",
                      stop.present().empty() ? "it does not say when to stop" : "it gives more than one stop",
                      "give one of free_deg, travel_mm, force_kN and gap_mm");
    }
    if (stop.has("free_deg")) {
        step.stop = StopKind::free_angle;
        step.stop_value = stop.angle("free_deg", above_below(0.0, 180.0));
    } else if (stop.has("travel_mm")) {
        step.stop = StopKind::travel;
        step.stop_value = stop.number("travel_mm", above_to(0.0, 1000.0));
    } else if (stop.has("gap_mm")) {
        step.stop = StopKind::gap;
        step.stop_value = stop.number("gap_mm", from_to(0.0, 100.0));
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
                   "give each step a different name");
}

}  // namespace

const std::vector<std::string>& step_keys() {
    static const Words keys = {"name", "bends", "punch", "die", "pad", "clamp", "place", "stop"};
    return keys;
}

Step read_step(const StrictTable& table, const Case& job, const std::vector<Step>& before) {
    Step step;
    step.name = table.text("name");
    check_new(table, step.name, before);
    step.bends = read_bends(table, job.part.bends, before);
    step.punch = read_punch(table, job.tools);
    read_die(table, job.tools, step);
    take_pad(table, job.tools, step);
    take_clamp(table, job.tools, step);
    read_place(table, step);
    read_stop(table, step);
    check_work(table, step, job, before);
    return step;
}

}  // namespace overbend::files
