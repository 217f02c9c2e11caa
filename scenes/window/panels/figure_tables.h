// The tables of a job's figures, drawn by ImGui into the present panel; shared among this folder's own files.

#pragma once

#include <string>
#include <vector>

#include "render/ui/ui.h"
#include "scenes/window/job/job_run.h"

namespace overbend::window {

void draw_stroke_figures(ui::Ui& ui, const RanJob& job);
void draw_blank_figures(ui::Ui& ui, const RanJob& job);
void draw_press_figures(ui::Ui& ui, const RanJob& job);
void draw_tool_figures(ui::Ui& ui, const RanJob& job);
void draw_cost_figures(ui::Ui& ui, const RanJob& job);

// ---- what they are made of

// Words at the left, a figure at the right, a line each.
struct FigureLine {
    std::string words, figure;
    ui::Ui::Weight weight = ui::Ui::Weight::plain;
};
void draw_lines(const char* id, const std::vector<FigureLine>& lines);

// The first column holds words, the others figures; "\n" in a heading makes it two lines.
struct FigureTable {
    std::vector<std::string> headings;
    std::vector<std::vector<std::string>> rows;
};
void draw_table(const char* id, const FigureTable& table);

// A number with so many decimals; "-" for what is not known.
std::string figure_words(double value, int decimals);

}  // namespace overbend::window
