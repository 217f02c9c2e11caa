#include "scenes/files/case/write_tool.h"

#include <cmath>

#include "scenes/files/case/toml_text.h"
#include "scenes/files/case/usual_sizes.h"
#include "scenes/files/dxf/chain.h"

namespace overbend::files {

namespace {

std::string spring_text(const tool::Spring& spring, const std::optional<WoundSprings>& wound) {
    Entries entries;
    if (wound) {
        entries.number("wire_mm", wound->each.wire).number("coil_mm", wound->each.coil_diameter);
        entries.number("turns", wound->each.turns);
        entries.number("shear_modulus_MPa", wound->each.shear_modulus);
        if (wound->count != 1) entries.whole("count", wound->count);
        entries.number_unless(0.0, "preload_N", wound->preload);
    } else {
        entries.number_unless(0.0, "preload_N_per_mm", spring.preload);
        entries.number_unless(0.0, "rate_N_per_mm2", spring.rate);
    }
    entries.number_unless(tool::Spring().solid, "travel_mm", spring.solid);
    return entries.inline_table();
}

std::string relief_text(const tool::Relief& relief) {
    Entries entries;
    entries.text("side", relief.side == tool::Side::left ? "left" : "right");
    entries.number("from_mm", relief.from).number("to_mm", relief.to);
    entries.number("set_back_mm", relief.set_back).number("neck_mm", relief.neck);
    entries.number_unless(0.0, "root_radius_mm", relief.root_radius);
    return entries.inline_table();
}

std::string faces_text(const std::vector<tool::VeeFace>& faces) {
    std::vector<std::string> tables;
    for (const tool::VeeFace& face : faces) {
        Entries entries;
        entries.angle("angle_deg", face.angle).number("opening_mm", face.die_opening);
        entries.number_unless(usual::shoulder_radius, "shoulder_radius_mm", face.shoulder_radius);
        entries.number_unless(usual::bottom_radius, "bottom_radius_mm", face.bottom_radius);
        tables.push_back(entries.inline_table());
    }
    return list_text(tables);
}

// The ends of its lines and arcs.
std::vector<tool::PathPoint> points_of(const tool::ArcOutline& outline) {
    std::vector<tool::PathPoint> points;
    for (const tool::Piece& piece : outline.pieces())
        points.push_back({piece.start, 0.0, piece.is_arc() ? std::tan(0.25 * piece.sweep) : 0.0});
    return points;
}

std::string points_text(const std::vector<tool::PathPoint>& points) {
    std::vector<std::string> tables;
    for (const tool::PathPoint& point : points) {
        Entries entries;
        entries.number("x_mm", point.at.x()).number("y_mm", point.at.y());
        entries.number_unless(0.0, "radius_mm", point.radius).number_unless(0.0, "bulge", point.bulge);
        tables.push_back(entries.inline_table());
    }
    return long_list_text(tables);
}

const char* word_of(tool::Shank shank) {
    return shank == tool::Shank::left ? "left" : shank == tool::Shank::right ? "right" : "middle";
}

// One for each kind, its keys in the order of the head of read_case.h.
struct ShapeWriter {
    Entries& entries;

