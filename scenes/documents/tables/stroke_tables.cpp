// Strokes, bends, clearances, the finished part and the rules.

#include <cmath>

#include "scenes/documents/tables/job_tables.h"
#include "scenes/documents/tables/tool_words.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using Row = std::vector<Cell>;

std::string numbered(const job::JobResult& job, std::size_t step) {
    return words("%zu. ", step + 1) + job.steps[step].name;
}

double in_kN(const files::Case& c, double per_mm) {
    return per_mm * c.width / 1000.0;
}

std::string angles(const job::StepResult& step, double job::BendResult::*angle) {
    std::string text;
    for (const job::BendResult& b : step.bends)
        text += (text.empty() ? "" : ", ") + figure_words(std::abs(b.*angle) / degree, 2);
    return text;
}

}  // namespace

Table order_table(const files::Case& c, const job::JobResult& job) {
    Table table{
        "Strokes in order",
        {{"Stroke"},
         {"Punch"},
         {"Die"},
         {"Face"},
         {"Left end"},
         {"Gauge", "mm", 2},
         {"Target"},
         {"Stop, travel", "mm", 3},
         {"Angle loaded", "deg"},
         {"Angle free", "deg"}},
        {},
        {"Face: the face of the blank that points up. Left end: the end of the blank that lies on the "
         "left in the press. Gauge: from the punch's axis. Travel counts from first touch."}};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const files::Step& step = c.steps[i];
        const job::StepResult& r = job.steps[i];
        table.rows.push_back({numbered(job, i), "'" + c.tools[step.punch].name + "'", die_words(c, step),
                              step.face == files::Face::up ? "upper" : "lower",
                              step.first == files::First::left ? "left" : "right",
                              r.gauge > 0.0 ? Cell(r.gauge) : Cell(), stop_words(c, step),
                              r.stroke.stop_travel, angles(r, &job::BendResult::loaded),
                              angles(r, &job::BendResult::free)});
    }
    return table;
}

Table strokes_table(const files::Case& c, const job::JobResult& job) {
    Table table{"Strokes: travel, forces and work",
                {{"Stroke", "", in_words, "stroke"},
                 {"Stop, travel", "mm", 3, "stop"},
                 {"Peak force", "kN", 2, "force"},
                 {"Peak force", "N/mm", 1},
                 {"Force at the stop", "kN", 2, "at the stop"},
                 {"Work", "J", 2, "work"},
                 {"Work not accounted for", "%", 3},
                 {"Increments", "", 0}},
                {},
                {"Force at the stop: after the punch has stopped."}};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const stroke::StrokeResult& s = job.steps[i].stroke;
        table.rows.push_back({numbered(job, i), s.stop_travel, in_kN(c, s.peak_force), s.peak_force,
                              in_kN(c, s.stop_force), in_kN(c, s.audit.largest), s.audit.residue_percent(),
                              1.0 * s.increments});
    }
    return table;
}

Table bends_table(const files::Case& c, const job::JobResult& job) {
    Table table{
        "Bends",
        {{"Bend", "", in_words, "bend"},
         {"Stroke"},
         {"Drawing", "deg", 2, "drawn"},
         {"Loaded", "deg", 2, "loaded"},
         {"Free", "deg", 2, "free"},
         {"Springback", "deg", 2, "spring-back"},
         {"Inside radius loaded", "mm", 2},
         {"Inside radius free", "mm", 2, "radius"},
         {"Sharpest free", "mm", 2},
         {"Outer fibre", "%", 1},
         {"Thickness", "mm", 3}},
        {},
        {"Springback: plus opens the bend, minus closes it. Inside radius: of the arc that fits the middle "
         "of the bend, as a radius gauge reads it; sharpest: where it is bent most. Outer fibre: stretch of "
         "the convex surface there, under load."}};
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        for (const job::BendResult& b : job.steps[i].bends)
            table.rows.push_back(
                {c.part.bends[b.bend].name, numbered(job, i), b.drawing / degree, b.loaded / degree,
                 b.free / degree, b.springback() / degree, b.shape_loaded.inside_radius,
                 b.shape_free.inside_radius, b.shape_free.sharpest_radius,
                 100.0 * (std::exp(b.shape_loaded.outer_strain) - 1.0), b.shape_free.thickness});
    return table;
}

