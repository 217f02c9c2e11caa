#include "scenes/case/write_tool.h"

#include <cmath>

namespace overbend::scenes {

namespace {

constexpr double no_limit = 1e200;  // a spring's travel beyond which it is not given

std::string spring_text(const tool::Spring& spring) {
    Inline text;
    text.number("preload_N_per_mm", spring.preload).number("rate_N_per_mm2", spring.rate);
    if (spring.solid < no_limit) text.number("travel_mm", spring.solid);
    return text.str();
}

struct Writer {
    Lines& lines;

    void operator()(const tool::VeePunch& t) const {
        lines.degrees("angle_deg", t.angle).number("nose_radius_mm", t.nose_radius);
        lines.number("height_mm", t.height).number("shank_width_mm", t.shank_width);
    }
    void operator()(const tool::VeeDie& t) const {
        std::vector<std::string> faces;
        for (const tool::VeeFace& f : t.faces)
            faces.push_back(Inline()
                                .degrees("angle_deg", f.angle)
                                .number("opening_mm", f.die_opening)
                                .number("shoulder_radius_mm", f.shoulder_radius)
                                .number("bottom_radius_mm", f.bottom_radius)
                                .str());
        lines.list("faces", faces).number("width_mm", t.width).number("height_mm", t.height);
    }
    void operator()(const tool::OpenDie& t) const {
        lines.number("opening_mm", t.die_opening).number("shoulder_radius_mm", t.shoulder_radius);
        lines.number("depth_mm", t.depth).number("width_mm", t.width);
    }
    void operator()(const tool::OffsetPunch& t) const {
        lines.number("offset_mm", t.offset).degrees("angle_deg", t.angle);
        lines.number("nose_radius_mm", t.nose_radius).number("root_radius_mm", t.root_radius);
        lines.number("clearance_mm", t.clearance).number("land_mm", t.land).number("height_mm", t.height);
    }
    void operator()(const tool::OffsetDie& t) const {
        lines.number("offset_mm", t.offset).degrees("angle_deg", t.angle);
        lines.number("shoulder_radius_mm", t.shoulder_radius).number("root_radius_mm", t.root_radius);
        lines.number("land_mm", t.land).number("height_mm", t.height);
    }
    void operator()(const tool::ChannelPunch& t) const {
        lines.number("width_mm", t.width).number("corner_radius_mm", t.corner_radius);
        lines.degrees("side_relief_deg", t.side_relief).number("foot_height_mm", t.foot_height);
        lines.number("shank_width_mm", t.shank_width);
        lines.text("shank", t.shank == tool::Shank::left    ? "left"
                            : t.shank == tool::Shank::right ? "right"
                                                            : "middle");
        lines.number("height_mm", t.height);
    }
    void operator()(const tool::ChannelDie& t) const {
        lines.number("opening_mm", t.die_opening).number("shoulder_radius_mm", t.shoulder_radius);
        lines.number("depth_mm", t.depth).number("floor_crown_mm", t.floor_crown);
        lines.number("width_mm", t.width).number("height_mm", t.height);
    }
    void block(const tool::Block& b) const {
        lines.number("width_mm", b.width)
            .number("corner_radius_mm", b.right_radius)
            .number("height_mm", b.height);
    }
    void operator()(const FlatPunch& t) const { block(t.block); }
    void operator()(const FlatDie& t) const { block(t.block); }
    void operator()(const WipingPunch& t) const {
        block(t.block);
        lines.number("clearance_mm", t.clearance);
    }
    void operator()(const WipingDie& t) const {
        lines.number("width_mm", t.block.width).number("edge_radius_mm", t.block.right_radius);
        lines.number("height_mm", t.block.height);
    }
    void operator()(const Pad& t) const {
        block(t.block);
        lines.put("spring", spring_text(t.spring));
    }
    void operator()(const Clamp& t) const {
        block(t.block);
        if (t.spring) lines.put("spring", spring_text(*t.spring));
    }
    void operator()(const OutlineTool& t) const {
        std::vector<std::string> points;
        for (const tool::Piece& piece : t.outline.pieces()) {
            Inline point;
            point.number("x_mm", piece.start.x()).number("y_mm", piece.start.y());
            if (piece.is_arc()) point.number("bulge", std::tan(0.25 * piece.sweep));
            points.push_back(point.str());
        }
        lines.list("points", points);
    }
};

}  // namespace

void write_tool(const Tool& tool, Lines& lines) {
    lines.header("[[tool]]").text("name", tool.name).text("kind", kind_word(tool));
    std::visit(Writer{lines}, tool.shape);
}

}  // namespace overbend::scenes
