#include "scenes/files/case/read_tool.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/read_outline_file.h"
#include "scenes/files/case/read_steel.h"
#include "scenes/files/case/table_reader.h"
#include "scenes/files/case/tool_outline.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

constexpr std::size_t most_points = 1000;

void check_faces(const StrictTable& table, const Tool& tool) {
    const auto* die = std::get_if<tool::VeeDie>(&tool.shape);
    if (!die || (!die->faces.empty() && die->faces.size() <= 2)) return;
    table.complain("faces", std::to_string(die->faces.size()) + " grooves are given",
                   "give a list of one or two grooves");
}

// Wound springs share the strip's width.
void finish_spring(const StrictTable& table, tool::Spring& spring, const std::optional<WoundSprings>& wound,
                   double strip_width) {
    const StrictTable given = table.table("spring", {});
    try {
        if (wound) {
            spring.preload = wound->preload / strip_width;
            spring.rate = wound->count * tool::spring_rate(wound->each) / strip_width;
        }
        tool::check(spring);
    } catch (const OutOfRange& error) {
        given.complain("", error.name + ": " + error.wrong, error.right);
    }
}

OutlineTool outline_of(const StrictTable& table, const OutlineTool& given,
                       const std::filesystem::path& beside) {
    const bool from_file = table.has("file"), by_points = table.has("points");
    if (from_file && by_points)
        table.complain("file", "the outline has points and a file", "give points or a file");
    if (from_file) return read_outline_file(table, *given.file, beside);
    for (const char* key : {"layer", "gap_mm", "origin_mm", "turn_deg"})
        if (table.has(key)) table.complain(key, "it belongs to an outline from a file", "give the file too");
    if (!by_points)
        table.complain_missing(
            "points", "give a list of points { x_mm, y_mm }, three or more, or the file of a drawing");
    if (given.points.size() > most_points)
        table.complain("points", std::to_string(given.points.size()) + " points are given",
                       "give at most " + std::to_string(most_points));
    return OutlineTool{tool::from_points(given.points), given.points};
}

// Throws OutOfRange when it cannot be.
void see_that_it_can_be_made(const Tool& tool) {
    const auto* die = std::get_if<tool::VeeDie>(&tool.shape);
    const int faces = die ? static_cast<int>(die->faces.size()) : 1;
    for (int face = 1; face <= faces; ++face) tool_outline(tool, face);
}

}  // namespace

Tool read_tool(const StrictTable& table, double strip_width, const std::filesystem::path& beside) {
    Tool tool = read_as<Tool>(table);
    check_faces(table, tool);
    if (auto* pad = std::get_if<Pad>(&tool.shape)) finish_spring(table, pad->spring, pad->wound, strip_width);
    if (auto* clamp = std::get_if<Clamp>(&tool.shape); clamp && clamp->spring)
        finish_spring(table, *clamp->spring, clamp->wound, strip_width);
    if (!tool.make.steel.empty()) {
        const NamedSteel steel = read_named_steel(table, "steel", beside);
        tool.make.steel = steel.name, tool.make.card = steel.card;
    }
    try {
        if (auto* given = std::get_if<OutlineTool>(&tool.shape)) *given = outline_of(table, *given, beside);
        see_that_it_can_be_made(tool);
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
    return tool;
}

}  // namespace overbend::files
