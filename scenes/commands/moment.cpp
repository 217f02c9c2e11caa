// overbend moment: a strip in pure bending, from options.

#include <cmath>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/commands/commands.h"
#include "scenes/commands/options.h"
#include "scenes/documents/tables/table.h"
#include "scenes/files/case/read_card.h"
#include "sim/material/layer_law.h"
#include "sim/material/pure_bending.h"

namespace overbend::commands {

namespace {

struct MomentOptions {
    std::string material;
    double thickness = 1.0;          // mm
    std::vector<double> curvatures;  // 1/mm
    std::optional<double> width;     // mm
    int layers = 41;
    Output output;
};

void print_points(const std::vector<material::BendingPoint>& points, const MomentOptions& given) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const material::BendingPoint& p : points) {
        list.push_back({{"curvature_per_mm", p.curvature},
                        {"moment_N_mm_per_mm", p.moment},
                        {"free_curvature_per_mm", p.free_curvature},
                        {"thickness_mm", p.thickness},
                        {"inner_log_strain", p.inner_log_strain},
                        {"outer_log_strain", p.outer_log_strain}});
    }
    if (given.output.json) return print_json({{"points", list}});

    documents::Table table{"",
                           {{"Curvature", "1/mm", 6},
                            {"Moment", "N mm/mm", 3},
                            {"Free curvature", "1/mm", 6},
                            {"Thickness", "mm", 5},
                            {"Inner strain", "", 5},
                            {"Outer strain", "", 5}},
                           {}};
    for (const material::BendingPoint& p : points)
        table.rows.push_back(
            {p.curvature, p.moment, p.free_curvature, p.thickness, p.inner_log_strain, p.outer_log_strain});
    std::cout << documents::table_text(table);
}

Exit run(const MomentOptions& given) {
    for (const double curvature : given.curvatures) {
        if (std::abs(curvature) * given.thickness < 1.9) continue;
        complain("--curvatures", std::to_string(curvature) + " folds the inner surface; give less than " +
                                     std::to_string(1.9 / given.thickness) + " (1/mm) at this thickness");
    }
    const material::Card card = files::read_card(given.material, std::filesystem::path());
    const double hold = given.width ? material::width_hold(*given.width / given.thickness) : 1.0;
    print_points(material::bend_in_pure_moment(card, given.thickness, given.curvatures, given.layers, hold),
                 given);
    return Exit::done;
}

}  // namespace

void add_moment(Program& app) {
    static MomentOptions given;
    Command command = app.command("moment", "Bend a flat strip by a pure moment to a list of curvatures");
    command.option("--material", given.material, "material card: a name such as dc01, or a file").required();
    command.option("--thickness", given.thickness, "of the strip, mm")
        .required()
        .check(from_to(0.05, 20.0, "mm"));
    command
        .option("--curvatures", given.curvatures, "1/mm, in bending order: a,b,c; 2/(inner + outer radius)")
        .required()
        .with_commas()
        .check(from_to(-38.0, 38.0, "1/mm"));
    add_width(command, given.width);
    command.option("--layers", given.layers, "through the thickness", whole_from_to(3, 64));
    add_output(command, given.output);
    command.footer("Example: overbend moment --material dc01 --thickness 1 --curvatures 0.05,0.1,0.2 --json");
    command.runs([] { return run(given); });
}

}  // namespace overbend::commands
