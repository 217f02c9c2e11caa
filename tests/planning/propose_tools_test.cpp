// Proposed tools: that there are no more of them than need be, that they can be made, go together with the
// strip, and press it to its angle.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenes/files/case/read_card.h"
#include "scenes/job/plan/clear_tools.h"
#include "scenes/job/plan/fitting_pairs.h"
#include "scenes/job/plan/propose_vee.h"
#include "scenes/job/run/process.h"
#include "sim/units.h"
#include "tests/planning/random_part.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using tests::Numbers;

namespace {

// The least number of points that hit all ranges, by trying every subset of their ends.
int fewest_points(const std::vector<SizeRange>& ranges) {
    const int n = static_cast<int>(ranges.size());
    int fewest = n;
    for (unsigned subset = 0; subset < (1u << n); ++subset) {
        int count = 0;
        for (int i = 0; i < n; ++i) count += (subset >> i) & 1;
        if (count >= fewest) continue;
        const bool all_hit = std::all_of(ranges.begin(), ranges.end(), [&](const SizeRange& r) {
            for (int i = 0; i < n; ++i)
                if (((subset >> i) & 1) && ranges[i].high >= r.low && ranges[i].high <= r.high) return true;
            return false;
        });
        if (all_hit) fewest = count;
    }
    return fewest;
}

// Tools for a bend and the next one in a stroke.
ProposedTools propose_pair(WorkKind work, const Case& c, int left_bend) {
    return work.propose(c, make_blank(c), {left_bend, left_bend + 1});
}

Case one_bend(const char* card, double thickness, double radius, double angle, double flange) {
    Case c;
    c.title = "one bend";
    c.material = read_card(card, "");
    c.thickness = thickness;
    c.width = 20.0;
    c.part.flats = {flange, 3.0 * flange};
    c.part.bends = {{"bend", angle * degree, radius}};
    c.part.angle_tolerance = degree;
    return c;
}

}  // namespace

TEST_CASE("ranges of openings are served by the fewest there can be") {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        Numbers draw(seed);
        std::vector<SizeRange> ranges;
        for (int i = 0; i < 1 + static_cast<int>(seed % 9); ++i) {
            const double low = draw.between(4.0, 20.0);
            ranges.push_back({i, low, low + draw.between(0.0, 6.0)});
        }
        const auto groups = fewest_sizes(ranges);
        CHECK(static_cast<int>(groups.size()) == fewest_points(ranges));
        std::size_t members = 0;
        for (const auto& group : groups) {
            double low = -1e300, high = 1e300;
            for (const SizeRange& r : group) low = std::max(low, r.low), high = std::min(high, r.high);
            CHECK(low <= high);
            members += group.size();
        }
        CHECK(members == ranges.size());
    }
}

TEST_CASE("a proposed groove and wedge press the strip to the drawing's angle") {
    const struct {
        const char* card;
        double thickness, radius, angle, flange;
    } strips[] = {{"dc01", 1.0, 1.2, 90.0, 15.0},
                  {"stainless-1.4301", 0.5, 0.8, 110.0, 10.0},
                  {"stainless-1.4310", 1.5, 3.0, 60.0, 30.0},
                  {"aluminium-6061-t6", 2.0, 4.0, 90.0, 30.0},
                  {"s235", 3.0, 4.0, 45.0, 40.0},
                  {"brass-cuzn37", 0.8, 2.0, 130.0, 14.0}};
    for (const auto& s : strips) {
        CAPTURE(std::string(s.card));
        Case c = one_bend(s.card, s.thickness, s.radius, s.angle, s.flange);
        const Blank blank = make_blank(c);
        VeeTrials trials(c);
        const ProposedTools proposed = propose_vee(c, blank, {0}, trials);
        REQUIRE(proposed.cannot.empty());
        REQUIRE(proposed.tools.size() == 2);
        c.tools = proposed.tools;
        const Fitting fitting = fitting_pairs(c, blank, {0});
        REQUIRE(fitting.pairs.size() == 1);
        Step step;
        step.name = "bend";
        step.bends = {0};
        step.punch = fitting.pairs[0].punch, step.die = fitting.pairs[0].die;
        c.steps = {step};
        const JobResult job = run_process(c, {});
        CAPTURE(job.steps[0].stroke.reason);
        REQUIRE(job.solved);
        CHECK(job.steps[0].stroke.outcome == stroke::Outcome::reached);
        CHECK(std::abs(job.finished_angle[0] - s.angle * degree) < 0.02 * degree);
        // Sizes of the part are fitted later.
        for (const Finding& f : with(job.findings, Severity::stops)) {
            CAPTURE(sentence(c, f));
            CHECK(facts_of(f.rule).group == RuleGroup::part);
        }
    }
}

