// Order, tools, angles, forces, clearances and rules on a job's page, as tables.

#include <algorithm>
#include <cmath>
#include <set>

#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/report/tool_words.h"
#include "scenes/job/run/job_rules.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

std::string kilonewton(const files::Case& c, double per_mm) {
    return figure(per_mm * c.width / 1000.0, 2);
}

std::string angles(const job::StepResult& step, double job::BendResult::*angle) {
    std::string text;
    for (const job::BendResult& b : step.bends)
        text += (text.empty() ? "" : ", ") + figure(std::abs(b.*angle) / degree, 1);
    return text;
}

report::Table order_table(const files::Case& c, const job::JobResult& job) {
    report::Table table{"Strokes in order",
                        {{"Stroke", "", false},
                         {"Punch", "", false},
                         {"Die", "", false},
                         {"Face", "", false},
                         {"Left end", "", false},
                         {"Gauge", "mm"},
                         {"Stop, travel", "mm"},
                         {"Expected force", "kN"},
                         {"Angle loaded", "\u00b0"},
                         {"Angle free", "\u00b0"}},
                        {},
                        "Face: the face of the blank that points up. Left end: the end of the blank that "
                        "lies on the left in the press. "
                        "Gauge: from the punch's axis. Travel counts from first touch."};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const files::Step& step = c.steps[i];
        const job::StepResult& r = job.steps[i];
        table.rows.push_back({std::to_string(i + 1) + ". " + r.name, "'" + c.tools[step.punch].name + "'",
                              die_words(c, step), step.face == files::Face::up ? "upper" : "lower",
                              step.first == files::First::left ? "left" : "right",
                              r.gauge > 0.0 ? figure(r.gauge, 2) : "\u2013", figure(r.stroke.stop_travel, 2),
                              kilonewton(c, r.stroke.peak_force), angles(r, &job::BendResult::loaded),
                              angles(r, &job::BendResult::free)});
    }
    return table;
}

report::Table tools_table(const files::Case& c) {
    std::set<int> used;
    for (const files::Step& step : c.steps) {
        used.insert({step.punch, step.die});
        if (step.pad) used.insert(*step.pad);
        if (step.clamp) used.insert(*step.clamp);
    }
    report::Table table{"Tools", {{"Tool", "", false}, {"Kind", "", false}, {"Figures", "", false}}, {}};
    for (const int k : used)
        table.rows.push_back(
            {"'" + c.tools[k].name + "'", kind_name(c.tools[k]), figures_words(c.tools[k])});
    return table;
}

report::Table angles_table(const files::Case& c, const job::JobResult& job) {
    report::Table table{"Angles",
                        {{"Bend", "", false},
                         {"Stroke", "", false},
                         {"Drawing", "\u00b0"},
                         {"Loaded", "\u00b0"},
                         {"Free", "\u00b0"},
                         {"Springback", "\u00b0"},
                         {"Inside radius loaded", "mm"},
                         {"Inside radius free", "mm"},
                         {"Outer fibre", "%"},
                         {"Thickness", "mm"}},
                        {},
                        "Springback: plus opens the bend, minus closes it. Outer fibre: stretch of the "
                        "convex surface under load."};
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        for (const job::BendResult& b : job.steps[i].bends)
            table.rows.push_back({c.part.bends[b.bend].name, std::to_string(i + 1) + ". " + job.steps[i].name,
                                  figure(b.drawing / degree, 1), figure(b.loaded / degree, 2),
                                  figure(b.free / degree, 2), figure(b.springback() / degree, 2),
                                  figure(b.shape_loaded.inside_radius, 2),
                                  figure(b.shape_free.inside_radius, 2),
                                  figure(100.0 * (std::exp(b.shape_loaded.outer_strain) - 1.0), 1),
                                  figure(b.shape_free.thickness, 3)});
    return table;
}

report::Table forces_table(const files::Case& c, const job::JobResult& job) {
    const std::string rated =
        c.press ? words("The press '%s' is rated at %g kN. ", c.press->title.c_str(), c.press->force)
                : std::string("The case names no press. ");
    report::Table table{"Forces and work",
                        {{"Stroke", "", false},
                         {"Peak force", "kN"},
                         {"Peak force", "N/mm"},
                         {"Force at the stop", "kN"},
                         {"Work", "J"}},
                        {},
                        rated + "Force at the stop: after the punch has stopped."};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const stroke::StrokeResult& s = job.steps[i].stroke;
        table.rows.push_back({std::to_string(i + 1) + ". " + job.steps[i].name, kilonewton(c, s.peak_force),
                              figure(s.peak_force, 1), kilonewton(c, s.stop_force),
                              figure(s.audit.largest * c.width / 1000.0, 2)});
    }
    return table;
}

report::Table clearances_table(const job::JobResult& job) {
    report::Table table{"Clearances outside the forming zone",
                        {{"Stroke", "", false},
                         {"Minimum", "mm"},
                         {"To", "", false},
                         {"At travel", "mm"},
                         {"On the blank", "mm"}},
                        {},
                        "Below 0, the strip hits the tool (interference). On the blank: from its left end."};
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const job::StepResult& r = job.steps[i];
        std::vector<std::string> row = {std::to_string(i + 1) + ". " + r.name, "\u2013", "nothing near",
                                        "\u2013", "\u2013"};
        if (r.least.tool >= 0) {
            const tool::RigidTool& t = r.stroke.recording.tools[r.least.tool];
            row = {row.front(), figure(r.least.distance, 2),
                   std::string(tool::role_word(t.role)) + " '" + t.name + "'", figure(r.least.travel, 2),
                   figure(r.least.blank_position, 1)};
        }
        table.rows.push_back(row);
    }
    return table;
}

}  // namespace

void add_order(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.order_tables = {order_table(c, job), tools_table(c)};
}

void add_results(const files::Case& c, const job::JobResult& job, report::Page& page) {
    page.result_tables = {angles_table(c, job), forces_table(c, job), clearances_table(job)};
}

void add_rules(const files::Case& c, const job::JobResult& job, report::Page& page) {
    const job::RuleReport& rules = job.rules;
    page.rule_words = {
        rules.findings.empty()
            ? "Rules checked: minimum inside radius, outer-fibre strain, holes near a bend, die opening, "
              "minimum flange, return flanges, angles within reach of the tools. No findings."
            : "The job was also checked against shop rules. They are less exact than the mechanics and come "
              "from experience. Findings:"};
    for (const std::string& what : rules.not_checked) page.rule_words.push_back("Not checked: " + what + ".");
    if (rules.findings.empty()) return;
    report::Table table{"Findings of the shop rules",
                        {{"Place", "", false},
                         {"Rule", "", false},
                         {"Value", ""},
                         {"Limit", ""},
                         {"Description", "", false},
                         {"Severity", "", false},
                         {"Source", "", false}},
                        {}};
    for (const plan::RuleFinding& f : rules.findings)
        table.rows.push_back({job::place_words(c, f), f.rule, figure(f.figure, 2) + " " + f.unit,
                              figure(f.limit, 2) + " " + f.unit, f.words,
                              f.stops ? "stops the job" : "caution", f.source});
    page.rule_tables = {table};
}

}  // namespace overbend::documents
