#include "scenes/job/shop/shop.h"

#include <algorithm>

#include "scenes/files/case/read_shop.h"
#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

// Its part of what is allowed.
double share(const Finding& f) {
    const bool section = f.rule == Rule::tool_tension || f.rule == Rule::tool_compression;
    return f.figure / (section ? f.further[3] : f.limit);
}

// What another finding of the same list says with a worse figure: tension and compression of one section, the
// rated force of an eccentric press and its force above the bottom.
bool is_said_worse(const Finding& f, const Findings& checks) {
    const auto pair = [&](Rule one, Rule other) {
        if (f.rule != one && f.rule != other) return false;
        return std::any_of(checks.begin(), checks.end(), [&](const Finding& g) {
            return g.rule != f.rule && (g.rule == one || g.rule == other) && g.severity != Severity::within &&
                   share(g) > share(f);
        });
    };
    return pair(Rule::tool_tension, Rule::tool_compression) || pair(Rule::press_force, Rule::crank_force);
}

// One sentence for one matter. The load per metre on a tool that is rated is said of the tool, at the worst
// of its strokes; what a section or an edge should measure is said with its stress.
void take(const Findings& checks, ShopReport& report) {
    for (const Finding& f : checks) {
        if (f.severity == Severity::within || is_said_worse(f, checks)) continue;
        if (f.rule == Rule::load_per_metre && f.detail != shop::holders_words) continue;
        if (f.rule == Rule::thicker_section || f.rule == Rule::rounder_edge) continue;
        add(report.findings, f);
    }
}

void tell_of_unknown_steels(const files::Case& c, ShopReport& report) {
    std::string names;
    for (const ToolInShop& t : report.tools)
        if (!c.tools[t.tool].make.card) names += (names.empty() ? "'" : ", '") + c.tools[t.tool].name + "'";
    if (!names.empty())
        not_checked(Rule::tool_strength, "the case names no steel for " + names, report.findings);
}

void collect(const files::Case& c, const JobResult& job, ShopReport& report) {
    for (const StrokeOnPress& s : report.strokes) take(s.checks, report);
    for (const ToolInShop& t : report.tools) take(t.checks, report), take(t.mends, report);
    tell_of_side_thrust(c, job, report.findings);
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
    report.figures = job_figures(c, job, report.strokes, report.tools, report.rates);
    report.cost = shop::cost_sheet(report.rates, report.figures);
    collect(c, job, report);
    return report;
}

ShopReport look_at_shop(const files::Case& c, JobResult& job) {
    ShopReport report = shop_report(c, job);
    for (const Finding& f : report.findings) add(job.findings, f);
    return report;
}

JudgedJob judge_job(const files::Case& c, const ProcessOptions& options, Spread spread) {
    JudgedJob job;
    job.result = run_process(c, options);
    if (spread == Spread::worked_out) job.result.spread = angle_spread(c, job.result);
    job.shop = look_at_shop(c, job.result);
    return job;
}

}  // namespace overbend::job
