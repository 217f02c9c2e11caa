// The lines and arcs of a DXF file, for outlines: LINE, ARC, CIRCLE, LWPOLYLINE and POLYLINE with bulges, in
// the plane z = 0 of model space, in mm (or without units, which are taken as mm).
//
// Words, dimensions, leaders, hatches and points are passed over: they are no outline. Anything else
// (splines, ellipses, blocks) is refused with its line, unless it lies on another layer than the one that is
// asked for.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/dxf/dxf_groups.h"
#include "sim/tool/arc_outline.h"

namespace overbend::files {

struct DxfPiece {
    tool::Piece
        piece;  // start, end, and of an arc radius, centre, sweep; a circle begins and ends at its right
    std::string layer;
    int line = 0;  // in the file, of the entity's name
};

constexpr double largest_coordinate = 2000.0;  // mm, either way: no press holds larger tools
constexpr double largest_radius = 1e6;         // mm, of an arc, and how far its centre may be

// layer: this one alone; empty: all.
// Throws DxfError with the line: units other than mm, what is not a flat line or arc, a coordinate beyond
// largest_coordinate, a radius of zero or less, more than most::dxf_pieces, nothing at all on the layer (its
// message names those that have something).
std::vector<DxfPiece> read_dxf(const std::string& text, const std::string& layer);

// An arc from start to end by its bulge, the tangent of a quarter of its sweep; a line where that is so small
// that the arc would leave it by less than 1e-7 mm.
tool::Piece piece_of_bulge(const tool::Vec2& start, const tool::Vec2& end, double bulge);

}  // namespace overbend::files
