// The parts of the panel in which a case is changed. Each returns true when the job is to be run again.

#pragma once

#include "render/ui/ui.h"
#include "scenes/window/panels/case_edits.h"

namespace overbend::window {

bool draw_strip_fields(ui::Ui& ui, CaseEdits& edits);
// chosen: index of the step or tool whose fields are open, -1 for none
bool draw_step_fields(ui::Ui& ui, CaseEdits& edits, int& chosen);
bool draw_tool_fields(ui::Ui& ui, CaseEdits& edits, int& chosen);

// What is wrong with the draft, where it is about a key that begins like this: "strip", "step[2]".
void draw_mistake(ui::Ui& ui, const CaseEdits& edits, const std::string& beginning);
// The place of a tool in the file, "tool[3]"; empty of a tool of the rack.
std::string tool_key(const files::Case& c, int tool);

}  // namespace overbend::window
