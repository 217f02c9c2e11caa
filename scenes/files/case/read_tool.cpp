#include "scenes/files/case/read_tool.h"

#include <algorithm>
#include <functional>
#include <utility>

#include "scenes/files/case/read_block.h"
#include "scenes/files/case/read_outline_file.h"
#include "scenes/files/case/read_steel.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

// No press holds larger tools. What fits with what is the makers' business.
constexpr Range size = above_to(0.0, 2000.0);         // mm
constexpr Range size_or_none = from_to(0.0, 2000.0);  // mm
constexpr Range coordinate = from_to(-2000.0, 2000.0);
constexpr Range groove_angle = above_below(0.0, 180.0);  // deg
constexpr Range offset_angle = above_to(0.0, 90.0);      // deg
constexpr std::size_t most_points = 1000;

tool::Relief read_relief(const StrictTable& punch) {
    const StrictTable table =
        punch.table("relief", {"side", "from_mm", "to_mm", "set_back_mm", "neck_mm", "root_radius_mm"});
    tool::Relief relief;
    relief.side = table.word("side", {"left", "right"}) == "left" ? tool::Side::left : tool::Side::right;
    relief.from = table.number("from_mm", size);
    relief.to = table.number("to_mm", size);
    relief.set_back = table.number("set_back_mm", coordinate);
    relief.neck = table.number("neck_mm", size);
    relief.root_radius = table.number_or("root_radius_mm", 0.0, size_or_none);
    return relief;
}

Shape read_vee_punch(const StrictTable& table) {
    tool::VeePunch punch;
    punch.angle = table.angle("angle_deg", groove_angle);
    punch.nose_radius = table.number("nose_radius_mm", size);
    punch.height = table.number_or("height_mm", usual_punch_height, size);
    punch.shank_width = table.number_or("shank_width_mm", usual::shank_width(punch), size);
    if (table.has("relief")) punch.relief = read_relief(table);
    return punch;
}

tool::VeeFace read_face(const StrictTable& table) {
    tool::VeeFace face;
    face.angle = table.angle("angle_deg", groove_angle);
    face.die_opening = table.number("opening_mm", size);
    face.shoulder_radius = table.number_or("shoulder_radius_mm", usual::shoulder_radius, size);
    face.bottom_radius = table.number_or("bottom_radius_mm", usual::bottom_radius, size_or_none);
    return face;
}

Shape read_vee_die(const StrictTable& table) {
    tool::VeeDie die;
    if (!table.has("faces")) table.complain_missing("faces", "give a list of one or two grooves");
    for (const StrictTable& groove :
         table.tables("faces", {"angle_deg", "opening_mm", "shoulder_radius_mm", "bottom_radius_mm"})) {
        die.faces.push_back(read_face(groove));
    }
    if (die.faces.empty() || die.faces.size() > 2) {
        table.complain("faces", std::to_string(die.faces.size()) + " grooves are given",
                       "give a list of one or two grooves");
    }
    die.width = table.number_or("width_mm", usual::width(die), size);
    die.height = table.number_or("height_mm", usual::height(die), size);
    return die;
}

Shape read_open_die(const StrictTable& table) {
    tool::OpenDie die;
    die.die_opening = table.number("opening_mm", size);
    die.shoulder_radius = table.number("shoulder_radius_mm", size);
    die.depth = table.number_or("depth_mm", usual::depth(die), size);
    die.width = table.number_or("width_mm", usual_die_width(die.die_opening, die.shoulder_radius), size);
    return die;
}

Shape read_offset_punch(const StrictTable& table) {
    tool::OffsetPunch punch;
    punch.offset = table.number("offset_mm", size);
    punch.angle = table.angle("angle_deg", offset_angle);
    punch.nose_radius = table.number("nose_radius_mm", size_or_none);
    punch.root_radius = table.number_or("root_radius_mm", usual::root_radius, size_or_none);
    punch.clearance = table.number("clearance_mm", size);
    punch.land = table.number_or("land_mm", usual::land, size);
    punch.height = table.number_or("height_mm", usual::offset_punch_height, size);
    return punch;
}

