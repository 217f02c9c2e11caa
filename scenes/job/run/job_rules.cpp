#include "scenes/job/run/job_rules.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/work.h"
#include "scenes/job/run/process.h"
#include "scenes/job/run/step_tools.h"
#include "sim/errors.h"
#include "sim/material/layer_law.h"
#include "sim/plan/least_radius.h"
#include "sim/plan/shop_rules.h"
#include "sim/plan/tool_rules.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

void add_at(Findings& findings, std::optional<Finding> finding, On of, int index) {
    if (!finding) return;
    FindingPlace& place = finding->place;
    place.of = of;
    (of == On::bend ? place.bend : of == On::step ? place.step : place.cutout) = index;
    add(findings, *finding);
}

double hold_of_width(const files::Case& c) {
    return material::width_hold(c.width / c.thickness);
}

// ---- the drawing's bends

std::optional<plan::LeastRadius> least_radius_of(const files::Case& c, int b, std::string& why_not) {
    plan::RadiusQuery query;
    query.thickness = c.thickness;
    query.bend_angle = std::abs(c.part.bends[b].angle);
    query.along_rolling = c.rolling == files::Rolling::crosswise;
    return plan::least_radius(c.material, query, why_not);
}

// The bend as its strokes made it sharpest and stretched it most; none: it was not simulated. The tables'
// radii are those of the tool that a strip is bent round, off which it lifts in the middle as it does here: a
// bend that comes out sharper than its nose is as sharp as that.
struct MadeBend {
    double inside_radius = 1e300;
    double outer_strain = 0.0;  // logarithmic
};
std::optional<MadeBend> made_bend(const files::Case& c, int b, const std::vector<StepResult>& steps) {
    MadeBend found;
    for (std::size_t i = 0; i < steps.size(); ++i)
        for (const BendResult& made : steps[i].bends) {
            if (made.bend != b) continue;
            found.outer_strain = std::max(found.outer_strain, made.shape_loaded.outer_strain);
            if (made.shape_free.inside_radius <= 0.0) continue;
            const double nose = nose_of(c.tools[c.steps[i].punch]).value_or(0.0);
            found.inside_radius =
                std::min(found.inside_radius, std::max(nose, made.shape_free.inside_radius));
        }
    return found.inside_radius < 1e300 ? std::optional(found) : std::nullopt;
}

// Of the bend as it is made, or as it is drawn while nothing is simulated.
void cracking_rules(const files::Case& c, int b, const std::vector<StepResult>& steps, Findings& findings) {
    std::string why_not;
    const std::optional<plan::LeastRadius> least = least_radius_of(c, b, why_not);
    const std::optional<MadeBend> made = made_bend(c, b, steps);
    const double radius = made ? made->inside_radius : c.part.bends[b].inside_radius;
    if (least)
        add_at(findings, plan::too_sharp(radius, *least), On::bend, b);
    else
        not_checked(Rule::least_inside_radius, why_not, findings);
    try {
        const double hold = hold_of_width(c);
        const std::optional<plan::StrainLimit> limit =
            plan::strain_limit(c.material, c.thickness, hold, least);
        if (!limit) {
            not_checked(Rule::outer_fibre_strain,
                        "the card gives no reduction of area, and no table a least radius", findings);
            return;
        }
        // The limit of a radius is that of pure bending to it, and so is what is held against it.
        const double strain = made && limit->by_area
                                  ? made->outer_strain
                                  : plan::outer_strain(c.material, c.thickness, radius, hold);
        add_at(findings, plan::overstrained(strain, *limit), On::bend, b);
    } catch (const NotSolved&) {
        not_checked(Rule::outer_fibre_strain, "no solution for pure bending to this radius", findings);
    }
}

// ---- cut-outs

