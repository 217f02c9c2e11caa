#include "render/film/cards.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/counted.h"
#include "sim/units.h"

namespace overbend::film {

namespace {

struct Card {
    picture::DrawingList list;
    const picture::ThemeColours& colours;
    double unit;
    picture::Rect words, part;  // where the words stand, and the part
};

// Side by side on a wide picture, else the part below.
Card empty_card(const FilmOptions& options) {
    const picture::Layout layout = picture::lay_out(options.size);
    const picture::ThemeColours& colours = picture::theme_colours(options.theme);
    Card card{{}, colours, layout.unit, {}, {}};
    card.list.width = options.size.width;
    card.list.height = options.size.height;
    card.list.background = colours.page;
    if (options.backdrop == picture::Backdrop::transparent) card.list.background.opacity = 0.0;
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
double add_lines(Card& card, const std::string& words, double size, double top, const picture::Colour& colour,
                 picture::Weight weight, int lines) {
    // Bold words are wider than what the breaking of lines counts with.
    const double room = card.words.width / (weight == picture::Weight::bold ? 1.15 : 1.0);
    double y = top;
    for (const std::string& line : picture::wrapped(words, size, room, room, lines)) {
        picture::add_text(card.list, line,
                          {card.words.x, picture::baseline_for_middle(y + 0.75 * size, size)}, size, colour,
                          picture::Across::left, weight);
        y += 1.5 * size;
    }
    return y;
}

// The part as the last stroke leaves it, with its size in the picture.
struct Part {
    const stroke::Recording& recording;
    const stroke::State& state;
    picture::View view;
};

Part placed_part(const stroke::Recording& r, const picture::Rect& room) {
    const stroke::State& s = r.states.back();
    const auto [left, right] = std::minmax_element(s.x.begin(), s.x.end());
    const auto [low, high] = std::minmax_element(s.y.begin(), s.y.end());
    picture::View view;
    view.stage = room;
    view.centre = picture::Place(0.5 * (*left + *right), 0.5 * (*low + *high));
    view.scale = std::min(room.width / (*right - *left + 2.0 * r.thickness),
                          room.height / (*high - *low + 2.0 * r.thickness));
    return {r, s, view};
}

void add_part(Card& card, const Part& part) {
    std::vector<picture::Point> outline;
    for (const picture::Place& p : picture::strip_outline(picture::stations(part.recording, part.state, 0.5)))
        outline.push_back(part.view.on_picture(p));
    picture::add_shape(card.list, picture::polygon(outline),
                       picture::mixed(card.colours.page, card.colours.loaded, 0.55), card.colours.ink,
                       0.13 * card.unit);
}

std::string blank_words(const ShownJob& job) {
    const stroke::Recording& r = *job.strokes.front().recording;
    const double length = std::abs(r.blank_position.back() - r.blank_position.front());
    return "strip " + picture::short_number(r.thickness) + " mm thick, " +
           picture::short_number(job.strip_width) + " mm wide, " + picture::fixed(length, 1) + " mm long";
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
void add_number(Card& card, const Part& part, const picture::BendLine& bend, int number) {
    const picture::Spot spot = picture::spot_on(part.recording, part.state, bend.blank_position);
    const double u = card.unit;
    // The outside of a bend that turns left is to the right of the walking direction.
    const picture::Place normal(-std::sin(spot.theta), std::cos(spot.theta));
    const std::vector<double>& s = part.recording.blank_position;
    const double reach = 2.0 * part.recording.thickness;
    const picture::Spot a = picture::spot_on(part.recording, part.state,
                                             bend.blank_position - (s.back() > s.front() ? reach : -reach));
    const picture::Spot b = picture::spot_on(part.recording, part.state,
                                             bend.blank_position + (s.back() > s.front() ? reach : -reach));
    const double side = b.theta > a.theta ? -1.0 : 1.0;
    const double away = 0.5 * part.recording.thickness * part.view.scale + 1.35 * u;
    const picture::Point at =
        part.view.on_picture(spot.at) + side * away * picture::Point(normal.x(), -normal.y());
    picture::add_fill(card.list, picture::circle(at, 0.95 * u), card.colours.ink);
    picture::add_text(card.list, std::to_string(number),
                      {at.x(), picture::baseline_for_middle(at.y(), 1.1 * u)}, 1.1 * u, card.colours.page,
                      picture::Across::middle, picture::Weight::bold);
}

}  // namespace

picture::DrawingList draw_title_card(const ShownJob& job, const FilmOptions& options) {
    Card card = empty_card(options);
    const double u = card.unit;
    const picture::ThemeColours& c = card.colours;
    double y = card.words.y + (card.words.height > 26.0 * u ? 3.0 * u : 0.0);
    picture::add_fill(card.list, picture::rectangle({card.words.x, y - 1.2 * u, 5.0 * u, 0.35 * u}),
                      c.loaded);
    y = add_lines(card, job.title.empty() ? "Bending of a strip" : job.title, 2.6 * u, y, c.ink,
                  picture::Weight::bold, 2) +
        1.0 * u;
    if (!job.material.empty())
        y = add_lines(card, job.material, 1.4 * u, y, c.ink, picture::Weight::normal, 2);
    y = add_lines(card, blank_words(job), 1.4 * u, y, c.ink, picture::Weight::normal, 2);
    y = add_lines(card, work_words(job), 1.4 * u, y, c.ink, picture::Weight::normal, 2);
    const std::string& mind = picture::brief_caution();
    // At the lower edge, and never cut.
    const double size = 1.1 * u;
    const auto lines = picture::wrapped(mind, size, card.words.width, card.words.width, 8).size();
    const double low = card.words.bottom() - 1.5 * size * static_cast<double>(lines);
    add_lines(card, mind, size, std::max(low, y + 0.8 * u), c.muted, picture::Weight::normal, 8);
    if (job.finished) add_part(card, placed_part(*job.finished, picture::grown(card.part, -1.5 * u)));
    return card.list;
}

picture::DrawingList draw_finished_card(const ShownJob& job, const FilmOptions& options) {
    Card card = empty_card(options);
    const double u = card.unit;
    const picture::ThemeColours& c = card.colours;
    double y =
        add_lines(card, "Finished: " + job.title, 1.7 * u, card.words.y, c.ink, picture::Weight::bold, 2) +
        0.6 * u;
    const double right = card.words.right() - 0.5 * u;
    const double second = right - 7.0 * u;
    const double size = 1.1 * u;
    const auto row = [&](const std::string& number, const std::string& name, const std::string& drawing,
                         const std::string& made, const picture::Colour& colour, picture::Weight weight) {
        const double base = picture::baseline_for_middle(y + 0.9 * u, size);
        picture::add_text(card.list, number, {card.words.x + 1.4 * u, base}, size, c.ink,
                          picture::Across::right, picture::Weight::bold);
        picture::add_text(card.list, picture::fitted(name, size, second - 6.0 * u - card.words.x - 2.6 * u),
                          {card.words.x + 2.6 * u, base}, size, colour, picture::Across::left, weight);
        picture::add_text(card.list, drawing, {second, base}, size, colour, picture::Across::right, weight);
        picture::add_text(card.list, made, {right, base}, size, colour, picture::Across::right, weight);
        y += 1.8 * u;
    };
    row("", "bend angle, free", "drawing", "made", c.muted, picture::Weight::normal);
    picture::add_line(card.list, {card.words.x, y}, {right, y}, c.rule, 0.08 * u);
    y += 0.2 * u;
    const int room = static_cast<int>((card.words.bottom() - y) / (1.8 * u));
    const std::vector<picture::BendLine>& bends = job.bends;
    const int count = static_cast<int>(bends.size());
    const int shown = count <= room ? count : std::max(0, room - 1);
    for (int i = 0; i < shown; ++i)
        row(std::to_string(i + 1), bends[i].name, picture::in_degrees(bends[i].drawing),
            picture::in_degrees(bends[i].made.value_or(0.0)), c.ink, picture::Weight::normal);
    if (shown < count)
        row("", "and " + std::to_string(count - shown) + " more", "", "", c.muted, picture::Weight::normal);
    const Part part = placed_part(*job.finished, picture::grown(card.part, -4.0 * u));
    add_part(card, part);
    for (int i = 0; i < shown; ++i) add_number(card, part, bends[i], i + 1);
    return card.list;
}

}  // namespace overbend::film