TEST_CASE("bends that one groove serves get one groove, and two grooves share a block") {
    Case c = one_bend("dc01", 1.0, 1.2, 90.0, 20.0);
    c.part.flats = {20.0, 40.0, 40.0, 20.0};
    c.part.bends = {{"a", 90.0 * degree, 1.2}, {"b", -90.0 * degree, 1.2}, {"c", 90.0 * degree, 1.2}};
    VeeTrials trials(c);
    CHECK(propose_vee(c, make_blank(c), {0, 1, 2}, trials).tools.size() == 2);
    c.part.bends[1].inside_radius = 5.0;  // wants a wider groove and another nose
    const ProposedTools two = propose_vee(c, make_blank(c), {0, 1, 2}, trials);
    REQUIRE(two.tools.size() == 3);
    CHECK(std::get<tool::VeeDie>(two.tools.back().shape).faces.size() == 2);
}

TEST_CASE("a flange too short for any groove is told with its length and what it would need") {
    const Case c = one_bend("dc01", 2.0, 2.0, 90.0, 0.5);
    VeeTrials trials(c);
    const ProposedTools proposed = propose_vee(c, make_blank(c), {0}, trials);
    CHECK(proposed.tools.empty());
    REQUIRE(proposed.cannot.size() == 1);
    CHECK(proposed.cannot.front().find("'bend'") != std::string::npos);
    CHECK(proposed.cannot.front().find("too short") != std::string::npos);
}

TEST_CASE("an offset pair and a channel with its pad are tools that fit") {
    Case c = one_bend("dc01", 1.0, 3.0, 45.0, 30.0);
    c.part.flats = {30.0, 3.0, 30.0};
    c.part.bends = {{"out", 45.0 * degree, 3.0}, {"back", -45.0 * degree, 3.0}};
    c.tools = propose_pair(offset_work(), c, 0).tools;
    REQUIRE(c.tools.size() == 2);
    CHECK(fitting_pairs(c, make_blank(c), {0, 1}).pairs.size() == 1);

    c.part.flats = {25.0, 20.0, 25.0};
    c.part.bends = {{"left", 90.0 * degree, 2.0}, {"right", 90.0 * degree, 2.0}};
    c.tools = propose_pair(channel_work(), c, 0).tools;
    REQUIRE(c.tools.size() == 3);
    CHECK(fitting_pairs(c, make_blank(c), {0, 1}).pairs.size() == 1);
}

TEST_CASE("a flange over a channel's mouth makes an L of the foot; two that all but close it leave no room") {
    Case c = one_bend("dc01", 1.0, 2.0, 90.0, 8.0);
    c.part.flats = {7.0, 14.0, 18.0, 25.0};
    c.part.bends = {{"lip", 90.0 * degree, 2.0}, {"left", 90.0 * degree, 2.0}, {"right", 90.0 * degree, 2.0}};
    const ProposedTools lipped = propose_pair(channel_work(), c, 1);
    REQUIRE(lipped.tools.size() == 3);
    const auto& foot = std::get<tool::ChannelPunch>(lipped.tools[0].shape);
    CHECK(foot.shank == tool::Shank::right);
    CHECK(foot.foot_height < 14.0 + 2.0 + 2.0);
    CHECK(foot.width - foot.shank_width > 7.0 + 2.0);

    c.part.flats = {9.0, 14.0, 18.0, 14.0, 9.0};
    c.part.bends.push_back({"other lip", 90.0 * degree, 2.0});
    const ProposedTools closed = propose_pair(channel_work(), c, 1);
    CHECK(closed.tools.empty());
    CHECK(closed.cannot.size() == 1);
}

TEST_CASE("a relieved punch leaves room where the flange leans over, in the mechanics too") {
    // Walls as long as the channel is wide, and longer: the straight punch is hit, the relieved one is not.
    for (const double wall : {20.0, 28.0}) {
        CAPTURE(wall);
        Case c = one_bend("dc01", 1.0, 1.1, 90.0, 20.0);
        c.part.flats = {wall, 20.0, wall};
        c.part.bends = {{"left", 90.0 * degree, 1.1}, {"right", 90.0 * degree, 1.1}};
        c.tools = {{"straight", tool::VeePunch{80.0 * degree, 1.0, 60.0, 12.0}},
                   {"block", tool::VeeDie{{{84.0 * degree, 8.0, 1.0, 0.4}}, 28.0, 31.0}}};
        VeeTrials trials(c);
        const std::unique_ptr<Attempt> attempt = search_with(c, {});
        REQUIRE(attempt->search.best.empty());
        const ProposedTools proposed = clear_tools(*attempt, trials);
        const auto cut_right = std::find_if(proposed.tools.begin(), proposed.tools.end(), [](const Tool& t) {
            const auto* punch = std::get_if<tool::VeePunch>(&t.shape);
            return punch && punch->relief && punch->relief->side == tool::Side::right;
        });
        REQUIRE(cut_right != proposed.tools.end());
        c.tools.push_back(*cut_right);
        Step left, right;
        left.name = "left", left.bends = {0}, left.die = 1;
        right.name = "right", right.bends = {1}, right.die = 1;
        left.first = First::right;  // the made flange lies right of the punch
        right.first = First::left;
        for (const int punch : {0, 2}) {
            left.punch = right.punch = punch;
            right.first = First::right, left.first = First::left;
            c.steps = {right, left};
            const JobResult job = run_process(c, {});
            REQUIRE(job.solved);
            CHECK(job.steps[0].interferences.empty());
            CHECK(job.steps[1].interferences.empty() == (punch == 2));
        }
    }
}
