// overbend list: the material cards, racks of tools, presses and tool steels that a case can name.

#include <algorithm>
#include <cmath>
#include <functional>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/commands/commands.h"
#include "scenes/commands/exit_status.h"
#include "scenes/commands/options.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_press.h"
#include "scenes/files/case/read_steel.h"
#include "scenes/files/case/read_tools.h"
#include "scenes/files/case/tool_sizes.h"
#include "sim/material/flow_curve.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

using Json = nlohmann::ordered_json;
using Cells = std::vector<std::string>;

constexpr double proof_strain = 0.002;  // plastic strain at which a yield strength is read

struct ListCommand {
    std::string what = "all";
    Output output;
};

// A column of figures: its key in the JSON, its head in the table, and how to read it.
template <class Thing>
struct Figure {
    std::string key, head;
    std::function<std::optional<double>(const Thing&)> of;
};

std::string cell(std::optional<double> value) {
    return value ? words(*value >= 100.0 ? "%.0f" : "%.4g", *value) : "-";
}

// What is listed, as tables or for the JSON.
struct Lists {
    Output output;
    Json json = {{"format", 1}};
    int tables = 0;  // printed
};

// The first columns, as many as `left`, and the last one are left-aligned; figures are right-aligned.
void print_table(Lists& lists, const std::string& title, const Cells& heads, const std::vector<Cells>& rows,
                 std::size_t left) {
    if (lists.output.json || lists.output.quiet) return;
    std::vector<std::size_t> widths;
    for (std::size_t c = 0; c < heads.size(); ++c) {
        widths.push_back(heads[c].size());
        for (const Cells& row : rows) widths[c] = std::max(widths[c], row[c].size());
    }
    const auto print_row = [&](const Cells& row) {
        std::cout << "  ";
        for (std::size_t c = 0; c + 1 < row.size(); ++c) {
            const std::string space(widths[c] - row[c].size(), ' ');
            std::cout << (c < left ? row[c] + space : space + row[c]) << "  ";
        }
        std::cout << row.back() << "\n";
    };
    std::cout << (lists.tables++ > 0 ? "\n" : "") << title << "\n\n";
    print_row(heads);
    for (const Cells& row : rows) print_row(row);
}

template <class Thing>
void add_list(const std::string& title, const std::string& key, const std::vector<Thing>& things,
              const std::vector<Figure<Thing>>& figures, Lists& lists) {
    Cells heads = {"name"};
    for (const Figure<Thing>& f : figures) heads.push_back(f.head);
    heads.push_back("title");
    std::vector<Cells> rows;
    for (const Thing& thing : things) {
        Json one = {{"name", thing.name}, {"title", thing.title}};
        Cells row = {thing.name};
        for (const Figure<Thing>& f : figures) {
            const std::optional<double> value = f.of(thing);
            one[f.key] = value ? Json(*value) : Json(nullptr);
            row.push_back(cell(value));
        }
        row.push_back(thing.title);
        lists.json[key].push_back(one);
        rows.push_back(row);
    }
    print_table(lists, title, heads, rows, 1);
}

// What a file gives; 0 stands for nothing given.
std::optional<double> if_given(double value) {
    return value > 0.0 ? std::optional(value) : std::nullopt;
}

void list_materials(Lists& lists) {
    using material::Card;
    static const std::vector<Figure<Card>> figures = {
        {"yield_MPa", "yield MPa",
         [](const Card& c) {
             return material::flow_point(c.hardening, c.youngs_modulus, proof_strain).stress;
         }},
        {"tensile_strength_MPa", "strength MPa", [](const Card& c) { return if_given(c.tensile_strength); }},
        {"elongation_percent", "elongation %", [](const Card& c) { return if_given(100.0 * c.elongation); }},
        {"youngs_modulus_MPa", "E MPa", [](const Card& c) { return c.youngs_modulus; }},
        {"density_kg_m3", "kg/m3", [](const Card& c) { return if_given(c.density); }}};
    std::vector<Card> cards;
    for (const std::string& name : files::known_cards()) cards.push_back(files::read_card(name, {}));
    add_list("Material cards", "materials", cards, figures, lists);
}

struct NamedPress : files::Press {
    std::string name;
};

