// What part of the press a picture shows, and where its tools' names stand.
//
// A view is chosen once for a whole stroke, so that nothing jumps: it holds the die's working zone and the
// strip in every state, the whole of it when it is not much larger than the die.
//
// Units  window: mm, press coordinates; labels: picture pixels.

#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "render/picture/layout.h"
#include "render/picture/strip_shape.h"

namespace overbend::picture {

// The name of a tool, at a place of the picture that the strip does not cross during the stroke.
struct ToolLabel {
    int tool = 0;  // index into Recording::tools
    std::string words;
    Rect box;             // with room around the words
    bool inside = false;  // it lies on its tool; else a line leads to it
};

// A magnifier in the stage over the bend that is made.
enum class Lens { hidden, shown };

// Where the magnifier stands on the picture, and what it looks at: a place of the strip, which it follows.
struct LensPlace {
    Rect box;                     // the magnified part
    Rect key;                     // the words below it
    double magnification = 1.0;   // against the stage
    double blank_position = 0.0;  // mm from the blank's left end
};

// Where the words of a bend's angle stand for a whole stroke; they begin, or end, at the bend's side.
enum class Anchor { left, right };
struct AnglePlace {
    Rect box;
    Anchor anchor = Anchor::left;
};

struct ViewOptions {
    Charts charts = Charts::shown;
    Lens lens = Lens::hidden;
    std::vector<double>
        bend_lines;  // of the stroke, mm from the blank's left end; the lens is over the first
    std::vector<Place> places = {};  // to be inside, mm in the press: where the strip hits a tool
};

struct View {
    Rect stage;                    // on the picture
    Place centre = Place::Zero();  // what is shown at the stage's centre
    double scale = 1.0;            // pixels per mm
    std::vector<ToolLabel> labels;
    std::optional<LensPlace> lens;                  // none: not asked for, or no room for it
    std::vector<std::optional<AnglePlace>> angles;  // of each bend's words, see angle_arc.h; empty: they find
                                                    // room picture by picture
    Rect note;                                      // for what has to be said of the picture as a whole

    Point on_picture(const Place& p) const {
        return stage.centre() + scale * Point(p.x() - centre.x(), centre.y() - p.y());
    }
    double width_mm() const { return stage.width / scale; }
    double height_mm() const { return stage.height / scale; }
    double top_mm() const { return centre.y() + 0.5 * height_mm(); }
};

// Throws OutOfRange: a size or recording that cannot be.
View choose_view(const stroke::Recording& recording, const PictureSize& size,
                 const ViewOptions& options = {});

// What a user looks at: so many times as large as the view that was chosen, its centre shifted.
struct Zoom {
    double times = 1.0;           // > 0
    Place shift = Place::Zero();  // mm
};

// The view zoomed or panned. Names, note and magnifier are placed again: with
// Names::placed_anew as in choose_view; carried along, quickly, while it still moves: they go with what they
// lie on, and are left out where they would not be whole.
enum class Names { placed_anew, carried_along };
View zoomed(const stroke::Recording& recording, const View& view, const Zoom& zoom, const PictureSize& size,
            const ViewOptions& options, Names names);

// Between two views: part 0 is the first. Labels are those of the nearer one.
View between(const View& a, const View& b, double part);

// How far above first touch the punch stands before and after the stroke, its nose still in view, mm.
double raised_by(const stroke::Recording& recording, const View& view);

// The place of the scale and the key to the arrows, which labels keep clear of.
Rect key_box(const Layout& layout);

// A closed outline with its origin at a point of the picture, arcs as curves. scale: pixels per mm.
Path outline_path(const std::vector<tool::Piece>& outline, const Point& origin, double scale);

// A tool's outline on the picture with its origin at a place; arcs cut to a quarter of a pixel.
std::vector<Point> tool_points(const tool::RigidTool& tool, const Place& position, const View& view);
std::vector<Point> tool_points(const stroke::Recording& recording, int tool, const stroke::State& state,
                               const View& view);

bool inside(const std::vector<Point>& closed, const Point& p);

// How far it reaches to either side at a height; the first beyond the second where it does not get there.
std::pair<double, double> span_at(const std::vector<Point>& closed, double y);

}  // namespace overbend::picture