void cutout_rule(const files::Case& c, const Blank& blank, int index, Findings& findings) {
    const files::Cutout& cut = c.cutouts[index];
    const double edge = std::min(cut.across, c.width - cut.across) - 0.5 * cut.width,
                 end = std::min(cut.at, blank.length - cut.at) - 0.5 * cut.length;
    add_at(findings, plan::thin_web(edge, plan::BlankEdge::along, c.thickness), On::cutout, index);
    add_at(findings, plan::thin_web(end, plan::BlankEdge::end, c.thickness), On::cutout, index);
    add_at(findings, plan::small_hole(cut.narrow(), c.thickness), On::cutout, index);
    const NearestBend nearest = nearest_bend(c, blank, cut);
    if (nearest.bend < 0) return;
    std::optional<Finding> f = plan::too_near(nearest.edge_to_bend, c.part.bends[nearest.bend].inside_radius,
                                              c.thickness, side_along_bend(cut));
    if (f) f->place.bend = nearest.bend;
    add_at(findings, f, On::cutout, index);
}

// ---- V strokes

// One bend over two shoulders, as the rules need it.
struct VeeStroke {
    const files::Step* step = nullptr;
    int index = 0, bend = 0;
    double die_opening = 0.0, opening_at_corners = 0.0, shoulder_radius = 0.0;
    const tool::VeePunch* punch = nullptr;  // null: an outline
    const tool::VeeFace* face = nullptr;    // null: an open die
    double radius = 0.0;                    // inside, under load
    double loaded = 0.0;                    // bend angle under load, > 0
    bool simulated = false;                 // radius and loaded are
    bool clean = false;                     // the stroke came to its stop and touched nothing else
};

std::optional<VeeStroke> vee_stroke(const files::Case& c, int index, const std::vector<StepResult>& steps) {
    VeeStroke v;
    v.step = &c.steps[index], v.index = index, v.bend = v.step->bends.front();
    v.punch = files::shape_of<tool::VeePunch>(c.tools[v.step->punch]);
    const files::Shoulders over = files::shoulders_of(c.tools[v.step->die], v.step->die_face);
    v.face = over.groove, v.die_opening = over.opening, v.shoulder_radius = over.radius;
    v.opening_at_corners = over.opening_at_corners();
    if (v.die_opening <= 0.0 || v.step->bends.size() != 1) return std::nullopt;

    const files::Bend& bend = c.part.bends[v.bend];
    v.radius = v.punch ? v.punch->nose_radius : bend.inside_radius;
    if (index < static_cast<int>(steps.size()) && !steps[index].bends.empty()) {
        const StepResult& run = steps[index];
        v.simulated = true;
        v.loaded = std::abs(run.bends.front().loaded);
        v.clean = run.stroke.outcome == stroke::Outcome::reached && run.interferences.empty();
        return v;
    }
    const double aim =
        v.step->stop == files::StopKind::free_angle ? v.step->stop_value : std::abs(bend.angle);
    v.loaded = plan::loaded_angle(c.material, c.thickness, bend.inside_radius, aim, hold_of_width(c));
    return v;
}

// What there is of the strip beside the bend line before its end or a bend that is made already.
struct Run {
    double length = 0.0;
    int until = -1;  // the bend it ends at; -1: the blank's end
};

Run straight_run(const files::Case& c, const Blank& blank, const std::vector<bool>& made, int bend,
                 int side) {
    for (int b = bend + side; b >= 0 && b < static_cast<int>(c.part.bends.size()); b += side)
        if (made[b]) return {side * (blank.bend_line[b] - blank.bend_line[bend]) - blank.half_arc[b], b};
    const double end = side > 0 ? blank.length : 0.0;
    return {side * (end - blank.bend_line[bend]), -1};
}

void flange_rules(const files::Case& c, const Blank& blank, const std::vector<bool>& made, const VeeStroke& v,
                  Findings& findings) {
    const files::Bend& bend = c.part.bends[v.bend];
    const double outer = bend.inside_radius + c.thickness;
    const double corner = outer * std::tan(0.5 * std::min(std::abs(bend.angle), 90.0 * degree));
    const plan::FlangeOnDie on{v.die_opening, v.shoulder_radius, c.thickness, v.radius, v.loaded};
    for (const int side : {-1, 1}) {
        const Run run = straight_run(c, blank, made, v.bend, side);
        std::optional<Finding> slips = plan::slips_off(run.length, on);
        if (slips && run.until >= 0) slips->severity = Severity::caution;
        if (slips) slips->place.bend = run.until, slips->further = {1.0 * side};
        add_at(findings, slips, On::step, v.index);
        if (slips) continue;
        std::optional<Finding> brief =
            plan::short_flange(run.length - blank.half_arc[v.bend] + corner, v.die_opening);
        if (brief) brief->further = {1.0 * side};
        add_at(findings, brief, On::step, v.index);
    }
}

