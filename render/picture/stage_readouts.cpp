// The panel's numbers, and the legend of the strip's colours.

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

const char* const unknown = "\u2013";
constexpr double value_width = 4.6;    // units, of a column of bend angles
constexpr double caption_width = 5.8;  // units, of the words before them

double to_kilonewton(const Sheet& sheet, double newton_per_mm) {
    return newton_per_mm * sheet.info.strip_width / 1000.0;
}

struct Row {
    std::string label;
    std::string short_label;  // for a narrow panel
    std::vector<std::string> values;
    Colour colour;
};

void add_row(Sheet& sheet, const Row& row, const Rect& box, double middle) {
    const double u = sheet.unit();
    const double size = (sheet.layout.narrow ? 1.0 : 1.1) * u;
    double x = box.right();
    for (auto value = row.values.rbegin(); value != row.values.rend(); ++value) {
        add_text_on_middle(sheet.list, *value, {x, middle}, size, row.colour, Across::right, Weight::bold);
        x -= row.values.size() > 1 ? value_width * u : text_width(*value, size, Weight::bold);
    }
    const double room = x - box.x - 0.3 * u;
    const std::string label = text_width(row.label, u) <= room ? row.label : fitted(row.short_label, u, room);
    add_text_on_middle(sheet.list, label, {box.x, middle}, u, sheet.colours.muted);
}

void add_rows(Sheet& sheet, const std::vector<Row>& rows, const Rect& box) {
    const double height = box.height / static_cast<double>(rows.size());
    double middle = box.y + 0.5 * height;
    for (const Row& row : rows) {
        add_row(sheet, row, box, middle);
        middle += height;
    }
}

std::string turned(const std::optional<double>& angle) {
    return angle ? in_degrees(std::abs(*angle)) : unknown;
}

std::string sprung(const std::optional<double>& angle) {
    return angle ? in_degrees(*angle) : unknown;
}

// How many letters of the bends' names are words that all of them begin with: of "channel left" and "channel
// right" the columns' heads keep "left" and "right".
size_t common_start(const std::vector<BendMark>& bends) {
    if (bends.size() < 2) return 0;
    const std::string& first = bends.front().name;
    size_t alike = 0;
    for (size_t at = first.find(' '); at != std::string::npos; at = first.find(' ', at + 1)) {
        const auto begins_alike = [&](const BendMark& bend) {
            return bend.name.size() > at + 1 && bend.name.compare(0, at + 1, first, 0, at + 1) == 0;
        };
        if (first.size() == at + 1 || !std::all_of(bends.begin(), bends.end(), begins_alike)) break;
        alike = at + 1;
    }
    return alike;
}

// As many bends beside one another as there is room for; the stage shows them all.
std::vector<Row> bend_rows(const Sheet& sheet) {
    const double u = sheet.unit();
    const ThemeColours& c = sheet.colours;
    const double room = sheet.layout.bends.width - caption_width * u;
    const size_t columns = std::max<size_t>(1, static_cast<size_t>(std::max(0.0, room / (value_width * u))));
    const size_t shown = std::min(columns, sheet.info.bends.size());
    Row head{"bend angle", "bend", {}, c.muted};
    Row now{"now", "now", {}, c.ink};
    Row loaded{"under load", "loaded", {}, c.loaded};
    Row free{"free", "free", {}, c.ink};
    Row opened{"springback", "springback", {}, c.ink};
    const size_t alike = shown > 1 ? common_start(sheet.info.bends) : 0;
    for (size_t i = 0; i < shown; ++i) {
        const BendMark& bend = sheet.info.bends[i];
        const double width = shown > 1 ? (value_width - 0.4) * u : room;
        head.values.push_back(fitted(bend.name.substr(alike), 1.1 * u, width, Weight::bold));
        // While the strip is carried it is not yet the bend's turn.
        now.values.push_back(sheet.info.motion ? unknown
                                               : turned(measured(sheet.recording, sheet.actual, bend).angle));
        loaded.values.push_back(turned(bend.loaded));
        free.values.push_back(turned(bend.free));
        opened.values.push_back(sprung(bend.springback()));
    }
    return {head, now, loaded, free, opened};
}

Row clearance_row(const Sheet& sheet) {
    double depth = -1.0;
    for (const InterferenceMark& mark : sheet.info.interferences) depth = std::max(depth, mark.depth);
    if (depth >= 0.0)
        return {"interference", "overlap", {fixed(depth, 2) + " mm"}, sheet.colours.alarm_words};
    const std::optional<double>& least = sheet.info.least_clearance;
    return {
        "minimum clearance", "clearance", {least ? fixed(*least, 2) + " mm" : unknown}, sheet.colours.ink};
}

// The colours from one end of the scale to the other. Each patch reaches to the bar's end and is painted over
// by the next, so that no gap shines through.
void add_colour_bar(Sheet& sheet, const Rect& bar) {
    const bool stress = sheet.info.colouring == Colouring::hoop_stress;
    const int patches = 80;
    for (int i = 0; i < patches; ++i) {
        const double from = bar.width * i / patches;
        const double part = (i + 0.5) / patches;
        add_fill(sheet.list, rectangle({bar.x + from, bar.y, bar.width - from, bar.height}),
                 stress ? diverging(2.0 * part - 1.0) : sequential(part));
    }
    add_line(sheet.list, rectangle(bar), sheet.colours.muted, sheet.layout.line);
}

