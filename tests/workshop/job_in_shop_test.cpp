// A job in the shop: figures of press, tools and costs against the strokes that they are read from, findings
// on both sides of their limits, springs that do in the simulation what they were chosen for.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop.h"
#include "sim/units.h"
#include "sim/words.h"
#include "tests/files/own_folder.h"
#include "tests/workshop/demo_job.h"

using namespace overbend;
using namespace overbend::documents;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::tests;
using doctest::Approx;

namespace {

const ToolInShop& tool_called(const Case& c, const ShopReport& shop, const std::string& name) {
    for (const ToolInShop& t : shop.tools)
        if (c.tools[t.tool].name == name) return t;
    FAIL("there is no such tool");
    return shop.tools.front();
}

Tool& tool_called(Case& c, const std::string& name) {
    for (Tool& t : c.tools)
        if (t.name == name) return t;
    FAIL("there is no such tool");
    return c.tools.front();
}

}  // namespace

TEST_CASE("the demo's press and tools are strong enough for its strokes") {
    const ShopReport shop = shop_report(demo(), demo_job());
    REQUIRE(shop.strokes.size() == 6);
    REQUIRE(shop.tools.size() == 7);
    CHECK_FALSE(stops(shop.findings));
    CHECK(with(shop.findings, Severity::not_checked).empty());
    for (const StrokeOnPress& s : shop.strokes) {
        CHECK(s.checks.size() >= 6);
        CHECK(s.cycle_s > 0.5);
        CHECK(s.cycle_s < 10.0);
    }
    for (const ToolInShop& t : shop.tools) {
        CAPTURE(demo().tools[t.tool].name);
        REQUIRE(t.section);
        const shop::Allowable limits = shop::allowables(*demo().tools[t.tool].make.card);
        REQUIRE(steel_margin(demo(), t));
        CHECK(*steel_margin(demo(), t) <= 1.0 / t.section->load.share(limits) + 1e-9);
        if (t.contact) CHECK(*steel_margin(demo(), t) <= limits.contact / t.contact->contact.mean + 1e-9);
        CHECK(t.stock.mass > 0.0);
        CHECK(t.stock.mass < t.stock.block_mass);
    }
    CHECK(shop.shared.size() == 2);
    CHECK(results_json(demo(), demo_job()) == results_json(demo(), demo_job()));
}

// Force: N per mm times the width. Work: the audit's. Tools closed: heights of both tools and holders less
// how far the punch's tip stands in the die.
TEST_CASE("what a stroke requires of the press is read from its recording") {
    const ShopReport shop = shop_report(demo(), demo_job());
    for (const StrokeOnPress& s : shop.strokes) {
        const StepResult& run = demo_job().steps[s.step];
        const tool::ToolSet& tools = run.stroke.recording.tools;
        CHECK(s.checks[0].figure == Approx(run.stroke.peak_force * 20.0 / 1000.0));
        CHECK(s.demand.work == Approx(run.stroke.audit.largest * 0.02));
        const tool::Box &punch = tools[0].outline.box(), &die = tools[1].outline.box();
        const double tip = tools[0].position.y() - run.stroke.stop_travel;
        CHECK(s.demand.tools_closed ==
              Approx(punch.high.y() + tip - die.low.y() - tools[1].position.y() + 45.0 + 30.0));
    }
    // One V bend is symmetric: its load stands on the axis.
    CHECK(std::abs(shop.strokes[0].demand.load_centre) < 0.05);
}

// All that presses on the foot in the recorded state, summed up about the middle of the shank's section:
// N / h +- 6 M / h^2.
TEST_CASE("the L-shaped foot of the demo is bent as beam theory has it") {
    const ShopReport shop = shop_report(demo(), demo_job());
    const ToolInShop& foot = tool_called(demo(), shop, "L foot");
    REQUIRE(foot.section);
    const shop::SectionLoad& load = foot.section->load;
    const double h = load.cut.thickness;
    CHECK(h == Approx(7.0).epsilon(0.05));  // the shank
    const stroke::Recording& r = demo_job().steps.back().stroke.recording;
    const tool::Vec2 middle = 0.5 * (load.cut.from + load.cut.to);
    const tool::Vec2 across = (load.cut.to - load.cut.from) / h;
    bool found = false;
    for (const stroke::State& s : r.states) {
        if (s.travel != foot.section->travel || s.contacts.empty()) continue;
        tool::Vec2 sum = tool::Vec2::Zero();
        double moment = 0.0;
        for (const stroke::ContactForce& f : s.contacts) {
            if (f.tool != 0) continue;
            const tool::Vec2 arm = f.at - stroke::tool_position(r.tools, 0, s) - middle;
            sum -= f.force, moment -= arm.x() * f.force.y() - arm.y() * f.force.x();
        }
        const double axial = -std::abs(across.x() * sum.y() - across.y() * sum.x());
        const double most = std::abs(axial) / h + 6.0 * std::abs(moment) / (h * h);
        found = found || std::abs(most - load.compression) < 1e-6 * most;
    }
    CHECK(found);
    // and it is the eccentric load that counts, not the compression
    CHECK(load.compression > 3.0 * std::abs(load.axial) / h);
}

