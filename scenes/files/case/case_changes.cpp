#include "scenes/files/case/case_changes.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/told_fields.h"
#include "scenes/files/case/write_case.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

const std::string suffix = ", changed";  // of a copy of a rack's tool

// Angles read from text may be off in the last digit.
bool same(double a, double b) {
    return std::abs(a - b) <= 1e-12 * std::max({1.0, std::abs(a), std::abs(b)});
}

struct Lines {
    std::vector<std::string> all;

    void differ(const std::string& what, const std::string& from, const std::string& to) {
        if (from != to) all.push_back(what + ": " + from + " -> " + to);
    }
    void number(const std::string& what, double from, double to, const std::string& unit) {
        if (!same(from, to)) differ(what, size_words(from, unit), size_words(to, unit));
    }
    void told(const std::string& of, const std::vector<ToldField>& from, const std::vector<ToldField>& to) {
        const auto find_in = [](const std::vector<ToldField>& in, const std::string& label) {
            return std::find_if(in.begin(), in.end(), [&](const ToldField& f) { return f.label == label; });
        };
        for (const ToldField& each : from) {
            const auto now = find_in(to, each.label);
            differ(of + each.label, each.text, now == to.end() ? "none" : now->text);
        }
        for (const ToldField& each : to)
            if (find_in(from, each.label) == from.end()) differ(of + each.label, "none", each.text);
    }
    template <class T>
    void table(const std::string& of, T from, T to) {
        told(of, fields_told([&](Fields& f) { describe(f, from); }),
             fields_told([&](Fields& f) { describe(f, to); }));
    }
};

std::string name_without_suffix(const std::string& name) {
    const bool copy =
        name.size() > suffix.size() && name.compare(name.size() - suffix.size(), suffix.size(), suffix) == 0;
    return copy ? name.substr(0, name.size() - suffix.size()) : name;
}

template <class Named>
const Named* find(const std::vector<Named>& among, const std::string& name) {
    for (const Named& each : among)
        if (each.name == name) return &each;
    return nullptr;
}

// ---- what a step says, in words

std::string tool_words(const Case& c, const std::optional<int>& tool) {
    return tool ? name_without_suffix(c.tools[*tool].name) : "none";
}

std::string die_words(const Case& c, const Step& step) {
    const bool two_faces = face_count(c.tools[step.die]) > 1;
    return tool_words(c, step.die) + (two_faces ? words(" face %d", step.die_face) : "");
}

std::string bend_words(const Case& c, const Step& step) {
    Words names;
    for (const int bend : step.bends) names.push_back(c.part.bends[bend].name);
    return listed(names);
}

void compare_steps(const Case& from, const Case& to, Lines& lines) {
    Words kept, found;
    for (const Step& step : from.steps)
        if (find(to.steps, step.name)) kept.push_back(step.name);
    for (const Step& step : to.steps)
        if (find(from.steps, step.name)) found.push_back(step.name);
    lines.differ("order of steps", listed(kept), listed(found));
    for (const Step& step : from.steps)
        if (!find(to.steps, step.name)) lines.all.push_back("step '" + step.name + "' is removed");
    for (const Step& now : to.steps) {
        const Step* before = find(from.steps, now.name);
        if (!before) {
            lines.all.push_back("step '" + now.name + "' is added");
            continue;
        }
        const std::string of = " of step '" + now.name + "'";
        lines.differ("bends" + of, bend_words(from, *before), bend_words(to, now));
        if (before->stop != now.stop || !same(before->stop_value, now.stop_value))
            lines.differ("stop" + of, stop_words(before->stop, before->stop_value),
                         stop_words(now.stop, now.stop_value));
        lines.differ("punch" + of, tool_words(from, before->punch), tool_words(to, now.punch));
        lines.differ("die" + of, die_words(from, *before), die_words(to, now));
        lines.differ("pad" + of, tool_words(from, before->pad), tool_words(to, now.pad));
        lines.differ("clamp" + of, tool_words(from, before->clamp), tool_words(to, now.clamp));
        const auto face = [](const Step& s) { return s.face == Face::up ? "up" : "down"; };
        const auto first = [](const Step& s) { return s.first == First::left ? "left" : "right"; };
        lines.differ("face" + of, face(*before), face(now));
        lines.differ("first end" + of, first(*before), first(now));
        lines.number("shift" + of, before->shift, now.shift, "mm");
    }
}

void compare_tool(const Tool& before, const Tool& now, Lines& lines) {
    const std::string of = "tool '" + before.name + "', ";
    const bool alike = before.shape.index() == now.shape.index();
    lines.differ(of + "kind", kind_word(before), kind_word(now));
    lines.table(of, before.make, now.make);
    Tool from = before, to = now;
    if (!alike) return;
    const auto told = [](Tool& tool) {
        return fields_told([&](Fields& f) { kind_of(tool.shape).describe(f, tool.shape); });
    };
    lines.told(of, told(from), told(to));
}

void compare_tools(const Case& from, const Case& to, Lines& lines) {
    for (const Tool& now : to.tools) {
        const Tool* before = find(from.tools, now.name);
        if (!before) before = find(from.tools, name_without_suffix(now.name));
        if (before)
            compare_tool(*before, now, lines);
        else
            lines.all.push_back("tool '" + now.name + "' is added");
    }
    for (const Tool& before : from.tools)
        if (!find(to.tools, before.name)) lines.all.push_back("tool '" + before.name + "' is removed");
}

