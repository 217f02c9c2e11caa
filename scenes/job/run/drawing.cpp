#include "scenes/job/run/drawing.h"

#include <algorithm>
#include <cmath>

#include "sim/plan/bend_allowance.h"

namespace overbend::job {

double din_allowance(const files::Case& c, const files::Bend& bend) {
    const double radius = std::max(bend.inside_radius, 0.05 * c.thickness);  // the formula has a logarithm
    return plan::din_allowance(radius, c.thickness, std::abs(bend.angle));
}

double handbook_allowance(const files::Case& c, const files::Bend& bend) {
    return plan::handbook_allowance(bend.inside_radius, c.thickness, std::abs(bend.angle),
                                    c.material.hardness);
}

double developed_length(const files::Case& c, double (*allowance)(const files::Case&, const files::Bend&)) {
    double length = 0.0;
    for (const double flat : c.part.flats) length += flat;
    for (const files::Bend& bend : c.part.bends) length += allowance(c, bend);
    return length;
}

Blank make_blank(const files::Case& c) {
    Blank blank;
    double at = 0.0;
    for (std::size_t i = 0; i < c.part.bends.size(); ++i) {
        const files::Bend& bend = c.part.bends[i];
        const double half = 0.5 * din_allowance(c, bend);
        at += c.part.flats[i] + half;
        blank.bend_line.push_back(at);
        blank.half_arc.push_back(half);
        at += half;
    }
    blank.length = c.blank_length.value_or(at + c.part.flats.back());
    if (!c.bend_lines.empty()) blank.bend_line = c.bend_lines;
    return blank;
}

double blank_mass(const files::Case& c, const Blank& blank) {
    double area = blank.length * c.width;
    for (const files::Cutout& cut : c.cutouts) {
        constexpr double quarter_circle = 0.78539816339744831;
        area -= quarter_circle * cut.narrow() * cut.narrow() + cut.straight() * cut.narrow();
    }
    return area * c.thickness * c.material.density * 1e-6;  // mm3 kg/m3 = 1e-6 g
}

}  // namespace overbend::job
