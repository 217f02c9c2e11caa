#include "scenes/job/shop/shop.h"

#include "scenes/files/case/read_shop.h"
#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

void take(const Findings& checks, ShopReport& report) {
    for (const Finding& f : checks)
        if (f.severity != Severity::within) add(report.findings, f);
}

void tell_of_unknown_steels(const files::Case& c, ShopReport& report) {
    std::string names;
    for (const ToolInShop& t : report.tools)
        if (!c.tools[t.tool].make.card) names += (names.empty() ? "'" : ", '") + c.tools[t.tool].name + "'";
    if (!names.empty())
        not_checked(Rule::tool_strength, "the case names no steel for " + names, report.findings);
}

void collect(const files::Case& c, ShopReport& report) {
    for (const StrokeOnPress& s : report.strokes) take(s.checks, report);
    for (const ToolInShop& t : report.tools) take(t.checks, report), take(t.mends, report);
    tell_of_unknown_steels(c, report);
    if (!c.press) not_checked(Rule::press, "the case names no press", report.findings);
}

}  // namespace

ShopReport shop_report(const files::Case& c, const JobResult& job) {
    ShopReport report;
    report.cost_asked = c.cost.has_value();
    report.rates = c.cost ? *c.cost : files::usual_rates(c);
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i)
        if (job.steps[i].stroke.solved()) report.strokes.push_back(stroke_on_press(c, job, i));
    report.tools = tools_in_shop(c, job, report.rates.making, report.findings);
    report.shared = shared_blocks(c, report.tools, report.rates.making);
    report.figures = job_figures(c, job, report.strokes, report.tools);
    report.cost = shop::cost_sheet(report.rates, report.figures);
    collect(c, report);
    return report;
}

ShopReport look_at_shop(const files::Case& c, JobResult& job) {
    ShopReport report = shop_report(c, job);
    for (const Finding& f : report.findings) add(job.findings, f);
    return report;
}

JudgedJob judge_job(const files::Case& c, const ProcessOptions& options) {
    JudgedJob job;
    job.result = run_process(c, options);
    job.shop = look_at_shop(c, job.result);
    return job;
}

}  // namespace overbend::job
