#include "scenes/commands/plan_print.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

#include "render/picture/cautions.h"
#include "scenes/commands/options.h"
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

const char* verdict_words(const job::RankedOrder& order, bool chosen) {
    if (chosen) return "chosen";
    switch (order.verdict) {
        case job::OrderVerdict::works:
            return "works";
        case job::OrderVerdict::refused:
            return "refused";
        case job::OrderVerdict::not_run:
            break;
    }
    return "not run";
}

void print_orders(const job::PlanResult& plan) {
    if (plan.ranked.empty()) return;
    std::printf("\n%4s %8s %8s %6s %6s %6s %6s %7s  %-8s %s\n", "rank", "seconds", "strokes", "turns",
                "flips", "tools", "gauge", "slides", "verdict", "order");
    for (std::size_t i = 0; i < plan.ranked.size(); ++i) {
        const job::RankedOrder& o = plan.ranked[i];
        const plan::OrderWork& w = o.order.work;
        std::printf("%4zu %8.0f %8d %6d %6d %6d %6d %7d  %-8s %s\n", i + 1, o.order.seconds, w.strokes,
                    w.turns, w.flips, w.tool_changes, w.gauge_changes, w.slides,
                    verdict_words(o, static_cast<int>(i) == plan.chosen), order_words(o).c_str());
        if (!o.words.empty()) std::printf("%71s%s\n", "", o.words.c_str());
    }
    std::printf(
        "Seconds: total of the times in the case's [handling]; the first set-up counts as a change of tools "
        "and gauge.\n");
}

void print_rejected(const job::PlanResult& plan) {
    if (plan.rejected.empty()) return;
    std::printf("\nRejected:\n");
    for (const job::Rejected& r : plan.rejected) std::printf("  - %s: %s\n", r.what.c_str(), r.why.c_str());
}

std::string die_words(const files::Case& c, const files::Step& s) {
    const files::Tool& die = c.tools[s.die];
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    return vee && vee->faces.size() > 1 ? die.name + ", face " + std::to_string(s.die_face) : die.name;
}

void print_strokes(const job::PlanResult& plan) {
    const files::Case& c = plan.planned;
    int steps = 4, punches = 5, dies = 3;  // widths of the columns
    for (const files::Step& s : c.steps) {
        steps = std::max(steps, static_cast<int>(s.name.size()));
        punches = std::max(punches, static_cast<int>(c.tools[s.punch].name.size()));
        dies = std::max(dies, static_cast<int>(die_words(c, s).size()));
    }
    std::printf("\n    %-*s  %-*s  %-*s  %-4s  %-5s %9s %8s %10s\n", steps, "step", punches, "punch", dies,
                "die", "face", "first", "stop", "travel", "springback");
    std::printf("    %-*s  %-*s  %-*s  %-4s  %-5s %9s %8s %10s\n", steps, "", punches, "", dies, "", "", "",
                "free deg", "mm", "deg");
    for (std::size_t i = 0; i < c.steps.size(); ++i) {
        const files::Step& s = c.steps[i];
        const job::StepResult& r = plan.fit.job.steps[i];
        const int bend = s.first == files::First::right ? s.bends.back() : s.bends.front();
        const double stop =
            s.stop == files::StopKind::free_angle ? s.stop_value : std::abs(c.part.bends[bend].angle);
        std::printf("    %-*s  %-*s  %-*s  %-4s  %-5s %9.2f %8.3f %10.2f\n", steps, s.name.c_str(), punches,
                    c.tools[s.punch].name.c_str(), dies, die_words(c, s).c_str(),
                    s.face == files::Face::down ? "down" : "up",
                    s.first == files::First::right ? "right" : "left", stop / degree, r.stroke.stop_travel,
                    r.bends.empty() ? 0.0 : r.bends.front().springback() / degree);
    }
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
        print_strokes(plan);
        print_fit(c, plan);
        print_list("Changes made by the planner:", plan.fit.changed_tools);
    }
    print_rejected(plan);
    if (!plan.found) {
        print_list("No plan found for this part:", plan.reasons);
        print_list("Adding these tools would make it possible:", plan.would_help);
    } else {
        print_list("The drawing is not met exactly:", plan.fit.why_not);
        std::printf("\n%s%s\n", plan.fit.meets ? "The drawing is met. " : "",
                    file ? ("The completed case is " + file->string()).c_str() : "");
    }
    std::printf("\n%s\n", picture::brief_caution().c_str());
    std::fflush(stdout);
}

}  // namespace overbend::commands
