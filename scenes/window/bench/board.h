// What the bench shows, as one picture: the strips in the press with their angles in large letters, and
// beside them the charts of the section that is bent most.
//
// Units  px; mm, rad in the strips.

#pragma once

#include <string>
#include <vector>

#include "render/chart/axes.h"
#include "render/picture/stage.h"
#include "scenes/window/bench/press.h"

namespace overbend::window {

enum class FreeAngle { told, hidden };

struct BoardSize {
    int width = 960, height = 640;
    double letter = 15.0;  // of the smallest words
};
bool same(const BoardSize& a, const BoardSize& b);

// Chosen once for all ways of the same strips and tools, so that nothing jumps.
struct BoardPlan {
    BoardSize size;
    BenchKind kind = BenchKind::vee;
    std::vector<picture::Rect> tiles;  // of each strip, with its words
    std::vector<picture::View> views;  // of their pictures, on the board
    picture::Rect charts, foot;
    double colour_limit = 0.0;  // MPa
    bool both_ways = false;     // a strip in pure bending is bent back beyond flat: room for that too
    chart::Extent height, stress, curvature, moment, travel, force;
};
// A plan with room for one way alone does not do for these strips.
bool has_room(const BoardPlan& plan, const std::vector<BentStrip>& strips);
// Throws OutOfRange: a size without room.
BoardPlan plan_board(const BenchPress& press, const BoardSize& size);

struct BoardInfo {
    picture::Theme theme = picture::Theme::light;
    FreeAngle free = FreeAngle::told;
    std::string line;  // one more line, large
};
picture::DrawingList draw_board(const std::vector<BentStrip>& strips, const BoardPlan& plan,
                                const BoardInfo& info);

// The charts alone, one below the other; see draw_board.
void add_bench_charts(picture::DrawingList& list, const std::vector<BentStrip>& strips, const BoardPlan& plan,
                      const BoardInfo& info);

constexpr double bench_width = 20.0;  // mm, of the strip, where forces are shown

}  // namespace overbend::window
