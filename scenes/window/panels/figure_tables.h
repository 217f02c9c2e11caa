// Tables of figures drawn by ImGui into the present panel, in the little room that it has.

#pragma once

#include <string>
#include <vector>

#include "render/ui/ui.h"
#include "scenes/documents/tables/job_tables.h"
#include "scenes/window/job/job_run.h"

namespace overbend::window {

// With title and notes: brief columns side by side; without, each row with its figures one below another.
void draw_table(ui::Ui& ui, const documents::Table& table);

// The tables of a page of figures, and what else is to be said there.
struct FigurePage {
    std::vector<documents::Table> tables;
    std::vector<std::string> words;
};
FigurePage stroke_figures(const RanJob& job);
FigurePage blank_figures(const RanJob& job);
FigurePage press_figures(const RanJob& job);
FigurePage tool_figures(const RanJob& job);
FigurePage cost_figures(const RanJob& job);

}  // namespace overbend::window
