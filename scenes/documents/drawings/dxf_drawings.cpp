#include "scenes/drawings/dxf_drawings.h"

#include <algorithm>

#include "scenes/case/tool_outline.h"
#include "scenes/drawings/blank_sheet.h"
#include "scenes/drawings/part_sheet.h"
#include "scenes/drawings/tool_sheet.h"

namespace overbend::scenes {

namespace {

using tool::Piece;

const char* const contour = "CONTOUR";
const char* const cut_out = "CUT_OUT";
const char* const bend_up = "BEND_UP";
const char* const bend_down = "BEND_DOWN";
const char* const centre_line = "CENTRE_LINE";
const char* const text = "TEXT";

void add_outline(DxfDrawing& drawing, const char* layer, const std::vector<Piece>& outline) {
    for (const Piece& piece : outline) drawing.entities.push_back(dxf_piece(layer, piece));
}

// Below the outline, by a twentieth of its size.
void add_words(DxfDrawing& drawing, const tool::Box& box, const std::vector<std::string>& lines) {
    const double height = std::max(1.0, 0.025 * (box.high - box.low).maxCoeff());
    tool::Vec2 at(box.low.x(), box.low.y() - 3.0 * height);
    for (const std::string& line : lines) {
        drawing.entities.push_back({text, DxfText{at, height, line}});
        at.y() -= 1.6 * height;
    }
}

tool::Box box_of(const std::vector<Piece>& outline) {
    tool::Box box{outline.front().start, outline.front().start};
    for (const Piece& piece : outline)
        box.low = box.low.cwiseMin(piece.start), box.high = box.high.cwiseMax(piece.start);
    return box;
}

// Its sizes in words, as its drawing has them.
std::string sizes_of(const Tool& tool) {
    std::string sizes;
    for (const render::Dimension& d : tool_sheet(tool, Tolerances::none).dimensions)
        sizes += (sizes.empty() ? "Sizes on its drawing: " : "; ") + d.words;
    return sizes;
}

}  // namespace

DxfDrawing tool_dxf(const Tool& tool) {
    DxfDrawing drawing;
    drawing.layers = {{contour, DxfStroke::continuous, 7},
                      {centre_line, DxfStroke::dash_dot, 1},
                      {text, DxfStroke::continuous, 3}};
    const tool::ArcOutline outline = tool_outline(tool, 1);
    add_outline(drawing, contour, outline.pieces());
    const render::DrawingSheet sheet = tool_sheet(tool, Tolerances::none);
    for (const render::ViewLine& line : sheet.lines)
        drawing.entities.push_back({centre_line, DxfLine{line.a, line.b}});
    add_words(drawing, outline.box(),
              {tool.name + ", " + kind_name(tool) + ", section, sizes in mm", sizes_of(tool)});
    return drawing;
}

DxfDrawing blank_dxf(const Case& c, const Blank& blank) {
    DxfDrawing drawing;
    drawing.layers = {{contour, DxfStroke::continuous, 7},
                      {cut_out, DxfStroke::continuous, 7},
                      {bend_up, DxfStroke::dash_dot, 3},
                      {bend_down, DxfStroke::dashed, 1},
                      {text, DxfStroke::continuous, 5}};
    add_outline(drawing, contour, blank_outlines(c, blank).front());
    for (const Cutout& cut : c.cutouts) {
        if (cut.length > cut.width + 1e-9) continue;
        drawing.entities.push_back({cut_out, DxfCircle{{cut.at, cut.across}, 0.5 * cut.width}});
    }
    const std::vector<std::vector<Piece>> outlines = blank_outlines(c, blank);
    for (std::size_t i = 0; i < c.cutouts.size(); ++i)
        if (c.cutouts[i].length > c.cutouts[i].width + 1e-9) add_outline(drawing, cut_out, outlines[i + 1]);
    for (std::size_t i = 0; i < blank.bend_line.size(); ++i)
        drawing.entities.push_back({c.part.bends[i].angle > 0.0 ? bend_up : bend_down,
                                    DxfLine{{blank.bend_line[i], 0.0}, {blank.bend_line[i], c.width}}});
    add_words(drawing, {{0.0, 0.0}, {blank.length, c.width}},
              {c.title + ", blank, " + c.material.title, "Sizes in mm; bend lines are not to be cut"});
    return drawing;
}

DxfDrawing part_dxf(const Case& c) {
    DxfDrawing drawing;
    drawing.layers = {{contour, DxfStroke::continuous, 7}, {text, DxfStroke::continuous, 5}};
    const std::vector<Piece> outline = part_outline(c);
    add_outline(drawing, contour, outline);
    add_words(drawing, box_of(outline), {c.title + ", finished part, section, sizes in mm"});
    return drawing;
}

}  // namespace overbend::scenes
