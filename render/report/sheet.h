// Sheets for the shop, A4: the job on the first page, then one sheet a stroke with its tools, place, gauge,
// stop, what is to be expected, and boxes for what is measured. Nothing on them needs colour.
//
// Units  mm, rad, kN on the strip's whole width.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "sim/stroke/recording.h"

namespace overbend::report {

// A bend of the part, from its left end.
struct SheetBendLine {
    std::string name;
    double at = 0.0;             // mm from the blank's left end
    double angle = 0.0;          // rad, of the drawing, positive turns the right-hand side up
    double inside_radius = 0.0;  // mm, of the drawing
};

struct SheetTool {
    std::string role;     // "punch"
    std::string name;     // "two-way block, face 2 up"
    std::string figures;  // "V die, groove of 84 degrees ..."; may be empty
};

// What is expected of a bend in a stroke.
struct SheetAngle {
    std::string name;
    double drawing = 0.0;  // rad, signed as drawn
    double loaded = 0.0, free = 0.0;
};

// Where the strip hits what stands in the press.
struct SheetHit {
    Eigen::Vector2d at = Eigen::Vector2d::Zero();  // mm, press coordinates
    double depth = 0.0;                            // mm, >= 0
};

struct SheetStroke {
    std::string name;
    const stroke::Recording* recording = nullptr;  // with states
    std::vector<SheetTool> tools;
    std::string place;                     // one cell: "upper face up, left end (lip) to the left"
    std::string turning;                   // how it comes there from the stroke before, a sentence
    std::string gauge;                     // one cell, short: "31.4"; where there is no gauge: "none"
    std::optional<double> gauge_at;        // mm from the punch's axis, for the picture
    std::vector<std::string> gauge_words;  // sentences
    double travel = 0.0;                   // mm from first touch, at the stop
    double stop_force = 0.0;               // kN, there
    std::string stop_words;                // what the stop is to bring, a sentence
    double peak = 0.0;                     // kN
    double peak_per_m = 0.0;               // kN per m of strip width
    std::optional<double> press;           // kN, rated
    std::vector<SheetAngle> angles;
    std::vector<SheetHit> hits;         // under the punch at the stop
    std::vector<std::string> findings;  // warnings and problems of the stroke, as sentences
    std::vector<std::string> remarks;
};

struct SheetData {
    std::string title;
    std::string material;                     // one line: metal, thickness, width
    std::string blank;                        // one line: length, mass
    double thickness = 0.0;                   // mm, > 0
    double blank_length = 0.0;                // mm, > 0
    std::vector<picture::Point> profile;      // the drawing's mid-line, mm, y up
    std::vector<double> flats;                // mm, from the left, one more than bends
    std::vector<picture::Point> flat_middle;  // where on the profile
    std::vector<picture::Point> bend_middle;
    std::vector<SheetBendLine> bends;
    double angle_tolerance = 0.0;  // rad either way; 0: none given
    std::vector<SheetStroke> strokes;
    std::vector<std::string> findings;  // on the whole job; empty: it can be made
    std::vector<std::string> cautions;  // at the foot of each page
};

// One page or more for the job, one or more for each stroke. Throws OutOfRange: no stroke or no bend, lists
// that do not fit one another, a stroke without a recording.
std::vector<picture::DrawingList> draw_sheets(const SheetData& data);

}  // namespace overbend::report