    void operator()(const tool::VeePunch& t) const {
        entries.angle("angle_deg", t.angle).number("nose_radius_mm", t.nose_radius);
        entries.number_unless(usual_punch_height, "height_mm", t.height);
        entries.number_unless(usual::shank_width(t), "shank_width_mm", t.shank_width);
        if (t.relief) entries.as_is("relief", relief_text(*t.relief));
    }
    void operator()(const tool::VeeDie& t) const {
        entries.as_is("faces", faces_text(t.faces));
        entries.number_unless(usual::width(t), "width_mm", t.width);
        entries.number_unless(usual::height(t), "height_mm", t.height);
    }
    void operator()(const tool::OpenDie& t) const {
        entries.number("opening_mm", t.die_opening).number("shoulder_radius_mm", t.shoulder_radius);
        entries.number_unless(usual::depth(t), "depth_mm", t.depth);
        entries.number_unless(usual_die_width(t.die_opening, t.shoulder_radius), "width_mm", t.width);
    }
    void operator()(const tool::OffsetPunch& t) const {
        entries.number("offset_mm", t.offset).angle("angle_deg", t.angle);
        entries.number("nose_radius_mm", t.nose_radius);
        entries.number_unless(usual::root_radius, "root_radius_mm", t.root_radius);
        entries.number("clearance_mm", t.clearance);
        entries.number_unless(usual::land, "land_mm", t.land);
        entries.number_unless(usual::offset_punch_height, "height_mm", t.height);
    }
    void operator()(const tool::OffsetDie& t) const {
        entries.number("offset_mm", t.offset).angle("angle_deg", t.angle);
        entries.number("shoulder_radius_mm", t.shoulder_radius);
        entries.number_unless(usual::root_radius, "root_radius_mm", t.root_radius);
        entries.number_unless(usual::land, "land_mm", t.land);
        entries.number_unless(usual::offset_die_height, "height_mm", t.height);
    }
    void operator()(const tool::ChannelPunch& t) const {
        entries.number("width_mm", t.width).number("corner_radius_mm", t.corner_radius);
        entries.angle_unless(0.0, "side_relief_deg", t.side_relief);
        entries.number("foot_height_mm", t.foot_height);
        if (t.shank != tool::Shank::middle) entries.text("shank", word_of(t.shank));
        entries.number_unless(usual::shank_width(t), "shank_width_mm", t.shank_width);
        entries.number_unless(usual::channel_punch_height, "height_mm", t.height);
    }
    void operator()(const tool::ChannelDie& t) const {
        entries.number("opening_mm", t.die_opening).number("shoulder_radius_mm", t.shoulder_radius);
        entries.number("depth_mm", t.depth).number_unless(0.0, "floor_crown_mm", t.floor_crown);
        entries.number_unless(usual::width(t), "width_mm", t.width);
        entries.number_unless(usual::height(t), "height_mm", t.height);
    }
    void operator()(const FlatPunch& t) const { block(t.block, usual::flat_height); }
    void operator()(const FlatDie& t) const { block(t.block, usual::flat_height); }
    void operator()(const WipingPunch& t) const {
        entries.number("width_mm", t.block.width);
        entries.number_unless(0.0, "corner_radius_mm", t.block.left_radius);
        entries.number("clearance_mm", t.clearance);
        entries.number_unless(usual::wiping_height, "height_mm", t.block.height);
    }
    void operator()(const WipingDie& t) const {
        entries.number("width_mm", t.block.width).number("edge_radius_mm", t.block.right_radius);
        entries.number_unless(usual::wiping_height, "height_mm", t.block.height);
    }
    void operator()(const Pad& t) const {
        block(t.block, usual::pad_height);
        entries.as_is("spring", spring_text(t.spring, t.wound));
    }
    void operator()(const Clamp& t) const {
        block(t.block, usual::pad_height);
        if (t.spring) entries.as_is("spring", spring_text(*t.spring, t.wound));
    }
    void operator()(const OutlineTool& t) const {
        if (t.file) {
            entries.text("file", t.file->path);
            if (!t.file->layer.empty()) entries.text("layer", t.file->layer);
            entries.number_unless(usual_gap, "gap_mm", t.file->gap);
            if (!t.file->origin.isZero(0.0))
                entries.as_is("origin_mm", numbers_text({t.file->origin.x(), t.file->origin.y()}));
            entries.angle_unless(0.0, "turn_deg", t.file->turn);
            return;
        }
        entries.as_is("points", points_text(t.points.empty() ? points_of(t.outline) : t.points));
    }

    void block(const tool::Block& block, double usual_height) const {
        entries.number("width_mm", block.width);
        entries.number_unless(0.0, "corner_radius_mm", block.left_radius);
        entries.number_unless(usual_height, "height_mm", block.height);
    }
};

}  // namespace

std::string write_tool(const Tool& tool) {
    Entries entries;
    entries.text("name", tool.name).text("kind", kind_word(tool));
    std::visit(ShapeWriter{entries}, tool.shape);
    const ToolMake& make = tool.make;
    if (!make.steel.empty()) entries.text("steel", make.steel);
    if (make.rating) entries.number("rating_kN_per_m", *make.rating);
    if (make.length) entries.number("length_mm", *make.length);
    if (make.price) entries.number("price", *make.price);
    return "[[tool]]\n" + entries.lines();
}

}  // namespace overbend::files
