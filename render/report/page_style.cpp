#include "render/report/page_style.h"

#include <algorithm>

#include "render/picture/palette.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

std::string variable(const std::string& name, const Colour& colour) {
    return "--" + name + ":" + hex(colour) + ";";
}

// Words in these colours keep a contrast of 4.5 to the page and the panels.
struct WordColours {
    Colour accent, accent_ink, good, alarm_words;
};

WordColours word_colours(Theme theme) {
    const Colour white{1.0, 1.0, 1.0, 1.0}, black = okabe_ito::black;
    if (theme == Theme::light)
        return {mixed(okabe_ito::blue, black, 0.12), white, mixed(okabe_ito::bluish_green, black, 0.35),
                mixed(okabe_ito::vermillion, black, 0.25)};
    return {okabe_ito::sky_blue, theme_colours(Theme::dark).page, mixed(okabe_ito::bluish_green, white, 0.35),
            mixed(okabe_ito::vermillion, white, 0.4)};
}

std::string variables(Theme theme) {
    const ThemeColours& c = theme_colours(theme);
    const WordColours w = word_colours(theme);
    std::string text = variable("page", c.page) + variable("stage", c.stage) + variable("panel", c.panel) +
                       variable("rule", c.rule) + variable("ink", c.ink) + variable("muted", c.muted) +
                       variable("outline", c.outline) + variable("loaded", c.loaded) +
                       variable("alarm", c.alarm) + variable("accent", w.accent) +
                       variable("accent-ink", w.accent_ink) + variable("good", w.good) +
                       variable("alarm-words", w.alarm_words);
    for (const tool::Role role :
         {tool::Role::punch, tool::Role::die, tool::Role::pad, tool::Role::clamp, tool::Role::holder,
          tool::Role::die_holder, tool::Role::ram, tool::Role::bed, tool::Role::gauge}) {
        const ToolColours t = tool_colours(role, theme);
        std::string name = tool::role_word(role);
        std::replace(name.begin(), name.end(), ' ', '-');
        text += variable(name + "-fill", t.fill) + variable(name + "-hatch", t.hatch) +
                variable(name + "-line", t.outline);
    }
    return text;
}

}  // namespace

std::string colour_variables() {
    const std::string light = variables(Theme::light);
    return ":root{color-scheme:light dark;" + light +
           "}\n@media screen and (prefers-color-scheme:dark){:root{" + variables(Theme::dark) + "}}\n";
}

std::vector<std::string> step_colours(int steps) {
    std::vector<std::string> colours;
    for (int i = -steps; i <= steps; ++i) colours.push_back(hex(diverging(static_cast<double>(i) / steps)));
    return colours;
}

}  // namespace overbend::report
