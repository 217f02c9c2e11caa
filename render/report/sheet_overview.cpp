// The first page: the part, its blank, the order of the strokes, problems of the job.

#include <algorithm>

#include "render/picture/text_width.h"
#include "render/report/part_drawing.h"
#include "render/report/sheet_pages.h"
#include "sim/counted.h"

namespace overbend::report {

namespace {

constexpr double drawing_height = 210.0;
constexpr double blank_height = 78.0;

// The drawing to the left, its bends as a table to the right.
void add_drawing(Paper& paper, const SheetData& data) {
    PaperTable table;
    table.width = 0.52 * paper.width();
    table.left = paper.left() + paper.width() - table.width;
    table.columns = {{"no.", 0.1, picture::Across::middle},         {"bend", 0.27, picture::Across::left},
                     {"line at, mm", 0.18, picture::Across::right}, {"angle", 0.16, picture::Across::right},
                     {"radius, mm", 0.17, picture::Across::right},  {"turns", 0.12, picture::Across::right}};
    for (std::size_t i = 0; i < data.bends.size(); ++i) {
        const SheetBendLine& bend = data.bends[i];
        table.rows.push_back({std::to_string(i + 1), bend.name, picture::fixed(bend.at, 2),
                              in_degrees(bend.angle < 0.0 ? -bend.angle : bend.angle),
                              picture::fixed(bend.inside_radius, 2), bend.angle < 0.0 ? "down" : "up"});
    }
    need(paper, drawing_height);
    const double top = paper.y;
    add_table(paper, table);
    paper.y = std::max(paper.y, top + drawing_height);
    PartProfile part{data.thickness, data.profile, data.flats, data.flat_middle, data.bend_middle};
    add_part(paper.page(), {paper.left(), top, 0.45 * paper.width(), paper.y - top - 6.0}, part, body_size);
    std::string words = "Lines from the blank's left end, radii inside.";
    if (data.angle_tolerance > 0.0)
        words += " Tolerance of the angles: \u00b1" + in_degrees(data.angle_tolerance) + ".";
    add_paragraph(paper, words);
}

void add_flat_pattern(Paper& paper, const SheetData& data) {
    add_section(paper, "Blank");
    add_paragraph(paper, data.blank);
    std::vector<double> at;
    for (const SheetBendLine& bend : data.bends) at.push_back(bend.at);
    need(paper, blank_height);
    add_blank(paper.page(), {paper.left(), paper.y, paper.width(), blank_height}, data.blank_length, at,
              body_size);
    paper.y += blank_height;
}

std::string punch_and_die(const SheetStroke& stroke) {
    std::string words;
    for (const SheetTool& t : stroke.tools)
        if (t.role == "punch" || t.role == "die" || t.role == "pad" || t.role == "clamp")
            words += (words.empty() ? "" : "; ") + t.name;
    return words;
}

std::string free_angles(const SheetStroke& stroke) {
    std::string words;
    for (const SheetAngle& a : stroke.angles)
        words += (words.empty() ? "" : ", ") + in_degrees(a.free < 0.0 ? -a.free : a.free);
    return words;
}

void add_order(Paper& paper, const SheetData& data) {
    add_section(paper, "Order of the strokes");
    PaperTable table;
    table.columns = {
        {"no.", 0.05, picture::Across::middle},       {"stroke", 0.13, picture::Across::left},
        {"tools", 0.24, picture::Across::left},       {"strip position", 0.22, picture::Across::left},
        {"gauge, mm", 0.085, picture::Across::right}, {"stop, mm", 0.08, picture::Across::right},
        {"peak, kN", 0.08, picture::Across::right},   {"free", 0.115, picture::Across::right}};
    for (std::size_t i = 0; i < data.strokes.size(); ++i) {
        const SheetStroke& s = data.strokes[i];
        table.rows.push_back({std::to_string(i + 1), s.name, punch_and_die(s), s.place, s.gauge,
                              picture::fixed(s.travel, 2), picture::fixed(s.peak, 2), free_angles(s)});
    }
    add_table(paper, table);
    add_paragraph(paper,
                  "Gauge: from the punch's axis. Stop: travel of the punch from first touch. Peak: greatest "
                  "force expected. Free: bend angle expected after release; flat is 0\u00b0.");
}

}  // namespace

void add_overview(Paper& paper, const SheetData& data) {
    paper.heading = data.title;
    paper.heading_remark = counted(data.strokes.size(), "stroke");
    begin_page(paper);
    add_paragraph(paper, data.material);
    add_drawing(paper, data);
    add_flat_pattern(paper, data);
    add_order(paper, data);
    add_section(paper, data.findings.empty() ? "Before you begin" : "Problems");
    add_items(paper, data.findings);
    add_items(paper, {"Mark each blank's left end and upper face: the sheets refer to both."});
}

}  // namespace overbend::report