void list_presses(Lists& lists) {
    static const std::vector<Figure<NamedPress>> figures = {
        {"force_kN", "force kN", [](const NamedPress& p) { return p.force; }},
        {"stroke_mm", "stroke mm", [](const NamedPress& p) { return p.stroke; }},
        {"daylight_mm", "daylight mm", [](const NamedPress& p) { return p.daylight; }},
        {"throat_mm", "throat mm", [](const NamedPress& p) { return p.throat; }},
        {"line_load_kN_per_m", "kN/m", [](const NamedPress& p) { return p.line_load; }}};
    std::vector<NamedPress> presses;
    for (const std::string& name : files::known_names(files::presses))
        presses.push_back({files::read_press_card(name, {}), name});
    add_list("Presses", "presses", presses, figures, lists);
}

void list_steels(Lists& lists) {
    using shop::ToolSteel;
    static const std::vector<Figure<ToolSteel>> figures = {
        {"hardness_HV", "HV", [](const ToolSteel& s) { return std::round(s.hardness); }},
        {"compressive_yield_MPa", "yield MPa", [](const ToolSteel& s) { return s.compressive_yield; }},
        {"bending_strength_MPa", "bending MPa", [](const ToolSteel& s) { return s.bending_strength; }},
        {"price_per_kg", "price/kg", [](const ToolSteel& s) { return if_given(s.price); }}};
    std::vector<ToolSteel> steels;
    for (const std::string& name : files::known_names(files::tool_steels))
        steels.push_back(files::read_tool_steel(name, {}));
    add_list("Tool steels", "steels", steels, figures, lists);
}

// The sizes that a tool is chosen by: angles, openings and radii. The outer sizes of the block are left out.
std::string main_sizes(const std::vector<files::ToolSize>& sizes) {
    std::string text;
    for (const files::ToolSize& size : sizes) {
        const bool outer = size.key == "height_mm" || size.key == "shank_width_mm" ||
                           size.key == "bottom_radius_mm" || (size.key == "width_mm" && !text.empty());
        if (outer) continue;
        const bool angle = size.unit == files::SizeUnit::rad;
        text += (text.empty() ? "" : ", ") + size.words + " " +
                words(angle ? "%.4g deg" : "%.4g mm", angle ? size.value / degree : size.value);
    }
    return text;
}

void list_racks(Lists& lists) {
    for (const std::string& name : files::known_names(files::tool_racks)) {
        const files::Rack rack = files::read_rack(name, {});
        Json tools = Json::array();
        std::vector<Cells> rows;
        for (const files::Tool& tool : rack.tools) {
            Json sizes;
            for (const files::ToolSize& size : files::sizes_of(tool))
                sizes[size.words] = size.unit == files::SizeUnit::rad
                                        ? std::round(1e6 * size.value / degree) / 1e6
                                        : size.value;
            tools.push_back({{"name", tool.name}, {"kind", files::kind_word(tool)}, {"sizes", sizes}});
            rows.push_back({tool.name, files::kind_word(tool), main_sizes(files::sizes_of(tool))});
        }
        lists.json["racks"].push_back({{"name", name}, {"title", rack.title}, {"tools", tools}});
        print_table(lists, "Rack " + name + ": " + rack.title, {"tool", "kind", "sizes"}, rows, 2);
    }
}

void list(const ListCommand& given) {
    Lists lists;
    lists.output = given.output;
    const auto asked = [&](const char* what) { return given.what == "all" || given.what == what; };
    if (asked("materials")) list_materials(lists);
    if (asked("racks")) list_racks(lists);
    if (asked("presses")) list_presses(lists);
    if (asked("steels")) list_steels(lists);
    if (given.output.json) print_json(lists.json);
}

}  // namespace

void add_list(Program& app, int& status) {
    Command command =
        app.command("list", "Materials, racks of tools, presses and tool steels that a case can name");
    const auto given = std::make_shared<ListCommand>();
    command.option("what", given->what, "materials, racks, presses, steels or all")
        .check(one_of({"materials", "racks", "presses", "steels", "all"}))
        .shows_default();
    add_output(command, given->output);
    command.footer(
        "Example: overbend list materials\n"
        "         overbend list racks --json");
    command.callback([given, &status] {
        list(*given);
        status = static_cast<int>(Exit::done);
    });
}

}  // namespace overbend::commands
