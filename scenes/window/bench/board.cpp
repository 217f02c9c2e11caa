#include "scenes/window/bench/board.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/chart/force_travel.h"
#include "render/chart/frame.h"
#include "render/chart/section_now.h"
#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::window {

using picture::DrawingList;
using picture::Point;
using picture::Rect;
using picture::View;

namespace {

constexpr double head_alone = 5.2, head_of_tile = 4.6;  // letters, above the pictures
constexpr double foot_height = 2.6;

// As large as the width allows, at most `size`.
void add_fitting(DrawingList& list, const std::string& words, const Point& at, double size, double width,
                 const picture::Colour& c, picture::Weight weight = picture::Weight::normal) {
    const double needed = picture::text_width(words, size, weight);
    picture::add_text(list, words, at, needed > width ? size * width / needed : size, c,
                      picture::Across::left, weight);
}

picture::StageInfo stage_info(const BentStrip& strip, const BoardPlan& plan, const BoardInfo& info) {
    picture::StageInfo stage;
    stage.job_title = plan.kind == BenchKind::vee ? "V bend" : "Pure bending";
    stage.step_name = strip.metal.name;
    stage.strip_width = bench_width;
    stage.theme = info.theme;
    stage.charts = picture::Charts::hidden;
    stage.step_tag = picture::StepTag::hidden;
    stage.colour_limit = plan.colour_limit;
    const double length = strip.recording.blank_position.back();
    picture::BendMark bend;
    bend.name = "bend";
    bend.blank_position = 0.5 * length;
    bend.reach = 0.5 * length;
    bend.loaded = strip.loaded;
    if (info.free == FreeAngle::told && strip.let_go) bend.free = strip.free;
    stage.bends = {bend};
    return stage;
}

// A list laid on another one.
void lay_on(DrawingList& list, DrawingList part, const Point& shift) {
    for (picture::Item& item : part.items) {
        if (auto* text = std::get_if<picture::Text>(&item)) text->at += shift;
        if (auto* shape = std::get_if<picture::Shape>(&item)) {
            for (picture::Segment& s : shape->path)
                s.to += shift, s.handle_start += shift, s.handle_end += shift;
            if (shape->clip) shape->clip->x += shift.x(), shape->clip->y += shift.y();
        }
        list.items.push_back(std::move(item));
    }
}

Rect picture_box(const BoardPlan& plan, std::size_t i) {
    const double head = (plan.tiles.size() == 1 ? head_alone : head_of_tile) * plan.size.letter;
    Rect box = plan.tiles[i];
    box.y += head, box.height -= head;
    return box;
}

picture::PictureSize stage_size(const Rect& box) {
    return {static_cast<int>(box.width), static_cast<int>(box.height)};
}

// What is not known yet is a dash; what a class is to guess is a question mark.
std::string once_free(const BentStrip& s, const BoardInfo& info, const std::string& known) {
    return info.free == FreeAngle::hidden ? "?" : s.let_go ? known : "\u2013";
}

// One decimal, as the two angles beside it.
std::string springback_words(const BentStrip& s) {
    return words("%.1f\u00b0", written_springback(s.loaded, s.free));
}

// In words, where the strip is; up to the colon in bold.
std::string caption_of(const BentStrip& s, BenchKind kind) {
    const std::string press = s.presses > 1 ? words("Press %d", s.presses) : "";
    if (s.let_go) {
        const char* rest = kind == BenchKind::vee ? "the tools no longer touch the strip, it stays bent"
                                                  : "no moment is left, the strip stays bent";
        return words(s.presses > 1 ? "Free after %d presses: " : "Free: ", s.presses) + rest;
    }
    if (kind == BenchKind::pure && s.goes_back()) return "Release: the strip springs back";
    if (s.goes_back()) return "The punch goes up: the strip springs back";
    if (s.presses > 1) return press + ": from the bent strip";
    return "Pressed";
}

// Loaded, free and springback, each under its word.
void add_angles_alone(DrawingList& list, const BentStrip& s, const Rect& tile, const BoardPlan& plan,
                      const BoardInfo& info) {
    const picture::ThemeColours& colours = picture::theme_colours(info.theme);
    const double u = plan.size.letter, part = tile.width / 3.0;
    const std::pair<const char*, std::string> figures[] = {
        {"loaded", picture::in_degrees(s.loaded)},
        {"free", once_free(s, info, picture::in_degrees(s.free))},
        {"springback", once_free(s, info, springback_words(s))}};
    for (int i = 0; i < 3; ++i) {
        const double x = tile.x + part * i + 0.4 * u;
        picture::add_text(list, figures[i].first, {x, tile.y + 1.3 * u}, 1.3 * u, colours.muted);
        add_fitting(list, figures[i].second, {x, tile.y + 4.4 * u}, 3.3 * u, part - 0.8 * u, colours.ink,
                    i == 1 ? picture::Weight::bold : picture::Weight::normal);
    }
}

// A sample of its curve in the charts stands before the name.
void add_angles_of_tile(DrawingList& list, const BentStrip& s, int number, const Rect& tile,
                        const BoardPlan& plan, const BoardInfo& info) {
    const picture::ThemeColours& colours = picture::theme_colours(info.theme);
    const double u = plan.size.letter, x = tile.x + 0.3 * u, room = tile.width - 0.6 * u;
    const chart::CurveLook curve = chart::curve_look({info.theme, u}, number);
    picture::add_line(list, {x, tile.y + 0.85 * u}, {x + 2.6 * u, tile.y + 0.85 * u}, curve.colour,
                      1.5 * curve.width, curve.dash);
    add_fitting(list, s.metal.name, {x + 3.1 * u, tile.y + 1.3 * u}, 1.35 * u, room - 3.1 * u, colours.ink,
                picture::Weight::bold);
    add_fitting(list,
                picture::in_degrees(s.loaded) + " \u2192 " + once_free(s, info, picture::in_degrees(s.free)),
                {x, tile.y + 3.4 * u}, 2.1 * u, 0.62 * room, colours.ink);
    add_fitting(list, "springback " + once_free(s, info, springback_words(s)),
                {x + 0.66 * room, tile.y + 3.4 * u}, 1.05 * u, 0.34 * room, colours.muted);
}

// Instants between which the strip is everywhere else.
std::vector<double> extremes_of(const BentStrip& s) {
    std::vector<double> instants = {0.0, s.held_instant(), s.free_instant()};
    const std::vector<stroke::State>& states = s.recording.states;
    const auto most = std::max_element(states.begin(), states.end(),
                                       [](const auto& a, const auto& b) { return a.travel < b.travel; });
    instants.push_back(static_cast<double>(most - states.begin()));
    return instants;
}

}  // namespace

