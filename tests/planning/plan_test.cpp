// From the drawing to a job that makes it: the demo from its drawing alone, a wrong order set right, parts
// that cannot be made.

#include "scenes/job/plan/plan.h"
#include "scenes/job/shop/shop.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"
#include "scenes/job/plan/attempt.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/plan/enumerate_orders.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

bool any_says(const std::vector<std::string>& sentences, const std::string& what) {
    return std::any_of(sentences.begin(), sentences.end(),
                       [&](const std::string& s) { return s.find(what) != std::string::npos; });
}

}  // namespace

TEST_CASE("the demo, planned from its drawing alone, is no dearer than the order in the demo") {
    const Case demo = read_case("cases/cable-hook/case.toml");
    Case drawing = demo;
    drawing.tools.clear();
    drawing.steps.clear();
    PlanOptions options;
    const PlanResult plan = plan_case(drawing, options);
    REQUIRE(plan.found);
    // As a part of the batch, with the tools that are made for it.
    const auto price = [](const Case& c, const JobResult& job) {
        const ShopReport shop = shop_report(c, job);
        return shop.cost.per_part(shop.rates.batch);
    };
    CHECK(price(plan.planned, plan.fit.job) <= price(demo, run_process(demo, {})));
    CHECK(plan.fit.job.solved);
    CHECK(plan.fit.job.feasible());
    CHECK(plan.fit.meets);
    CHECK(plan.proposed.size() == plan.planned.tools.size());  // a reason for each that is left

    // the completed case is one that check accepts unchanged
    const tests::OwnFolder folder;
    const JobResult again =
        run_process(read_case(folder.write("case.toml", write_case(plan.planned, ""))), {});
    CHECK(again.solved);
    CHECK(again.feasible());
}

TEST_CASE("a wrong order is refused, and another one found that works with the same tools") {
    const Case wrong = read_case("cases/wrong-order/case.toml");
    CHECK_FALSE(run_process(wrong, {}).feasible());
    PlanOptions options;
    options.rack_only = true;
    const PlanResult plan = plan_case(wrong, options);
    REQUIRE(plan.found);
    CHECK(plan.fit.meets);
    CHECK(plan.planned.tools.size() == wrong.tools.size());
    const auto place = [&](const char* name) {
        for (std::size_t i = 0; i < plan.planned.steps.size(); ++i)
            if (plan.planned.steps[i].name == name) return i;
        return std::size_t{99};
    };
    CHECK(place("lip") < place("wall"));
    // and it says why not the other way round: bend, solid and depth
    const auto lip_after_wall = [](const Rejected& r) { return r.what == "'lip' after 'wall'"; };
    const auto found = std::find_if(plan.rejected.begin(), plan.rejected.end(), lip_after_wall);
    REQUIRE(found != plan.rejected.end());
    CHECK(found->why.find("deep in the punch 'straight punch'") != std::string::npos);
}

TEST_CASE("bends that block each other are named, with the tools that would be tried") {
    // a channel too narrow for the punch, its walls longer than it is wide
    Case c = read_case("cases/wrong-order/case.toml");
    c.steps.clear();
    c.part.flats = {30.0, 14.0, 30.0};
    c.part.bends = {{"left", 90.0 * degree, 1.1}, {"right", 90.0 * degree, 1.1}};
    PlanOptions options;
    options.rack_only = true;
    const PlanResult refused = plan_case(c, options);
    CHECK_FALSE(refused.found);
    CHECK(any_says(refused.reasons, "'left' and 'right' block each other"));
    CHECK(any_says(refused.reasons, "punch 'straight punch'"));
    CHECK_FALSE(refused.would_help.empty());

    options.rack_only = false;
    const PlanResult helped = plan_case(c, options);
    CHECK(helped.found);
    CHECK_FALSE(helped.proposed.empty());
}

TEST_CASE("a part that cannot be made is refused with the reason") {
    Case c = read_case("cases/wrong-order/case.toml");
    c.steps.clear();
    c.tools.clear();
    c.part.flats = {0.3, 30.0};
    c.part.bends = {{"edge", 90.0 * degree, 1.1}};
    const PlanResult plan = plan_case(c, {});
    CHECK_FALSE(plan.found);
    CHECK(any_says(plan.reasons, "'edge'"));
    CHECK(any_says(plan.reasons, "too short"));

    c.part.bends[0].angle = 180.0 * degree;
    CHECK_THROWS_AS(plan_case(c, {}), OutOfRange);
}