std::string scale_name(const Sheet& sheet) {
    return sheet.info.colouring == Colouring::hoop_stress ? "hoop stress, MPa" : "plastic strain, %";
}

// The number at a part of the scale, 0 to 1.
std::string scale_number(const Sheet& sheet, double part) {
    const bool stress = sheet.info.colouring == Colouring::hoop_stress;
    const double limit = stress ? sheet.info.colour_limit : 100.0 * sheet.info.colour_limit;
    const double value = stress ? (2.0 * part - 1.0) * limit : part * limit;
    const int decimals = limit >= 10.0 ? 0 : limit >= 1.0 ? 1 : 2;
    return (stress && value > 0.0 ? "+" : "") + fixed(value, value == 0.0 ? 0 : decimals);
}

// Where there is no panel: the name, and the bar between its ends' numbers, on a plate.
void add_legend_in_line(Sheet& sheet) {
    const double u = sheet.unit();
    const Rect& box = sheet.layout.legend;
    add_plate(sheet, box, sheet.colours.rule);
    const double base = baseline_for_middle(box.centre().y(), u);
    const Colour& ink = sheet.colours.ink;
    const std::string name = scale_name(sheet);
    const std::string low = scale_number(sheet, 0.0), high = scale_number(sheet, 1.0);
    double from = box.x + 0.7 * u;
    if (box.width >= legend_with_elastic * u - 1e-6) {
        add_core_sample(sheet, {from, box.y + 0.4 * u, 2.4 * u, 1.2 * u});
        add_text(sheet.list, "elastic: never yielded", {from + 2.9 * u, base}, u, ink);
        from += 2.9 * u + text_width("elastic: never yielded", u) + 1.4 * u;
    }
    if (box.width > 22.0 * u) {
        add_text(sheet.list, name, {from, base}, u, ink);
        from += text_width(name, u) + 1.2 * u;
    }
    add_text(sheet.list, low, {from, base}, u, ink);
    add_text(sheet.list, high, {box.right() - 0.7 * u, base}, u, ink, Across::right);
    from += text_width(low, u) + 0.5 * u;
    const double to = box.right() - 1.2 * u - text_width(high, u);
    add_colour_bar(sheet, {from, box.y + 0.5 * u, to - from, box.height - u});
}

}  // namespace

void add_readouts(Sheet& sheet) {
    if (sheet.info.charts == Charts::hidden) return;
    const ThemeColours& c = sheet.colours;
    // A punch that is only lowered or raised presses with nothing.
    const double force = sheet.info.punch_travel ? 0.0 : sheet.state.punch_force;
    const std::string per_width = fixed(force, force < 99.95 ? 1 : 0) + " kN/m";  // 1 N/mm is 1 kN/m
    add_rows(sheet,
             {{"travel", "travel", {fixed(sheet.travel(), 2) + " mm"}, c.ink},
              {"force", "force", {fixed(to_kilonewton(sheet, force), 2) + " kN"}, c.ink},
              {"force per width", "per width", {per_width}, c.ink},
              clearance_row(sheet)},
             sheet.layout.press);
    add_rows(sheet, bend_rows(sheet), sheet.layout.bends);
    const Rect& press = sheet.layout.press;
    if (sheet.layout.bends.y < press.bottom()) return;  // the two stand side by side
    const double between = 0.5 * (press.bottom() + sheet.layout.bends.y);
    add_line(sheet.list, polyline({{press.x, between}, {press.right(), between}}), sheet.colours.rule,
             sheet.layout.line);
}

void add_legend(Sheet& sheet) {
    if (sheet.info.charts == Charts::hidden) {
        add_legend_in_line(sheet);
        return;
    }
    const double u = sheet.unit();
    const Rect& box = sheet.layout.legend;
    const bool stress = sheet.info.colouring == Colouring::hoop_stress;
    const Colour& muted = sheet.colours.muted;
    add_text(sheet.list, scale_name(sheet), {box.x, box.y + u}, u, muted);
    const Rect bar{box.x, box.y + 1.6 * u, box.width, 1.3 * u};
    add_colour_bar(sheet, bar);
    const double below = bar.bottom() + 1.3 * u;
    for (const Across across : {Across::left, Across::middle, Across::right}) {
        const double part = 0.5 * static_cast<int>(across);
        add_text(sheet.list, scale_number(sheet, part), {bar.x + part * bar.width, below}, u, muted, across);
    }
    const Rect sample{box.x, box.bottom() - 1.3 * u, 2.4 * u, 1.2 * u};
    add_core_sample(sheet, sample);
    const std::string elastic = "elastic: never yielded";
    add_text_on_middle(sheet.list, text_width(elastic, u) <= box.width - 2.9 * u ? elastic : "elastic",
                       {sample.right() + 0.5 * u, sample.centre().y()}, u, muted);
    if (!stress) return;
    add_text(sheet.list, "compression", {bar.x, below + 1.35 * u}, u, muted);
    add_text(sheet.list, "tension", {bar.right(), below + 1.35 * u}, u, muted, Across::right);
}

}  // namespace overbend::picture
