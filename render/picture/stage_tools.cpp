// Tools in section: outline, fill and hatching, and their names.

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"
#include "render/picture/tool_labels.h"

namespace overbend::picture {

namespace {

// Adds the parts inside the outline of one line: the points p with p . across = v.
void hatch_line(const std::vector<Point>& outline, const Point& along, const Point& across, double v,
                Path& path) {
    std::vector<double> crossings;
    for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const double a = outline[j].dot(across) - v;
        const double b = outline[i].dot(across) - v;
        if ((a > 0.0) == (b > 0.0)) continue;
        crossings.push_back((outline[j] + (outline[i] - outline[j]) * a / (a - b)).dot(along));
    }
    std::sort(crossings.begin(), crossings.end());
    for (size_t i = 0; i + 1 < crossings.size(); i += 2)
        add_stretch(path, crossings[i] * along + v * across, crossings[i + 1] * along + v * across);
}

// Lines across the outline, fixed to the tool: they move with it.
Path hatching(const std::vector<Point>& outline, const Point& origin, double direction, double spacing,
              const Rect& stage) {
    const Point along(std::cos(direction), std::sin(direction));
    const Point across(-along.y(), along.x());
    double low = 1e300;
    double high = -1e300;
    for (const Point& corner : {Point(stage.x, stage.y), Point(stage.right(), stage.y),
                                Point(stage.x, stage.bottom()), Point(stage.right(), stage.bottom())}) {
        low = std::min(low, (corner - origin).dot(across));
        high = std::max(high, (corner - origin).dot(across));
    }
    Path path;
    for (double k = std::ceil(low / spacing); k * spacing <= high; k += 1.0)
        hatch_line(outline, along, across, origin.dot(across) + k * spacing, path);
    return path;
}

void add_tool(Sheet& sheet, int k) {
    const tool::RigidTool& tool = sheet.tools()[k];
    const double u = sheet.unit();
    const double opacity = sheet.info.tool_opacity;
    const ToolColours colours = tool_colours(tool.role, sheet.info.theme);
    const Path path =
        outline_path(tool.outline.pieces(), sheet.view.on_picture(sheet.place_of(k)), sheet.view.scale);
    Shape hatch{
        hatching(tool_points(tool, sheet.place_of(k), sheet.view), sheet.view.on_picture(sheet.place_of(k)),
                 colours.hatch_direction, 0.75 * u, sheet.view.stage),
        {},
        with_opacity(colours.hatch, opacity),
        sheet.layout.line};
    hatch.edges = Edges::coarse;

    add_on_stage(sheet, {path, with_opacity(colours.fill, opacity)});
    add_on_stage(sheet, std::move(hatch));
    add_on_stage(sheet, {path, {}, with_opacity(colours.outline, opacity), 0.13 * u});
}

// From the label to the tool, when it stands beside it.
void add_leader(Sheet& sheet, const ToolLabel& label, const Colour& colour) {
    const std::vector<Point> outline =
        tool_points(sheet.tools()[label.tool], sheet.place_of(label.tool), sheet.view);
    if (inside(outline, label.box.centre())) return;
    const Point foot = nearest_on(outline, label.box.centre());
    if (!overlap(sheet.view.stage, {foot.x(), foot.y(), 1.0, 1.0})) return;
    add_line(sheet.list, polyline({label.box.centre(), foot}), colour, sheet.layout.line);
    add_fill(sheet.list, circle(foot, 0.2 * sheet.unit()), colour);
}

// Whether a tool has left the place where it had its name: a gauge, once the strip is pressed; one that goes
// with the ram, while it is raised out of the picture.
bool has_left(const Sheet& sheet, int k) {
    const tool::RigidTool& t = sheet.tools()[k];
    if (t.draws_back > 0.0 && sheet.state.phase != stroke::Phase::placed) return true;
    const tool::Box& box = t.outline.box();
    const Point corner = sheet.view.on_picture(sheet.place_of(k) + Place(box.low.x(), box.high.y()));
    const Place size = (box.high - box.low) * sheet.view.scale;
    return !overlap(sheet.view.stage, {corner.x(), corner.y(), size.x(), size.y()});
}

}  // namespace

void add_tools(Sheet& sheet) {
    if (sheet.info.tool_opacity <= 0.0) return;
    for (int k = 0; k < static_cast<int>(sheet.tools().size()); ++k) {
        const tool::RigidTool& t = sheet.tools()[k];
        add_tool(sheet, k);
        if (t.role != tool::Role::punch) continue;
        for (const Point& p : tool_points(t, sheet.place_of(k), sheet.view)) sheet.kept_clear.push_back(p);
    }
}

void add_tool_labels(Sheet& sheet) {
    if (sheet.info.tool_opacity < 1.0) return;
    const double size = 1.05 * sheet.unit();
    std::vector<const ToolLabel*> shown;
    for (const ToolLabel& label : sheet.view.labels)
        if (label.tool < static_cast<int>(sheet.tools().size()) && !has_left(sheet, label.tool))
            shown.push_back(&label);
    const auto outline = [&](const ToolLabel& label) {
        return tool_colours(sheet.tools()[label.tool].role, sheet.info.theme).outline;
    };
    // All lines first: none runs over another's name.
    for (const ToolLabel* label : shown) add_leader(sheet, *label, outline(*label));
    for (const ToolLabel* label : shown) {
        add_plate(sheet, label->box, outline(*label));
        add_text_on_middle(sheet.list, label->words, label->box.centre(), size, sheet.colours.ink,
                           Across::middle, Weight::bold);
    }
}

}  // namespace overbend::picture
