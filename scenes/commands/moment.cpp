// overbend moment: a strip in pure bending, from options.

#include <cmath>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>
#include <optional>

#include "scenes/commands/commands.h"
#include "scenes/commands/exit_status.h"
#include "scenes/commands/options.h"
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

    // The same as a table, a line a curvature.
    const std::vector<std::string> heads = {"curvature 1/mm", "moment N mm/mm", "free 1/mm",
                                            "thickness mm",   "inner strain",   "outer strain"};
    std::string text;
    for (const std::string& head : heads) text += std::string(16 - head.size(), ' ') + head;
    text += "\n";
    for (const material::BendingPoint& p : points) {
        const std::vector<std::string> cells = {fixed(p.curvature, 6),        fixed(p.moment, 3),
                                                fixed(p.free_curvature, 6),   fixed(p.thickness, 5),
                                                fixed(p.inner_log_strain, 5), fixed(p.outer_log_strain, 5)};
        for (const std::string& cell : cells)
            text += std::string(cell.size() < 16 ? 16 - cell.size() : 1, ' ') + cell;
        text += "\n";
    }
    std::cout << text;
}

void run(const MomentOptions& given) {
    for (const double curvature : given.curvatures) {
        if (std::abs(curvature) * given.thickness < 1.9) continue;
        complain("--curvatures", std::to_string(curvature) + " folds the inner surface; give less than " +
                                     std::to_string(1.9 / given.thickness) + " (1/mm) at this thickness");
    }
    const material::Card card = files::read_card(given.material, std::filesystem::path());
    const double hold = given.width ? material::width_hold(*given.width / given.thickness) : 1.0;
    print_points(material::bend_in_pure_moment(card, given.thickness, given.curvatures, given.layers, hold),
                 given);
}

}  // namespace

void add_moment(Program& app, int& status) {
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
    command.option("--layers", given.layers, "through the thickness")
        .shows_default()
        .check(whole_from_to(3, 64));
    add_output(command, given.output);
    command.footer("Example: overbend moment --material dc01 --thickness 1 --curvatures 0.05,0.1,0.2 --json");
    command.callback([&status] {
        run(given);
        status = static_cast<int>(Exit::done);
    });
}

}  // namespace overbend::commands
