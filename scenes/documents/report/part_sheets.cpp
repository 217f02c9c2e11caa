#include "scenes/documents/report/part_sheets.h"

#include <string>

#include "sim/words.h"

namespace overbend::documents {

namespace {

std::string profile_place_words(const files::Case& c, const job::ProfilePoint& p) {
    return p.bend >= 0 ? "bend '" + c.part.bends[p.bend].name + "'" : "flat " + std::to_string(p.flat + 1);
}

}  // namespace

const char* how_found(const job::FlatPattern& pattern) {
    if (pattern.lines == job::BendLines::of_the_case) return "Blank and bend lines as the case states them.";
    return pattern.lines == job::BendLines::fitted
               ? "Blank and bend lines fitted by the mechanics to the drawing's legs."
               : "Blank and bend lines by DIN 6935; not simulated.";
}

job::Findings cautions_of(const job::FlatPattern& pattern) {
    return job::those(pattern.rules, [](const Finding& f) {
        return f.place.of != On::step && f.severity != Severity::not_checked;
    });
}

picture::ProfileSheet profile_sheet(const files::Case& c, const job::JobResult& job) {
    const job::ProfileFit& profile = job.profile;
    picture::ProfileSheet sheet;
    sheet.title = c.title;
    sheet.remark = words("%s, %g mm", c.material.title.c_str(), c.thickness);
    sheet.thickness = c.thickness;
    sheet.drawn = profile.drawn, sheet.made = profile.made;
    for (const job::ProfilePoint& p : profile.points) {
        const auto is = [&](const job::ProfilePoint& worst) { return (p.drawn - worst.drawn).norm() < 1e-9; };
        sheet.places.push_back({p.drawn, p.made, profile_place_words(c, p),
                                is(profile.worst_on_flats) || is(profile.worst_in_bends)});
    }
    return sheet;
}

picture::FlatSheet pattern_sheet(const files::Case& c, const job::FlatPattern& pattern) {
    picture::FlatSheet sheet;
    sheet.title = c.title;
    sheet.material = c.material.title + words(", %g mm", c.thickness);
    sheet.remark = how_found(pattern);
    sheet.length = pattern.blank.length, sheet.width = c.width, sheet.mass_g = pattern.mass_g;
    for (const job::FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        sheet.bends.push_back({bend.name, b.at, b.half_arc, bend.angle, bend.inside_radius});
    }
    for (std::size_t i = 0; i < c.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        sheet.holes.push_back({cut.at, cut.across, cut.width, cut.length, pattern.cutouts[i].too_near()});
    }
    sheet.cautions = job::sentences(c, cautions_of(pattern));
    return sheet;
}

}  // namespace overbend::documents
