#include "scenes/documents/results/plan_json.h"

#include <nlohmann/json.hpp>

#include "scenes/documents/results/measures_json.h"

namespace overbend::documents {

namespace {

using Json = nlohmann::ordered_json;

Json order_json(const files::Case& c, const job::RankedOrder& order) {
    Json steps = Json::array();
    for (std::size_t i = 0; i < order.steps.size(); ++i) {
        const files::Step& s = order.steps[i];
        Json bends = Json::array();
        for (const int b : s.bends) bends.push_back(c.part.bends[b].name);
        steps.push_back({{"bends", bends},
                         {"face", s.face == files::Face::down ? "down" : "up"},
                         {"first", s.first == files::First::right ? "right" : "left"},
                         {"gauge_mm", order.order.strokes[i].use.gauge}});
    }
    const plan::OrderWork& w = order.order.work;
    return {{"seconds", order.order.seconds},
            {"strokes", w.strokes},
            {"turns", w.turns},
            {"flips", w.flips},
            {"tool_changes", w.tool_changes},
            {"gauge_changes", w.gauge_changes},
            {"slides", w.slides},
            {"verdict", job::verdict_word(order.verdict)},
            {"words", order.words},
            {"steps", steps}};
}

}  // namespace

std::string plan_json(const files::Case& c, const job::PlanResult& plan) {
    Json orders = Json::array(), rejected = Json::array(), lines = Json::array();
    for (const job::RankedOrder& o : plan.ranked) orders.push_back(order_json(c, o));
    for (const job::Rejected& r : job::grouped(plan.rejected))
        rejected.push_back({{"what", r.what}, {"why", r.why}});
    Json all = {{"format", 2},
                {"title", c.title},
                {"found", plan.found},
                {"chosen_rank", plan.found ? Json(plan.chosen + 1) : Json(nullptr)},
                {"orders", orders},
                {"proposed_tools", plan.proposed},
                {"rejected", rejected},
                {"reasons", plan.reasons},
                {"would_help", plan.would_help},
                {"sets_of_made_bends", plan.sets},
                {"strokes_looked_at", plan.asked}};
    if (plan.found) {
        for (const double line : plan.fit.job.blank.bend_line) lines.push_back(line);
        all["drawing_met"] = plan.fit.meets;
        all["runs"] = plan.fit.runs;
        all["measures"] = measures_json(plan.planned, plan.fit.job);
        all["why_not_met"] = plan.fit.why_not;
        all["changed_tools"] = plan.fit.changed_tools;
        all["blank_length_mm"] = plan.fit.job.blank.length;
        all["bend_lines_mm"] = lines;
    }
    return all.dump(2) + "\n";
}

}  // namespace overbend::documents
