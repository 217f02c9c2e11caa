#include "scenes/job/run/step_tools.h"

#include "scenes/files/case/tool_outline.h"
#include "scenes/files/case/work.h"

namespace overbend::job {

Hold hold_of(const files::Case& c, const Blank& blank, const files::Step& step) {
    return files::work_of(c.tools[step.die]).hold(c, blank, step);
}

tool::ToolSet tools_of(const files::Case& c, const files::Step& step) {
    const files::WorkKind& work = files::work_of(c, step);
    tool::ToolSet tools;
    const auto stand = [&](int index, tool::Role role, int face) {
        const files::Tool& t = c.tools[index];
        const double x = work.stands_at ? work.stands_at(c, step, t) : 0.0;
        tools.push_back({t.name, role, files::tool_outline(t, face), tool::Vec2(x, 0.0)});
    };
    stand(step.punch, tool::Role::punch, 1);
    stand(step.die, tool::Role::die, step.die_face);
    if (step.pad) {
        const files::Pad& pad = std::get<files::Pad>(c.tools[*step.pad].shape);
        stand(*step.pad, tool::Role::pad, 1);
        tools.back().spring = pad.spring;
        tools.back().spring->solid = work.pad_travel(pad, c.tools[step.die]);
    }
    if (step.clamp) {
        stand(*step.clamp, tool::Role::clamp, 1);
        tools.back().spring = std::get<files::Clamp>(c.tools[*step.clamp].shape).spring;
        tools.back().clamp_on_ram = step.clamp_on == files::ClampOn::ram;
    }
    return tools;
}

std::optional<double> nose_of(const files::Tool& tool) {
    files::Tool copy = tool;
    const files::WorkKind& work = files::work_of(tool);
    const double* nose = work.nose ? work.nose(copy) : nullptr;
    return nose ? std::optional(*nose) : std::nullopt;
}

}  // namespace overbend::job
