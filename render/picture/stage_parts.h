// The parts of a stage, each of which adds to the drawing list; shared among the stage's own files.

#pragma once

#include <vector>

#include "render/picture/marks.h"
#include "render/picture/stage.h"

namespace overbend::picture {

// What the parts draw from and on.
struct Sheet {
    const stroke::Recording& recording;
    const stroke::State& state;   // at the instant, with its springback as large as it is drawn
    const stroke::State& actual;  // at the instant, for numbers
    double instant;
    const StageInfo& info;  // with its colour limit and the bends' reach filled in
    const Layout& layout;
    const View& view;
    const ThemeColours& colours;
    DrawingList& list;
    std::vector<Rect> taken;        // boxes of the words on the stage
    std::vector<Point> kept_clear;  // points along the strip's middle and the punch's nose, on the picture

    std::vector<Point> arcs;  // points along the angles' arcs, on the picture

    double unit() const { return layout.unit; }
    double travel() const { return info.punch_travel.value_or(state.travel); }
    // Where tool k stands.
    Place place_of(int k) const {
        const bool sprung = k < static_cast<int>(state.compression.size());
        return stroke::tool_position(tools()[k], travel(), sprung ? state.compression[k] : 0.0, state.phase);
    }
    const tool::ToolSet& tools() const { return info.tools ? *info.tools : recording.tools; }
};

// In the order they are painted.
void add_panels(Sheet& sheet);
void add_tools(Sheet& sheet);
void add_strip(Sheet& sheet);
void add_ghost(Sheet& sheet);
void add_ticks(Sheet& sheet);
void add_angle_lines(Sheet& sheet);
void add_tool_labels(Sheet& sheet);
bool shows_lens(const Sheet& sheet);
void add_lens_marker(Sheet& sheet);
void add_lens(Sheet& sheet);
void add_note(Sheet& sheet);
void add_scale(Sheet& sheet);
void add_arrows(Sheet& sheet);
void add_interference_marks(Sheet& sheet);
void add_interference_words(Sheet& sheet);
void keep_angles_clear(Sheet& sheet);  // before other words look for room
void add_angle_words(Sheet& sheet);
void add_head_and_caption(Sheet& sheet);
void add_tick_names(Sheet& sheet);
void add_readouts(Sheet& sheet);
void add_curve(Sheet& sheet);
void add_legend(Sheet& sheet);

// Pieces that several parts use.
// Not beyond the stage's edges.
void add_on_stage(Sheet& sheet, Shape shape);

// A patch that words can be read on, over whatever lies below.
void add_plate(Sheet& sheet, const Rect& box, const Colour& edge);

// A line drawn twice: a wide one in the stage's colour below, so that it is seen on hatching and strip.
void add_cased_line(Sheet& sheet, const Path& path, const Colour& colour, double width,
                    const std::vector<double>& dash = {});

// Lines of words on a plate near a point, in the given direction where there is room (see free_room); none
// where there is no room at all.
struct CalloutLine {
    std::string words;
    Colour colour;
    Weight weight = Weight::normal;
};
void add_callout(Sheet& sheet, const std::vector<CalloutLine>& lines, const Point& near, double direction,
                 double away, const Colour& edge);

// Lines of words on a plate, in its middle or at one end.
void add_lines(Sheet& sheet, const std::vector<CalloutLine>& lines, const Rect& plate, Across across);

// Room for a box of this size near a point, inside the stage, off all boxes taken, and off the strip, the
// punch and the arcs where that can be, else off the strip and the punch: the first free place of those
// nearest to it, beginning in the given direction.
std::optional<Rect> free_room(const Sheet& sheet, const Point& near, double direction, double away,
                              double width, double height);

// The limits of what has yielded in the strip, and with Hatch::shown a fine hatching of what has not.
enum class Hatch { shown, hidden };
void add_core(Sheet& sheet, const std::vector<Station>& at, Hatch hatch);
// A small square of it, for a legend.
void add_core_sample(Sheet& sheet, const Rect& box);

// The strip's outline, and its layers in colour with it, of these stations.
Path outline_path(const Sheet& sheet, const std::vector<Station>& at);
void add_layers(Sheet& sheet, const std::vector<Station>& at);

// The strip's points on the picture, with the motion that the sheet asks for.
Point strip_point(const Sheet& sheet, const Place& p);

// The greatest contact force in any state, N per mm; 0 when nothing touches.
double greatest_contact_force(const stroke::Recording& recording);

}  // namespace overbend::picture