std::string tolerance_words(const Tolerance& t, double unit, const char* unit_word) {
    if (t.reference) return "reference";
    return t.either_way ? size_words(*t.either_way / unit, unit_word) : "usual";
}

void compare_part(const Part& from, const Part& to, Lines& lines) {
    const bool alike = from.flats.size() == to.flats.size() && from.bends.size() == to.bends.size();
    if (!alike) return lines.all.emplace_back("the drawing"), void();
    for (std::size_t i = 0; i < from.flats.size(); ++i)
        lines.number(words("flat %zu", i + 1), from.flats[i], to.flats[i], "mm");
    for (std::size_t i = 0; i < from.bends.size(); ++i) {
        const std::string of = " of bend '" + from.bends[i].name + "'";
        lines.number("angle" + of, from.bends[i].angle / degree, to.bends[i].angle / degree, "deg");
        lines.number("inside radius" + of, from.bends[i].inside_radius, to.bends[i].inside_radius, "mm");
    }
    for (std::size_t i = 0; i < from.bends.size(); ++i) {
        const std::string of = " of bend '" + from.bends[i].name + "'";
        lines.differ("tolerance" + of, tolerance_words(from.bends[i].tolerance, degree, "deg"),
                     tolerance_words(to.bends[i].tolerance, degree, "deg"));
        lines.differ("radius tolerance" + of, tolerance_words(from.bends[i].radius_tolerance, 1.0, "mm"),
                     tolerance_words(to.bends[i].radius_tolerance, 1.0, "mm"));
    }
    const auto of_leg = [](const Part& part, std::size_t i) {
        return tolerance_words(part.leg_tolerance(i), 1.0, "mm");
    };
    for (std::size_t i = 0; i < from.flats.size(); ++i)
        lines.differ(words("tolerance of flat %zu", i + 1), of_leg(from, i), of_leg(to, i));
    const auto general = [&](const char* what, const std::optional<double>& a, const std::optional<double>& b,
                             double unit, const char* unit_word) {
        lines.differ(what, tolerance_words({a}, unit, unit_word), tolerance_words({b}, unit, unit_word));
    };
    general("length tolerance", from.length_tolerance, to.length_tolerance, 1.0, "mm");
    general("angle tolerance", from.angle_tolerance, to.angle_tolerance, degree, "deg");
    general("radius tolerance", from.radius_tolerance, to.radius_tolerance, 1.0, "mm");
    general("profile tolerance", from.profile_tolerance, to.profile_tolerance, 1.0, "mm");
}

std::string blank_words(const Case& c) {
    return c.blank_length ? size_words(*c.blank_length, "mm") : "calculated";
}

}  // namespace

std::string stop_words(StopKind kind, double value) {
    if (kind == StopKind::drawing_angle) return "the drawing's angle";
    constexpr const char* units[] = {"", "deg free", "mm of travel", "kN", "mm gap"};  // in their order
    return size_words(kind == StopKind::free_angle ? value / degree : value, units[static_cast<int>(kind)]);
}

int own_tool(Case& c, int tool) {
    if (!c.tools[tool].from_rack) return tool;
    Tool copy = c.tools[tool];
    copy.from_rack = false;
    copy.name += suffix;
    for (std::size_t i = 0; i < c.tools.size(); ++i)
        if (c.tools[i].name == copy.name) return static_cast<int>(i);
    const int made = static_cast<int>(c.tools.size());
    c.tools.push_back(copy);
    for (Step& step : c.steps) {
        if (step.punch == tool) step.punch = made;
        if (step.die == tool) step.die = made;
        if (step.pad == tool) step.pad = made;
        if (step.clamp == tool) step.clamp = made;
    }
    return made;
}

std::vector<std::string> case_changes(const Case& from, const Case& to) {
    Lines lines;
    lines.differ("title", from.title, to.title);
    lines.differ("material", from.material.name, to.material.name);
    lines.number("thickness", from.thickness, to.thickness, "mm");
    lines.differ("thickness tolerance", tolerance_words({from.thickness_tolerance}, 1.0, "mm"),
                 tolerance_words({to.thickness_tolerance}, 1.0, "mm"));
    lines.number("width", from.width, to.width, "mm");
    lines.differ("blank's length", blank_words(from), blank_words(to));
    const auto rolled = [](const Case& c) {
        return c.rolling == Rolling::lengthwise ? "lengthwise" : "crosswise";
    };
    lines.differ("rolling", rolled(from), rolled(to));
    compare_part(from.part, to.part, lines);
    compare_tools(from, to, lines);
    compare_steps(from, to, lines);
    lines.table("", from.run, to.run);
    lines.table("handling, ", from.handling, to.handling);
    if (from.press && to.press) lines.table("press, ", *from.press, *to.press);
    if (from.cost && to.cost) lines.table("", CostTable{*from.cost, {}}, CostTable{*to.cost, {}});
    if (lines.all.empty() && write_case(from) != write_case(to))
        lines.all.emplace_back("another change: see the file");
    return lines.all;
}

}  // namespace overbend::files
