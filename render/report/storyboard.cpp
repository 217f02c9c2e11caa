#include "render/report/storyboard.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "render/picture/cautions.h"
#include "render/picture/marks.h"
#include "render/picture/panel.h"
#include "render/picture/text_width.h"
#include "render/picture/turning.h"
#include "render/report/paper.h"
#include "render/report/turn_sign.h"
#include "sim/errors.h"

namespace overbend::report {

using namespace picture;

namespace {

constexpr double parts_of_height = 60.0;  // of the smallest words
constexpr double foot_height = 2.0;       // units, from here on
constexpr double legend_height = 1.5;
constexpr double row_head = 2.1;    // number, name
constexpr double panel_head = 1.5;  // "loaded 91.7°"
constexpr double column_gap = 1.6;
constexpr double panel_gap = 0.5;
constexpr double row_gap = 0.9;
constexpr double low_row = 12.0;      // below it a row's head and its panels' words share a line
constexpr double colours_seen = 3.0;  // px, of the strip's thickness

struct Grid {
    int columns = 1, rows = 1;
    int count() const { return columns * rows; }
};

Grid slide_grid(int strokes) {
    if (strokes <= 3) return {1, strokes};
    if (strokes <= 8) return {2, (strokes + 1) / 2};
    return {3, std::min(6, (strokes + 2) / 3)};
}

// A row's number and name on a line of their own, or beside the panels' words.
enum class RowHead { own_line, one_line };

struct Page {
    DrawingList list;
    Theme theme;
    double unit = 0.0;
    double head = 0.0;  // height, units
    RowHead row_head = RowHead::own_line;
    const ThemeColours& colours() const { return theme_colours(theme); }
    double margin() const { return 1.2 * unit; }
    double room() const { return list.width - 2.0 * margin(); }
};

// Title and remark, the remark below where it has no room beside.
void add_head(Page& page, const ShownJob& job) {
    const double u = page.unit;
    const std::string remark = material_words(job);
    const std::string title = fitted(job.title, 1.7 * u, page.room(), Weight::bold);
    add_text(page.list, title, {page.margin(), 2.5 * u}, 1.7 * u, page.colours().ink, Across::left,
             Weight::bold);
    const double left = page.room() - text_width(title, 1.7 * u, Weight::bold) - 1.5 * u;
    const bool beside = text_width(remark, u) <= left;
    add_text(page.list, fitted(remark, u, page.room()),
             {beside ? page.margin() + page.room() : page.margin(), (beside ? 2.5 : 4.1) * u}, u,
             page.colours().muted, beside ? Across::right : Across::left);
    page.head = beside ? 3.4 : 4.8;
}

// What the signs of the rows mean, where these have no room for words.
void add_legend(Page& page, const ShownJob& job, double y) {
    const double u = page.unit;
    const Colour& muted = page.colours().muted;
    const auto any = [&](const auto& is_so) {
        return std::any_of(job.strokes.begin(), job.strokes.end(), is_so);
    };
    double x = page.margin();
    const auto explain = [&](const std::string& words) {
        add_text(page.list, words, {x + 1.8 * u, y}, u, muted);
        x += 1.8 * u + text_width(words, u) + 1.6 * u;
    };
    for (const Turning turning : {Turning::end_for_end, Turning::over, Turning::both}) {
        if (!any([&](const ShownStroke& s) { return s.turning == turning; })) continue;
        add_turn_sign(page.list, turning, {x + 0.7 * u, y - 0.36 * u}, 0.7 * u, muted);
        explain(turning_words(turning).sign);
    }
    if (!any([&](const ShownStroke& s) { return !s.hits.empty(); })) return;
    add_hit_sign(page.list, {x + 0.7 * u, y - 0.36 * u}, 0.65 * u, page.colours().alarm);
    explain("hits a tool");
}

// What has to be stated for all panels.
void add_foot(Page& page, const ShownJob& job, const std::string& which) {
    const double u = page.unit, y = page.list.height - 0.9 * u;
    const Colour& muted = page.colours().muted;
    const double right = page.margin() + page.room();
    if (page.row_head == RowHead::one_line) add_legend(page, job, y - 1.7 * u);
    add_text(page.list, which, {right, y}, u, muted, Across::right);
    const double left = page.room() - text_width(which, u) - u;
    const std::string whole = estimate_words() + " Dashed: the strip under load.";
    const bool fits = text_width(whole, u) <= left;
    add_text(page.list, fits ? whole : "Estimates: check them. Dashed: under load.", {page.margin(), y}, u,
             muted);
}

Page begin_page(const ShownJob& job, int width, int height, Theme theme) {
    Page page;
    page.theme = theme;
    page.unit = height / parts_of_height;
    page.list = {job.title + ": storyboard", width, height, page.colours().page};
    add_head(page, job);
    return page;
}

// "91.7°" or "46.1°, 46.3°" behind the word, or without it where there is no room.
std::string angle_words(const std::string& word, const std::vector<std::optional<double>>& angles, double u,
                        double width) {
    std::string figures;
    for (const std::optional<double>& a : angles)
        figures += (figures.empty() ? "" : ", ") + in_degrees(std::abs(a.value_or(0.0)));
    if (figures.empty()) return fitted(word, u, width);
    const std::string all = word + " " + figures;
    return text_width(all, u) <= width ? all : fitted(figures, u, width);
}

void add_row_head(Page& page, const ShownStroke& stroke, int number, const Rect& box) {
    const double u = page.unit, middle = box.y + 0.5 * row_head * u;
    const std::string digits = std::to_string(number);
    const Rect badge{box.x, middle - 0.85 * u,
                     std::max(1.9 * u, text_width(digits, 1.1 * u, Weight::bold) + 0.8 * u), 1.7 * u};
    add_fill(page.list, rectangle(badge, 0.4 * u), page.colours().accent);
    add_text_on_middle(page.list, digits, {badge.centre().x(), middle}, 1.1 * u, page.colours().accent_ink,
                       Across::middle, Weight::bold);
    // from the right: how the strip is turned; then the name, and the tools where there is room
    double right = box.right();
    if (stroke.turning != Turning::none && page.row_head == RowHead::one_line) {
        add_turn_sign(page.list, stroke.turning, {right - 0.8 * u, middle}, 0.8 * u, page.colours().ink);
        right -= 2.0 * u;
    } else if (stroke.turning != Turning::none) {
        const std::string words = turning_words(stroke.turning).sign;
        right -= text_width(words, u);
        add_text_on_middle(page.list, words, {right, middle}, u, page.colours().ink);
        right -= 1.3 * u;
        add_turn_sign(page.list, stroke.turning, {right, middle}, 0.8 * u, page.colours().ink);
        right -= 1.4 * u;
    }
    if (!stroke.hits.empty() && page.row_head == RowHead::one_line) {
        add_hit_sign(page.list, {right - 0.8 * u, middle}, 0.7 * u, page.colours().alarm);
        right -= 2.0 * u;
    }
    double x = badge.right() + 0.6 * u;
    const std::string name = fitted(stroke.name, 1.2 * u, right - x, Weight::bold);
    add_text_on_middle(page.list, name, {x, middle}, 1.2 * u, page.colours().ink, Across::left, Weight::bold);
    x += text_width(name, 1.2 * u, Weight::bold) + 0.9 * u;
    const std::string hit = !stroke.hits.empty() && page.row_head == RowHead::own_line ? "hits a tool" : "";
    if (!hit.empty() && right - x > text_width(hit, u, Weight::bold) + 1.2 * u) {
        const Rect patch{x, middle - 0.75 * u, text_width(hit, u, Weight::bold) + 1.0 * u, 1.5 * u};
        add_line(page.list, rectangle(patch, 0.3 * u), page.colours().alarm, 0.15 * u);
        add_text_on_middle(page.list, hit, {patch.centre().x(), middle}, u, page.colours().ink,
                           Across::middle, Weight::bold);
        x = patch.right() + 0.7 * u;
    }
    const double left = right - x - 0.6 * u;
    std::string tools;
    for (const ShownTool& tool : stroke.tools)
        if (tool.role == "punch" || tool.role == "die") tools += (tools.empty() ? "" : ", ") + tool.name;
    if (text_width(tools, u) <= left || (page.row_head == RowHead::own_line && left > 8.0 * u))
        add_text_on_middle(page.list, fitted(tools, u, left), {x, middle}, u, page.colours().muted);
}

void add_stroke_row(Page& page, const ShownStroke& stroke, int number, const Rect& box) {
    const double u = page.unit;
    const bool one_line = page.row_head == RowHead::one_line;
    const double wide = (box.width - 2.0 * panel_gap * u) / 3.0;
    add_row_head(page, stroke, number, {box.x, box.y, one_line ? wide : box.width, box.height});
    const stroke::Recording& recording = *stroke.recording;
    const double loaded = stroke::loaded_state(recording),
                 free = static_cast<double>(recording.states.size()) - 1.0;
    const double top = box.y + (one_line ? row_head : row_head + panel_head) * u, high = box.bottom() - top;
    View view = choose_panel_view(recording, {0.0, loaded, free}, {box.x, top, wide, high}, u);
    std::vector<std::optional<double>> under_load, released;
    for (const BendMark& bend : stroke.bends)
        under_load.push_back(bend.loaded), released.push_back(bend.free);

    PanelInfo info;
    info.unit = u;
    info.theme = page.theme;
    if (view.scale * recording.thickness < colours_seen) info.paint = StripPaint::plain;
    const double raised = -panel_raise(recording, view);
    for (int i = 0; i < 3; ++i) {
        const Rect panel{box.x + i * (wide + panel_gap * u), top, wide, high};
        const std::string words = i == 0   ? fitted("before", u, wide)
                                  : i == 1 ? angle_words("pressed", under_load, u, wide)
                                           : angle_words("free", released, u, wide);
        const double y = one_line ? baseline_for_middle(box.y + 0.5 * row_head * u, u) : top - 0.45 * u;
        if (i > 0 || !one_line) add_text(page.list, words, {panel.x, y}, u, page.colours().ink);
        view = moved_view(view, panel);
        info.punch_travel = i == 1 ? std::optional<double>() : raised;
        info.ghost = i == 2 ? std::optional<double>(loaded) : std::nullopt;
        const double instant = i == 0 ? 0.0 : i == 1 ? loaded : free;
        info.interferences = deepest_hits_at(stroke, instant);
        info.words = i == 0 && !one_line ? ToolWords::of_those_that_press : ToolWords::hidden;
        add_panel(page.list, recording, instant, info, view);
    }
}

std::vector<DrawingList> draw_pages(const ShownJob& job, int width, int height, const Grid& grid,
                                    Theme theme) {
    const int strokes = static_cast<int>(job.strokes.size());
    const int pages = (strokes + grid.count() - 1) / grid.count();
    std::vector<DrawingList> lists;
    for (int p = 0; p < pages; ++p) {
        const std::string which =
            pages > 1 ? "page " + std::to_string(p + 1) + " of " + std::to_string(pages) : "";
        Page page = begin_page(job, width, height, theme);
        const double u = page.unit, margin = page.margin();
        const double wide = (width - 2.0 * margin - (grid.columns - 1) * column_gap * u) / grid.columns;
        double high = (height - (page.head + foot_height) * u) / grid.rows - row_gap * u;
        if (high < low_row * u) {
            page.row_head = RowHead::one_line;
            high -= legend_height * u / grid.rows;
        }
        add_foot(page, job, which);
        for (int k = 0; k < grid.count() && p * grid.count() + k < strokes; ++k) {
            const int column = k / grid.rows, row = k % grid.rows;  // downwards, then to the right
            add_stroke_row(page, job.strokes[p * grid.count() + k], p * grid.count() + k + 1,
                           {margin + column * (wide + column_gap * u),
                            page.head * u + row * (high + row_gap * u), wide, high});
        }
        lists.push_back(std::move(page.list));
    }
    return lists;
}

}  // namespace

std::vector<DrawingList> draw_slides(const ShownJob& job, int height, Theme theme) {
    check_strokes(job, "storyboard");
    if (height < 540 || height > 2160)
        throw OutOfRange("height of a slide", std::to_string(height) + " px", "give 540 to 2160");
    return draw_pages(job, 2 * ((height * 16 + 9) / 18), height,
                      slide_grid(static_cast<int>(job.strokes.size())), theme);
}

std::vector<DrawingList> draw_story_pages(const ShownJob& job, Theme theme) {
    check_strokes(job, "storyboard");
    constexpr int most = 6;
    const int strokes = static_cast<int>(job.strokes.size()), pages = (strokes + most - 1) / most;
    const Grid grid{1, std::max(3, (strokes + pages - 1) / pages)};
    return draw_pages(job, paper_width, paper_height, grid, theme);
}

}  // namespace overbend::report
