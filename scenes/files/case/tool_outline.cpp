#include "scenes/files/case/tool_outline.h"

namespace overbend::files {

namespace {

struct OutlineMaker {
    int face = 1;
    tool::ArcOutline operator()(const tool::VeeDie& die) const { return tool::make_outline(die, face); }
    tool::ArcOutline operator()(const OutlineTool& given) const { return given.outline; }
    tool::ArcOutline operator()(const FlatPunch& t) const { return tool::block_facing_down(t.block); }
    tool::ArcOutline operator()(const FlatDie& t) const { return tool::block_facing_up(t.block); }
    tool::ArcOutline operator()(const WipingPunch& t) const { return tool::block_facing_down(t.block); }
    tool::ArcOutline operator()(const WipingDie& t) const { return tool::block_facing_up(t.block); }
    tool::ArcOutline operator()(const Pad& t) const { return tool::block_facing_up(t.block); }
    tool::ArcOutline operator()(const Clamp& t) const { return tool::block_facing_down(t.block); }
    template <class Other>
    tool::ArcOutline operator()(const Other& other) const {
        return tool::make_outline(other);
    }
};

}  // namespace

tool::ArcOutline tool_outline(const Tool& tool, int face) {
    return std::visit(OutlineMaker{face}, tool.shape);
}

}  // namespace overbend::files
