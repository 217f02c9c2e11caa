// What a DXF file holds, as plain data: layers, and on them lines, arcs, circles and words.
//
// Units  mm, rad; x to the right, y up.

#pragma once

#include <string>
#include <variant>
#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::files {

using tool::Vec2;

enum class DxfStroke { continuous, dashed, dash_dot };

struct DxfLayer {
    std::string name;  // letters, digits, "_" and "-"
    DxfStroke stroke = DxfStroke::continuous;
    int colour = 7;  // number of the format's colour table: 1 red, 3 green, 5 blue, 7 black or white
};

struct DxfLine {
    Vec2 start = Vec2::Zero(), end = Vec2::Zero();
};
struct DxfArc {
    Vec2 centre = Vec2::Zero();
    double radius = 0.0;          // > 0
    double from = 0.0, to = 0.0;  // rad, counter-clockwise from the one to the other
};
struct DxfCircle {
    Vec2 centre = Vec2::Zero();
    double radius = 0.0;  // > 0
};
struct DxfText {
    Vec2 at = Vec2::Zero();  // left end of the base line
    double height = 0.0;     // mm, of capitals, > 0
    std::string words;       // UTF-8, one line
};

struct DxfEntity {
    std::string layer;
    std::variant<DxfLine, DxfArc, DxfCircle, DxfText> what;
};

struct DxfDrawing {
    std::vector<DxfLayer> layers;
    std::vector<DxfEntity> entities;  // on these layers
};

// A line or arc as an entity of its layer. The format knows arcs counter-clockwise alone.
DxfEntity dxf_piece(const std::string& layer, const tool::Piece& piece);

}  // namespace overbend::files
