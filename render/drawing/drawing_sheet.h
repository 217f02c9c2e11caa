// A drawing on a sheet of paper: one view to a true scale with its dimensions, a table, notes, a title block.
//
// The sheet is A4, upright or lying, or A3 lying where a larger scale than A4's is wanted. Scales are those
// of ISO 5455 (10:1, 5:1, 2:1, 1:1, 1:2, 1:5, 1:10 ...): the largest at which all dimensions fit.
//
// Units  mm of the thing, y up; the list that comes out is in mm on paper, y down: 1 unit is 1 mm.
// Source scales: ISO 5455:1979, sheets: ISO 5457:1999, both from memory.

#pragma once

#include <string>
#include <utility>
#include <vector>

#include "render/drawing/dimension.h"
#include "render/picture/drawing_list.h"

namespace overbend::drawing {

enum class Fill { hatched, plain };

struct DrawingTable {
    std::vector<std::string> heads;
    std::vector<std::vector<std::string>> rows;  // as many entries as heads
};

// A fine line of the view that is no dimension: an axis, a bend line.
struct ViewLine {
    Vec2 a = Vec2::Zero(), b = Vec2::Zero();
    enum class Kind { axis, bend_up, bend_down, thin } kind = Kind::axis;
};

struct DrawingSheet {
    std::string title;  // of the job
    std::string name;   // what is drawn: "wedge: V punch"
    std::string material = "not stated";
    std::string tolerances = "not stated";
    std::vector<std::string> notes;
    int number = 1, of = 1;

    std::vector<std::vector<tool::Piece>> outlines;  // closed; solid where an odd number lies around
    Fill fill = Fill::hatched;
    std::vector<std::pair<Vec2, Vec2>> bands;  // tinted rectangles, by two corners
    std::vector<ViewLine> lines;
    std::vector<Dimension> dimensions;
    DrawingTable table;
};

struct DrawnSheet {
    picture::DrawingList list;
    std::string paper;                               // "A4", "A3"
    std::string scale_words;                         // "2:1"
    double scale = 1.0;                              // mm on paper a mm
    picture::Point origin = picture::Point::Zero();  // where the view's own origin stands on paper
    std::vector<std::string> missing;                // dimensions that do not fit; a note lists them
};

// Throws OutOfRange: nothing to draw, or larger than 1:100 brings onto A3.
DrawnSheet draw_sheet(const DrawingSheet& sheet);

// "2:1" for 2, "1:5" for 0.2.
std::string scale_words(double scale);

}  // namespace overbend::drawing
