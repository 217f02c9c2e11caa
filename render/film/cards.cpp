#include "render/film/frame_parts.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/counted.h"

namespace overbend::film {

using namespace picture;

namespace {

// Units.
constexpr double small_words = 1.1;
constexpr double row_height = 1.8;      // of the table of angles
constexpr double finding_height = 1.6;  // of a line of the findings

struct Card {
    DrawingList list;
    const ThemeColours& colours;
    double unit;
    Rect words, part;  // where the words stand, and the part
};

// Side by side on a wide picture, else the part below.
Card empty_card(const FilmOptions& options) {
    const Layout layout = lay_out(options.size);
    const ThemeColours& colours = theme_colours(options.theme);
    Card card{{"", options.size.width, options.size.height, colours.page}, colours, layout.unit, {}, {}};
    if (options.backdrop == Backdrop::transparent) card.list.background.opacity = 0.0;
    const double width = options.size.width, height = options.size.height;
    const double margin = 2.5 * card.unit;
    if (width >= 1.2 * height) {
        card.words = {margin, margin, 0.5 * width - 1.5 * margin, height - 2.0 * margin};
        card.part = {0.5 * width, margin, 0.5 * width - margin, height - 2.0 * margin};
    } else {
        card.words = {margin, margin, width - 2.0 * margin, 0.6 * height - margin};
        card.part = {margin, 0.6 * height, width - 2.0 * margin, 0.4 * height - margin};
    }
    return card;
}

// Words broken into lines; returns where the next line stands.
double add_lines(Card& card, const std::string& words, double size, double top, const Colour& colour,
                 Weight weight, int lines) {
    // Bold words are wider than what the breaking of lines counts with.
    const double room = card.words.width / (weight == Weight::bold ? 1.15 : 1.0);
    double y = top;
    for (const std::string& line : wrapped(words, size, room, room, lines)) {
        add_text_on_middle(card.list, line, {card.words.x, y + 0.75 * size}, size, colour, Across::left,
                           weight);
        y += 1.5 * size;
    }
    return y;
}

std::string more_words(int count) {
    return "and " + std::to_string(count) + " more";
}

// The part as the last stroke leaves it, with its size in the picture.
struct Part {
    const stroke::Recording& recording;
    const stroke::State& state;
    View view;
};

Part placed_part(const stroke::Recording& r, const Rect& room) {
    const stroke::State& s = r.states.back();
    const auto [left, right] = std::minmax_element(s.x.begin(), s.x.end());
    const auto [low, high] = std::minmax_element(s.y.begin(), s.y.end());
    View view;
    view.stage = room;
    view.centre = Place(0.5 * (*left + *right), 0.5 * (*low + *high));
    view.scale = std::min(room.width / (*right - *left + 2.0 * r.thickness),
                          room.height / (*high - *low + 2.0 * r.thickness));
    return {r, s, view};
}

void add_part(Card& card, const Part& part) {
    std::vector<Point> outline;
    for (const Place& p : strip_outline(stations(part.recording, part.state, 0.5)))
        outline.push_back(part.view.on_picture(p));
    add_shape(card.list, polygon(outline), mixed(card.colours.page, card.colours.loaded, 0.55),
              card.colours.ink, 0.13 * card.unit);
}

std::string blank_words(const ShownJob& job) {
    const stroke::Recording& r = *job.strokes.front().recording;
    const double length = std::abs(r.blank_position.back() - r.blank_position.front());
    return "strip " + short_number(r.thickness) + " mm thick, " + short_number(job.strip_width) +
           " mm wide, " + fixed(length, 1) + " mm long";
}

std::string work_words(const ShownJob& job) {
    const int strokes = stroke_count(job);
    std::string words = counted(static_cast<std::size_t>(strokes), "stroke");
    if (job.finished) words = counted(job.bends.size(), "bend") + " in " + words;
    const int shown = static_cast<int>(job.strokes.size());
    if (shown < strokes)
        words += ", of which " + std::to_string(shown) + (shown == 1 ? " is shown" : " are shown");
    return words;
}

// The number of a bend in a disc, beside the strip on the outer side of the bend.
void add_number(Card& card, const Part& part, const BendLine& bend, int number) {
    const Spot spot = spot_on(part.recording, part.state, bend.blank_position);
    const double u = card.unit;
    // The outside of a bend that turns left is to the right of the walking direction.
    const Place normal(-std::sin(spot.theta), std::cos(spot.theta));
    const std::vector<double>& s = part.recording.blank_position;
    const double reach = 2.0 * part.recording.thickness;
    const Spot a =
        spot_on(part.recording, part.state, bend.blank_position - (s.back() > s.front() ? reach : -reach));
    const Spot b =
        spot_on(part.recording, part.state, bend.blank_position + (s.back() > s.front() ? reach : -reach));
    const double side = b.theta > a.theta ? -1.0 : 1.0;
    const double away = 0.5 * part.recording.thickness * part.view.scale + 1.35 * u;
    const Point at = part.view.on_picture(spot.at) + side * away * Point(normal.x(), -normal.y());
    add_fill(card.list, circle(at, 0.95 * u), card.colours.ink);
    add_text_on_middle(card.list, std::to_string(number), at, 1.1 * u, card.colours.page, Across::middle,
                       Weight::bold);
}

// Where the card's next line stands.
struct Pen {
    Card& card;
    double y;
};

// Number, name, angle of the drawing and angle made, side by side.
struct AngleRow {
    std::string number, name, drawing, made;
};

void add_row(Pen& pen, const AngleRow& row, const Colour& colour) {
    const Card& card = pen.card;
    const double u = card.unit, size = small_words * u, left = card.words.x;
    const double right = card.words.right() - 0.5 * u, second = right - 7.0 * u;
    const double base = baseline_for_middle(pen.y + 0.5 * row_height * u, size);
    const auto add = [&](const std::string& words, double x, Across across, Weight weight = Weight::normal) {
        add_text(pen.card.list, words, {x, base}, size, colour, across, weight);
    };
    add(row.number, left + 1.4 * u, Across::right, Weight::bold);
    add(fitted(row.name, size, second - 8.6 * u - left), left + 2.6 * u, Across::left);
    add(row.drawing, second, Across::right);
    add(row.made, right, Across::right);
    pen.y += row_height * u;
}

// The table of angles down to a height; returns how many bends it has room for.
int add_angles(Pen& pen, const std::vector<BendLine>& bends, double bottom) {
    Card& card = pen.card;
    const double u = card.unit;
    add_row(pen, {"", "bend angle, free", "drawing", "made"}, card.colours.muted);
    add_line(card.list, {card.words.x, pen.y}, {card.words.right() - 0.5 * u, pen.y}, card.colours.rule,
             0.08 * u);
    pen.y += 0.2 * u;
    const int room = static_cast<int>((bottom - pen.y) / (row_height * u));
    const int count = static_cast<int>(bends.size());
    const int shown = count <= room ? count : std::max(0, room - 1);
    for (int i = 0; i < shown; ++i)
        add_row(pen,
                {std::to_string(i + 1), bends[i].name, in_degrees(bends[i].drawing),
                 in_degrees(bends[i].made.value_or(0.0))},
                card.colours.ink);
    if (shown < count) add_row(pen, {"", more_words(count - shown), "", ""}, card.colours.muted);
    return shown;
}

// A line of the findings: a heading, or a piece of a sentence.
struct FindingLine {
    std::string words;
    Severity severity;
    Weight weight;
    int finding;  // its index
};

// The verdict goes with the first finding.
std::vector<FindingLine> finding_lines(const Card& card, const ShownJob& job) {
    const std::vector<ShownFinding>& findings = job.findings;
    std::vector<FindingLine> lines;
    if (!job.verdict.empty())
        lines.push_back({job.verdict, job.feasible ? Severity::within : Severity::stops, Weight::bold, 0});
    const double width = card.words.width - 0.5 * card.unit;
    for (int i = 0; i < static_cast<int>(findings.size()); ++i) {
        const ShownFinding& f = findings[i];
        if (i == 0 || f.severity != findings[i - 1].severity)
            lines.push_back({f.heading, f.severity, Weight::bold, i});
        for (const std::string& line : wrapped(f.words, small_words * card.unit, width, width, 6))
            lines.push_back({line, f.severity, Weight::normal, i});
    }
    return lines;
}

// Whole findings only; those without room are counted.
void add_findings(Pen& pen, const std::vector<FindingLine>& lines, int findings) {
    Card& card = pen.card;
    const double size = small_words * card.unit, step = finding_height * card.unit;
    const auto add = [&](const std::string& words, const Colour& colour, Weight weight) {
        add_text_on_middle(card.list, words, {card.words.x, pen.y + 0.5 * step}, size, colour, Across::left,
                           weight);
        pen.y += step;
    };
    auto room = static_cast<std::size_t>(std::max(0.0, (card.words.bottom() - pen.y) / step + 1e-6));
    std::size_t end = std::min(lines.size(), room);
    if (end < lines.size()) {
        if (end > 0) --end;  // the line of the count
        while (end > 0 && (lines[end - 1].finding == lines[end].finding)) --end;
    }
    for (std::size_t i = 0; i < end; ++i)
        add(lines[i].words,
            lines[i].severity == Severity::stops ? card.colours.alarm_words : card.colours.ink,
            lines[i].weight);
    if (end < lines.size()) add(more_words(findings - lines[end].finding), card.colours.muted, {});
}

}  // namespace

DrawingList draw_title_card(const ShownJob& job, const FilmOptions& options) {
    Card card = empty_card(options);
    const double u = card.unit;
    const ThemeColours& c = card.colours;
    double y = card.words.y + (card.words.height > 26.0 * u ? 3.0 * u : 0.0);
    add_fill(card.list, rectangle({card.words.x, y - 1.2 * u, 5.0 * u, 0.35 * u}), c.loaded);
    y = add_lines(card, job.title.empty() ? "Bending of a strip" : job.title, 2.6 * u, y, c.ink, Weight::bold,
                  2) +
        1.0 * u;
    if (!job.material.empty()) y = add_lines(card, job.material, 1.4 * u, y, c.ink, Weight::normal, 2);
    y = add_lines(card, blank_words(job), 1.4 * u, y, c.ink, Weight::normal, 2);
    y = add_lines(card, work_words(job), 1.4 * u, y, c.ink, Weight::normal, 2);
    if (!job.verdict.empty())
        y = add_lines(card, job.verdict, 1.4 * u, y, job.feasible ? c.ink : c.alarm_words, Weight::bold, 2);
    const std::string& mind = brief_caution();
    // At the lower edge, and never cut.
    const double size = small_words * u;
    const auto lines = wrapped(mind, size, card.words.width, card.words.width, 8).size();
    const double low = card.words.bottom() - 1.5 * size * static_cast<double>(lines);
    add_lines(card, mind, size, std::max(low, y + 0.8 * u), c.muted, Weight::normal, 8);
    if (job.finished) add_part(card, placed_part(*job.finished, grown(card.part, -1.5 * u)));
    return card.list;
}

DrawingList draw_finished_card(const ShownJob& job, const FilmOptions& options) {
    Card card = empty_card(options);
    const double u = card.unit;
    Pen pen{card, add_lines(card, "Finished: " + job.title, 1.7 * u, card.words.y, card.colours.ink,
                            Weight::bold, 2) +
                      0.6 * u};
    // The table leaves the findings what they need, up to half of the card.
    const std::vector<FindingLine> lines = finding_lines(card, job);
    const double wanted = static_cast<double>(lines.size()) * finding_height * u + 0.8 * u;
    const double bottom = card.words.bottom() - std::min(wanted, 0.5 * (card.words.bottom() - pen.y));
    const int shown = add_angles(pen, job.bends, bottom);
    pen.y += 0.8 * u;
    add_findings(pen, lines, static_cast<int>(job.findings.size()));
    const Part part = placed_part(*job.finished, grown(card.part, -4.0 * u));
    add_part(card, part);
    for (int i = 0; i < shown; ++i) add_number(card, part, job.bends[i], i + 1);
    return card.list;
}

}  // namespace overbend::film