TEST_CASE("a shank that is too thin is a problem, and with the stated thickness it is none") {
    Case c = demo();
    Tool& foot = tool_called(c, "L foot");
    const shop::ToolSteel hard = *foot.make.card;
    shop::ToolSteel weak = hard;
    weak.bending_strength = 60.0, weak.safety_tension = 1.0;  // no steel: to see the finding
    foot.make.card = weak;
    JobResult job = demo_job();
    const ShopReport shop = look_at_shop(c, job);
    REQUIRE(stops(shop.findings));
    CHECK(sentences(c, with(job.findings, Severity::stops)) ==
          sentences(c, with(shop.findings, Severity::stops)));
    CHECK(why_not(c, shop.findings).find("L foot") != std::string::npos);
    const ToolInShop& t = tool_called(c, shop, "L foot");
    REQUIRE_FALSE(t.mends.empty());
    shop::SectionLoad mended = t.section->load;
    const double h = shop::thickness_that_bears(mended, shop::allowables(weak));
    CHECK(h > mended.cut.thickness);
    CHECK(mended.axial / h + 6.0 * mended.bending / (h * h) <= 60.0 * (1.0 + 1e-9));

    weak.safety_tension = 1.0, weak.bending_strength = 1.05 * t.section->load.tension;
    tool_called(c, "L foot").make.card = weak;
    CHECK_FALSE(stops(shop_report(c, demo_job()).findings));
    weak.safety_tension = 1.2;  // within the strength, not within its safety
    tool_called(c, "L foot").make.card = weak;
    const ShopReport thin = shop_report(c, demo_job());
    CHECK_FALSE(stops(thin.findings));
    CHECK_FALSE(with(thin.findings, Severity::caution).empty());
}

TEST_CASE("a rating is held against what the strip presses with, and a tool without a steel is told") {
    Case c = demo();
    Tool& wedge = tool_called(c, "wedge");
    wedge.make.card.reset(), wedge.make.steel.clear();
    wedge.make.rating = 50.0;
    const ShopReport shop = shop_report(c, demo_job());
    CHECK(stops(shop.findings));
    const Findings unknown = with(shop.findings, Severity::not_checked);
    REQUIRE(unknown.size() == 1);
    CHECK(sentence(c, unknown.front()).find("'wedge'") != std::string::npos);
}

// The springs that are chosen for the pad, put into the case: installed and pressed in by its travel they
// press as the case's own force did.
// Hertz, line contact: p = sqrt(F E / (pi R)), so that R = F E / (pi p^2), with 1/E = (1 - nu1^2)/E1 + (1 -
// nu2^2)/E2 (K. L. Johnson, Contact Mechanics, section 4.2).
TEST_CASE("an overloaded edge gets the radius that is sufficient") {
    Case c = demo();
    shop::ToolSteel& steel = *tool_called(c, "wedge").make.card;
    steel.hardness = 100.0;  // indented at 9.80665 / 0.927 * 100 = 1057.9 MPa, where the nose has some 1250
    const ShopReport shop = shop_report(c, demo_job());
    const ToolInShop& t = tool_called(c, shop, "wedge");
    REQUIRE(t.contact);
    REQUIRE(t.contact->contact.mean > 1057.9);
    CHECK(stops(shop.findings));
    const double one = (1.0 - steel.poisson * steel.poisson) / steel.youngs_modulus;
    const double other = (1.0 - c.material.poisson * c.material.poisson) / c.material.youngs_modulus;
    const double greatest = 4.0 / pi * 1057.9;  // whose mean it is
    const double radius = t.contact->force / ((one + other) * pi * greatest * greatest);
    CHECK(radius > t.contact->radius);
    bool told = false;
    for (const Finding& mend : t.mends)
        told = told || finding_words(c, mend).find(words("a radius of at least %.1f mm", radius)) !=
                           std::string::npos;
    CHECK(told);
    CHECK(tool_called(demo(), shop_report(demo(), demo_job()), "wedge").mends.empty());
}

