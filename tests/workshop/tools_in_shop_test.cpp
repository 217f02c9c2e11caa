// Loads on the tools of a job against the states that they are read from: the worst of the whole stroke,
// what holds a tool, springs that have room, one finding for one matter.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop.h"
#include "sim/units.h"
#include "tests/workshop/demo_job.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::tests;
using doctest::Approx;

namespace {

int index_of(const Case& c, const std::string& name) {
    const auto found =
        std::find_if(c.tools.begin(), c.tools.end(), [&](const Tool& t) { return t.name == name; });
    REQUIRE(found != c.tools.end());
    return static_cast<int>(found - c.tools.begin());
}

ToolInShop tool_called(const Case& c, const ShopReport& shop, const std::string& name) {
    for (const ToolInShop& t : shop.tools)
        if (t.tool == index_of(c, name)) return t;
    FAIL("there is no such tool");
    return {};
}

Findings of_rule(const Findings& list, Rule rule) {
    return those(list, [&](const Finding& f) { return f.rule == rule; });
}

Findings of_tool(const Findings& list, int tool) {
    return those(list, [&](const Finding& f) { return f.place.of == On::tool && f.place.tool == tool; });
}

std::vector<shop::ToolForce> forces_on(const stroke::Recording& r, const stroke::State& s, int k) {
    std::vector<shop::ToolForce> forces;
    for (const stroke::ContactForce& f : s.contacts)
        if (f.tool == k) forces.push_back({f.at - stroke::tool_position(r.tools, k, s), -f.force});
    return forces;
}

}  // namespace

// The L-shaped foot presses the channel, the last of the strokes, alone: its load is the ram's at its peak.
TEST_CASE("the load of a tool is the peak of all states of all its strokes") {
    const ShopReport shop = shop_report(demo(), demo_job());
    for (const ToolInShop& t : shop.tools) {
        CAPTURE(demo().tools[t.tool].name);
        double most = 0.0;
        for (const int step : t.steps) {
            const stroke::Recording& r = demo_job().steps[step].stroke.recording;
            const std::vector<int> used = demo().steps[step].tools();
            const int k = static_cast<int>(std::find(used.begin(), used.end(), t.tool) - used.begin());
            for (const stroke::State& s : r.states) {
                double up = 0.0;
                for (const shop::ToolForce& f : forces_on(r, s, k)) up += f.force.y();
                most = std::max(most, std::abs(up));
            }
        }
        CHECK(t.peak == Approx(most).epsilon(1e-6));
    }
    CHECK(tool_called(demo(), shop, "L foot").peak == Approx(demo_job().steps.back().stroke.peak_force));
}

TEST_CASE("no state loads a section harder than the one that is told") {
    const ShopReport shop = shop_report(demo(), demo_job());
    const ToolInShop foot = tool_called(demo(), shop, "L foot");
    const shop::Allowable limits = shop::allowables(*demo().tools[foot.tool].make.card);
    const shop::ToolSections sections =
        shop::sections_of(tool_outline(demo().tools[foot.tool], 1), shop::HeldBy::top);
    REQUIRE(foot.section);
    const double told = foot.section->load.share(limits);
    const stroke::Recording& r = demo_job().steps.back().stroke.recording;
    double most = 0.0;
    for (const stroke::State& s : r.states) {
        const std::optional<shop::SectionLoad> load =
            shop::weakest_section(sections, forces_on(r, s, 0), limits);
        if (load) most = std::max(most, load->share(limits));
    }
    CHECK(told == Approx(most).epsilon(1e-9));
}

// A recording that has its first and last states alone still has the peak of the stroke.
TEST_CASE("a thinned recording loses nothing of a punch's peak") {
    JobResult thinned = demo_job();
    for (StepResult& step : thinned.steps) {
        std::vector<stroke::State>& states = step.stroke.recording.states;
        states = {states.front(), states[states.size() / 2], states.back()};
    }
    const double peak = tool_called(demo(), shop_report(demo(), thinned), "L foot").peak;
    CHECK(peak == Approx(demo_job().steps.back().stroke.peak_force));
}

// Only the offset of the demo has a thrust: V strokes and the channel are the same on either side. By hand:
// the sum of the forces along x on the punch in its worst state.
TEST_CASE("side thrust is noted for the strokes that have any") {
    const ShopReport shop = shop_report(demo(), demo_job());
    const Findings thrust = of_rule(shop.findings, Rule::side_thrust);
    REQUIRE(thrust.size() == 1);
    const Finding& f = thrust.front();
    CHECK(f.severity == Severity::note);
    CHECK(demo().steps[f.place.step].name == "offset");
    const stroke::Recording& r = demo_job().steps[f.place.step].stroke.recording;
    double sideways = 0.0;
    for (const shop::ToolForce& force : forces_on(r, r.states[f.place.state], 0)) sideways += force.force.x();
    CHECK(f.figure == Approx(std::abs(sideways)));
    CHECK(f.further[0] == (sideways > 0.0 ? 1.0 : -1.0));
    CHECK(f.further[1] == Approx(std::abs(sideways) * 20.0 / 1000.0));

    const Case wiped = read_case("cases/wiped-angle/case.toml");
    const ShopReport lug = shop_report(wiped, run_process(wiped, {}));
    CHECK(of_rule(lug.findings, Rule::side_thrust).size() == 1);
}

