#include "scenes/window/panels/figure_tables.h"

#include <imgui.h>

#include "sim/words.h"

namespace overbend::window {

namespace {

using documents::Cell;
using documents::Column;
using documents::Table;
using ui::Ui;

constexpr std::size_t side_by_side = 4;  // columns that go into a panel without brief names

// Flush right in the present column.
void right_words(const std::string& words) {
    const float room = ImGui::GetContentRegionAvail().x, wide = ImGui::CalcTextSize(words.c_str()).x;
    if (wide < room) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room - wide);
    ImGui::TextUnformatted(words.c_str());
}

void right_or_left(const std::string& words, bool right) {
    if (right)
        right_words(words);
    else
        ImGui::TextWrapped("%s", words.c_str());
}

void draw_cell(const Column& column, const Cell& cell, bool right) {
    const bool alarm = cell.severity != Severity::within;
    if (alarm) ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_PlotLinesHovered));
    right_or_left(printed(column, cell), right);
    if (alarm) ImGui::PopStyleColor();
}

void draw_heads(const Table& table) {
    ImGui::TableNextRow();
    ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
    for (const Column& column : table.columns) {
        ImGui::TableNextColumn();
        ImGui::BeginGroup();
        const float begin = ImGui::GetCursorPosX();
        const bool right = column.decimals != documents::in_words;
        right_or_left(column.name, right);
        ImGui::SetCursorPosX(begin);
        right_or_left(column.unit, right);
        ImGui::EndGroup();
    }
    ImGui::PopStyleColor();
}

void draw_columns(const Table& table) {
    constexpr ImGuiTableFlags flags = ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerH;
    if (!ImGui::BeginTable(table.title.c_str(), static_cast<int>(table.columns.size()), flags)) return;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const bool words = i == 0 || table.columns[i].decimals == documents::in_words;
        ImGui::TableSetupColumn(table.columns[i].name.c_str(), words ? ImGuiTableColumnFlags_WidthStretch
                                                                     : ImGuiTableColumnFlags_WidthFixed);
    }
    draw_heads(table);
    for (const std::vector<Cell>& row : table.rows) {
        ImGui::TableNextRow();
        for (std::size_t i = 0; i < row.size(); ++i) {
            ImGui::TableNextColumn();
            draw_cell(table.columns[i], row[i], table.columns[i].decimals != documents::in_words);
        }
    }
    ImGui::EndTable();
}

// Names of the columns at the left, figures at the right, a line each.
void draw_row(Ui& ui, const Table& table, const std::vector<Cell>& row) {
    const std::string name = printed(table.columns.front(), row.front());
    ui.words(name, Ui::Weight::plain);
    if (!ImGui::BeginTable((table.title + name).c_str(), 2, ImGuiTableFlags_SizingFixedFit)) return;
    ImGui::TableSetupColumn("words", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("figure", ImGuiTableColumnFlags_WidthFixed);
    for (std::size_t i = 1; i < row.size(); ++i) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
        ImGui::TextWrapped("%s", table.columns[i].name.c_str());
        ImGui::PopStyleColor();
        ImGui::TableNextColumn();
        Cell cell = row[i];
        if (cell.known && cell.unit.empty()) cell.unit = table.columns[i].unit;
        draw_cell(table.columns[i], cell, true);
    }
    ImGui::EndTable();
}

}  // namespace

void draw_table(Ui& ui, const Table& whole) {
    const Table table = brief(whole);
    ui.words(table.title, Ui::Weight::heading);
    const bool has_brief = table.columns.size() < whole.columns.size();
    if (has_brief || table.columns.size() <= side_by_side)
        draw_columns(table);
    else
        for (const std::vector<Cell>& row : table.rows) draw_row(ui, table, row);
    for (const std::string& note : table.notes) ui.words(note, Ui::Weight::muted);
}

FigurePage stroke_figures(const RanJob& job) {
    FigurePage page{{documents::strokes_table(job.c, job.result), documents::bends_table(job.c, job.result),
                     documents::clearances_table(job.c, job.result)},
                    {}};
    if (job.result.finished_angle.empty()) return page;
    page.tables.push_back(documents::finished_table(job.c, job.result));
    page.words = {words("Largest deviation from the drawing: %.2f mm.", job.result.profile.greatest())};
    return page;
}

FigurePage blank_figures(const RanJob& job) {
    const job::FlatPattern& p = job.pattern;
    if (p.bends.empty()) return {{}, {"No strokes, no blank."}};
    FigurePage page{{documents::lengths_table(p), documents::bend_lines_table(job.c, p)}, {}};
    if (!p.cutouts.empty()) page.tables.push_back(documents::cutouts_table(job.c, p));
    if (p.mass_g > 0.0) page.words.push_back(words("The blank weighs %.2f g.", p.mass_g));
    page.words.push_back(job.c.blank_length ? "Blank length and bend lines are given in the case."
                                            : "Blank length and bend lines are calculated from the drawing.");
    return page;
}

FigurePage press_figures(const RanJob& job) {
    if (!job.c.press) return {{}, {"The case names no press, so force and space are not checked."}};
    return {{documents::press_checks_table(job.c, job.shop, documents::Checks::all),
             documents::press_strokes_table(job.c, job.shop)},
            {words("%s: %g kN, %g mm", job.c.press->title.c_str(), job.c.press->force, job.c.press->stroke)}};
}

FigurePage tool_figures(const RanJob& job) {
    if (job.shop.tools.empty()) return {{}, {"No tool was loaded."}};
    FigurePage page{{documents::strength_table(job.c, job.shop), documents::making_table(job.c, job.shop)},
                    {}};
    const Table springs = documents::springs_table(job.c, job.shop);
    if (!springs.rows.empty()) page.tables.push_back(springs);
    return page;
}

FigurePage cost_figures(const RanJob& job) {
    if (job.shop.cost.lines.empty()) return {{}, {"No costs: the job was not run."}};
    return {{documents::cost_table(job.shop), documents::groups_table(job.shop, {job.shop.rates.batch}),
             documents::tool_costs_table(job.shop)},
            {}};
}

}  // namespace overbend::window
