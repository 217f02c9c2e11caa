// Steps and tools of the case, to be changed.

#include <imgui.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "scenes/files/case/case_changes.h"
#include "scenes/files/case/tool_sizes.h"
#include "scenes/window/panels/edit_fields.h"
#include "scenes/window/shared/flow.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;
using K = sf::Keyboard;

// ---- a step

struct StopForm {
    files::StopKind kind;
    const char* choice;  // as it is chosen
    const char* format;  // as it is typed
    double least, most, by;
    double unit;      // of the value in the case
    double at_first;  // what stands there when it is chosen
};
const StopForm stop_forms[] = {
    {files::StopKind::drawing_angle, "the drawing's angle", "", 0.0, 0.0, 0.0, 1.0, 0.0},
    {files::StopKind::free_angle, "an angle, free", "%.2f deg", 0.0, 181.0, 0.5, degree, 90.0},
    {files::StopKind::travel, "a travel", "%.3f mm", 0.0, 1e5, 0.05, 1.0, 3.0},
    {files::StopKind::force, "a force", "%.2f kN", 0.0, 1e6, 0.5, 1.0, 5.0},
    {files::StopKind::gap, "a gap (of a hem)", "%.3f mm", 0.0, 1e5, 0.05, 1.0, 0.5}};

const StopForm& form_of(files::StopKind kind) {
    for (const StopForm& form : stop_forms)
        if (form.kind == kind) return form;
    return stop_forms[0];
}

bool draw_stop(Ui& ui, CaseEdits& edits, int index) {
    const files::Step& step = edits.draft().steps[index];
    const std::string what = "stop of step '" + step.name + "'";
    std::vector<std::string> choices;
    int chosen = 0;
    for (const StopForm& form : stop_forms) {
        if (form.kind == step.stop) chosen = static_cast<int>(choices.size());
        choices.emplace_back(form.choice);
    }
    bool run = false;
    if (ui.choice("Stop at", chosen, choices, "What makes the ram stop and return")) {
        const StopForm& form = stop_forms[chosen];
        run = edits.change(what, [&](files::Case& c) {
            files::Step& next = c.steps[index];
            next.stop = form.kind;
            next.stop_value = form.at_first * form.unit;
            if (form.kind == files::StopKind::free_angle && !next.bends.empty())
                next.stop_value = std::abs(c.part.bends[next.bends[0]].angle);
        });
    }
    const StopForm& form = form_of(edits.draft().steps[index].stop);
    if (form.kind == files::StopKind::drawing_angle) return run;
    double value = edits.draft().steps[index].stop_value / form.unit;
    if (ui.number("Stop", value, form.least, form.most, form.by, form.format))
        run =
            edits.change(what, [&](files::Case& c) { c.steps[index].stop_value = value * form.unit; }) || run;
    return run;
}

bool draw_tool_choice(Ui& ui, CaseEdits& edits, int index, const char* control, int files::Step::*member,
                      bool (files::Tool::*fits)() const) {
    const files::Case& c = edits.draft();
    std::vector<int> tools;
    std::vector<std::string> names;
    int chosen = 0;
    for (int i = 0; i < static_cast<int>(c.tools.size()); ++i) {
        if (!(c.tools[i].*fits)()) continue;
        if (c.steps[index].*member == i) chosen = static_cast<int>(tools.size());
        tools.push_back(i), names.push_back(c.tools[i].name);
    }
    if (!ui.choice(control, chosen, names)) return false;
    return edits.change(std::string(control) + " of step '" + c.steps[index].name + "'",
                        [&](files::Case& next) {
                            next.steps[index].*member = tools[chosen];
                            next.steps[index].die_face = 1;
                        });
}

bool draw_die_face(Ui& ui, CaseEdits& edits, int index) {
    const files::Case& c = edits.draft();
    const auto* die = std::get_if<tool::VeeDie>(&c.tools[c.steps[index].die].shape);
    if (!die || die->faces.size() < 2) return false;
    int face = c.steps[index].die_face - 1;
    if (!ui.choice("Die's face", face, {"1", "2"}, "The groove that faces up")) return false;
    return edits.change("die's face of step '" + c.steps[index].name + "'",
                        [&](files::Case& next) { next.steps[index].die_face = face + 1; });
}

bool draw_lying(Ui& ui, CaseEdits& edits, int index) {
    const std::string of = " of step '" + edits.draft().steps[index].name + "'";
    bool run = false;
    int face = edits.draft().steps[index].face == files::Face::up ? 0 : 1;
    if (ui.choice("Blank's face", face, {"up", "down"}, "Which way the blank's upper face points"))
        run = edits.change("face" + of, [&](files::Case& c) {
            c.steps[index].face = face == 0 ? files::Face::up : files::Face::down;
        });
    int first = edits.draft().steps[index].first == files::First::left ? 0 : 1;
    if (ui.choice("Left end", first, {"left end", "right end"}, "Which end of the blank lies on the left"))
        run = edits.change("first end" + of, [&](files::Case& c) {
            c.steps[index].first = first == 0 ? files::First::left : files::First::right;
        }) || run;
    double shift = edits.draft().steps[index].shift;
    if (ui.number("Shift", shift, -1000.0, 1000.0, 0.1, "%.3f mm",
                  "Distance from the punch's axis to the bend line, to the right"))
        run = edits.change("shift" + of, [&](files::Case& c) { c.steps[index].shift = shift; }) || run;
    return run;
}

