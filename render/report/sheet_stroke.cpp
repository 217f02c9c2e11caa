// A stroke's sheet: placed and pressed to one scale, tools, place, gauge, stop, boxes for what is measured.

#include <algorithm>
#include <cmath>

#include "render/picture/marks.h"
#include "render/picture/panel.h"
#include "render/picture/text_width.h"
#include "render/picture/turning.h"
#include "render/report/sheet_pages.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

constexpr double picture_heights[] = {400.0, 345.0, 290.0};  // of both, side by side or one over the other
constexpr double gap = 12.0;
constexpr double caption = 18.0;
constexpr double below = 22.0;  // a picture: its dimension, or the scale

// Two boxes for pictures, with a caption above and room below each.
struct TwoBoxes {
    Rect first, second;
};

TwoBoxes side_by_side(const Paper& paper, double height) {
    const double wide = 0.5 * (paper.width() - gap), high = height - caption - below;
    return {{paper.left(), paper.y + caption, wide, high},
            {paper.left() + wide + gap, paper.y + caption, wide, high}};
}

TwoBoxes one_over_the_other(const Paper& paper, double height) {
    const double each = 0.5 * height, high = each - caption - below;
    return {{paper.left(), paper.y + caption, paper.width(), high},
            {paper.left(), paper.y + each + caption, paper.width(), high}};
}

// From the punch's axis to the gauge, below the picture.
void add_gauge_dimension(DrawingList& list, const View& view, double gauge) {
    const Colour& ink = theme_colours(Theme::light).ink;
    const double y = view.stage.bottom() + 0.62 * below;
    const double from = view.on_picture(Place::Zero()).x(), to = view.on_picture(Place(gauge, 0.0)).x();
    if (from < view.stage.x || to > view.stage.right() + 1.0) return;
    for (const double x : {from, to}) add_line(list, {x, view.stage.bottom() + 1.0}, {x, y + 4.0}, ink, 0.8);
    const double room = to - from;
    std::string words = fixed(gauge, 2) + " mm, axis to gauge";
    if (text_width(words, body_size) + 30.0 > room) words = fixed(gauge, 2) + " mm";
    const double wide = text_width(words, body_size);
    const bool within = wide + 30.0 < room;
    const double half = within ? 0.5 * (room - wide) - 4.0 : 0.0;
    const auto arrow = [&](double tip, double way) {
        add_fill(list, polygon({{tip, y}, {tip + way * 7.0, y - 2.5}, {tip + way * 7.0, y + 2.5}}), ink);
    };
    if (within) {
        add_line(list, {from, y}, {from + half, y}, ink, 0.8);
        add_line(list, {to - half, y}, {to, y}, ink, 0.8);
        arrow(from, 1.0), arrow(to, -1.0);
        add_text_on_middle(list, words, {0.5 * (from + to), y}, body_size, ink, Across::middle);
        return;
    }
    if (room > 16.0) add_line(list, {from, y}, {to, y}, ink, 0.8), arrow(from, 1.0), arrow(to, -1.0);
    const bool right = to + wide + 8.0 < view.stage.right();
    add_text_on_middle(list, words, {right ? to + 8.0 : from - 8.0, y}, body_size, ink,
                       right ? Across::left : Across::right);
}

void add_picture(Paper& paper, const ShownStroke& stroke, const Rect& box, View view, double instant,
                 std::optional<double> punch_travel, const std::string& words) {
    const stroke::Recording& recording = *stroke.recording;
    view = moved_view(view, box);
    add_text(paper.page(), words, {box.x, box.y - 5.0}, body_size, theme_colours(Theme::light).ink,
             Across::left, Weight::bold);
    PanelInfo info;
    info.unit = body_size;
    info.paint = StripPaint::plain;
    info.punch_travel = punch_travel;
    if (instant > 0.0) info.interferences = deepest_hits_at(stroke, instant);
    add_panel(paper.page(), recording, instant, info, view);
}