TEST_CASE("a tool that is loaded nearly as it is rated for is told, within and beyond") {
    const double peak = tool_called(demo(), shop_report(demo(), demo_job()), "wedge").peak;
    const auto verdict = [&](double part) {
        Case c = demo();
        tool_called(c, "wedge").make.rating = peak / part;
        const ShopReport shop = shop_report(c, demo_job());
        for (const Finding& check : tool_called(c, shop, "wedge").checks)
            if (check.rule == Rule::tool_rating) return check.severity;
        FAIL("the rating was not asked for");
        return Severity::stops;
    };
    CHECK(verdict(0.75) == Severity::within);
    CHECK(verdict(0.85) == Severity::caution);
    CHECK(verdict(1.01) == Severity::stops);
}

TEST_CASE("springs that are chosen for a pad press in the simulation as was wished") {
    Case c = demo();
    const ShopReport shop = shop_report(c, demo_job());
    const std::optional<SpringAdvice> advice = tool_called(c, shop, "floor pad").springs;
    REQUIRE(advice);
    CHECK_FALSE(advice->given);
    Pad& pad = std::get<Pad>(tool_called(c, "floor pad").shape);
    const tool::Spring before = pad.spring;
    WoundSprings wound;
    wound.each = advice->each.spring, wound.count = advice->count;
    wound.preload = advice->each.force_start * advice->count;
    pad.wound = wound;
    pad.spring.preload = wound.preload / c.width;
    pad.spring.rate = wound.count * tool::spring_rate(wound.each) / c.width;
    CHECK(pad.spring.preload + pad.spring.rate * advice->travel ==
          Approx(before.preload + before.rate * advice->travel));
    CHECK(pad.spring.preload == Approx(before.preload).epsilon(0.05));
    const JobResult with_springs = run_process(c, {});
    REQUIRE(with_springs.solved);
    CHECK(with_springs.steps.back().stroke.peak_force ==
          Approx(demo_job().steps.back().stroke.peak_force).epsilon(0.02));
    const ShopReport again = shop_report(c, with_springs);
    const std::optional<SpringAdvice> given = tool_called(c, again, "floor pad").springs;
    REQUIRE(given);
    CHECK(given->given);
    CHECK(given->each.stress == Approx(advice->each.stress).epsilon(0.02));
    CHECK(tool_called(c, again, "floor pad").mends.empty());
    CHECK(given->each.free_length == Approx(advice->each.free_length).epsilon(0.02));
    // Half the wire: the rate is a sixteenth, so the preload alone is too much for it, and it is told what is
    // not.
    Pad& weak = std::get<Pad>(tool_called(c, "floor pad").shape);
    weak.wound->each.wire *= 0.5;
    const ShopReport thin = shop_report(c, with_springs);
    const ToolInShop& t = tool_called(c, thin, "floor pad");
    REQUIRE(t.mends.size() == 1);
    CHECK(t.mends.front().rule == Rule::other_springs);
    CHECK(finding_words(c, t.mends.front()).find(words("%g mm", advice->each.spring.wire)) !=
          std::string::npos);
    CHECK_FALSE(stops(thin.findings));
    CHECK_FALSE(with(thin.findings, Severity::caution).empty());
    // force at the end: the preload and what the travel adds, on each
    CHECK(t.springs->each.force_end ==
          Approx(wound.preload / wound.count + tool::spring_rate(weak.wound->each) * t.springs->travel));
}