bool same(const BoardSize& a, const BoardSize& b) {
    return a.width == b.width && a.height == b.height && a.letter == b.letter;
}

bool has_room(const BoardPlan& plan, const std::vector<BentStrip>& strips) {
    if (plan.kind == BenchKind::vee || plan.both_ways) return true;
    return std::none_of(strips.begin(), strips.end(), [](const BentStrip& s) {
        return std::any_of(s.recording.states.begin(), s.recording.states.end(),
                           [](const stroke::State& state) { return state.travel < 0.0; });
    });
}

BoardPlan plan_board(const BenchPress& press, const BoardSize& size) {
    BoardPlan plan;
    plan.kind = press.setup().kind;
    plan.both_ways = !has_room(plan, press.strips());
    plan.size = size;
    const double u = size.letter, gap = 0.6 * u;
    const double charts = std::max(20.0 * u, 0.33 * size.width);
    plan.charts = {size.width - charts, 0.0, charts, static_cast<double>(size.height)};
    const double width = size.width - charts - gap, height = size.height - foot_height * u;
    if (width < 320.0 || height < 180.0 + head_alone * u)
        throw OutOfRange("the bench's picture", words("%d x %d px", size.width, size.height),
                         "make the window larger");
    plan.foot = {0.0, height, width, foot_height * u};
    std::vector<BentStrip> strips = press.deepest_strips();
    for (std::size_t i = 0; plan.both_ways && i < strips.size(); ++i)
        strips[i] =
            bend_purely(press.setup(), static_cast<int>(i), {{press.way_limit()}, {-press.way_limit()}});
    const int count = static_cast<int>(strips.size());
    const int across = count > 2 ? 2 : 1, down = count > 1 ? 2 : 1;
    const double w = (width - gap * (across - 1)) / across, h = (height - gap * (down - 1)) / down;
    for (int i = 0; i < count; ++i) {
        const int row = i / across, column = i % across;
        plan.tiles.push_back({column * (w + gap), row * (h + gap), std::floor(w), std::floor(h)});
    }
    std::vector<const stroke::Recording*> recordings;
    plan.height = plan.stress = plan.curvature = plan.moment = chart::nothing_yet();
    plan.travel = plan.force = {0.0, 0.0};
    for (std::size_t i = 0; i < strips.size(); ++i) {
        const BentStrip& s = strips[i];
        recordings.push_back(&s.recording);
        if (count == 1)
            plan.views.push_back(picture::choose_view(s.recording, stage_size(picture_box(plan, i)),
                                                      stage_info(s, plan, BoardInfo())));
        else
            plan.views.push_back(
                picture::choose_panel_view(s.recording, extremes_of(s), picture_box(plan, i), 0.9 * u));
        const chart::SectionNow now = chart::section_now(s.recording, s.free_instant(), s.section_at);
        const auto widen = [](chart::Extent& all, const chart::Extent& one) {
            all.take_in(one.low), all.take_in(one.high);
        };
        widen(plan.height, now.height), widen(plan.stress, now.stress);
        widen(plan.curvature, now.curvature), widen(plan.moment, now.moment);
        for (const chart::ForcePoint& p : chart::force_travel(s.recording, bench_width).loading)
            plan.travel.take_in(p.travel), plan.force.take_in(p.force);
    }
    plan.colour_limit = picture::colour_limit(recordings, picture::Colouring::hoop_stress);
    return plan;
}