void add_pictures(Paper& paper, const ShownStroke& stroke, double height) {
    const stroke::Recording& recording = *stroke.recording;
    const double loaded = stroke::loaded_state(recording);
    need(paper, height + 2.0 * body_row);
    TwoBoxes boxes = side_by_side(paper, height);
    const auto view_in = [&](const TwoBoxes& b) {
        return choose_panel_view(recording, {0.0, loaded}, b.first, body_size);
    };
    View view = view_in(boxes);
    const View other = view_in(one_over_the_other(paper, height));
    if (other.scale > view.scale) view = other, boxes = one_over_the_other(paper, height);
    add_picture(paper, stroke, boxes.first, view, 0.0, -panel_raise(recording, view), "Placed");
    add_picture(paper, stroke, boxes.second, view, loaded, {}, "Pressed, at the stop");
    if (stroke.gauge) {
        view.stage = boxes.first;
        add_gauge_dimension(paper.page(), view, *stroke.gauge);
    }
    const Point foot(boxes.second.x, boxes.second.bottom() + below - 5.0);
    add_scale_bar(paper.page(), foot, view.scale, 0.15 * paper.width(), body_size);
    add_text(paper.page(), "both to the same scale", {boxes.second.right(), foot.y()}, body_size,
             theme_colours(Theme::light).ink, Across::right);
    paper.y += height + 4.0;
}

// How far right of the punch's axis the placed strip reaches.
double right_end(const stroke::Recording& r) {
    const std::vector<double>& x = r.states.front().x;
    return *std::max_element(x.begin(), x.end());
}

// Where the strip comes to lie, and each bend line with it.
std::string gauge_words(const ShownStroke& stroke) {
    const stroke::Recording& r = *stroke.recording;
    const double from_axis = stroke.gauge ? *stroke.gauge : right_end(r);
    std::string sentences =
        stroke.gauge ? words("%.2f mm from the punch's axis to its face.", from_axis)
                     : words("None: the strip's right end lies %.2f mm from the punch's axis.", from_axis);
    for (const BendMark& bend : stroke.bends) {
        const double x = spot_on(r, r.states.front(), bend.blank_position).at.x();
        const std::string axis = std::abs(x) < 0.005 ? "on the punch's axis"
                                                     : words("%.2f mm %s of the punch's axis", std::abs(x),
                                                             x < 0.0 ? "left" : "right");
        sentences += words(" Bend line '%s': %.2f mm from %s, %s.", bend.name.c_str(), from_axis - x,
                           stroke.gauge ? "the gauge's face" : "that end", axis.c_str());
    }
    return sentences;
}

std::string force_words(const ShownJob& job, const ShownStroke& stroke) {
    const double peak = stroke.peak_force * job.strip_width / 1000.0;
    std::string force = words("Peak %.2f kN (%.1f kN per m of width)", peak, stroke.peak_force);
    if (job.press_force > 0.0)
        force += words(", %.0f per cent of the press's rated %g kN", 100.0 * peak / job.press_force,
                       job.press_force);
    return force + ".";
}

void add_tools_and_place(Paper& paper, const ShownJob& job, const ShownStroke& stroke) {
    PaperTable table;
    table.columns = {{"set up", 0.14, Across::left}, {"", 0.86, Across::left}};
    for (const ShownTool& t : stroke.tools)
        table.rows.push_back({capital(t.role), t.name + t.set + (t.figures.empty() ? "" : ": " + t.figures)});
    const char* const turning =
        stroke.number > 1 ? turning_words(stroke.turning).to_do : "Place the blank like this.";
    table.rows.push_back({"Strip", capital(lying_words(stroke)) + ". " + turning});
    table.rows.push_back({"Gauge", gauge_words(stroke)});
    table.rows.push_back({"Stop", words("%.2f mm of travel from first touch, %.2f kN there. ",
                                        stroke.stop_travel, stroke.stop_force * job.strip_width / 1000.0) +
                                      stroke.goal});
    table.rows.push_back({"Force", force_words(job, stroke)});
    add_table(paper, table);
}

