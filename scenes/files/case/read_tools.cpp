#include "scenes/files/case/read_tools.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/describe.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/table_reader.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/files/dxf/chain.h"
#include "scenes/files/reading/most.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

// ---- an outline from a drawing

// A missing drawing is reported as a mistake in the case.
std::string open(const StrictTable& table, const OutlineFile& file) {
    try {
        return read_dxf_text(file.path);
    } catch (const DxfError& error) {
        table.complain("file", error.wrong + " (" + file.path + ")", error.right);
    }
}

std::vector<tool::Piece> placed(std::vector<tool::Piece> pieces, const OutlineFile& file) {
    const double c = std::cos(file.turn), s = std::sin(file.turn);
    const auto place = [&](tool::Vec2& at) {
        const tool::Vec2 from = at - file.origin;
        at = file.turn == 0.0 ? from : tool::Vec2(c * from.x() - s * from.y(), s * from.x() + c * from.y());
    };
    for (tool::Piece& piece : pieces) place(piece.start), place(piece.end), place(piece.centre);
    return pieces;
}

OutlineTool read_outline_file(const StrictTable& table, OutlineFile file,
                              const std::filesystem::path& beside) {
    file.path = path_from_anywhere(beside / file.path);
    const std::string text = open(table, file);
    try {
        std::vector<tool::Piece> pieces = placed(chained(read_dxf(text, file.layer), file.gap), file);
        return {tool::ArcOutline(std::move(pieces)), {}, file};
    } catch (const DxfError& error) {
        throw CaseError(file.path, error.line, error.line > 0 ? 1 : 0, "", error.wrong, error.right);
    }
}

// ---- one tool

void check_faces(const StrictTable& table, const Tool& tool) {
    const int faces = face_count(tool);
    if (faces != 1 && faces != 2)
        table.complain("faces", std::to_string(faces) + " grooves are given",
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
        given.complain("", error);
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
    return OutlineTool{tool::from_points(given.points), given.points};
}

// Throws OutOfRange when it cannot be.
void see_that_it_can_be_made(const Tool& tool) {
    for (int face = 1; face <= face_count(tool); ++face) tool_outline(tool, face);
}

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
        table.complain("", error);
    }
    return tool;
}

// ---- all of them

// The tools of one file, behind those that are there.
void add_tools(const StrictTable& top, double width, const std::filesystem::path& beside, bool from_rack,
               std::vector<Tool>& tools) {
    const std::vector<StrictTable> entries = top.tables("tool", {});
    top.check_count("tool", tools.size() + entries.size(), most::tools);
    for (const StrictTable& entry : entries) {
        Tool tool = read_tool(entry, width, beside);
        tool.from_rack = from_rack;
        const auto same = std::find_if(tools.begin(), tools.end(),
                                       [&](const Tool& other) { return other.name == tool.name; });
        if (same != tools.end())
            entry.complain("name",
                           "there is a tool " + in_quotes(tool.name) +
                               (same->from_rack && !from_rack ? " in the rack" : " before this one"),
                           "give each tool a different name");
        tools.push_back(std::move(tool));
    }
}

Rack read_rack_file(const TomlFile& file, double width) {
    const StrictTable top(file);
    Rack rack{read_as<RackTable>(top).title, {}};
    add_tools(top, width, std::filesystem::path(file.file).parent_path(), true, rack.tools);
    if (rack.tools.empty()) top.complain("tool", "the rack is empty", "give at least one [[tool]]");
    return rack;
}

}  // namespace

Rack read_rack(const std::string& name_or_path, const std::filesystem::path& beside, double width) {
    return read_rack_file(read_toml(file_of(name_or_path, beside, tool_racks)), width);
}

ToolsAtHand read_tools(const StrictTable& top, const std::filesystem::path& beside, double width) {
    ToolsAtHand found;
    if (top.has("rack")) {
        const std::string name = top.text("rack");
        const TomlFile file = open_asset(top, "rack", beside, tool_racks);
        found.tools = read_rack_file(file, width).tools;
        found.rack = is_path(name) ? path_from_anywhere(file.file) : name;
    }
    add_tools(top, width, beside, false, found.tools);
    return found;
}

}  // namespace overbend::files
