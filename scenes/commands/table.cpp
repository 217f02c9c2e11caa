// overbend table: a bend table for those who draw and unfold elsewhere.

#include <cstdio>
#include <filesystem>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "render/output/whole_file.h"
#include "render/picture/painter.h"
#include "scenes/commands/bend_options.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/job.h"
#include "scenes/commands/options.h"
#include "scenes/documents/bend_table/bend_table_sheet.h"
#include "scenes/documents/bend_table/bend_table_text.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_case.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

namespace fs = std::filesystem;

struct TableOptions {
    std::optional<std::string> material, tools, out;
    std::optional<double> thickness, width, shoulder, nose, die_angle, bottom, punch_angle;
    std::vector<double> openings, angles;
    double friction = 0.1;
    int layers = 11;
    Output output;
};

constexpr int most_rows = 500;

const std::vector<double>& usual_angles() {
    static const std::vector<double> degrees = {15.0, 30.0, 45.0, 60.0, 75.0, 90.0, 105.0, 120.0, 135.0};
    return degrees;
}

void check_sizes(const TableOptions& given) {
    if (given.openings.empty()) complain("--die-opening", "it is missing; give it, or --tools CASE");
    if (!given.shoulder) complain("--shoulder", "it is missing; give it, or --tools CASE");
    if (!given.nose) complain("--nose", "it is missing; give it, or --tools CASE");
    if (given.bottom && !given.die_angle)
        complain("--bottom", "an open die has no bottom; give --die-angle, or remove it");
}

void add_tools_of_sizes(const TableOptions& given, job::BendTableOrder& order) {
    check_sizes(given);
    const double t = order.thickness;
    for (const double opening : given.openings) {
        if (opening < 2.0 * t || opening > 300.0 * t)
            complain("--die-opening", millimetres(opening) + " does not suit the thickness; give from " +
                                          millimetres(2.0 * t) + " to " + millimetres(300.0 * t));
        job::VeeBend bend;
        bend.material = order.material;
        bend.thickness = t;
        bend.die_opening = opening;
        bend.shoulder_radius = *given.shoulder, bend.nose_radius = *given.nose;
        if (given.die_angle) bend.die_angle = *given.die_angle * degree;
        if (given.bottom) bend.bottom_radius = *given.bottom;
        if (given.punch_angle) bend.punch_angle = *given.punch_angle * degree;
        order.tools.push_back(job::table_tools(bend));
    }
}

// Tools of the case; its metal and thickness where none are given.
void add_tools_of_case(const TableOptions& given, job::BendTableOrder& order) {
    if (!given.openings.empty() || given.shoulder || given.nose || given.die_angle || given.bottom ||
        given.punch_angle)
        complain("--tools", "sizes of tools are given beside it; give either the case or the sizes");
    const files::Case c = files::read_case(*given.tools);
    order.tools = job::table_tools(c);
    if (order.tools.empty())
        complain("--tools",
                 "no stroke of " + *given.tools + " is a V stroke; give a case that has one, or the sizes");
    if (!given.material) order.material = c.material;
    if (!given.thickness) order.thickness = c.thickness, order.thickness_tolerance = c.thickness_tolerance;
}

job::BendTableOrder order_of(const TableOptions& given) {
    job::BendTableOrder order;
    if (given.material)
        order.material = files::read_card(*given.material, fs::path());
    else if (!given.tools)
        complain("--material", "it is missing; give it, or --tools CASE with the strip of the case");
    if (given.thickness)
        order.thickness = *given.thickness;
    else if (!given.tools)
        complain("--thickness", "it is missing; give it, or --tools CASE with the strip of the case");
    order.width = given.width;
    order.friction = given.friction;
    order.layers = given.layers;
    if (given.tools)
        add_tools_of_case(given, order);
    else
        add_tools_of_sizes(given, order);
    for (const double angle : given.angles.empty() ? usual_angles() : given.angles)
        order.angles.push_back(angle * degree);
    if (order.angles.size() * order.tools.size() > most_rows)
        complain("--angles, --die-opening", std::to_string(order.angles.size() * order.tools.size()) +
                                                " bends are asked for; give at most " +
                                                std::to_string(most_rows));
    return order;
}

