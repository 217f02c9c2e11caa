// The whole job on one picture: for each stroke the strip before it, pressed and free, with how it is turned
// to get there. For a slide (16 to 9) or for A4 paper upright, where many strokes take several pages.
//
// The smallest words are 1/60 of the picture's height. Panels of a stroke are to one scale; where the strip
// would be thinner than the eye takes for coloured, it is drawn dark.
// Units  rad; picture pixels.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "render/picture/palette.h"
#include "sim/stroke/recording.h"

namespace overbend::report {

// How the strip comes from the stroke before: another end to the left, rolled over about its length, or
// tipped over end for end, which is both.
enum class Turned { no, end_for_end, over, tipped };

struct StoryAngle {
    std::string name;
    double loaded = 0.0, free = 0.0;  // rad, of either sense
};

// Where the strip hits what stands in the press, and in which recorded states.
struct StoryHit {
    Eigen::Vector2d at = Eigen::Vector2d::Zero();  // mm, press coordinates
    double depth = 0.0;                            // mm, >= 0
    int first_state = 0, last_state = 0;
};

struct StoryStroke {
    std::string name;
    std::string tools;  // short: "wedge, two-way block"
    const stroke::Recording* recording = nullptr;
    Turned turned = Turned::no;
    std::vector<StoryAngle> angles;
    std::vector<StoryHit> hits;
};

struct Storyboard {
    std::string title;
    std::string remark;  // one line: metal, thickness
    std::vector<StoryStroke> strokes;
};

enum class StoryPage { slide, a4 };

// height: of a slide, 540 to 2160 px; a page of A4 is 1123 px high and takes none. A slide holds up to 18
// strokes, a page of A4 up to 6; more begin another one.
// Throws OutOfRange: no stroke, one without a recording; the height.
std::vector<picture::DrawingList> draw_slides(const Storyboard& board, int height, picture::Theme theme);
std::vector<picture::DrawingList> draw_story_pages(const Storyboard& board, picture::Theme theme);

}  // namespace overbend::report
