#include "scenes/files/case/tool_sizes.h"

#include "scenes/files/case/usual_sizes.h"

namespace overbend::files {

namespace {

// Calls see(words, key, unit, value) for every size, value by reference.
template <class See>
struct EachSize {
    See see;

    static constexpr SizeUnit mm = SizeUnit::mm, rad = SizeUnit::rad;

    void operator()(tool::VeePunch& t) const {
        see("angle", "angle_deg", rad, t.angle), see("nose radius", "nose_radius_mm", mm, t.nose_radius);
        see("shank width", "shank_width_mm", mm, t.shank_width), see("height", "height_mm", mm, t.height);
    }
    void operator()(tool::VeeDie& t) const {
        for (std::size_t i = 0; i < t.faces.size(); ++i) {
            tool::VeeFace& face = t.faces[i];
            const std::string of = t.faces.size() > 1 ? " of face " + std::to_string(i + 1) : "";
            see("angle" + of, "angle_deg", rad, face.angle);
            see("opening" + of, "opening_mm", mm, face.die_opening);
            see("shoulder radius" + of, "shoulder_radius_mm", mm, face.shoulder_radius);
            see("bottom radius" + of, "bottom_radius_mm", mm, face.bottom_radius);
        }
        see("width", "width_mm", mm, t.width), see("height", "height_mm", mm, t.height);
    }
    void operator()(tool::OpenDie& t) const {
        see("opening", "opening_mm", mm, t.die_opening);
        see("shoulder radius", "shoulder_radius_mm", mm, t.shoulder_radius);
        see("depth", "depth_mm", mm, t.depth), see("width", "width_mm", mm, t.width);
    }
    void operator()(tool::OffsetPunch& t) const {
        see("offset", "offset_mm", mm, t.offset), see("angle", "angle_deg", rad, t.angle);
        see("nose radius", "nose_radius_mm", mm, t.nose_radius);
        see("root radius", "root_radius_mm", mm, t.root_radius);
        see("clearance", "clearance_mm", mm, t.clearance);
        see("land", "land_mm", mm, t.land), see("height", "height_mm", mm, t.height);
    }
    void operator()(tool::OffsetDie& t) const {
        see("offset", "offset_mm", mm, t.offset), see("angle", "angle_deg", rad, t.angle);
        see("shoulder radius", "shoulder_radius_mm", mm, t.shoulder_radius);
        see("root radius", "root_radius_mm", mm, t.root_radius);
        see("land", "land_mm", mm, t.land), see("height", "height_mm", mm, t.height);
    }
    void operator()(tool::ChannelPunch& t) const {
        see("width", "width_mm", mm, t.width), see("corner radius", "corner_radius_mm", mm, t.corner_radius);
        see("side relief", "side_relief_deg", rad, t.side_relief);
        see("foot height", "foot_height_mm", mm, t.foot_height);
        see("shank width", "shank_width_mm", mm, t.shank_width), see("height", "height_mm", mm, t.height);
    }
    void operator()(tool::ChannelDie& t) const {
        see("opening", "opening_mm", mm, t.die_opening);
        see("shoulder radius", "shoulder_radius_mm", mm, t.shoulder_radius);
        see("depth", "depth_mm", mm, t.depth), see("floor crown", "floor_crown_mm", mm, t.floor_crown);
        see("width", "width_mm", mm, t.width), see("height", "height_mm", mm, t.height);
    }
    // The corners of such a block are alike in a file: both are set with the left one.
    void block(tool::Block& b) const {
        see("width", "width_mm", mm, b.width), see("corner radius", "corner_radius_mm", mm, b.left_radius);
        b.right_radius = b.left_radius;
        see("height", "height_mm", mm, b.height);
    }
    void operator()(FlatPunch& t) const { block(t.block); }
    void operator()(FlatDie& t) const { block(t.block); }
    void operator()(WipingPunch& t) const {
        block(t.block);
        see("clearance", "clearance_mm", mm, t.clearance);
    }
    void operator()(WipingDie& t) const {
        see("width", "width_mm", mm, t.block.width),
            see("edge radius", "edge_radius_mm", mm, t.block.right_radius);
        see("height", "height_mm", mm, t.block.height);
    }
    void operator()(Pad& t) const { block(t.block); }
    void operator()(Clamp& t) const { block(t.block); }
    void operator()(OutlineTool&) const {}
};

template <class See>
void each_size(Tool& tool, const See& see) {
    std::visit(EachSize<See>{see}, tool.shape);
}

// Sizes that follow from the others where a file leaves them out.
struct Usual {
    double* value;
    double usual;
};

std::vector<Usual> usual_sizes(Tool& tool) {
    if (auto* t = std::get_if<tool::VeePunch>(&tool.shape))
        return {{&t->shank_width, usual::shank_width(*t)}};
    if (auto* t = std::get_if<tool::VeeDie>(&tool.shape))
        return {{&t->width, usual::width(*t)}, {&t->height, usual::height(*t)}};
    if (auto* t = std::get_if<tool::OpenDie>(&tool.shape))
        return {{&t->depth, usual::depth(*t)},
                {&t->width, usual_die_width(t->die_opening, t->shoulder_radius)}};
    if (auto* t = std::get_if<tool::ChannelPunch>(&tool.shape))
        return {{&t->shank_width, usual::shank_width(*t)}};
    if (auto* t = std::get_if<tool::ChannelDie>(&tool.shape))
        return {{&t->width, usual::width(*t)}, {&t->height, usual::height(*t)}};
    return {};
}

}  // namespace

std::vector<ToolSize> sizes_of(const Tool& tool) {
    std::vector<ToolSize> sizes;
    Tool copy = tool;
    each_size(copy, [&](const std::string& words, const char* key, SizeUnit unit, double& value) {
        sizes.push_back({words, key, unit, value});
    });
    return sizes;
}

void set_size(Tool& tool, int size, double value) {
    const std::vector<Usual> before = usual_sizes(tool);
    std::vector<bool> usual;
    for (const Usual& each : before) usual.push_back(*each.value == each.usual);
    const double* changed = nullptr;
    int at = 0;
    each_size(tool, [&](const std::string&, const char*, SizeUnit, double& each) {
        if (at++ != size) return;
        each = value;
        changed = &each;
    });
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (!usual[i] || before[i].value == changed) continue;
        *before[i].value = usual_sizes(tool)[i].usual;
    }
}

}  // namespace overbend::files
