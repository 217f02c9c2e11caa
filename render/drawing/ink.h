// What stands on a drawing already, and whether more may stand beside it.
//
// Units  mm on paper, y down.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::drawing {

constexpr double thick = 0.5, thin = 0.25;  // mm, lines
constexpr picture::Colour black{0.0, 0.0, 0.0, 1.0};

enum class Stroke { outline, dimension, extension, leader, centre, hidden };

struct Line {
    picture::Point a = picture::Point::Zero(), b = picture::Point::Zero();
    Stroke stroke = Stroke::outline;
};
struct Arrow {
    picture::Point tip = picture::Point::Zero();
    picture::Point way = picture::Point::UnitX();  // unit, that it points
};
struct Label {
    std::string words;
    picture::Point middle = picture::Point::Zero();
    picture::Rect box;  // of its words
};

struct Ink {
    std::vector<Line> lines;
    std::vector<Arrow> arrows;
    std::vector<Label> labels;
};
void add(Ink& ink, const Ink& more);

constexpr double word_size = 3.5;     // mm, em: capitals are 2.5 mm high
constexpr double arrow_length = 2.8;  // mm
constexpr double overshoot = 1.5;     // mm, extension lines past the dimension line
constexpr double off_outline = 0.8;   // mm, where extension lines begin

Label label_at(const std::string& words, const picture::Point& middle);
// How far the label's box reaches from its middle in this direction.
double reach(const Label& label, const picture::Point& way);

bool line_meets(const picture::Rect& box, const picture::Point& a, const picture::Point& b);

// Penalty of `more` beside `there`, within `area`: below spoilt, it grows with every crossing;
// from spoilt on, the place is not allowed (words on words or lines, lines along each other, off the paper).
constexpr double spoilt = 1e6;
double cost(const Ink& there, const Ink& more, const picture::Rect& area);

}  // namespace overbend::drawing
