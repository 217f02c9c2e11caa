#include "scenes/window/panels/figure_tables.h"

#include <imgui.h>

#include <cmath>

#include "sim/units.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;

// Flush right in the present column.
void right_words(const std::string& words) {
    const float room = ImGui::GetContentRegionAvail().x, wide = ImGui::CalcTextSize(words.c_str()).x;
    if (wide < room) ImGui::SetCursorPosX(ImGui::GetCursorPosX() + room - wide);
    ImGui::TextUnformatted(words.c_str());
}

void heading_cell(const std::string& heading, bool right) {
    ImGui::BeginGroup();
    const float begin = ImGui::GetCursorPosX();
    std::size_t from = 0;
    while (from <= heading.size()) {
        const std::size_t end = std::min(heading.find('\n', from), heading.size());
        ImGui::SetCursorPosX(begin);
        const std::string line = heading.substr(from, end - from);
        if (right)
            right_words(line);
        else
            ImGui::TextUnformatted(line.c_str());
        from = end + 1;
    }
    ImGui::EndGroup();
}

std::string stop_travel(const job::StepResult& step) {
    return figure_words(step.stroke.stop_travel, 2);
}

}  // namespace

std::string figure_words(double value, int decimals) {
    if (!std::isfinite(value) || std::abs(value) > 1e200) return "-";
    const std::string number = words("%.*f", decimals, value);
    const bool is_zero = number.find_first_not_of("-0.") == std::string::npos;
    return is_zero && number[0] == '-' ? number.substr(1) : number;
}

void draw_lines(const char* id, const std::vector<FigureLine>& lines) {
    if (!ImGui::BeginTable(id, 2, ImGuiTableFlags_SizingFixedFit)) return;
    ImGui::TableSetupColumn("words", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("figure", ImGuiTableColumnFlags_WidthFixed);
    for (const FigureLine& line : lines) {
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        const bool alarm = line.weight == Ui::Weight::alarm;
        const ImGuiCol colour = alarm ? ImGuiCol_PlotLinesHovered : ImGuiCol_TextDisabled;
        ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(colour));
        ImGui::TextWrapped("%s", line.words.c_str());
        if (!alarm) ImGui::PopStyleColor();
        ImGui::TableNextColumn();
        right_words(line.figure);
        if (alarm) ImGui::PopStyleColor();
    }
    ImGui::EndTable();
}

void draw_table(const char* id, const FigureTable& table) {
    const int columns = static_cast<int>(table.headings.size());
    constexpr ImGuiTableFlags flags = ImGuiTableFlags_SizingFixedFit | ImGuiTableFlags_BordersInnerH;
    if (!ImGui::BeginTable(id, columns, flags)) return;
    for (int i = 0; i < columns; ++i)
        ImGui::TableSetupColumn(table.headings[i].c_str(), i == 0 ? ImGuiTableColumnFlags_WidthStretch
                                                                  : ImGuiTableColumnFlags_WidthFixed);
    ImGui::TableNextRow();
    ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
    for (int i = 0; i < columns; ++i) {
        ImGui::TableNextColumn();
        heading_cell(table.headings[i], i > 0);
    }
    ImGui::PopStyleColor();
    for (const std::vector<std::string>& row : table.rows) {
        ImGui::TableNextRow();
        for (int i = 0; i < columns; ++i) {
            ImGui::TableNextColumn();
            if (i > 0)
                right_words(row[i]);
            else
                ImGui::TextWrapped("%s", row[i].c_str());
        }
    }
    ImGui::EndTable();
}

