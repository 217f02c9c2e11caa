// What is measured on a tool: adds dimensions, an axis and notes to its sheet.
//
// Units  mm, rad, in the tool's own coordinates.

#pragma once

#include <string>
#include <vector>

#include "render/drawing/drawing_sheet.h"
#include "render/drawing/sizes_in_words.h"

namespace overbend::drawing {

struct Measurer {
    DrawingSheet& sheet;
    const tool::Box& box;
    Tolerances tolerances;

    void across(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes = {}) const;
    void upright(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes = {}) const;
    void angle(const Vec2& vertex, double start, double sweep, double first_from, double first_to,
               double second_from, double second_to) const;
    void axis() const;                     // upright, at x = 0
    void size(Beside width_beside) const;  // width and height over all
    void note(const std::string& words) const { sheet.notes.push_back(words); }

    // Sizes for notes, with their tolerance or without.
    std::string length(double value) const { return length_words(value, tolerances); }
    std::string plain(double value) const { return length_words(value, Tolerances::none); }
    std::string angle_in_words(double value, double leg) const { return angle_words(value, leg, tolerances); }
};

}  // namespace overbend::drawing
