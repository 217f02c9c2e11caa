#include "scenes/commands/bend_options.h"

#include <algorithm>
#include <functional>
#include <utility>

#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::commands {

std::string millimetres(double length) {
    return words("%.6g mm", length);
}

namespace {

using job::ChannelBend;
using job::DrawBend;
using job::HemBend;
using job::OffsetBend;
using job::VeeBend;
using job::WipingBend;

// In the order of BendKind.
const std::vector<std::string> kind_words = {"vee", "offset", "channel", "wiping", "hem", "draw"};

// What a number may be.
struct Range {
    enum class Ends { within, between, whole };  // with the ends, without them, whole numbers
    std::string unit;
    double low = 0.0, high = 0.0;
    Ends ends = Ends::within;
    double least = 0.0, most = 1e300;  // thicknesses of the strip

    ValueCheck check() const {
        if (ends == Ends::whole) return whole_from_to(static_cast<int>(low), static_cast<int>(high));
        return ends == Ends::within ? from_to(low, high, unit) : between(low, high, unit);
    }
};
Range length(double low, double high) {
    return {"mm", low, high};
}
// Of a strip or tools that are all mesh and no bend when they are longer.
Range extent(double low, double high, Range::Ends ends = Range::Ends::within) {
    return {"mm", low, high, ends, 0.0, 500.0};
}
Range angle(double low, double high, Range::Ends ends = Range::Ends::between) {
    return {"deg", low, high, ends};
}

// A kind that takes an option, and what it does with it.
struct Use {
    BendKind kind;
    bool needed = false;
    std::function<void(AnyBend&, double)> set = {};  // empty: the kind asks for it itself
};
template <class Bend>
constexpr BendKind kind_of() {
    return static_cast<BendKind>(AnyBend(Bend()).index());
}
template <class Bend, class Size>
Use may(Size Bend::*size) {
    return {kind_of<Bend>(), false,
            [size](AnyBend& bend, double value) { std::get<Bend>(bend).*size = value; }};
}
template <class Bend, class Size>
Use needs(Size Bend::*size) {
    Use use = may(size);
    use.needed = true;
    return use;
}
template <class... Bends>
std::vector<Use> taken_by() {
    return {Use{kind_of<Bends>()}...};
}

template <class... Uses>
std::vector<Use> by(const Uses&... uses) {
    return {uses...};
}

struct NumberOption {
    std::string name;
    std::string words;
    Range range;
    std::vector<Use> uses;
    bool stops = false;  // it is where the punch turns back

