#include "scenes/documents/report/job_page.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/text_width.h"
#include "scenes/documents/report/page_parts.h"
#include "sim/counted.h"
#include "sim/errors.h"
#include "sim/material/layer_law.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

std::string more_words(const files::Case& c, const job::JobResult& job) {
    if (!job.feasible()) return "";
    const std::size_t cautions = job::with(job.findings, Severity::caution).size();
    return counted(c.part.bends.size(), "bend") + " in " + counted(job.steps.size(), "stroke") +
           "; angles, legs, inside radii and profile are within tolerance, and the strip hits neither tools "
           "nor press." +
           (cautions > 0 ? " " + counted(cautions, "caution") + "." : "");
}

void add_facts(const files::Case& c, const job::JobResult& job, report::Page& page) {
    double force = 0.0, springback = 0.0, thinnest = c.thickness, strain = 0.0;
    for (const job::StepResult& step : job.steps) {
        force = std::max(force, step.stroke.peak_force * c.width / 1000.0);
        for (const job::BendResult& b : step.bends) {
            if (std::abs(b.springback()) > std::abs(springback)) springback = b.springback();
            thinnest = std::min(thinnest, b.shape_free.thickness);
            strain = std::max(strain, b.shape_loaded.outer_strain);
        }
    }
    page.facts = {{"Strokes", std::to_string(job.steps.size())},
                  {"Blank", figure(job.blank.length, 2) + " mm"},
                  {"Peak force", figure(force, 2) + " kN"},
                  {"Largest springback", in_degrees(springback, 2)},
                  {"Deviation from drawing", figure(job.profile.greatest(), 2) + " mm"},
                  {"Minimum thickness", figure(thinnest, 3) + " mm"},
                  {"Maximum outer-fibre strain", figure(100.0 * (std::exp(strain) - 1.0), 0) + " %"}};
    if (job.mass_g > 0.0) page.facts.insert(page.facts.begin() + 2, {"Mass", figure(job.mass_g, 1) + " g"});
}

}  // namespace

std::string figure(double value, int decimals) {
    return picture::fixed(value, decimals);
}

std::string in_degrees(double radians, int decimals) {
    return figure(radians / degree, decimals) + "\u00b0";
}

report::Page job_page(const files::Case& c, const job::FlatPattern& pattern, const job::ShopReport& shop,
                      const std::vector<Drawing>& drawings, const std::string& generator) {
    const job::JobResult& job = pattern.job;
    if (!job.solved || job.steps.empty())
        throw OutOfRange("report", job.steps.empty() ? "the job has no strokes" : "a stroke was not solved",
                         "a report needs a finished run");
    report::Page page;
    page.title = c.title;
    page.subtitle = c.material.title + ", " + words("%g mm thick, %g mm wide", c.thickness, c.width);
    page.generator = generator;
    page.verdict = job.feasible() ? report::Verdict::feasible : report::Verdict::not_feasible;
    page.verdict_head = job::verdict_words(job), page.verdict_words = more_words(c, job);
    page.findings = job::sentences(c, job::with(job.findings, Severity::stops));
    add_facts(c, job, page);
    add_part(c, job, page);
    add_blank(c, pattern, page);
    add_order(c, job, page);
    add_strokes(c, job, page);
    add_results(c, job, page);
    add_shop(c, shop, page);
    add_drawings(drawings, page);
    add_rules(c, job, page);
    add_method(c, job, page);
    add_material(c, page);
    page.cautions = picture::cautions();
    page.glossary = glossary();
    return page;
}

}  // namespace overbend::documents
