#include "render/picture/flat_layout.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::picture {

Colour bend_colour(const FlatBendLine& bend) {
    return mixed(bend.angle > 0.0 ? okabe_ito::blue : okabe_ito::vermillion, okabe_ito::black, 0.15);
}
Colour alarm_colour() {
    return mixed(okabe_ito::vermillion, okabe_ito::black, 0.15);
}
const Colour& flat_ink() {
    return theme_colours(Theme::light).ink;
}

int set_steps(std::vector<Flag>& flags, double gap) {
    int steps = 0;
    for (std::size_t i = flags.size(); i-- > 0;) {
        Flag& flag = flags[i];
        flag.step = 0;
        for (std::size_t j = i + 1; j < flags.size(); ++j)
            if (flags[j].at < flag.at + flag.width + gap) flag.step = std::max(flag.step, flags[j].step + 1);
        steps = std::max(steps, flag.step + 1);
    }
    return steps;
}

namespace {

constexpr int widest = 16384;  // pixels; what the painter takes

// ---- what is written

std::string in_one_line(const std::vector<std::string>& lines) {
    std::string all;
    for (const std::string& line : lines) all += (all.empty() ? "" : "  ") + line;
    return all;
}

void make_labels(FlatLayout& s, double name_room) {
    const FlatSheet& given = *s.given;
    s.above.clear(), s.below.clear();
    for (const FlatBendLine& bend : given.bends) {
        const std::string turn =
            short_number(std::abs(bend.angle) / degree) + "\u00b0 " + (bend.angle > 0.0 ? "up" : "down");
        s.above.push_back(
            {bend.at,
             {fitted(bend.name, s.unit, name_room), turn, "R " + short_number(bend.inside_radius)},
             bend_colour(bend)});
        s.below.push_back({bend.at, {fixed(bend.at, 2)}, flat_ink(), 0.0});
    }
    for (const FlatHole& hole : given.holes) {
        const bool round = hole.length == hole.width;
        const std::string size = round
                                     ? "hole " + short_number(hole.width)
                                     : "slot " + short_number(hole.length) + " x " + short_number(hole.width);
        s.below.push_back({hole.at,
                           {hole.too_near ? size + ", too close to a bend" : size,
                            fixed(hole.at, 2) + " | " + fixed(hole.across, 2)},
                           hole.too_near ? alarm_colour() : flat_ink(),
                           hole.across});
    }
    std::stable_sort(s.below.begin(), s.below.end(),
                     [](const FlatLabel& a, const FlatLabel& b) { return a.at < b.at; });
    for (std::vector<FlatLabel>* labels : {&s.above, &s.below})
        for (FlatLabel& label : *labels)
            if (s.lines_above == 1) label.lines = {in_one_line(label.lines)};
}

double label_width(const FlatLabel& label, double unit) {
    double width = 0.0;
    for (const std::string& line : label.lines) width = std::max(width, text_width(line, unit));
    return width + 0.4 * unit;
}

void make_cautions(FlatLayout& s) {
    const FlatSheet& given = *s.given;
    s.words.clear();
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < given.cautions.size(); ++i) {
        const std::size_t left = given.cautions.size() - i;
        if (i + 1 == most && left > 1) {
            s.words.push_back("and " + std::to_string(left) + " more cautions: see overbend blank");
            break;
        }
        const double room = s.width - 2.0 * s.margin();
        for (const std::string& line : wrapped("Caution: " + given.cautions[i], s.unit, room, room, 2))
            s.words.push_back(line);
    }
    s.words.push_back(estimate_words() + " Lengths in mm; up and down as seen on this face.");
}

// ---- where it stands

std::vector<Flag> flags_of(const FlatLayout& s, const std::vector<FlatLabel>& labels) {
    std::vector<Flag> flags;
    flags.reserve(labels.size());
    for (const FlatLabel& label : labels)
        flags.push_back({s.scale * label.at, label_width(label, s.unit), 0});
    return flags;
}

// At this scale, the height that everything takes; blank and foot are set.
double set_out(FlatLayout& s) {
    s.flags_above = flags_of(s, s.above);
    s.flags_below = flags_of(s, s.below);
    const double gap = 0.5 * s.unit;
    const int steps_above = set_steps(s.flags_above, gap), steps_below = set_steps(s.flags_below, gap);
    const double head = s.margin() + 1.4 * s.line() + 2.4 * s.line();
    const double top = head + s.line() * (0.8 + s.lines_above * steps_above);
    s.blank = {s.margin() + text_width(short_number(s.given->width), s.unit) + 2.0 * s.unit, top,
               s.scale * s.given->length, s.scale * s.given->width};
    const double length_line = 1.8 * s.line();
    s.foot = s.blank.bottom() + s.line() * (0.8 + s.lines_below * steps_below) + length_line;
    return s.foot + s.line() * (1.8 + static_cast<double>(s.words.size())) + 0.5 * s.margin();
}

// The greatest scale at which everything lies within the picture's width.
double scale_by_width(const FlatLayout& s) {
    const double left = s.margin() + text_width(short_number(s.given->width), s.unit) + 2.0 * s.unit;
    const double room = s.width - left - s.margin();
    double scale = room / s.given->length;
    for (const std::vector<FlatLabel>* labels : {&s.above, &s.below})
        for (const FlatLabel& label : *labels)
            scale = std::min(scale, (room - label_width(label, s.unit)) / std::max(label.at, 1e-9));
    return scale;
}

// Fits the sheet to the height at one width of the picture.
bool fits(FlatLayout& s) {
    make_cautions(s);
    const double most = scale_by_width(s);
    constexpr double least_share = 1e-3;  // for blanks that are far wider than long
    for (s.scale = most; s.scale > least_share * most && s.scale > 0.0; s.scale *= 0.97)
        if (set_out(s) <= s.height) return true;
    return false;
}

// Where flags stand too close, the picture is made wider, at first to two sheets; then names are cut short;
// then flags get one line each, which takes less height; then the picture is made as wide as it takes.
void fit(FlatLayout& s) {
    const int sheet = s.width;
    for (const int limit : {2 * sheet, widest})
        for (const bool one_line : {false, true})
            for (const double name_room : {11.0, 7.0, 4.5}) {
                s.lines_above = one_line ? 1 : 3, s.lines_below = one_line ? 1 : 2;
                make_labels(s, name_room * s.unit);
                for (s.width = sheet; s.width <= limit; s.width += s.width / 5)
                    if (fits(s)) return;
            }
    throw OutOfRange("flat pattern", "its bend lines are too close together for their labels",
                     "draw fewer bends at once");
}

// What room is left goes beside the drawing, and above and below it; the foot stands at the bottom.
void spread(FlatLayout& s) {
    double right = s.blank.right();
    const auto reach = [&](const std::vector<Flag>& flags) {
        for (const Flag& flag : flags) right = std::max(right, s.blank.x + flag.at + flag.width);
    };
    reach(s.flags_above), reach(s.flags_below);
    const double down = s.height - set_out(s);
    s.blank.x += 0.5 * std::max(0.0, s.width - s.margin() - right);
    s.blank.y += 0.5 * down;
    s.foot += 0.5 * down;
    s.bottom = s.foot + 0.5 * down;
}

}  // namespace

FlatLayout lay_out_flat(const FlatSheet& sheet, int height) {
    FlatLayout s;
    s.given = &sheet;
    s.height = height;
    s.width = static_cast<int>(std::lround(height * std::sqrt(2.0)));
    s.unit = height / 44.0;
    fit(s);
    spread(s);
    return s;
}

}  // namespace overbend::picture