    const Use* use_of(BendKind kind) const {
        const auto found =
            std::find_if(uses.begin(), uses.end(), [&](const Use& u) { return u.kind == kind; });
        return found == uses.end() ? nullptr : &*found;
    }
};

constexpr auto within = Range::Ends::within, between_ends = Range::Ends::between, whole = Range::Ends::whole;
const Range spring_preload{"N/mm", 0.0, 1e5}, spring_rate{"N/mm2", 0.0, 1e5},
    how_many{"", 1.0, 1000.0, whole}, force{"N/mm", 0.0, 1e6, between_ends},
    opening{"mm", 0.2, 1000.0, within, 2.0, 300.0};

const std::vector<NumberOption> number_options = {
    {"--travel", "stop: travel of the punch from first touch", extent(0.0, 2500.0, between_ends),
     taken_by<VeeBend, OffsetBend, ChannelBend, WipingBend, DrawBend>(), true},
    {"--free", "stop: (first) bend angle after release", angle(0.0, 180.0),
     taken_by<VeeBend, OffsetBend, ChannelBend, WipingBend>(), true},
    {"--force-per-mm", "stop: force per mm of strip width", force,
     taken_by<VeeBend, OffsetBend, ChannelBend, HemBend>(), true},
    {"--gap", "stop: gap between the inner faces of a hem under load; 0 closes it", length(0.0, 100.0),
     taken_by<HemBend>(), true},
    {"--die-opening", "between the shoulder arcs' centres", opening,
     by(needs(&VeeBend::die_opening), needs(&HemBend::die_opening))},
    {"--shoulder", "shoulder radius of the die", extent(0.01, 200.0),
     by(needs(&VeeBend::shoulder_radius), needs(&ChannelBend::shoulder_radius),
        needs(&HemBend::shoulder_radius), needs(&DrawBend::shoulder_radius))},
    {"--nose", "nose radius of the punch (offset: of the convex corners of both tools)", length(0.01, 200.0),
     by(needs(&VeeBend::nose_radius), needs(&OffsetBend::corner_radius), needs(&HemBend::nose_radius))},
    {"--die-angle", "included angle of the die's groove, such as 85; default: open below the shoulders",
     angle(0.0, 180.0), by(may(&VeeBend::die_angle))},
    {"--bottom", "radius of the groove's bottom; default 0.4", length(0.0, 200.0),
     by(may(&VeeBend::bottom_radius))},
    {"--punch-angle", "included angle of the punch; default 30", angle(0.0, 180.0),
     by(may(&VeeBend::punch_angle))},
    {"--offset", "step between the lands of an offset's tools", extent(0.05, 200.0),
     by(needs(&OffsetBend::offset))},
    {"--offset-angle", "bend angle of their sloped faces", angle(1.0, 90.0, within),
     by(needs(&OffsetBend::angle))},
    {"--root", "radius of their concave corners; default half a thickness", length(0.0, 200.0),
     by(may(&OffsetBend::root_radius))},
    {"--land", "length of their lands beyond the sharp corners; default 8 thicknesses", extent(0.1, 1000.0),
     by(may(&OffsetBend::land))},
    {"--punch-width", "of the channel's or draw's punch", extent(0.2, 1000.0),
     by(needs(&ChannelBend::punch_width), needs(&DrawBend::punch_width))},
    {"--corner", "corner radius of the punch", extent(0.0, 200.0),
     by(needs(&ChannelBend::corner_radius), needs(&WipingBend::corner_radius),
        needs(&DrawBend::corner_radius))},
    {"--clearance",
     "between punch and die: beside a channel's, draw's or wiping punch, or between an offset's closed "
     "faces; default 1.1 (offset: 1.05) thicknesses",
     length(0.05, 200.0),
     by(may(&OffsetBend::clearance), may(&ChannelBend::clearance), may(&WipingBend::clearance),
        may(&DrawBend::clearance))},
    {"--depth", "of the channel", extent(0.1, 1000.0), by(needs(&ChannelBend::depth))},
    {"--edge", "edge radius of the block over which a flange is wiped", extent(0.01, 200.0),
     by(needs(&WipingBend::edge_radius))},
    {"--hold", "length of the strip under the wiping clamp; default 10 thicknesses", extent(0.1, 1000.0),
     by(may(&WipingBend::hold))},
    {"--hem", "length of the strip that is folded over", extent(0.2, 1000.0), by(needs(&HemBend::hem))},
    {"--first-free", "bend angle after a hem's first stroke; default 150", angle(100.0, 170.0, within),
     by(may(&HemBend::first_free))},
    {"--flange",
     "length of the strip: each half (vee, offset), beside the punch (channel, draw), beyond the edge "
     "(wiping), under the hem",
     extent(0.1, 5000.0),
     by(may(&VeeBend::flange), may(&OffsetBend::flange), may(&ChannelBend::flange),
        needs(&WipingBend::flange), may(&HemBend::flange), needs(&DrawBend::flange))},
    {"--pad-preload", "preload of the channel's pad per mm of strip width", spring_preload,
     taken_by<ChannelBend>()},
    {"--pad-rate", "rate of its spring per mm of travel and mm of strip width", spring_rate,
     taken_by<ChannelBend>()},
    {"--pad-count", "number of springs (--pad-spring) under the pad; default 1", how_many,
     taken_by<ChannelBend>()},
    {"--clamp-force",
     "preload of the clamp (draw: of each clamp) per mm of strip width; without it a wiping clamp is "
     "rigid",
     spring_preload, by(Use{BendKind::wiping}, Use{BendKind::draw, true})},
    {"--clamp-rate", "rate of its spring per mm of travel and mm of strip width", spring_rate,
     taken_by<WipingBend, DrawBend>()},
    {"--clamp-count", "number of springs (--clamp-spring) behind a clamp; default 1", how_many,
     taken_by<WipingBend, DrawBend>()}};

// Options that are no numbers are taken by the kinds that take a number beside them.
const NumberOption& option_named(const std::string& name) {
    return *std::find_if(number_options.begin(), number_options.end(),
                         [&](const NumberOption& o) { return o.name == name; });
}

std::string kinds_of(const NumberOption& o) {
    std::string words;
    for (const Use& use : o.uses) words += (words.empty() ? "" : ", ") + std::string(kind_word(use.kind));
    return words;
}

void complain_of_kind(const std::string& option, BendKind kind, const std::string& kinds) {
    complain(option, std::string("it is not used by --kind ") + kind_word(kind) +
                         "; remove it, or choose a kind that uses it: " + kinds);
}

void check_kind(const BendOptions& given) {
    for (const NumberOption& o : number_options) {
        const Use* use = o.use_of(given.kind);
        if (given.number(o.name) && !use) complain_of_kind(o.name, given.kind, kinds_of(o));
        if (!given.number(o.name) && use && use->needed)
            complain(o.name, std::string("it is missing; --kind ") + kind_word(given.kind) + " needs it");
    }
    for (const auto& [name, beside] :
         {std::pair{"--pad-spring", "--pad-rate"}, {"--clamp-spring", "--clamp-rate"}}) {
        const NumberOption& rate = option_named(beside);
        if (!given.springs.at(name).empty() && !rate.use_of(given.kind))
            complain_of_kind(name, given.kind, kinds_of(rate));
    }
    if (given.clamp_on && given.kind != BendKind::wiping)
        complain_of_kind("--clamp-on", given.kind, "wiping");
}

void check_one_stop(const BendOptions& given) {
    std::string names;
    int stops = 0;
    for (const NumberOption& o : number_options) {
        if (o.stops && given.number(o.name)) ++stops;
        if (o.stops && o.use_of(given.kind)) names += (names.empty() ? "" : ", ") + o.name;
    }
    if (stops != 1) complain(names, std::to_string(stops) + " stops are given; give exactly one");
}

void check_lengths(const BendOptions& given) {
    for (const NumberOption& o : number_options) {
        const double value = given.number_or(o.name, 0.0), t = given.thickness;
        const double least = o.range.least * t, most = o.range.most * t;
        const bool free = given.kind == BendKind::vee && least == 0.0;
        if (!given.number(o.name) || free || (value >= least && value <= most)) continue;
        complain(o.name, millimetres(value) + " does not suit the thickness; give " +
                             (least > 0.0 ? "from " + millimetres(least) + " to " : "at most ") +
                             millimetres(most));
    }
}

void add_common(Command& command, BendOptions& given) {
    command
        .option_function(
            "--kind",
            [&given](const std::string& word) {
                given.kind = static_cast<BendKind>(std::find(kind_words.begin(), kind_words.end(), word) -
                                                   kind_words.begin());
            },
            "vee, offset, channel, wiping, hem or draw; default vee")
        .check(one_of(kind_words));
    command.option("--material", given.material, "material card: a name such as dc01, or a file").required();
    command.option("--thickness", given.thickness, "of the strip, mm")
        .required()
        .check(from_to(0.05, 20.0, "mm"));
    command.option("--friction", given.friction, "coefficient between strip and tools",
                   from_to(0.0, 0.3, ""));
    add_width(command, given.width);
    command.flag("--gravity", given.weighs, "include the weight of the strip");
    command.option("--layers", given.layers, "through the thickness", whole_from_to(5, 41));
}

}  // namespace

const char* kind_word(BendKind kind) {
    return kind_words[static_cast<std::size_t>(kind)].c_str();
}

AnyBend bend_of(const BendOptions& given) {
    static const AnyBend kinds[] = {VeeBend(),    OffsetBend(), ChannelBend(),
                                    WipingBend(), HemBend(),    DrawBend()};
    AnyBend bend = kinds[static_cast<std::size_t>(given.kind)];
    for (const NumberOption& o : number_options) {
        const Use* use = o.use_of(given.kind);
        const std::optional<double> value = given.number(o.name);
        if (use && use->set && value) use->set(bend, o.range.unit == "deg" ? *value * degree : *value);
    }
    return bend;
}

void add_bend_options(Command& command, BendOptions& given) {
    add_common(command, given);
    for (const NumberOption& o : number_options) {
        const std::string unit = o.range.unit.empty() ? "" : o.range.unit + "; ";
        command.option(o.name, given.numbers[o.name], o.words + " [" + unit + kinds_of(o) + "]")
            .check(o.range.check());
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
                given.clamp_on = word == "ram" ? files::ClampOn::ram : files::ClampOn::frame;
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
    if (given.clamp_on && !spring_of(given, "clamp"))
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
