#include "scenes/files/case/kinds.h"

#include <algorithm>
#include <cmath>

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;
using tool::Vec2;

// ---- channel-punch

void describe(Fields& f, tool::ChannelPunch& t) {
    f.number({"width_mm", "22.0", "Width of the foot where it is widest"}, size, t.width);
    f.number({"corner_radius_mm", "1.0", "Radius of the foot's lower corners"}, size_or_none,
             t.corner_radius);
    f.number_or({"side_relief_deg", "2.0", "Inward slope of the foot's sides towards its top"},
                from_below(0.0, 30.0), t.side_relief, {0.0});
    f.number({"foot_height_mm", "20.0", "Height of the foot"}, size, t.foot_height);
    const double top = t.width - 2.0 * t.foot_height * std::tan(t.side_relief);
    f.number_or({"shank_width_mm", "12.0", "Width of the shank"}, size, t.shank_width,
                {top, "as wide as the top of the foot"});
    f.word_or({"shank", "\"left\"", "Position of the shank on the foot"}, {"middle", "left", "right"},
              t.shank, tool::Shank::middle);
    f.number_or({"height_mm", "60.0", "From the foot's face to the top of the shank"}, size, t.height,
                {60.0});
}

std::string figures(const tool::ChannelPunch& t) {
    const char* const shank = t.shank == tool::Shank::middle ? "middle"
                              : t.shank == tool::Shank::left ? "left"
                                                             : "right";
    return words("foot %.4g mm wide, corner radius %.4g mm, shank %s", t.width, t.corner_radius, shank);
}

void measure(const drawing::Measurer& m, const tool::ChannelPunch& t) {
    const double half = 0.5 * t.width;
    double left = m.box.high.x(), right = m.box.low.x();
    for (const tool::Piece& piece : m.sheet.outlines.front())
        if (piece.start.y() > t.height - 1e-6)
            left = std::min(left, piece.start.x()), right = std::max(right, piece.start.x());
    if (t.shank == tool::Shank::middle) m.axis();
    const double widest = t.corner_radius * (1.0 + std::sin(t.side_relief));
    m.across({-half, widest}, {half, widest}, Beside::below);
    if (t.shank_width < t.width - 1e-9) {
        m.across({left, t.height}, {right, t.height}, Beside::above);
        const bool step_left = t.shank != tool::Shank::left;
        const double top = half - (t.foot_height - t.corner_radius) * std::tan(t.side_relief);
        m.upright({step_left ? -half : half, 0.0}, {step_left ? -top : top, t.foot_height},
                  step_left ? Beside::left : Beside::right);
    }
    m.upright({half, 0.0}, {right, t.height}, t.shank == tool::Shank::left ? Beside::left : Beside::right);
    if (t.side_relief > 0.0)
        m.note("Sides of the foot slope inwards by " + m.angle_in_words(t.side_relief, t.foot_height) + ".");
}

Kind channel_punch() {
    return kind<tool::ChannelPunch>("channel-punch", Stands::punch, Work::channel, describe, figures,
                                    measure);
}

// ---- channel-die

void describe(Fields& f, tool::ChannelDie& t) {
    f.number({"opening_mm", "24.2", "Between the walls"}, size, t.die_opening);
    shoulder(f, t.shoulder_radius);
    f.number({"depth_mm", "20.0", "From the top face to the floor"}, size, t.depth);
    f.number_or({"floor_crown_mm", "0.2", "Height of the floor's middle above its edges"}, size_or_none,
                t.floor_crown, {0.0});
    const double width = std::max(t.die_opening + 30.0, usual_die_width(t.die_opening, t.shoulder_radius));
    f.number_or({"width_mm", "60.0", "Width of the block"}, size, t.width,
                {width, "the opening plus 30, or plus 4 shoulder radii plus 16 if that is more"});
    f.number_or({"height_mm", "40.0", "Height of the block"}, size, t.height,
                {t.depth + 20.0, "the depth plus 20"});
}

std::string figures(const tool::ChannelDie& t) {
    return words("opening %.4g mm, shoulder radius %.4g mm, %.4g mm deep", t.die_opening, t.shoulder_radius,
                 t.depth);
}

void measure(const drawing::Measurer& m, const tool::ChannelDie& t) {
    const double half = 0.5 * t.die_opening;
    m.axis();
    m.across({-half, 0.0}, {half, 0.0}, Beside::above);
    m.upright({half, 0.0}, {0.5 * half, -t.depth}, Beside::left, {0.5 * half});
    m.size(Beside::below);
    if (t.floor_crown > 0.0)
        m.note("The middle of the floor is " + m.length(t.floor_crown) + " mm above its edges.");
}

Kind channel_die() {
    return kind<tool::ChannelDie>("channel-die", Stands::die, Work::channel, describe, figures, measure);
}

}  // namespace overbend::files
