#include "scenes/commands/bend_options.h"
#include "sim/errors.h"

#include <algorithm>
#include <cstdio>

namespace overbend::commands {

std::string millimetres(double length) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6g mm", length);
    return text;
}

namespace {

// Kinds by their first letters, in the order of BendKind.
const std::string letters = "vocwhd";
const std::vector<std::string> kind_words = {"vee", "offset", "channel", "wiping", "hem", "draw"};

char letter(BendKind kind) {
    return letters[static_cast<std::size_t>(kind)];
}

struct NumberOption {
    std::string name;
    std::string words;
    ValueCheck check;
    std::string needed_by;   // letters of kinds
    std::string allowed_by;  // of further ones
};

ValueCheck length(double low, double high) {
    return from_to(low, high, "mm");
}

const std::vector<NumberOption>& stop_options() {
    static const std::vector<NumberOption> all = {
        {"--travel", "stop: travel of the punch from first touch, mm", between(0.0, 2500.0, "mm"), "",
         "vocwd"},
        {"--free", "stop: (first) bend angle after release, deg", between(0.0, 180.0, "deg"), "", "vocw"},
        {"--force-per-mm", "stop: force per mm of strip width, N/mm", between(0.0, 1e6, "N/mm"), "", "voch"},
        {"--gap", "stop: gap between the inner faces of a hem under load, mm; 0 closes it",
         length(0.0, 100.0), "", "h"}};
    return all;
}

const std::vector<NumberOption>& tool_options() {
    static const std::vector<NumberOption> all = {
        {"--die-opening", "between the shoulder arcs' centres, mm", length(0.2, 1000.0), "vh", ""},
        {"--shoulder", "shoulder radius of the die, mm", length(0.01, 200.0), "vchd", ""},
        {"--nose", "nose radius of the punch, mm (offset: of the convex corners of both tools)",
         length(0.01, 200.0), "voh", ""},
        {"--die-angle",
         "included angle of the die's groove, deg, such as 85; default: open below the shoulders",
         between(0.0, 180.0, "deg"), "", "v"},
        {"--bottom", "radius of the groove's bottom, mm; default 0.4", length(0.0, 200.0), "", "v"},
        {"--punch-angle", "included angle of the punch, deg; default 30", between(0.0, 180.0, "deg"), "",
         "v"},
        {"--offset", "step between the lands of an offset's tools, mm", length(0.05, 200.0), "o", ""},
        {"--offset-angle", "bend angle of their sloped faces, deg", from_to(1.0, 90.0, "deg"), "o", ""},
        {"--root", "radius of their concave corners, mm; default half a thickness", length(0.0, 200.0), "",
         "o"},
        {"--land", "length of their lands beyond the sharp corners, mm; default 8 thicknesses",
         length(0.1, 1000.0), "", "o"},
        {"--punch-width", "of the channel's or draw's punch, mm", length(0.2, 1000.0), "cd", ""},
        {"--corner", "corner radius of the punch, mm", length(0.0, 200.0), "cwd", ""},
        {"--clearance",
         "between punch and die, mm: beside a channel's, draw's or wiping punch, or between an offset's "
         "closed faces; default 1.1 (offset: 1.05) thicknesses",
         length(0.05, 200.0), "", "ocwd"},
        {"--depth", "of the channel, mm", length(0.1, 1000.0), "c", ""},
        {"--edge", "edge radius of the block over which a flange is wiped, mm", length(0.01, 200.0), "w", ""},
        {"--hold", "length of the strip under the wiping clamp, mm; default 10 thicknesses",
         length(0.1, 1000.0), "", "w"},
        {"--hem", "length of the strip that is folded over, mm", length(0.2, 1000.0), "h", ""},
        {"--first-free", "bend angle after a hem's first stroke, deg; default 150",
         from_to(100.0, 170.0, "deg"), "", "h"},
        {"--flange",
         "length of the strip, mm: each half (vee, offset), beside the punch (channel, draw), beyond the "
         "edge (wiping), under the hem",
         length(0.1, 5000.0), "wd", "voch"}};
    return all;
}

const std::vector<NumberOption>& spring_options() {
    const auto preload = from_to(0.0, 1e5, "N/mm"), rate = from_to(0.0, 1e5, "N/mm2");
    static const std::vector<NumberOption> all = {
        {"--pad-preload", "preload of the channel's pad, N per mm of strip width", preload, "", "c"},
        {"--pad-rate", "rate of its spring, N per mm of travel and mm of strip width", rate, "", "c"},
        {"--pad-count", "number of springs (--pad-spring) under the pad; default 1", whole_from_to(1, 1000),
         "", "c"},
        {"--clamp-force",
         "preload of the clamp (draw: of each clamp), N per mm of strip width; without it a wiping clamp is "
         "rigid",
         preload, "d", "w"},
        {"--clamp-rate", "rate of its spring, N per mm of travel and mm of strip width", rate, "", "wd"},
        {"--clamp-count", "number of springs (--clamp-spring) behind a clamp; default 1",
         whole_from_to(1, 1000), "", "wd"}};
    return all;
}

std::vector<NumberOption> all_numbers() {
    std::vector<NumberOption> all = stop_options();
    for (const auto* more : {&tool_options(), &spring_options()})
        all.insert(all.end(), more->begin(), more->end());
    return all;
}

std::string listed(const std::string& kinds) {
    std::string words;
    for (const char c : kinds) words += (words.empty() ? "" : ", ") + kind_words[letters.find(c)];
    return words;
}

void complain_of_kind(const std::string& option, BendKind kind, const std::string& kinds) {
    complain(option, std::string("it is not used by --kind ") + kind_word(kind) +
                         "; remove it, or choose a kind that uses it: " + listed(kinds));
}

void check_kind(const BendOptions& given) {
    const char kind = letter(given.kind);
    for (const NumberOption& o : all_numbers()) {
        const bool needed = o.needed_by.find(kind) != std::string::npos;
        const bool allowed = needed || o.allowed_by.find(kind) != std::string::npos;
        if (given.number(o.name) && !allowed)
            complain_of_kind(o.name, given.kind, o.needed_by + o.allowed_by);
        if (!given.number(o.name) && needed)
            complain(o.name, std::string("it is missing; --kind ") + kind_word(given.kind) + " needs it");
    }
    const bool pad = given.kind == BendKind::channel;
    const bool clamp = given.kind == BendKind::wiping || given.kind == BendKind::draw;
    if (!given.springs.at("--pad-spring").empty() && !pad) complain_of_kind("--pad-spring", given.kind, "c");
    if (!given.springs.at("--clamp-spring").empty() && !clamp)
        complain_of_kind("--clamp-spring", given.kind, "wd");
    if (given.clamp_placed && given.kind != BendKind::wiping) complain_of_kind("--clamp-on", given.kind, "w");
}

void check_one_stop(const BendOptions& given) {
    std::string names;
    int stops = 0;
    for (const NumberOption& o : stop_options()) {
        if (given.number(o.name)) ++stops;
        if ((o.needed_by + o.allowed_by).find(letter(given.kind)) != std::string::npos)
            names += (names.empty() ? "" : ", ") + o.name;
    }
    if (stops != 1) complain(names, std::to_string(stops) + " stops are given; give exactly one");
}

// Longer strips and wider tools are all mesh and no bend.
void check_lengths(const BendOptions& given) {
    const double most = 500.0 * given.thickness;
    for (const char* name : {"--flange", "--hem", "--hold", "--depth", "--punch-width", "--offset", "--land",
                             "--corner", "--edge", "--shoulder", "--travel"}) {
        const std::optional<double> value = given.number(name);
        if (given.kind != BendKind::vee && value && *value > most)
            complain(name,
                     millimetres(*value) + " does not suit the thickness; give at most " + millimetres(most));
    }
    const std::optional<double> opening = given.number("--die-opening");
    if (opening && (*opening < 2.0 * given.thickness || *opening > 300.0 * given.thickness))
        complain("--die-opening", millimetres(*opening) + " does not suit the thickness; give from " +
                                      millimetres(2.0 * given.thickness) + " to " +
                                      millimetres(300.0 * given.thickness));
}

void add_common(Command& command, BendOptions& given) {
    command
        .option_function(
            "--kind",
            [&given](const std::string& word) {
                const auto found = std::find(kind_words.begin(), kind_words.end(), word);
                given.kind = static_cast<BendKind>(found - kind_words.begin());
            },
            "vee, offset, channel, wiping, hem or draw; default vee")
        .check(one_of(kind_words));
    command.option("--material", given.material, "material card: a name such as dc01, or a file").required();
    command.option("--thickness", given.thickness, "of the strip, mm")
        .required()
        .check(from_to(0.05, 20.0, "mm"));
    command.option("--friction", given.friction, "coefficient between strip and tools")
        .shows_default()
        .check(from_to(0.0, 0.3, ""));
    add_width(command, given.width);
    command.flag("--gravity", given.weighs, "include the weight of the strip");
    command.option("--layers", given.layers, "through the thickness")
        .shows_default()
        .check(whole_from_to(5, 41));
}

}  // namespace

