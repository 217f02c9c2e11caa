#include "scenes/job/plan/stroke_geometry.h"

#include <algorithm>

#include "scenes/files/case/work.h"

namespace overbend::job {

Blank planning_blank(const files::Case& c) {
    Blank blank = make_blank(c);
    std::vector<double> springback_curvature;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        // bends drawn alike spring back alike
        const auto same = std::find_if(
            c.part.bends.begin(), c.part.bends.begin() + static_cast<long>(b),
            [&](const files::Bend& o) { return o.inside_radius == c.part.bends[b].inside_radius; });
        const auto index = same - c.part.bends.begin();
        springback_curvature.push_back(index < static_cast<long>(b)
                                           ? springback_curvature[index]
                                           : files::springback_curvature(c, blank, static_cast<int>(b)));
    }
    blank.springback_curvature = springback_curvature;
    return blank;
}

plan::FoldedPart folded_part(const files::Case& c, const Blank& blank) {
    plan::FoldedPart part;
    part.thickness = c.thickness;
    part.flats = c.part.flats;
    for (std::size_t b = 0; b < c.part.bends.size(); ++b) {
        part.angle.push_back(c.part.bends[b].angle);
        part.radius.push_back(c.part.bends[b].inside_radius + 0.5 * c.thickness);
        part.allowance.push_back(2.0 * blank.half_arc[b]);
    }
    return part;
}

}  // namespace overbend::job
