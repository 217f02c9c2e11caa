// Every kind of tool: its shape, and what it tells of itself. A kind is a function here, which stands in its
// family's file; what its tools do to a strip is a kind of work (work.h).

#pragma once

#include "scenes/files/case/block_tools.h"
#include "scenes/files/case/fields.h"
#include "scenes/files/case/outline_tool.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/tool/radius_tools.h"

namespace overbend::drawing {
struct Measurer;
}

namespace overbend::files {

using ToolShape =
    std::variant<tool::VeePunch, tool::VeeDie, tool::OpenDie, tool::OffsetPunch, tool::OffsetDie,
                 tool::ChannelPunch, tool::ChannelDie, FlatPunch, FlatDie, WipingPunch, WipingDie, Pad, Clamp,
                 OutlineTool, tool::RadiusPunch, tool::RadiusDie>;

enum class Stands { punch, die, punch_or_die, pad, clamp };

// What a punch and a die do together; any: whatever the other one does.
enum class Work { vee, offset, channel, hem, wiping, radius, any };

struct Kind {
    const char* word = "";  // as a file calls it: "channel-die"
    Stands stands = Stands::punch;
    Work work = Work::any;
    std::function<void(Fields&, ToolShape&)> describe = {};     // its keys, see fields.h
    std::function<std::string(const ToolShape&)> figures = {};  // its main sizes, in words
    // What is measured on its drawing.
    std::function<void(const drawing::Measurer&, const ToolShape&)> measure = {};
    std::function<tool::ArcOutline(const ToolShape&, int face)> outline = {};
};

// In the order of ToolShape.
Kind vee_punch(), vee_die(), open_die();
Kind offset_punch(), offset_die();
Kind channel_punch(), channel_die();
Kind flat_punch(), flat_die(), wiping_punch(), wiping_die(), pad(), clamp();
Kind outline_tool();
Kind radius_punch(), radius_die();

const Kind& kind_of(const ToolShape& shape);
const std::vector<Kind>& all_kinds();
const Words& kind_list();  // their words

// Its outline made by sim/tool, the same on every face.
template <class T>
tool::ArcOutline only_outline(const T& t, int) {
    return make_outline(t);
}

// Of a shape T, by functions of its own. Of a die with two faces the outline has the face that is up.
template <class T>
Kind kind(const char* word, Stands stands, Work work, void (*describe)(Fields&, T&),
          std::string (*figures)(const T&), void (*measure)(const drawing::Measurer&, const T&),
          tool::ArcOutline (*outline)(const T&, int face) = only_outline<T>) {
    return {word,
            stands,
            work,
            [describe](Fields& f, ToolShape& shape) { describe(f, std::get<T>(shape)); },
            [figures](const ToolShape& shape) { return figures(std::get<T>(shape)); },
            [measure](const drawing::Measurer& m, const ToolShape& shape) { measure(m, std::get<T>(shape)); },
            [outline](const ToolShape& shape, int face) { return outline(std::get<T>(shape), face); }};
}

}  // namespace overbend::files
