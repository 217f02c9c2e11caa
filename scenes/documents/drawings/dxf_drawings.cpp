#include "scenes/documents/drawings/dxf_drawings.h"

#include <algorithm>

#include "scenes/documents/drawings/blank_sheet.h"
#include "scenes/documents/drawings/part_sheet.h"
#include "scenes/documents/drawings/tool_sheet.h"
#include "scenes/files/case/tool_outline.h"

namespace overbend::documents {

namespace {

using tool::Piece;

const char* const contour = "CONTOUR";
const char* const cut_out = "CUT_OUT";
const char* const bend_up = "BEND_UP";
const char* const bend_down = "BEND_DOWN";
const char* const centre_line = "CENTRE_LINE";
const char* const text = "TEXT";

void add_outline(files::DxfDrawing& drawing, const char* layer, const std::vector<Piece>& outline) {
    for (const Piece& piece : outline) drawing.entities.push_back(files::dxf_piece(layer, piece));
}

// Below the outline, by a twentieth of its size.
void add_words(files::DxfDrawing& drawing, const tool::Box& box, const std::vector<std::string>& lines) {
    const double height = std::max(1.0, 0.025 * (box.high - box.low).maxCoeff());
    tool::Vec2 at(box.low.x(), box.low.y() - 3.0 * height);
    for (const std::string& line : lines) {
        drawing.entities.push_back({text, files::DxfText{at, height, line}});
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
std::string sizes_of(const files::Tool& tool) {
    std::string sizes;
    for (const drawing::Dimension& d : tool_sheet(tool, drawing::Tolerances::none).dimensions)
        sizes += (sizes.empty() ? "Sizes on its drawing: " : "; ") + d.words;
    return sizes;
}

}  // namespace

files::DxfDrawing tool_dxf(const files::Tool& tool) {
    files::DxfDrawing drawing;
    drawing.layers = {{contour, files::DxfStroke::continuous, 7},
                      {centre_line, files::DxfStroke::dash_dot, 1},
                      {text, files::DxfStroke::continuous, 3}};
    const tool::ArcOutline outline = files::tool_outline(tool, 1);
    add_outline(drawing, contour, outline.pieces());
    const drawing::DrawingSheet sheet = tool_sheet(tool, drawing::Tolerances::none);
    for (const drawing::ViewLine& line : sheet.lines)
        drawing.entities.push_back({centre_line, files::DxfLine{line.a, line.b}});
    add_words(drawing, outline.box(),
              {tool.name + ", " + kind_name(tool) + ", section, sizes in mm", sizes_of(tool)});
    return drawing;
}

files::DxfDrawing blank_dxf(const files::Case& c, const job::Blank& blank) {
    files::DxfDrawing drawing;
    drawing.layers = {{contour, files::DxfStroke::continuous, 7},
                      {cut_out, files::DxfStroke::continuous, 7},
                      {bend_up, files::DxfStroke::dash_dot, 3},
                      {bend_down, files::DxfStroke::dashed, 1},
                      {text, files::DxfStroke::continuous, 5}};
    add_outline(drawing, contour, blank_outlines(c, blank).front());
    for (const files::Cutout& cut : c.cutouts) {
        if (cut.is_slot()) continue;
        drawing.entities.push_back({cut_out, files::DxfCircle{{cut.at, cut.across}, 0.5 * cut.width}});
    }
    const std::vector<std::vector<Piece>> outlines = blank_outlines(c, blank);
    for (std::size_t i = 0; i < c.cutouts.size(); ++i)
        if (c.cutouts[i].is_slot()) add_outline(drawing, cut_out, outlines[i + 1]);
    for (std::size_t i = 0; i < blank.bend_line.size(); ++i)
        drawing.entities.push_back(
            {c.part.bends[i].angle > 0.0 ? bend_up : bend_down,
             files::DxfLine{{blank.bend_line[i], 0.0}, {blank.bend_line[i], c.width}}});
    add_words(drawing, {{0.0, 0.0}, {blank.length, c.width}},
              {c.title + ", blank, " + c.material.title, "Sizes in mm; bend lines are not to be cut"});
    return drawing;
}

files::DxfDrawing part_dxf(const files::Case& c) {
    files::DxfDrawing drawing;
    drawing.layers = {{contour, files::DxfStroke::continuous, 7}, {text, files::DxfStroke::continuous, 5}};
    const std::vector<Piece> outline = part_outline(c);
    add_outline(drawing, contour, outline);
    add_words(drawing, box_of(outline), {c.title + ", finished part, section, sizes in mm"});
    return drawing;
}

}  // namespace overbend::documents