// d 4, D 16, n 12, G 81700: 81700 x 256 / (8 x 4096 x 12) = 53.19 N/mm; solid (12 + 2) x 4 = 56, gaps
// 12 (0.0015 x 64 + 0.4) = 5.952 (EN 13906-1). Pressed in by 1 mm after 600 N it is 653.2 N and 12.28
// mm: 74.23 mm free, 4.64 times the coil. With 18 turns 35.46 N/mm, 635.5 N and 17.92 mm; 80 solid,
// gaps 8.928: 106.85 mm, 6.68 times: from 5.26 on it buckles (Shigley, chapter 10).
TEST_CASE("springs of a case that buckle or have no room are cautioned of") {
    Case c = demo();
    const auto looked_at = [&](double turns, double block) {
        Pad& pad = std::get<Pad>(tool_called(c, "floor pad").shape);
        pad.wound = WoundSprings{{4.0, 16.0, turns, 81700.0}, 1, 600.0};
        pad.block.width = block;
        return tool_called(c, shop_report(c, demo_job()), "floor pad");
    };
    const auto check_of = [](const ToolInShop& t, Rule rule) {
        for (const Finding& check : t.checks)
            if (check.rule == rule) return check;
        FAIL("no such check");
        return Finding{};
    };
    const ToolInShop stout = looked_at(12.0, 40.0);
    const double travel = stout.springs->travel;
    CHECK(stout.springs->each.free_length ==
          Approx(56.0 + 5.952 + (600.0 + 53.19 * travel) / 53.19).epsilon(1e-3));
    CHECK(check_of(stout, Rule::spring_slenderness).figure == Approx(stout.springs->each.free_length / 16.0));
    CHECK(check_of(stout, Rule::spring_slenderness).severity == Severity::within);
    CHECK(check_of(stout, Rule::spring_room).severity == Severity::within);
    const ToolInShop slender = looked_at(18.0, 19.0);
    CHECK(slender.springs->each.free_length ==
          Approx(80.0 + 8.928 + (600.0 + 35.46 * travel) / 35.46).epsilon(1e-3));
    CHECK(check_of(slender, Rule::spring_slenderness).severity == Severity::caution);
    CHECK(check_of(slender, Rule::spring_room).figure == Approx(20.0));
    CHECK(check_of(slender, Rule::spring_room).limit == Approx(19.0));
    CHECK(check_of(slender, Rule::spring_room).severity == Severity::caution);
}

// Six strokes: four set-ups (both tools stay from lip to tip; hook, offset, shelf and channel each change
// them: 5 in all) and a gauge at each new distance.
TEST_CASE("costs are the job's: strokes, set-ups, turns, cut-outs, mass") {
    const ShopReport shop = shop_report(demo(), demo_job());
    const shop::JobFigures& f = shop.figures;
    CHECK(f.strokes == 6);
    CHECK(f.cutouts == 1);
    CHECK(f.cutout_perimeters == Approx(pi * 4.5));
    CHECK(f.part_mass == Approx(demo_job().mass_g / 1000.0));
    int gauges = 0;
    for (std::size_t i = 0; i < 6; ++i) {
        const double gauge = demo_job().steps[i].gauge;
        gauges += gauge > 0.0 && (i == 0 || std::abs(gauge - demo_job().steps[i - 1].gauge) > 0.01);
    }
    CHECK(f.set_up == Approx(5 * 180.0 + gauges * 20.0));
    double work = 0.0, cycles = 0.0;
    for (const StrokeOnPress& s : shop.strokes) work += s.demand.work, cycles += s.cycle_s;
    CHECK(f.work == Approx(work));
    int strokes_of_tools = 0;  // each is of a punch and a die, and one has a pad
    for (const shop::ToolFigures& t : f.tools) strokes_of_tools += t.strokes;
    CHECK(strokes_of_tools == 2 * 6 + 1);
    REQUIRE(f.strip_per_kg);
    CHECK(*f.strip_per_kg == demo().material.price);
    REQUIRE(f.cutting_rate);
    CHECK(*f.cutting_rate == demo().material.cutting_rate);
    CHECK(f.press_cycles == Approx(cycles));
    CHECK(shop.cost.money == "EUR");
    CHECK(shop.cost.press_time == Approx(cycles + 6 * 3.0 + f.handling));
}

// A wedge that is bought costs its price, whatever it weighs.
TEST_CASE("a tool that is bought is not made") {
    Case c = demo();
    c.cost->overhead = 0.0, c.cost->hardening_least = 0.0;  // which other tools would bear
    const double before = shop_report(c, demo_job()).cost.fixed;
    double made = 0.0;
    for (const shop::ToolCost& t : shop_report(c, demo_job()).cost.tools)
        if (t.name == "wedge") made = t.cost.value;
    tool_called(c, "wedge").make.price = 200.0;
    CHECK(shop_report(c, demo_job()).cost.fixed == Approx(before - made + 200.0));
}

TEST_CASE("every case that comes with the program has its shop") {
    for (const char* name :
         {"channel-with-pad", "wiped-angle", "flat-hem", "one-bend-dc01", "relieved-punch"}) {
        CAPTURE(std::string(name));
        const Case c = read_case(std::string("cases/") + name + "/case.toml");
        const JobResult job = run_process(c, {});
        const ShopReport shop = shop_report(c, job);
        CHECK_FALSE(stops(shop.findings));
        CHECK(shop.strokes.size() == c.steps.size());
        CHECK_FALSE(shop.tools.empty());
        CHECK(shop.cost.variable > 0.0);
        for (const ToolInShop& t : shop.tools)
            if (t.section) CHECK(t.section->load.compression < 1e5);
    }
}