const char* kind_word(BendKind kind) {
    return kind_words[static_cast<std::size_t>(kind)].c_str();
}

void add_bend_options(Command& command, BendOptions& given) {
    add_common(command, given);
    for (const NumberOption& o : all_numbers()) {
        const std::string kinds = " [" + listed(o.needed_by + o.allowed_by) + "]";
        command.option(o.name, given.numbers[o.name], o.words + kinds).check(o.check);
    }
    for (const char* name : {"--pad-spring", "--clamp-spring"})
        command
            .option(name, given.springs[name],
                    "a helical spring instead of a rate: wire,coil,turns,G (diameter and mean coil "
                    "diameter in mm, active turns, shear modulus in MPa); needs --width")
            .with_commas()
            .check(between(0.0, 1e6, ""));
    command
        .option_function(
            "--clamp-on",
            [&given](const std::string& word) {
                given.clamp_placed = true;
                given.clamp_on = word == "ram" ? job::ClampStand::ram : job::ClampStand::frame;
            },
            "where a wiping clamp's spring is fixed: frame or ram; default frame")
        .check(one_of({"frame", "ram"}));
    command.flag("--curve", given.curve, "also print the force over the travel");
    add_output(command, given.output);
}

void check_together(const BendOptions& given) {
    check_kind(given);
    check_one_stop(given);
    check_lengths(given);
    const bool firm = !spring_of(given, "clamp");
    if (given.clamp_placed && firm)
        complain("--clamp-on", "the clamp has no spring; give --clamp-force, --clamp-rate or --clamp-spring");
    if (given.kind == BendKind::channel) spring_of(given, "pad");
}