void draw_stroke_figures(Ui& ui, const RanJob& job) {
    FigureTable table{{"stroke,\nbend", "stop\nmm", "force\nkN", "loaded\ndeg", "free\ndeg",
                       "spring-\nback deg", "clear-\nance mm"},
                      {}};
    int number = 0;
    for (const job::StepResult& step : job.result.steps) {
        ++number;
        const std::string force = figure_words(step.stroke.peak_force * job.c.width / 1000.0, 2);
        const std::string clear = figure_words(step.least.distance, 2);
        const std::string name = words("%d ", number) + step.name;
        if (step.bends.empty()) table.rows.push_back({name, "-", force, "-", "-", "-", clear});
        for (const job::BendResult& b : step.bends) {
            const bool first = &b == &step.bends.front();
            const std::string bend = job.c.part.bends[b.bend].name;
            table.rows.push_back({step.bends.size() == 1 ? name : words("%d ", number) + bend,
                                  first ? stop_travel(step) : "", first ? force : "",
                                  figure_words(b.loaded / degree, 1), figure_words(b.free / degree, 1),
                                  figure_words(b.springback() / degree, 2), first ? clear : ""});
        }
    }
    draw_table("strokes", table);
    ui.words(
        "Bend angles under load and after release; minimum clearance between the strip and anything it must "
        "not touch.",
        Ui::Weight::muted);
    if (job.result.finished_angle.empty()) return;
    ui.words("Finished part", Ui::Weight::heading);
    FigureTable part{{"bend", "made\ndeg", "drawn\ndeg", "error\ndeg"}, {}};
    for (std::size_t b = 0; b < job.result.finished_angle.size(); ++b) {
        const files::Bend& bend = job.c.part.bends[b];
        const double is = job.result.finished_angle[b] / degree, drawn = bend.angle / degree;
        part.rows.push_back(
            {bend.name, figure_words(is, 2), figure_words(drawn, 2), figure_words(is - drawn, 2)});
    }
    draw_table("part", part);
    draw_lines("off",
               {{"largest deviation from drawing", figure_words(job.result.profile.greatest(), 2) + " mm"}});
}

void draw_blank_figures(Ui& ui, const RanJob& job) {
    const job::FlatPattern& p = job.pattern;
    if (p.bends.empty()) return ui.words("No strokes, no blank.", Ui::Weight::muted);
    draw_lines("lengths", {{"blank, as simulated", figure_words(p.blank.length, 2) + " mm"},
                           {"mass", p.mass_g > 0.0 ? figure_words(p.mass_g, 2) + " g" : "-"}});
    ui.words("Developed length", Ui::Weight::heading);
    draw_lines("developed", {{"by the mechanics", p.simulated ? figure_words(p.mechanics, 2) + " mm" : "-"},
                             {"by DIN 6935", figure_words(p.din, 2) + " mm"},
                             {"by the handbook's k-factor", figure_words(p.handbook, 2) + " mm"}});
    ui.words("Bend lines and allowances", Ui::Weight::heading);
    FigureTable table{{"bend", "line at\nmm", "mech.\nmm", "DIN\nmm", "handb.\nmm"}, {}};
    for (const job::FlatBend& b : p.bends)
        table.rows.push_back({job.c.part.bends[b.bend].name, figure_words(b.at, 2),
                              p.simulated ? figure_words(b.mechanics, 2) : "-", figure_words(b.din, 2),
                              figure_words(b.handbook, 2)});
    draw_table("bends", table);
    ui.words(
        "Lines are measured from the blank's left end. The bend allowance is the length of blank in a bend.",
        Ui::Weight::muted);
    ui.words(job.c.blank_length ? "Blank length and bend lines are given in the case."
                                : "Blank length and bend lines are calculated from the drawing.",
             Ui::Weight::muted);
    if (p.cutouts.empty()) return;
    ui.words("Cut-outs", Ui::Weight::heading);
    FigureTable cutouts{{"cut-out, nearest bend", "distance\nmm", "minimum\nmm"}, {}};
    for (std::size_t i = 0; i < p.cutouts.size(); ++i) {
        const job::FlatCutout& cut = p.cutouts[i];
        cutouts.rows.push_back({words("%zu, ", i + 1) + job.c.part.bends[cut.bend].name,
                                figure_words(cut.edge_to_bend, 2), figure_words(cut.least, 2)});
    }
    draw_table("cutouts", cutouts);
}

}  // namespace overbend::window
