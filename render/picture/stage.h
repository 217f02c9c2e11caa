// The picture of one instant of a stroke: tools in section, the strip coloured by layer, bend angles, forces,
// readouts and a caption. State to drawing list; nothing is painted here.
//
//   View view = choose_view(recording, size);              // once for a stroke
//   DrawingList list = draw_stage(recording, 12.5, info, size, view);
//   write_png(list, "moment.png");                         // painter.h
//
// Units  mm, rad, press coordinates; forces N per mm of strip width in the recording, kN on the picture.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/picture/bend_mark.h"
#include "render/picture/layout.h"
#include "render/picture/palette.h"
#include "render/picture/view.h"

namespace overbend::picture {

enum class Colouring { hoop_stress, plastic_strain };
enum class Arrows { shown, hidden };
enum class Angles { shown, hidden };
enum class StepTag { shown, hidden };  // "step 2 of 6"

// An overlap of the strip with a solid, outside the place where the tools should press it.
struct InterferenceMark {
    Place at = Place::Zero();
    double depth = 0.0;  // mm, >= 0
    std::string text;    // what meets what: "flange and punch"
};

// Moves the drawn strip as a whole, as when it is turned between two strokes: p -> turn p + shift.
struct StripMotion {
    Eigen::Matrix2d turn = Eigen::Matrix2d::Identity();
    Place shift = Place::Zero();
};

struct StageInfo {
    std::string job_title;
    std::string step_name;
    int step_number = 1;  // 1 to step_count
    int step_count = 1;
    StepTag step_tag = StepTag::shown;
    std::string caption;       // words up to a first colon are set bold
    double strip_width = 0.0;  // mm, > 0
    std::vector<BendMark> bends;
    std::vector<BendLine> ticks;  // all the part's bend lines; those of `bends` are marked in any case
    std::vector<InterferenceMark> interferences;
    std::optional<double> least_clearance;  // mm
    Theme theme = Theme::light;
    Colouring colouring = Colouring::hoop_stress;
    double colour_limit = 0.0;  // end of the colours' scale, MPa (or -); 0: found from the recording
    Arrows arrows = Arrows::shown;
    Angles angles = Angles::shown;
    std::optional<double> ghost;         // another instant, whose strip is shown as a dashed outline
    std::optional<double> punch_travel;  // where the tools of the ram are; left out: where the state has them
    std::optional<StripMotion> motion;
    const tool::ToolSet* tools = nullptr;  // left out: the recording's
    double tool_opacity = 1.0;             // 0 to 1
    Lens lens = Lens::hidden;              // shown: where the view has chosen a place for it
    // 1 to 20: how many times larger the strip's way from the ghost's shape to the present one is drawn than
    // it is; the picture says so, and its numbers stay the true ones. Without a ghost it does nothing.
    double springback_scale = 1.0;
    Backdrop backdrop = Backdrop::page;
    Charts charts = Charts::shown;  // to be the same as when the view was chosen
};

// The view that this information asks for: with its lens, bends and charts. To be chosen once for a stroke.
View choose_view(const stroke::Recording& recording, const PictureSize& size, const StageInfo& info);

// instant  index of a recorded state, with the part of the way to the next one: 0 to states - 1
// Throws  OutOfRange: a size, recording or instant that cannot be; strip width, step number, opacity or scale
//         of springback out of range.
DrawingList draw_stage(const stroke::Recording& recording, double instant, const StageInfo& info,
                       const PictureSize& size, const View& view);
DrawingList draw_stage(const stroke::Recording& recording, double instant, const StageInfo& info,
                       const PictureSize& size);

// The state at an instant. Throws OutOfRange: an instant outside 0 to states - 1.
stroke::State state_at(const stroke::Recording& recording, double instant);

// The end of the colours' scale for one or more strokes: the greatest value of any layer in any state,
// rounded up to a number that is easily read.
double colour_limit(const std::vector<const stroke::Recording*>& recordings, Colouring colouring);

}  // namespace overbend::picture
