// The first page: the part, its blank, the order of the strokes, problems of the job.

#include <algorithm>
#include <cmath>

#include "render/picture/numbers.h"
#include "render/picture/turning.h"
#include "render/report/sheet_pages.h"
#include "sim/counted.h"
#include "sim/units.h"

namespace overbend::report {

using namespace picture;

namespace {

constexpr double drawing_height = 210.0;
constexpr double blank_height = 78.0;

std::string allowed_of(const BendLine& bend) {
    return bend.allowed ? "\u00b1" + in_degrees(*bend.allowed) : "for reference";
}

// The drawing to the left, its bends as a table to the right.
void add_drawing(Paper& paper, const ShownJob& job) {
    PaperTable table;
    table.width = 0.52 * paper.width();
    table.left = paper.left() + paper.width() - table.width;
    table.columns = {{"no.", 0.1, Across::middle},         {"bend", 0.27, Across::left},
                     {"line at, mm", 0.18, Across::right}, {"angle", 0.16, Across::right},
                     {"radius, mm", 0.17, Across::right},  {"turns", 0.12, Across::right}};
    for (std::size_t i = 0; i < job.bends.size(); ++i) {
        const BendLine& bend = job.bends[i];
        table.rows.push_back({std::to_string(i + 1), bend.name, fixed(bend.blank_position, 2),
                              in_degrees(std::abs(bend.drawing)), fixed(bend.inside_radius, 2),
                              bend.drawing < 0.0 ? "down" : "up"});
    }
    need(paper, drawing_height);
    const double top = paper.y;
    add_table(paper, table);
    paper.y = std::max(paper.y, top + drawing_height);
    add_part(paper.page(), {paper.left(), top, 0.45 * paper.width(), paper.y - top - 6.0}, job.part,
             job.thickness, body_size);
    add_paragraph(paper, "Lines from the blank's left end, radii inside." + allowed_words(job.bends));
}

void add_flat_pattern(Paper& paper, const ShownJob& job) {
    add_section(paper, "Blank");
    add_paragraph(paper, job.blank);
    std::vector<double> at;
    for (const BendLine& bend : job.bends) at.push_back(bend.blank_position);
    need(paper, blank_height);
    add_blank(paper.page(), {paper.left(), paper.y, paper.width(), blank_height}, job.blank_length, at,
              body_size);
    paper.y += blank_height;
}

std::string tool_names(const ShownStroke& stroke) {
    std::string words;
    for (const ShownTool& t : stroke.tools) words += (words.empty() ? "" : "; ") + t.name + t.set;
    return words;
}

std::string free_angles(const ShownStroke& stroke) {
    std::string words;
    for (const BendMark& bend : stroke.bends)
        words += (words.empty() ? "" : ", ") + in_degrees(std::abs(bend.free.value_or(0.0)));
    return words;
}

void add_order(Paper& paper, const ShownJob& job) {
    add_section(paper, "Order of the strokes");
    PaperTable table;
    table.columns = {{"no.", 0.05, Across::middle},       {"stroke", 0.13, Across::left},
                     {"tools", 0.24, Across::left},       {"strip position", 0.22, Across::left},
                     {"gauge, mm", 0.085, Across::right}, {"stop, mm", 0.08, Across::right},
                     {"peak, kN", 0.08, Across::right},   {"free", 0.115, Across::right}};
    for (std::size_t i = 0; i < job.strokes.size(); ++i) {
        const ShownStroke& s = job.strokes[i];
        table.rows.push_back({std::to_string(i + 1), s.name, tool_names(s), lying_words(s),
                              s.gauge ? fixed(*s.gauge, 2) : "none", fixed(s.stop_travel, 2),
                              fixed(s.peak_force * job.strip_width / 1000.0, 2), free_angles(s)});
    }
    add_table(paper, table);
    add_paragraph(paper,
                  "Gauge: from the punch's axis. Stop: travel of the punch from first touch. Peak: greatest "
                  "force expected. Free: bend angle expected after release; flat is 0\u00b0.");
}

}  // namespace

std::string allowed_words(const std::vector<BendLine>& bends) {
    if (bends.empty()) return "";
    const bool alike = std::all_of(bends.begin(), bends.end(), [&](const BendLine& bend) {
        return allowed_of(bend) == allowed_of(bends.front());
    });
    std::string words;
    for (const BendLine& bend : bends) {
        if (alike && &bend != &bends.front()) break;
        words += (words.empty() ? "" : ", ") + (alike ? "" : bend.name + " ") + allowed_of(bend);
    }
    return " Angles, free: " + words + ".";
}

std::string coil_words(const std::vector<BendLine>& bends) {
    std::string words;
    for (const BendLine& bend : bends)
        if (bend.spread)
            words += (words.empty() ? " Another coil of this grade: " : ", ") + bend.name + " \u00b1" +
                     fixed(*bend.spread / degree, 1) + "\u00b0";
    return words.empty() ? "" : words + ".";
}

void add_overview(Paper& paper, const ShownJob& job) {
    paper.heading = job.title;
    paper.heading_remark = counted(job.strokes.size(), "stroke");
    begin_page(paper);
    add_paragraph(paper, strip_words(job));
    add_drawing(paper, job);
    add_flat_pattern(paper, job);
    add_order(paper, job);
    const std::vector<std::string> against = problems(job);
    add_section(paper, against.empty() ? "Before you begin" : "Problems");
    add_items(paper, against);
    add_items(paper, {"Mark each blank's left end and upper face: the sheets refer to both."});
}

}  // namespace overbend::report