Shape read_offset_die(const StrictTable& table) {
    tool::OffsetDie die;
    die.offset = table.number("offset_mm", size);
    die.angle = table.angle("angle_deg", offset_angle);
    die.shoulder_radius = table.number("shoulder_radius_mm", size_or_none);
    die.root_radius = table.number_or("root_radius_mm", usual::root_radius, size_or_none);
    die.land = table.number_or("land_mm", usual::land, size);
    die.height = table.number_or("height_mm", usual::offset_die_height, size);
    return die;
}

Shape read_channel_punch(const StrictTable& table) {
    tool::ChannelPunch punch;
    punch.width = table.number("width_mm", size);
    punch.corner_radius = table.number("corner_radius_mm", size_or_none);
    punch.side_relief = table.angle_or("side_relief_deg", 0.0, from_below(0.0, 30.0));
    punch.foot_height = table.number("foot_height_mm", size);
    punch.shank_width = table.number_or("shank_width_mm", usual::shank_width(punch), size);
    const std::string side = table.word_or("shank", "middle", {"middle", "left", "right"});
    if (side == "left") punch.shank = tool::Shank::left;
    if (side == "right") punch.shank = tool::Shank::right;
    punch.height = table.number_or("height_mm", usual::channel_punch_height, size);
    return punch;
}

Shape read_channel_die(const StrictTable& table) {
    tool::ChannelDie die;
    die.die_opening = table.number("opening_mm", size);
    die.shoulder_radius = table.number("shoulder_radius_mm", size);
    die.depth = table.number("depth_mm", size);
    die.floor_crown = table.number_or("floor_crown_mm", 0.0, size_or_none);
    die.width = table.number_or("width_mm", usual::width(die), size);
    die.height = table.number_or("height_mm", usual::height(die), size);
    return die;
}

Shape read_outline(const StrictTable& table) {
    const char* const right = "give a list of points { x_mm, y_mm }, three or more, or the file of a drawing";
    for (const char* key : {"layer", "gap_mm", "origin_mm", "turn_deg"})
        if (table.has(key)) table.complain(key, "it belongs to an outline from a file", "give the file too");
    if (!table.has("points")) table.complain_missing("points", right);
    std::vector<tool::PathPoint> points;
    for (const StrictTable& entry : table.tables("points", {"x_mm", "y_mm", "radius_mm", "bulge"})) {
        tool::PathPoint point;
        point.at = {entry.number("x_mm", coordinate), entry.number("y_mm", coordinate)};
        point.radius = entry.number_or("radius_mm", 0.0, size_or_none);
        point.bulge = entry.number_or("bulge", 0.0, from_to(-1000.0, 1000.0));
        points.push_back(point);
    }
    if (points.size() > most_points) {
        table.complain("points", std::to_string(points.size()) + " points are given",
                       "give at most " + std::to_string(most_points));
    }
    return OutlineTool{tool::from_points(points), points};
}

Shape read_outline_or_file(const StrictTable& table, const std::filesystem::path& beside) {
    return table.has("file") ? Shape(read_outline_file(table, beside)) : read_outline(table);
}

struct Kind {
    std::string word;
    Words keys;  // besides name and kind
    std::function<Shape(const StrictTable& table)> read;
    std::function<Shape(const StrictTable& table, double strip_width)> read_with_spring = nullptr;
    std::function<Shape(const StrictTable& table, const std::filesystem::path& beside)> read_with_file =
        nullptr;
};

Shape read_shape(const Kind& kind, const StrictTable& table, double strip_width,
                 const std::filesystem::path& beside) {
    if (kind.read_with_spring) return kind.read_with_spring(table, strip_width);
    return kind.read_with_file ? kind.read_with_file(table, beside) : kind.read(table);
}