Table clearances_table(const files::Case&, const job::JobResult& job) {
    Table table{"Clearances outside the forming zone",
                {{"Stroke", "", in_words, "stroke"},
                 {"Minimum", "mm", 2, "minimum"},
                 {"To", "", in_words, "to"},
                 {"At travel", "mm", 2},
                 {"On the blank", "mm", 1}},
                {},
                {"Below 0, the strip hits the tool (interference). On the blank: from its left end."}};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const clearance::Closest& least = job.steps[i].least;
        Row row = {numbered(job, i), Cell(), "nothing near", Cell(), Cell()};
        if (least.tool >= 0) {
            const tool::RigidTool& t = job.steps[i].stroke.recording.tools[least.tool];
            row = {row.front(), least.distance, std::string(tool::role_word(t.role)) + " '" + t.name + "'",
                   least.travel, least.blank_position};
            if (least.distance < 0.0) row[1].severity = Severity::stops;
        }
        table.rows.push_back(row);
    }
    return table;
}

namespace {

Cell spread_of(const job::JobResult& job, const job::MeasuredSize& m) {
    if (m.what != job::SizeKind::angle || job.spread.empty()) return "";
    return {job.spread[m.index].whole() / degree, 1, "deg"};
}

}  // namespace

Table finished_table(const files::Case& c, const job::JobResult& job) {
    Table table{"Finished part",
                {{"Size"},
                 {"Drawing", "", 2, "drawn"},
                 {"Finished", "", 2, "made"},
                 {"Difference", "", 2, "off"},
                 {"Tolerance", "", 2, "allowed"},
                 {"May be off", "", 1, "may be off"}},
                {},
                {"Bend angles: 0 is flat; minus is down. Legs: measured outside. Inside radii: of the arc "
                 "that fits the middle of the bend. Tolerance: plus or minus.",
                 "May be off: for another coil of this grade and thickness, by friction, and by what the "
                 "mechanics was off finite elements; plus or minus."}};
    for (const job::MeasuredSize& m : job.measures) {
        const bool angle = m.what == job::SizeKind::angle;
        const auto figure = [&](double value) {
            return Cell(angle ? value / degree : value, 2, angle ? "deg" : "mm");
        };
        const bool profile = m.what == job::SizeKind::profile;
        table.rows.push_back({job::size_name(c, m), profile ? Cell() : figure(m.drawn),
                              profile ? Cell() : figure(m.made), figure(m.off()),
                              m.reference ? Cell("reference") : figure(m.allowed), spread_of(job, m)});
        if (!m.within()) table.rows.back()[3].severity = Severity::stops;
    }
    return table;
}

Table rules_table(const files::Case& c, const job::JobResult& job) {
    Table table{
        "Findings of the shop rules",
        {{"Place"}, {"Rule"}, {"Value", "", 2}, {"Limit", "", 2}, {"Description"}, {"Severity"}, {"Source"}},
        {}};
    for (const Finding& f : job::of_group(job.findings, job::RuleGroup::trade)) {
        if (f.severity == Severity::not_checked) continue;
        const job::RuleFacts& facts = job::facts_of(f.rule);
        table.rows.push_back({job::place_words(c, f.place), facts.name, Cell(f.figure, 2, facts.unit),
                              Cell(f.limit, 2, facts.unit), job::finding_words(c, f),
                              f.severity == Severity::stops ? "stops the job" : "caution",
                              job::source_of(f)});
        table.rows.back()[2].severity = f.severity;
    }
    return table;
}

}  // namespace overbend::documents