void write_files(const std::string& out, const job::BendTableOrder& order,
                 const std::vector<job::BendTableRow>& rows) {
    const fs::path folder = make_folder(out);
    output::write_whole(folder / "table.csv", documents::bend_table_csv(order, rows));
    const std::vector<picture::DrawingList> pages = documents::bend_table_pages(order, rows);
    picture::write_pdf(pages, folder / "table.pdf");
    for (std::size_t i = 0; i < pages.size(); ++i)
        picture::write_svg(pages[i],
                           folder / (i == 0 ? "table.svg" : "table_" + std::to_string(i + 1) + ".svg"));
}

Exit run(const TableOptions& given) {
    job::BendTableOrder order = order_of(given);
    const bool watched = shows_progress(given.output);
    if (watched)
        order.progress = [](int done, int of) { std::fprintf(stderr, "\rbend %d of %d ", done, of); };
    const std::vector<job::BendTableRow> rows = job::bend_table(order);
    if (watched) std::fprintf(stderr, "\r%30s\r", "");
    if (given.out) write_files(*given.out, order, rows);
    if (given.output.json) {
        print_json(documents::bend_table_json(order, rows));
    } else {
        std::printf("%s, %g mm thick\n", order.material.title.c_str(), order.thickness);
        for (const documents::Table& table : documents::bend_tables(order, rows))
            std::printf("\n%s", documents::table_text(table).c_str());
        if (!given.output.quiet) print_list("How to use it:", documents::bend_table_notes());
    }
    for (const job::BendTableRow& r : rows)
        if (!r.made) return Exit::verdict_no;
    return Exit::done;
}

}  // namespace

void add_bend_table(Program& app) {
    Command command =
        app.command("table", "Bend table: deduction, allowance, radius, springback over the angle");
    const auto given = std::make_shared<TableOptions>();
    command.option("--material", given->material, "material card: a name such as dc01, or a file");
    command.option("--thickness", given->thickness, "of the strip, mm").check(from_to(0.05, 20.0, "mm"));
    command.option("--tools", given->tools,
                   "case whose V tools are used, and its strip where no material and thickness are given");
    command
        .option("--die-opening", given->openings,
                "one or more, with commas: between the shoulder arcs' centres, mm")
        .with_commas()
        .check(from_to(0.2, 1000.0, "mm"));
    command.option("--shoulder", given->shoulder, "shoulder radius of the die, mm")
        .check(from_to(0.01, 200.0, "mm"));
    command.option("--nose", given->nose, "nose radius of the punch, mm").check(from_to(0.01, 200.0, "mm"));
    command
        .option("--die-angle", given->die_angle,
                "included angle of the groove, deg; default: open below the shoulders")
        .check(between(0.0, 180.0, "deg"));
    command.option("--bottom", given->bottom, "radius of the groove's bottom, mm; default 0.4")
        .check(from_to(0.0, 200.0, "mm"));
    command.option("--punch-angle", given->punch_angle, "included angle of the punch, deg; default 30")
        .check(between(0.0, 180.0, "deg"));
    command
        .option("--angles", given->angles, "bend angles, deg, with commas; default 15 to 135 in steps of 15")
        .with_commas()
        .check(from_to(3.0, 175.0, "deg"));
    command.option("--friction", given->friction, "coefficient between strip and tools",
                   from_to(0.0, 0.3, ""));
    add_width(command, given->width);
    command.option("--layers", given->layers, "through the thickness", whole_from_to(5, 41));
    command.option("--out", given->out, "Folder for table.csv, table.pdf and table.svg");
    add_output(command, given->output);
    command.footer(
        "Example: overbend table --material dc01 --thickness 1 --die-opening 8 --shoulder 1 --nose 1 "
        "--angles 30,90\n"
        "Example: overbend table --tools cases/one-bend-dc01/case.toml --out out/table");
    command.runs([given] { return run(*given); });
}

}  // namespace overbend::commands