const std::vector<Kind>& kinds() {
    static const std::vector<Kind> all = {
        {"vee-punch",
         {"angle_deg", "nose_radius_mm", "height_mm", "shank_width_mm", "relief"},
         read_vee_punch},
        {"vee-die", {"faces", "width_mm", "height_mm"}, read_vee_die},
        {"open-die", {"opening_mm", "shoulder_radius_mm", "depth_mm", "width_mm"}, read_open_die},
        {"offset-punch",
         {"offset_mm", "angle_deg", "nose_radius_mm", "root_radius_mm", "clearance_mm", "land_mm",
          "height_mm"},
         read_offset_punch},
        {"offset-die",
         {"offset_mm", "angle_deg", "shoulder_radius_mm", "root_radius_mm", "land_mm", "height_mm"},
         read_offset_die},
        {"channel-punch",
         {"width_mm", "corner_radius_mm", "side_relief_deg", "foot_height_mm", "shank_width_mm", "shank",
          "height_mm"},
         read_channel_punch},
        {"channel-die",
         {"opening_mm", "shoulder_radius_mm", "depth_mm", "floor_crown_mm", "width_mm", "height_mm"},
         read_channel_die},
        {"flat-punch", {"width_mm", "corner_radius_mm", "height_mm"}, read_flat_punch},
        {"flat-die", {"width_mm", "corner_radius_mm", "height_mm"}, read_flat_die},
        {"wiping-punch", {"width_mm", "corner_radius_mm", "clearance_mm", "height_mm"}, read_wiping_punch},
        {"wiping-die", {"width_mm", "edge_radius_mm", "height_mm"}, read_wiping_die},
        {"pad", {"width_mm", "corner_radius_mm", "height_mm", "spring"}, nullptr, read_pad},
        {"clamp", {"width_mm", "corner_radius_mm", "height_mm", "spring"}, nullptr, read_clamp},
        {"outline",
         {"points", "file", "layer", "gap_mm", "origin_mm", "turn_deg"},
         nullptr,
         nullptr,
         read_outline_or_file}};
    return all;
}

// Of every kind, behind its own.
const Words make_keys = {"steel", "rating_kN_per_m", "length_mm", "price"};

ToolMake read_make(const StrictTable& table, const std::filesystem::path& beside) {
    ToolMake make;
    if (table.has("steel")) {
        const NamedSteel steel = read_named_steel(table, "steel", beside);
        make.steel = steel.name, make.card = steel.card;
    }
    make.rating = table.optional_number("rating_kN_per_m", above_to(0.0, 1e5));
    make.length = table.optional_number("length_mm", above_to(0.0, 5000.0));
    make.price = table.optional_number("price", from_to(0.0, 1e9));
    return make;
}

const Kind& read_kind(const StrictTable& table) {
    Words words;
    for (const Kind& kind : kinds()) words.push_back(kind.word);
    const std::string word = table.word("kind", words);
    return *std::find_if(kinds().begin(), kinds().end(), [&](const Kind& kind) { return kind.word == word; });
}

// Throws OutOfRange when it cannot be.
void see_that_it_can_be_made(const Tool& tool) {
    const auto* die = std::get_if<tool::VeeDie>(&tool.shape);
    const int faces = die ? static_cast<int>(die->faces.size()) : 1;
    for (int face = 1; face <= faces; ++face) tool_outline(tool, face);
}

}  // namespace

const std::vector<std::string>& tool_keys() {
    static const Words keys = [] {
        Words all = {"name", "kind"};
        for (const Kind& kind : kinds()) {
            for (const std::string& key : kind.keys) {
                if (std::find(all.begin(), all.end(), key) == all.end()) all.push_back(key);
            }
        }
        all.insert(all.end(), make_keys.begin(), make_keys.end());
        return all;
    }();
    return keys;
}

Tool read_tool(StrictTable table, double strip_width, const std::filesystem::path& beside) {
    if (!table.has("kind")) table.expect(tool_keys());
    const Kind& kind = read_kind(table);
    Words keys = {"name", "kind"};
    keys.insert(keys.end(), kind.keys.begin(), kind.keys.end());
    keys.insert(keys.end(), make_keys.begin(), make_keys.end());
    table.expect(keys);
    try {
        const std::string name = table.text("name");
        Tool tool{name, read_shape(kind, table, strip_width, beside)};
        tool.make = read_make(table, beside);
        see_that_it_can_be_made(tool);
        return tool;
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
}

}  // namespace overbend::files
