// What is measured on each kind of tool. For tool_sheet alone.
//
// Units  mm, rad, in the tool's own coordinates.

#pragma once

#include "render/drawing/drawing_sheet.h"
#include "scenes/documents/drawings/general_tolerance.h"
#include "scenes/files/case/case.h"

namespace overbend::documents {

// Adds dimensions, an axis where the tool has one, and notes.
struct ToolMeasurer {
    drawing::DrawingSheet& sheet;
    const tool::Box& box;
    Tolerances tolerances;

    void operator()(const tool::VeePunch& t) const;
    void operator()(const tool::VeeDie& t) const;
    void operator()(const tool::OpenDie& t) const;
    void operator()(const tool::OffsetPunch& t) const;
    void operator()(const tool::OffsetDie& t) const;
    void operator()(const tool::ChannelPunch& t) const;
    void operator()(const tool::ChannelDie& t) const;
    void operator()(const files::FlatPunch& t) const;
    void operator()(const files::FlatDie& t) const;
    void operator()(const files::WipingPunch& t) const;
    void operator()(const files::WipingDie& t) const;
    void operator()(const files::Pad& t) const;
    void operator()(const files::Clamp& t) const;
    void operator()(const files::OutlineTool& t) const;

  private:
    using Vec2 = tool::Vec2;
    void across(const Vec2& from, const Vec2& to, drawing::Beside beside,
                std::vector<double> lanes = {}) const;
    void upright(const Vec2& from, const Vec2& to, drawing::Beside beside,
                 std::vector<double> lanes = {}) const;
    void angle(const Vec2& vertex, double start, double sweep, double first_from, double first_to,
               double second_from, double second_to) const;
    void axis() const;                              // upright, at x = 0
    void size(drawing::Beside width_beside) const;  // width and height over all
    void relief(const tool::Relief& relief) const;
    void groove(const tool::VeeFace& face, double top, double up) const;
    void step(double offset, double bend_angle, double lower_radius, double upper_radius, const Vec2& lower,
              const Vec2& upper) const;
};

}  // namespace overbend::documents
