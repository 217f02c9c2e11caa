#include "scenes/job/shop/shop.h"

#include <algorithm>

#include "scenes/files/case/read_cost.h"
#include "scenes/job/shop/shop_parts.h"

namespace overbend::job {

namespace {

using shop::Check;
using shop::Verdict;

void take(const std::string& whose, const Check& check, ShopReport& report) {
    if (check.verdict == Verdict::fine) return;
    std::vector<std::string>& list = check.verdict == Verdict::over ? report.findings : report.cautions;
    const std::string words = whose + ": " + check.words;
    if (std::find(list.begin(), list.end(), words) == list.end()) list.push_back(words);
}

void tell_of_unknown_steels(const files::Case& c, ShopReport& report) {
    std::string names;
    for (const ToolInShop& t : report.tools)
        if (!c.tools[t.tool].make.card) names += (names.empty() ? "'" : ", '") + c.tools[t.tool].name + "'";
    if (!names.empty()) report.not_checked.push_back("tool strength: the case names no steel for " + names);
}

void collect(const files::Case& c, ShopReport& report) {
    for (const StrokeOnPress& s : report.strokes)
        for (const Check& check : s.checks) {
            // the job itself says so
            if (check.what == "force" && check.verdict == Verdict::over) continue;
            take("step '" + c.steps[s.step].name + "'", check, report);
        }
    for (const ToolInShop& t : report.tools) {
        const std::string whose = "tool '" + c.tools[t.tool].name + "'";
        for (const Check& check : t.checks) take(whose, check, report);
        for (const std::string& mend : t.mends) report.cautions.push_back(whose + ": " + mend);
    }
    tell_of_unknown_steels(c, report);
    if (!c.press) report.not_checked.push_back("press: the case names no press");
}

}  // namespace

ShopReport shop_report(const files::Case& c, const JobResult& job) {
    ShopReport report;
    report.cost_asked = c.cost.has_value();
    report.rates = c.cost ? *c.cost : files::usual_rates(c);
    for (int i = 0; i < static_cast<int>(job.steps.size()); ++i)
        if (job.steps[i].stroke.solved()) report.strokes.push_back(stroke_on_press(c, job, i));
    report.tools = tools_in_shop(c, job, report.rates.making, report.not_checked);
    report.shared = shared_blocks(c, report.tools, report.rates.making);
    report.figures = job_figures(c, job, report.strokes, report.tools);
    report.cost = shop::cost_sheet(report.rates, report.figures);
    collect(c, report);
    return report;
}

ShopReport look_at_shop(const files::Case& c, JobResult& job) {
    ShopReport report = shop_report(c, job);
    for (const std::string& finding : report.findings)
        if (std::find(job.findings.begin(), job.findings.end(), finding) == job.findings.end())
            job.findings.push_back(finding);
    return report;
}

}  // namespace overbend::job
