#include "scenes/documents/drawings/blank_sheet.h"

#include <cmath>

#include "render/drawing/measurer.h"
#include "render/picture/text_width.h"
#include "scenes/documents/drawings/part_tolerances.h"
#include "sim/units.h"

namespace overbend::documents {

namespace {

using drawing::Beside;
using drawing::Dimension;
using drawing::Measure;
using drawing::ViewLine;
using tool::Piece;
using tool::Vec2;

Piece half_circle(const Vec2& start, const Vec2& centre) {
    return {start, 2.0 * centre - start, (start - centre).norm(), centre, pi};
}

std::vector<Piece> cutout_outline(const files::Cutout& cut) {
    // Along the strip; turned where it lies across.
    const Vec2 way = cut.width > cut.length ? Vec2(0.0, 1.0) : Vec2(1.0, 0.0);
    const Vec2 middle(cut.at, cut.across), up = 0.5 * cut.narrow() * Vec2(-way.y(), way.x());
    const Vec2 right = middle + 0.5 * cut.straight() * way, left = middle - 0.5 * cut.straight() * way;
    if (!cut.is_slot()) return {half_circle(right - up, right), half_circle(right + up, right)};
    return {half_circle(right - up, right), Piece{right + up, left + up}, half_circle(left + up, left),
            Piece{left - up, right - up}};
}

Dimension mark(const Vec2& from, Beside side, const std::string& words) {
    Dimension d;
    d.measure = Measure::mark;
    d.from = from;
    d.beside = side;
    d.words = words;
    return d;
}

void add_bends(drawing::DrawingSheet& sheet, const files::Case& c, const job::FlatPattern& pattern,
               drawing::Tolerances tolerances) {
    sheet.table.heads = {"No.", "Bend", "Line at", "Bends", "Bend angle", "Inside radius", "Allowance"};
    int number = 0;
    for (const job::FlatBend& bend : pattern.bends) {
        const files::Bend& drawn = c.part.bends[bend.bend];
        const bool up = drawn.angle > 0.0;
        const std::string name = std::to_string(++number), at = picture::fixed(bend.at, 2);
        sheet.lines.push_back(
            {{bend.at, 0.0}, {bend.at, c.width}, up ? ViewLine::Kind::bend_up : ViewLine::Kind::bend_down});
        sheet.bands.emplace_back(Vec2(std::max(0.0, bend.at - bend.half_arc), 0.0),
                                 Vec2(std::min(pattern.blank.length, bend.at + bend.half_arc), c.width));
        sheet.dimensions.push_back(mark({bend.at, c.width}, Beside::above, name));
        sheet.dimensions.push_back(mark({bend.at, 0.0}, Beside::below, at));
        sheet.table.rows.push_back(
            {name, drawn.name, at, up ? "up" : "down",
             angle_words(std::abs(drawn.angle), written_angle(c, bend.bend, tolerances)),
             radius_words(drawn.inside_radius, 1, written_radius(c, bend.bend, tolerances)),
             picture::fixed(pattern.simulated ? bend.mechanics : 2.0 * bend.half_arc, 2)});
    }
    if (number > 0) {
        sheet.notes.push_back(
            "Dash-dot-dot: bend line, bend up; short dashes: bend down. Below: distances from the left end. "
            "Tinted: bend allowance.");
    }
}

const char* lines_words(job::BendLines lines) {
    if (lines == job::BendLines::by_rule) return "by DIN 6935.";
    return lines == job::BendLines::fitted ? "from the simulated strokes." : "as given in the case.";
}

void add_cutouts(drawing::DrawingSheet& sheet, const files::Case& c) {
    char letter = 'A';
    for (const files::Cutout& cut : c.cutouts) {
        const double past = 0.5 * cut.width + 1.5, along = 0.5 * cut.length + 1.5;
        sheet.lines.push_back({{cut.at - along, cut.across}, {cut.at + along, cut.across}});
        sheet.lines.push_back({{cut.at, cut.across - past}, {cut.at, cut.across + past}});
        const std::string name(1, letter);
        letter = letter == 'Z' ? 'A' : static_cast<char>(letter + 1);
        sheet.dimensions.push_back(mark({cut.at, c.width}, Beside::above, name));
        const auto plain = [](double value) { return length_words(value, drawing::Tolerances::none); };
        const std::string size = cut.is_slot() ? "slot " + plain(cut.length) + " \u00d7 " + plain(cut.width)
                                               : "hole, diameter " + plain(cut.width);
        sheet.notes.push_back(name + ": " + size + ", its middle " + plain(cut.at) +
                              " from the left end and " + plain(cut.across) + " from the lower edge.");
    }
}

}  // namespace

std::vector<std::vector<Piece>> blank_outlines(const files::Case& c, const job::Blank& blank) {
    const Vec2 a(0.0, 0.0), b(blank.length, 0.0), d(blank.length, c.width), e(0.0, c.width);
    std::vector<std::vector<Piece>> outlines = {{Piece{a, b}, Piece{b, d}, Piece{d, e}, Piece{e, a}}};
    for (const files::Cutout& cut : c.cutouts) outlines.push_back(cutout_outline(cut));
    return outlines;
}

drawing::DrawingSheet blank_sheet(const files::Case& c, const job::FlatPattern& pattern,
                                  drawing::Tolerances tolerances) {
    drawing::DrawingSheet sheet;
    sheet.name = "blank, from above";
    sheet.material = c.material.title;
    sheet.tolerances = tolerances_words(tolerances);
    sheet.fill = drawing::Fill::plain;
    sheet.outlines = blank_outlines(c, pattern.blank);
    add_bends(sheet, c, pattern, tolerances);
    add_cutouts(sheet, c);
    const tool::Box box{{0.0, 0.0}, {pattern.blank.length, c.width}};
    const drawing::Measurer m{sheet, box, tolerances};
    m.across({0.0, 0.0}, {pattern.blank.length, 0.0}, Beside::below);
    m.upright({0.0, 0.0}, {0.0, c.width}, Beside::left);
    sheet.notes.push_back("Thickness " + length_words(c.thickness, drawing::Tolerances::none) +
                          " mm. Bend lines " + lines_words(pattern.lines));
    return sheet;
}

}  // namespace overbend::documents