std::optional<tool::Spring> spring_of(const BendOptions& given, const std::string& behind) {
    const bool pad = behind == "pad";
    const std::string preload = pad ? "--pad-preload" : "--clamp-force", rate = "--" + behind + "-rate",
                      helix = "--" + behind + "-spring", count = "--" + behind + "-count";
    const std::vector<double>& wound = given.springs.at(helix);
    if (given.number(count) && wound.empty())
        complain(count,
                 "it is the number of springs of " + helix + ", which is not given; give both or neither");
    if (!given.number(preload) && !given.number(rate) && wound.empty()) return std::nullopt;
    const auto check_here = [](const std::string& options, const auto& made) {
        try {
            return made();
        } catch (const OutOfRange& error) {
            complain(options, error.name + ": " + error.wrong + "; " + error.right);
        }
    };
    tool::Spring spring;
    spring.preload = given.number_or(preload, 0.0);
    spring.rate = given.number_or(rate, 0.0);
    if (!wound.empty()) {
        if (given.number(rate)) complain(rate + ", " + helix, "two rates are given; give exactly one");
        if (wound.size() != 4)
            complain(helix, std::to_string(wound.size()) + " numbers are given; give wire,coil,turns,G");
        if (!given.width) complain(helix, "the width of the strip is not known; give --width, in mm");
        const double rate_of_one = check_here(helix, [&] {
            return tool::spring_rate({wound[0], wound[1], wound[2], wound[3]});
        });
        spring.rate = given.number_or(count, 1.0) * rate_of_one / *given.width;
    }
    check_here(preload + ", " + rate, [&] { return tool::check(spring), spring; });
    return spring;
}

}  // namespace overbend::commands