// The shank of the foot is 7 mm wide, at the right of a foot of 18.9: its load is beside it. The wedge and
// the block of the V strokes have theirs in the middle, and the block stands on both lands beside its lower
// groove.
TEST_CASE("a load beside what holds the tool is noted, of an L-shaped punch and not of others") {
    const ShopReport shop = shop_report(demo(), demo_job());
    const Findings tilt = of_rule(shop.findings, Rule::tilting);
    REQUIRE(tilt.size() == 1);
    CHECK(tilt.front().place.tool == index_of(demo(), "L foot"));
    CHECK(tilt.front().severity == Severity::note);
    CHECK(tilt.front().further[0] == Approx(7.0));
    CHECK(tilt.front().limit == Approx(7.0 / 6.0));
    const ToolInShop foot = tool_called(demo(), shop, "L foot");
    CHECK(tilt.front().further[1] == Approx(foot.held->load.pressed * tilt.front().figure * 0.02));
}

// Three springs of 18 mm want 54 mm along the bend line: the pad has 55. With 40 mm there is no room for any
// set, and a longer pad is asked for.
TEST_CASE("springs that are proposed have room below the pad, or it is told how long it must be") {
    Case c = demo();
    const ToolInShop pad = tool_called(c, shop_report(c, demo_job()), "floor pad");
    REQUIRE(pad.springs);
    const shop::ChosenSpring& s = pad.springs->each;
    const double outside = s.spring.coil_diameter + s.spring.wire;
    CHECK(pad.springs->rows.in_a_row * pad.springs->rows.rows == pad.springs->count);
    CHECK(pad.springs->rows.in_a_row * outside <= 18.5);
    CHECK(pad.springs->rows.rows * outside <= 55.0);
    CHECK(of_tool(with(shop_report(c, demo_job()).findings, Severity::caution), pad.tool).empty());

    c.tools[pad.tool].make.length = 40.0;
    const ShopReport tight = shop_report(c, demo_job());
    const ToolInShop shorter = tool_called(c, tight, "floor pad");
    REQUIRE(shorter.springs);
    const Findings told = of_rule(tight.findings, Rule::spring_length);
    REQUIRE(told.size() == 1);
    CHECK(told.front().severity == Severity::caution);
    CHECK(told.front().limit == 40.0);
    CHECK(told.front().figure == Approx(shorter.springs->row_length()));
    CHECK(told.front().figure > 40.0);
    c.tools[pad.tool].make.length = told.front().figure;  // as it is asked for
    CHECK(of_rule(shop_report(c, demo_job()).findings, Rule::spring_length).empty());
}

TEST_CASE("springs are part of the cost, unless the pad is bought with them") {
    Case c = demo();
    const ShopReport shop = shop_report(c, demo_job());
    const ToolInShop pad = tool_called(c, shop, "floor pad");
    const auto cost_of = [](const ShopReport& report, const std::string& name) {
        for (const shop::ToolCost& t : report.cost.tools)
            if (t.name == name) return t.cost.value;
        return -1.0;
    };
    CHECK(cost_of(shop, "floor pad, springs") ==
          Approx(pad.springs->count * (2.0 + 0.03 * pad.springs->each.mass)));
    c.tools[pad.tool].make.price = 100.0;
    CHECK(cost_of(shop_report(c, demo_job()), "floor pad, springs") == -1.0);
}

// The demo's block of 1.2842 made of C45 and of 1.2312, the wedge too: ordinary V strokes in 1 mm of
// stainless steel.
TEST_CASE("V tools of C45 and of prehardened steel raise no alarm in ordinary strokes") {
    for (const char* steel : {"C45", "1.2312"}) {
        CAPTURE(steel);
        Case c = demo();
        for (const char* name : {"two-way block", "wedge"})
            c.tools[index_of(c, name)].make.card = read_tool_steel(steel, "");
        const ShopReport shop = shop_report(c, demo_job());
        for (const char* name : {"two-way block", "wedge"}) {
            const Findings told = of_tool(shop.findings, index_of(c, name));
            for (const std::string& words : sentences(c, told)) MESSAGE(words);
            CHECK(told.empty());
            const ToolInShop t = tool_called(c, shop, name);
            CHECK(t.checks.size() == 4);  // tension, compression, load per metre, contact
        }
    }
}

