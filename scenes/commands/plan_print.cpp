#include "scenes/commands/plan_print.h"

#include <cstdio>
#include <string>

#include "render/picture/cautions.h"
#include "scenes/commands/options.h"
#include "scenes/commands/shop_print.h"
#include "scenes/documents/tables/job_tables.h"
#include "sim/counted.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

// "lip > hook (down) > shelf (turned)"
std::string order_words(const job::RankedOrder& order) {
    std::string words;
    bool face_down = false, turned = false, first = true;
    for (const files::Step& s : order.steps) {
        const bool down = s.face == files::Face::down, right = s.first == files::First::right;
        std::string how;
        if (first ? down : down != face_down) how += down ? "face down" : "face up";
        if (first ? right : right != turned)
            how += std::string(how.empty() ? "" : ", ") + (right ? "right end first" : "left end first");
        words += (first ? "" : " > ") + s.name + (how.empty() ? "" : " (" + how + ")");
        face_down = down, turned = right, first = false;
    }
    return words;
}

void print_orders(const job::PlanResult& plan) {
    if (plan.ranked.empty()) return;
    documents::Table table{
        "",
        {{"rank", "", 0},
         {"seconds", "", 0},
         {"strokes", "", 0},
         {"turns", "", 0},
         {"flips", "", 0},
         {"tools", "", 0},
         {"gauge", "", 0},
         {"slides", "", 0},
         {"verdict"},
         {"order"}},
        {},
        {"Seconds: total of the times in the case's [handling]; the first set-up counts as a "
         "change of tools and gauge."}};
    for (std::size_t i = 0; i < plan.ranked.size(); ++i) {
        const job::RankedOrder& o = plan.ranked[i];
        const plan::OrderWork& w = o.order.work;
        table.rows.push_back({1.0 + static_cast<double>(i), o.order.seconds, 1.0 * w.strokes, 1.0 * w.turns,
                              1.0 * w.flips, 1.0 * w.tool_changes, 1.0 * w.gauge_changes, 1.0 * w.slides,
                              static_cast<int>(i) == plan.chosen ? "chosen" : job::verdict_word(o.verdict),
                              order_words(o)});
        if (o.words.empty()) continue;
        table.rows.push_back(std::vector<documents::Cell>(9, ""));
        table.rows.back().emplace_back(o.words);
    }
    print_table(table);
}

void print_fit(const files::Case& c, const job::PlanResult& plan) {
    const job::Fit& fit = plan.fit;
    std::printf("\nBlank %.2f mm long (DIN 6935: %.2f); bend lines at", fit.job.blank.length,
                job::make_blank(c).length);
    for (const double line : fit.job.blank.bend_line) std::printf(" %.2f", line);
    std::printf(" mm.\nAfter %s, the finished part is at most %.3f degrees and %.3f mm off the drawing.\n",
                counted(static_cast<std::size_t>(fit.runs), "run").c_str(), fit.worst_angle / degree,
                fit.job.profile.greatest());
}

}  // namespace

void print_plan(const files::Case& c, const job::PlanResult& plan,
                const std::optional<std::filesystem::path>& file) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; %s\n", c.title.c_str(), c.material.title.c_str(),
                c.thickness, c.width, counted(c.part.bends.size(), "bend").c_str());
    std::printf("Search: %s checked by geometry, after %s of earlier bends\n",
                counted(static_cast<std::size_t>(plan.asked), "stroke").c_str(),
                counted(static_cast<std::size_t>(plan.sets), "set").c_str());
    print_list("Proposed tools:", plan.proposed);
    print_orders(plan);
    if (plan.found) {
        print_table(documents::order_table(plan.planned, plan.fit.job));
        print_table(documents::bends_table(plan.planned, plan.fit.job));
        print_fit(c, plan);
        print_list("Changes made by the planner:", plan.fit.changed_tools);
    }
    std::vector<std::string> rejected;
    for (const job::Rejected& r : plan.rejected) rejected.push_back(r.what + ": " + r.why);
    print_list("Rejected:", rejected);
    if (!plan.found) {
        print_list("No plan found for this part:", plan.reasons);
        print_list("Adding these tools would make it possible:", plan.would_help);
    } else {
        print_list("The drawing is not met exactly:", plan.fit.why_not);
        std::printf("\n%s%s\n", plan.fit.meets ? "The drawing is met. " : "",
                    file ? ("The completed case is " + file->string()).c_str() : "");
    }
    std::printf("\n%s\n", picture::brief_caution().c_str());
}

}  // namespace overbend::commands
