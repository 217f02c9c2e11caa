// Room for words on a picture: near what they name, off other words, and off lines where that can be.
//
// Units  picture pixels.

#pragma once

#include <optional>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::picture {

struct LabelRoom {
    Rect inside;                            // the words stay in it
    std::vector<Rect> taken;                // by words
    std::vector<std::vector<Point>> lines;  // that words keep clear of
};

// A box of this size as near to a point as there is room, off all lines and words; where there is none, off
// the words alone; none when even that fails. unit: size of the words. It is not marked as taken.
std::optional<Rect> find_room(const LabelRoom& room, const Point& near, double width, double height,
                              double unit);

// Words in such a place, which is taken by them afterwards. Returns their box.
std::optional<Rect> add_label(DrawingList& list, LabelRoom& room, const Point& near, const Text& words);

}  // namespace overbend::picture