// The step punch presses 272 kN/m; of 200 HV, 400 kN/m are usual.
TEST_CASE("a load per metre above the usual is a caution, and never more") {
    Case c = demo();
    const int step_punch = index_of(c, "step punch");
    c.tools[step_punch].make.card->hardness = 200.0;
    const ShopReport shop = shop_report(c, demo_job());
    const ToolInShop t = tool_called(c, shop, "step punch");
    const Finding load = of_rule(t.checks, Rule::tool_line_load).front();
    CHECK(load.figure == t.peak);
    CHECK(load.limit == 400.0);
    CHECK(t.peak < 400.0);
    CHECK(load.severity == Severity::within);
    // Three times the strip's force: the figures of every state with it.
    JobResult hard = demo_job();
    for (StepResult& step : hard.steps) {
        step.stroke.peak_force *= 3.0;
        for (stroke::State& s : step.stroke.recording.states)
            for (stroke::ContactForce& f : s.contacts) f.force *= 3.0;
    }
    const ToolInShop worn = tool_called(c, shop_report(c, hard), "step punch");
    CHECK(worn.peak > 400.0);
    CHECK(of_rule(worn.checks, Rule::tool_line_load).front().severity == Severity::caution);
    c.tools[step_punch].make.rating = 1000.0;  // its maker knows better
    CHECK(of_rule(tool_called(c, shop_report(c, hard), "step punch").checks, Rule::tool_line_load).empty());
}

TEST_CASE("one finding for one matter") {
    Case c = demo();
    const int foot = index_of(c, "L foot"), wedge = index_of(c, "wedge");
    // A section that is too weak both ways, with what would be sufficient in the same sentence.
    c.tools[foot].make.card->bending_strength = 60.0;
    c.tools[foot].make.card->compressive_yield = 60.0;
    c.tools[foot].make.card->safety_tension = c.tools[foot].make.card->safety_compression = 1.0;
    const ShopReport weak = shop_report(c, demo_job());
    const Findings told = with(of_tool(weak.findings, foot), Severity::stops);
    REQUIRE(told.size() == 1);
    CHECK(finding_words(c, told.front()).find("remedy: make it at least") != std::string::npos);
    CHECK(with(of_tool(weak.findings, foot), Severity::caution).empty());
    // A wedge that is rated too low for its four strokes.
    c = demo();
    c.tools[wedge].make.rating = 50.0;
    const ShopReport rated = shop_report(c, demo_job());
    int said = 0;
    for (const Finding& f : rated.findings)
        said += f.rule == Rule::tool_rating || f.rule == Rule::load_per_metre;
    CHECK(said == 1);
}

// The heights are those above the stop, the forces those of the curve.
TEST_CASE("an eccentric press is asked for the force over the stroke") {
    Case c = demo();
    c.press->eccentric = shop::Eccentric{30.0 * degree};
    const ShopReport shop = shop_report(c, demo_job());
    for (const StrokeOnPress& s : shop.strokes) {
        const stroke::StrokeResult& run = demo_job().steps[s.step].stroke;
        REQUIRE_FALSE(s.demand.on_the_way.empty());
        CHECK(s.demand.on_the_way.front().height == Approx(run.stop_travel));
        CHECK(s.demand.on_the_way.back().height == Approx(0.0));
        double most = 0.0;
        for (const shop::ForceAt& at : s.demand.on_the_way) most = std::max(most, at.force);
        CHECK(most == Approx(run.peak_force));
    }
    CHECK(of_rule(shop.findings, Rule::crank_force).empty());  // 60 kN are plenty
    // A short stroke and a small force: the crank is far up while the strip is bent, and the press is too
    // weak there.
    c.press->force = 2.0, c.press->eccentric->rated_angle = 5.0 * degree;
    const ShopReport weak = shop_report(c, demo_job());
    const Findings told = of_rule(weak.findings, Rule::crank_force);
    REQUIRE_FALSE(told.empty());
    for (const Finding& f : told) {
        CHECK(f.limit == Approx(shop::crank_force(2.0, c.press->stroke, *c.press->eccentric, f.further[0])));
        // and not its rated force again
        for (const Finding& other : of_rule(weak.findings, Rule::press_force))
            if (other.place.step == f.place.step) CHECK(other.figure / other.limit >= f.figure / f.limit);
    }
}

// A slot of 8 x 3: pi 3 + 2 x 5 = 19.42 mm round, whichever way it lies.
TEST_CASE("a slot across the strip is cut as far round as one along it") {
    for (const Cutout& slot : {Cutout{35.0, 10.0, 3.0, 8.0}, Cutout{35.0, 10.0, 8.0, 3.0}}) {
        Case c = demo();
        c.cutouts = {slot};
        CHECK(shop_report(c, demo_job()).figures.cutout_perimeters == Approx(pi * 3.0 + 10.0));
    }
}
