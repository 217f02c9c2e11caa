#include "scenes/documents/report/tool_words.h"

#include <cmath>

#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

std::string spring_words(const tool::Spring& s) {
    if (s.rate <= 0.0) return words(", pressed with %.4g N per mm of width", s.preload);
    return words(", on a spring of %.4g N per mm of width and %.4g more per mm of travel", s.preload, s.rate);
}

std::string block_words(const tool::Block& b) {
    return words("%.4g mm wide, corner radii %.4g and %.4g mm", b.width, b.left_radius, b.right_radius);
}

// One kind of tool each.
std::string figures(const tool::VeePunch& t) {
    return words("wedge of %.4g\u00b0, nose radius %.4g mm", t.angle / degree, t.nose_radius) +
           (t.relief
                ? words(", relieved on the %s from %.4g to %.4g mm",
                        t.relief->side == tool::Side::left ? "left" : "right", t.relief->from, t.relief->to)
                : "");
}
std::string figures(const tool::VeeDie& t) {
    std::string text;
    for (std::size_t i = 0; i < t.faces.size(); ++i) {
        const tool::VeeFace& f = t.faces[i];
        if (t.faces.size() > 1) text += words("%sface %zu: ", i > 0 ? "; " : "", i + 1);
        text += words("groove of %.4g\u00b0, opening %.4g mm, shoulder radius %.4g mm", f.angle / degree,
                      f.die_opening, f.shoulder_radius);
    }
    return text;
}
std::string figures(const tool::OpenDie& t) {
    return words("opening %.4g mm, shoulder radius %.4g mm", t.die_opening, t.shoulder_radius);
}
std::string figures(const tool::OffsetPunch& t) {
    return words("step of %.4g mm at %.4g\u00b0, nose radius %.4g mm", t.offset, t.angle / degree,
                 t.nose_radius);
}
std::string figures(const tool::OffsetDie& t) {
    return words("step of %.4g mm at %.4g\u00b0, shoulder radius %.4g mm", t.offset, t.angle / degree,
                 t.shoulder_radius);
}
std::string figures(const tool::ChannelPunch& t) {
    const char* const shank = t.shank == tool::Shank::middle ? "middle"
                              : t.shank == tool::Shank::left ? "left"
                                                             : "right";
    return words("foot %.4g mm wide, corner radius %.4g mm, shank %s", t.width, t.corner_radius, shank);
}
std::string figures(const tool::ChannelDie& t) {
    return words("opening %.4g mm, shoulder radius %.4g mm, %.4g mm deep", t.die_opening, t.shoulder_radius,
                 t.depth);
}
std::string figures(const files::FlatPunch& t) {
    return block_words(t.block);
}
std::string figures(const files::FlatDie& t) {
    return block_words(t.block);
}
std::string figures(const files::WipingPunch& t) {
    return block_words(t.block) + words(", %.4g mm beside the die", t.clearance);
}
std::string figures(const files::WipingDie& t) {
    return block_words(t.block);
}
std::string figures(const files::Pad& t) {
    return block_words(t.block) + spring_words(t.spring);
}
std::string figures(const files::Clamp& t) {
    return block_words(t.block) + (t.spring ? spring_words(*t.spring) : ", rigid");
}
std::string figures(const files::OutlineTool& t) {
    const tool::Box& box = t.outline.box();
    return words("custom outline, %.4g mm wide and %.4g mm high", box.high.x() - box.low.x(),
                 box.high.y() - box.low.y());
}

}  // namespace

std::string kind_words(const files::Tool& tool) {
    std::string kind = files::kind_word(tool);
    for (char& c : kind)
        if (c == '-') c = ' ';
    if (kind.compare(0, 4, "vee ") == 0) kind.replace(0, 3, "V");
    return kind;
}

std::string figures_words(const files::Tool& tool) {
    return std::visit([](const auto& shape) { return figures(shape); }, tool.shape);
}

std::string die_words(const files::Case& c, const files::Step& step) {
    const files::Tool& die = c.tools[step.die];
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    return "'" + die.name + "'" + (vee && vee->faces.size() > 1 ? words(", face %d", step.die_face) : "");
}

std::string stop_words(const files::Case& c, const files::Step& step) {
    switch (step.stop) {
        case files::StopKind::drawing_angle:
            return words("the drawing's angle free (%.4g\u00b0)",
                         std::abs(c.part.bends[step.bends.front()].angle) / degree);
        case files::StopKind::free_angle:
            return words("%.4g\u00b0 free", step.stop_value / degree);
        case files::StopKind::travel:
            return words("travel of %.4g mm", step.stop_value);
        case files::StopKind::force:
            return words("force of %.4g kN", step.stop_value);
        case files::StopKind::gap:
            return words("gap of %.4g mm", step.stop_value);
    }
    return "";
}

}  // namespace overbend::documents