DrawingList draw_board(const std::vector<BentStrip>& strips, const BoardPlan& plan, const BoardInfo& info) {
    const picture::ThemeColours& colours = picture::theme_colours(info.theme);
    DrawingList list{"springback bench", plan.size.width, plan.size.height, colours.page};
    for (std::size_t i = 0; i < strips.size() && i < plan.tiles.size(); ++i) {
        const BentStrip& s = strips[i];
        const Rect box = picture_box(plan, i);
        const double at = s.instant;
        const bool back = s.goes_back();
        if (strips.size() == 1) {
            add_angles_alone(list, s, plan.tiles[i], plan, info);
            picture::StageInfo stage = stage_info(s, plan, info);
            stage.caption = caption_of(s, plan.kind);
            if (plan.kind == BenchKind::vee) stage.punch_travel = s.punch_travel;
            if (back) stage.ghost = s.held_instant();
            lay_on(list, picture::draw_stage(s.recording, at, stage, stage_size(box), plan.views[i]),
                   {box.x, box.y});
        } else {
            add_angles_of_tile(list, s, static_cast<int>(i), plan.tiles[i], plan, info);
            picture::PanelInfo panel;
            panel.unit = 0.9 * plan.size.letter;
            panel.theme = info.theme;
            panel.colour_limit = plan.colour_limit;
            panel.words = picture::ToolWords::hidden;
            if (back) panel.ghost = s.held_instant();
            if (plan.kind == BenchKind::vee) panel.punch_travel = s.punch_travel;
            picture::add_panel(list, s.recording, at, panel, plan.views[i]);
        }
    }
    if (!info.line.empty()) {
        const double u = plan.size.letter;
        add_fitting(list, info.line, {plan.foot.x + 0.4 * u, plan.foot.y + 1.9 * u}, 1.7 * u,
                    plan.foot.width - 0.8 * u, colours.ink);
    }
    add_bench_charts(list, strips, plan, info);
    return list;
}

}  // namespace overbend::window