void add_angles(Paper& paper, const ShownJob& job, const ShownStroke& stroke) {
    const std::vector<PaperColumn> columns = {
        {"bend angle", 0.22, Across::left},   {"drawing", 0.1, Across::right},
        {"loaded", 0.1, Across::right},       {"free", 0.1, Across::right},
        {"measured 1", 0.16, Across::middle}, {"measured 2", 0.16, Across::middle},
        {"measured 3", 0.16, Across::middle}};
    add_section(paper, "Expected and measured");
    const auto sized = [](double angle) { return in_degrees(std::abs(angle)); };
    constexpr double high = 30.0;
    const Colour& ink = theme_colours(Theme::light).ink;
    double x = paper.left();
    need(paper, body_row + 4.0 + high * static_cast<double>(stroke.bends.size()));
    for (const PaperColumn& column : columns) {
        const double wide = column.width * paper.width();
        const double at = column.across == Across::left     ? x
                          : column.across == Across::middle ? x + 0.5 * wide
                                                            : x + wide - 6.0;
        add_text(paper.page(), column.head, {at, paper.y + body_size}, body_size, ink, column.across,
                 Weight::bold);
        x += wide;
    }
    paper.y += body_row + 2.0;
    for (const BendMark& bend : stroke.bends) {
        const std::vector<std::string> cells = {
            bend.name, sized(bend.drawing), sized(bend.loaded.value_or(0.0)), sized(bend.free.value_or(0.0))};
        x = paper.left();
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const double wide = columns[i].width * paper.width();
            const double y = baseline_for_middle(paper.y + 0.5 * (high - 4.0), body_size);
            if (i == 0)
                add_text(paper.page(), fitted(cells[i], body_size, wide - 6.0), {x, y}, body_size, ink);
            else if (i < cells.size())
                add_text(paper.page(), cells[i], {x + wide - 6.0, y}, body_size, ink, Across::right,
                         i == 3 ? Weight::bold : Weight::normal);
            else
                add_line(paper.page(), rectangle({x + 6.0, paper.y, wide - 6.0, high - 4.0}), ink, 1.0);
            x += wide;
        }
        paper.y += high;
    }
    std::vector<BendLine> own;
    for (const BendLine& line : job.bends)
        for (const BendMark& bend : stroke.bends)
            if (bend.name == line.name) own.push_back(line);
    add_paragraph(paper, "Bend angles: flat is 0\u00b0." + allowed_words(own) + coil_words(own));
    paper.y += 4.0;
    add_write_ins(paper,
                  {{"travel set, mm", 0.15, 0.16}, {"force read, kN", 0.16, 0.16}, {"date", 0.07, 0.3}});
    add_write_ins(paper, {{"name", 0.15, 0.485}, {"part no.", 0.12, 0.245}});
}

void add_stroke(Paper& paper, const ShownJob& job, const ShownStroke& stroke, double picture_height) {
    begin_page(paper);
    add_paragraph(paper, strip_words(job));
    paper.y += 2.0;
    add_pictures(paper, stroke, picture_height);
    add_tools_and_place(paper, job, stroke);
    add_angles(paper, job, stroke);
    if (!stroke.findings.empty()) {
        add_section(paper, "Findings");
        add_items(paper, stroke.findings);
    }
    if (!stroke.remarks.empty()) {
        add_section(paper, "Remarks");
        add_items(paper, stroke.remarks);
    }
}

}  // namespace

void add_stroke(Paper& paper, const ShownJob& job, int index) {
    const ShownStroke& stroke = job.strokes[index];
    paper.heading = words("Stroke %d of %zu: ", index + 1, job.strokes.size()) + stroke.name;
    paper.heading_remark = job.title;
    // The largest picture that leaves room for all else on one page; the smallest where none does.
    for (const double height : picture_heights) {
        Paper tried = paper;
        add_stroke(tried, job, stroke, height);
        const bool one_page = tried.pages.size() == paper.pages.size() + 1;
        if (!one_page && height != std::end(picture_heights)[-1]) continue;
        paper = std::move(tried);
        return;
    }
}

}  // namespace overbend::report