void return_rule(const files::Case& c, const std::vector<bool>& made, const VeeStroke& v,
                 Findings& findings) {
    const tool::ArcOutline punch = tools_of(c, *v.step).front().outline;
    for (const int side : {-1, 1}) {
        const int other = v.bend + side;
        if (other < 0 || other >= static_cast<int>(c.part.bends.size()) || !made[other]) continue;
        const files::Bend &bend = c.part.bends[v.bend], &before = c.part.bends[other];
        if ((bend.angle > 0.0) != (before.angle > 0.0)) continue;
        const bool right = (side > 0) == (v.step->first == files::First::left);
        const plan::ReturnFlange f{v.loaded,
                                   v.radius,
                                   c.part.flats[std::max(v.bend, other)],
                                   std::abs(before.angle),
                                   before.inside_radius,
                                   c.part.flats[side > 0 ? other + 1 : other]};
        std::optional<Finding> hit =
            plan::flange_hits_punch(right ? punch : tool::mirrored(punch), v.radius, f);
        if (hit) hit->place.bend = other;
        add_at(findings, hit, On::step, v.index);
    }
}

void vee_rules(const files::Case& c, const Blank& blank, const std::vector<bool>& made, const VeeStroke& v,
               Findings& findings) {
    const std::size_t before = findings.size();
    std::optional<Finding> odd = plan::odd_opening(v.die_opening, c.thickness);
    if (odd) odd->further.push_back(v.opening_at_corners);
    add_at(findings, odd, On::step, v.index);
    flange_rules(c, blank, made, v, findings);
    return_rule(c, made, v, findings);
    if (v.punch && v.face) {
        add_at(findings, plan::does_not_go_in(*v.punch, *v.face, c.thickness), On::step, v.index);
        const double reach = tool::largest_bend_angle(*v.punch, *v.face, c.thickness);
        add_at(findings,
               plan::angle_out_of_reach(v.loaded, reach,
                                        v.simulated ? plan::Loaded::simulated : plan::Loaded::estimated),
               On::step, v.index);
    }
    for (std::size_t i = before; v.clean && i < findings.size(); ++i)
        if (findings[i].severity == Severity::stops)
            findings[i].severity = Severity::caution, findings[i].succeeded = true;
}

}  // namespace

double side_along_bend(const files::Cutout& cutout) {
    return std::max(0.0, cutout.width - cutout.length);
}

NearestBend nearest_bend(const files::Case& c, const Blank& blank, const files::Cutout& cutout) {
    NearestBend found;
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b) {
        const double middle = std::abs(cutout.at - blank.bend_line[b]);
        const double distance = middle - 0.5 * cutout.length - blank.half_arc[b];
        const double least =
            plan::least_hole_distance(c.part.bends[b].inside_radius, c.thickness, side_along_bend(cutout));
        if (found.bend < 0 || distance - least < found.edge_to_bend - found.least)
            found = {b, distance, least};
    }
    return found;
}

Findings job_rules(const files::Case& c, const Blank& blank, const std::vector<StepResult>& steps) {
    Findings findings;
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b) {
        cracking_rules(c, b, steps, findings);
    }
    for (int i = 0; i < static_cast<int>(c.cutouts.size()); ++i) cutout_rule(c, blank, i, findings);
    std::vector<bool> made(c.part.bends.size(), false);
    for (int i = 0; i < static_cast<int>(c.steps.size()); ++i) {
        try {
            const std::optional<VeeStroke> v = vee_stroke(c, i, steps);
            if (v) vee_rules(c, blank, made, *v, findings);
        } catch (const NotSolved&) {
            not_checked(Rule::angle_of_tools, "no solution for springback at the drawing's radius", findings);
        }
        for (const int b : c.steps[i].bends) made[b] = true;
    }
    return findings;
}

}  // namespace overbend::job