bool move_step(CaseEdits& edits, int& chosen, int by) {
    const int to = chosen + by;
    const std::string name = edits.draft().steps[chosen].name;
    const int from = chosen;
    chosen = to;
    return edits.change("step '" + name + (by < 0 ? "' earlier" : "' later"),
                        [&](files::Case& c) { std::swap(c.steps[from], c.steps[to]); });
}

bool draw_order(Ui& ui, CaseEdits& edits, int& chosen) {
    const int count = static_cast<int>(edits.draft().steps.size());
    const bool one = chosen >= 0 && chosen < count;
    Flow flow(ui);
    bool run = false;
    if (flow.button("Earlier", {K::Up, true}, "Moves the selected step one place up",
                    ui::enabled_if(one && chosen > 0)))
        run = move_step(edits, chosen, -1);
    if (flow.button("Later", {K::Down, true}, "Moves the selected step one place down",
                    ui::enabled_if(one && chosen + 1 < count)))
        run = move_step(edits, chosen, 1) || run;
    return run;
}

// ---- a tool

bool draw_size(Ui& ui, CaseEdits& edits, int tool, int size, const files::ToolSize& s) {
    const bool angle = s.unit == files::SizeUnit::rad;
    std::string label = s.words;
    label[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(label[0])));
    double value = angle ? s.value / degree : s.value;
    const std::string& name = edits.draft().tools[tool].name;
    if (!ui.number(label, value, 0.0, angle ? 181.0 : 5000.0, angle ? 1.0 : 0.1,
                   angle ? "%.2f deg" : "%.3f mm"))
        return false;
    return edits.change(s.words + " of '" + name + "'", [&](files::Case& c) {
        files::set_size(c.tools[files::own_tool(c, tool)], size, angle ? value * degree : value);
    });
}

bool is_used(const files::Case& c, int tool) {
    return std::any_of(c.steps.begin(), c.steps.end(), [&](const files::Step& s) {
        return s.punch == tool || s.die == tool || s.pad == tool || s.clamp == tool;
    });
}

}  // namespace

bool draw_step_fields(Ui& ui, CaseEdits& edits, int& chosen) {
    ui.words("Steps", Ui::Weight::heading);
    const int count = static_cast<int>(edits.draft().steps.size());
    chosen = std::min(chosen, count - 1);
    bool run = draw_order(ui, edits, chosen);
    for (int i = 0; i < count; ++i) {
        const files::Step& step = edits.draft().steps[i];
        const std::string row = words("%d  %s: %s", i + 1, step.name.c_str(),
                                      files::stop_words(step.stop, step.stop_value).c_str());
        if (ui.entry(row, ui::chosen_if(chosen == i))) chosen = chosen == i ? -1 : i;
        if (chosen == i) {
            const float indent = 0.8f * ImGui::GetFontSize();
            ImGui::Indent(indent);
            run = draw_stop(ui, edits, i) || run;
            run = draw_tool_choice(ui, edits, i, "Punch", &files::Step::punch, &files::Tool::is_punch) || run;
            run = draw_tool_choice(ui, edits, i, "Die", &files::Step::die, &files::Tool::is_die) || run;
            run = draw_die_face(ui, edits, i) || run;
            run = draw_lying(ui, edits, i) || run;
            ImGui::Unindent(indent);
        }
        draw_mistake(ui, edits, words("step[%d]", i + 1));
    }
    return run;
}

bool draw_tool_fields(Ui& ui, CaseEdits& edits, int& chosen) {
    ui.words("Tools", Ui::Weight::heading);
    bool run = false;
    for (int i = 0; i < static_cast<int>(edits.draft().tools.size()); ++i) {
        if (!is_used(edits.draft(), i)) continue;
        const files::Tool tool = edits.draft().tools[i];
        const std::string row =
            tool.name + ": " + files::kind_word(tool) + (tool.from_rack ? ", of the rack" : "");
        if (ui.entry(row, ui::chosen_if(chosen == i))) chosen = chosen == i ? -1 : i;
        if (chosen == i) {
            const float indent = 0.8f * ImGui::GetFontSize();
            ImGui::Indent(indent);
            const std::vector<files::ToolSize> sizes = files::sizes_of(tool);
            if (sizes.empty()) ui.words("its outline comes from the file", Ui::Weight::muted);
            const std::size_t before = edits.draft().tools.size();
            for (std::size_t s = 0; s < sizes.size(); ++s)
                run = draw_size(ui, edits, i, static_cast<int>(s), sizes[s]) || run;
            // Where it was changed, though it is a step that it does not go with.
            draw_mistake(ui, edits, "step[");
            // A copy stands for a tool of the rack now.
            if (edits.draft().tools.size() > before) chosen = static_cast<int>(before);
            ImGui::Unindent(indent);
        }
        draw_mistake(ui, edits, tool_key(edits.draft(), i));
    }
    return run;
}

}  // namespace overbend::window
