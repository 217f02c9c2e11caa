#include "scenes/files/case/read_step.h"

#include <algorithm>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/read_work.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

namespace {

// ---- what a step names

int index_of(const Words& names, const std::string& name) {
    const auto found = std::find(names.begin(), names.end(), name);
    return found == names.end() ? -1 : static_cast<int>(found - names.begin());
}

template <class Named>
Words names_of(const std::vector<Named>& all) {
    Words names;
    for (const Named& each : all) names.push_back(each.name);
    return names;
}

// key: where the name stands, or the table with it
int index_of_tool(const StrictTable& step, const char* table_key, const std::string& name,
                  const std::vector<Tool>& tools, bool (Tool::*fits)() const, const char* right) {
    const bool named = step.is_text(table_key);
    const StrictTable table = named ? step : step.table(table_key, {});
    const char* const key = named ? table_key : "tool";
    const Words names = names_of(tools);
    const int index = index_of(names, name);
    if (index < 0)
        table.complain(key, "there is no tool " + in_quotes(name),
                       "the nearest is " + nearest_key(name, names) + "; tools here: " + listed(names));
    const Tool& found = tools[index];
    if ((found.*fits)()) return index;
    table.complain(key,
                   in_quotes(name) + " is of the kind " + kind_word(found) +
                       (found.is_die() == found.is_punch() ? ""
                        : found.is_die()                   ? ", a die"
                                                           : ", a punch"),
                   right);
}

void take_tools(const StrictTable& table, const StepTable& given, const std::vector<Tool>& tools,
                Step& step) {
    step.punch = index_of_tool(table, "punch", given.punch, tools, &Tool::is_punch, "name a punch");
    step.die = index_of_tool(table, "die", given.die.tool, tools, &Tool::is_die, "name a die");
    if (given.die.face) {
        step.die_face = *given.die.face;
        const Tool& die = tools[step.die];
        if (step.die_face > face_count(die))
            table.table("die", {}).complain(
                "face", in_quotes(die.name) + " has no face " + std::to_string(step.die_face),
                "give face = 1, its only one");
    }
    if (!given.pad.empty())
        step.pad = index_of_tool(table, "pad", given.pad, tools, &Tool::is_pad, "name a pad");
    if (given.clamp) {
        step.clamp = index_of_tool(table, "clamp", given.clamp->tool, tools, &Tool::is_clamp, "name a clamp");
        step.clamp_on = given.clamp->on;
    }
}

std::vector<int> indices_of(const StrictTable& table, const Words& names, const std::vector<Bend>& bends,
                            const std::vector<Step>& before) {
    std::vector<int> found;
    const Words known = names_of(bends);
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

void take_stop(const StrictTable& table, StopTable given, Step& step) {
    if (!table.has("stop")) return;
    const StrictTable stop = table.table("stop", {});
    if (stop.present().size() != 1)
        stop.complain("",
                      stop.present().empty() ? "it does not say when to stop" : "it gives more than one stop",
                      "give one of free_deg, travel_mm, force_kN and gap_mm");
    for (const StopKind kind : {StopKind::free_angle, StopKind::travel, StopKind::force, StopKind::gap})
        if (given.of(kind)) step.stop = kind, step.stop_value = *given.of(kind);
}

void check_new(const StrictTable& table, const std::string& name, const std::vector<Step>& before) {
    if (index_of(names_of(before), name) >= 0)
        table.complain("name", "there is a step " + in_quotes(name) + " before this one",
                       "give each step a different name");
}

}  // namespace

Step read_step(const StrictTable& table, const Case& job, const std::vector<Step>& before) {
    const StepTable given = read_as<StepTable>(table);
    Step step;
    step.name = given.name;
    check_new(table, step.name, before);
    step.bends = indices_of(table, given.bends, job.part.bends, before);
    take_tools(table, given, job.tools, step);
    step.face = given.place.face, step.first = given.place.first, step.shift = given.place.shift;
    take_stop(table, given.stop, step);
    check_work(table, step, job, before);
    return step;
}

}  // namespace overbend::files
