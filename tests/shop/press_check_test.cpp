// A press by hand, each check on both sides of its limit.
//
//   150 N/mm on 20 mm of strip: 3 kN. 5 mm off the axis: 3 x 0.005 = 0.015 kN m.
//   Cycle: up 40 mm over a stop 3 mm below first touch, slow from 5 mm above it: 32 mm at 100 mm/s, 8 at 10,
//   0.2 s held, 40 back at 80: 0.32 + 0.8 + 0.2 + 0.5 = 1.82 s.

#include <doctest/doctest.h>

#include "sim/shop/press_check.h"

using namespace overbend;
using namespace overbend::shop;
using doctest::Approx;

namespace {

PressLimits bench() {
    PressLimits press;
    press.force = 60.0, press.stroke = 80.0, press.daylight = 260.0, press.throat = 150.0;
    press.gauge_reach = 200.0, press.gauge_nearest = 4.0, press.line_load = 400.0;
    press.off_centre = 0.5, press.energy = 100.0;
    press.speeds = RamSpeeds{100.0, 10.0, 80.0, 5.0, 0.2};
    return press;
}

StrokeDemand stroke() {
    StrokeDemand s;
    s.strip_width = 20.0, s.peak_force = 150.0, s.load_centre = 5.0, s.stop_travel = 3.0, s.work = 2.0;
    s.tools_closed = 190.0, s.part_room = 30.0, s.reach_back = 100.0, s.gauge = 40.0;
    s.punch_rating = 300.0, s.die_rating = 300.0;
    return s;
}

Finding of(Rule rule, const PressLimits& press, const StrokeDemand& s) {
    for (const Finding& c : press_checks(press, s))
        if (c.rule == rule) return c;
    FAIL("there is no such check");
    return {};
}

}  // namespace

TEST_CASE("figures of a stroke on a press") {
    CHECK(press_checks(bench(), stroke()).size() == 12);
    CHECK(of(Rule::press_force, bench(), stroke()).figure == Approx(3.0));
    CHECK(of(Rule::ram_stroke, bench(), stroke()).figure == Approx(30.0));
    CHECK(of(Rule::daylight, bench(), stroke()).figure == Approx(220.0));
    CHECK(of(Rule::shut_height, bench(), stroke()).figure == Approx(180.0));  // 260 - 80
    CHECK(of(Rule::off_centre_load, bench(), stroke()).figure == Approx(0.015));
    for (const Finding& c : press_checks(bench(), stroke())) {
        CAPTURE(static_cast<int>(c.rule));
        CHECK(c.severity == Severity::within);
    }
}

TEST_CASE("each check turns thin, then over") {
    const auto press_with = [](auto change) {
        PressLimits press = bench();
        change(press);
        return press;
    };
    CHECK(of(Rule::press_force, press_with([](auto& p) { p.force = 3.5; }), stroke()).severity ==
          Severity::caution);
    CHECK(of(Rule::press_force, press_with([](auto& p) { p.force = 2.9; }), stroke()).severity ==
          Severity::stops);
    CHECK(of(Rule::ram_stroke, press_with([](auto& p) { p.stroke = 29.0; }), stroke()).severity ==
          Severity::stops);
    CHECK(of(Rule::daylight, press_with([](auto& p) { p.daylight = 225.0; }), stroke()).severity ==
          Severity::caution);
    CHECK(of(Rule::daylight, press_with([](auto& p) { p.daylight = 219.0; }), stroke()).severity ==
          Severity::stops);
    const Finding shut = of(Rule::shut_height, press_with([](auto& p) { p.stroke = 60.0; }), stroke());
    CHECK(shut.severity == Severity::caution);
    CHECK(shut.figure - shut.limit == Approx(10.0));  // to be put under the die
    CHECK(of(Rule::load_per_metre, press_with([](auto& p) { p.line_load = 100.0; }),
             [] {
                 StrokeDemand s = stroke();
                 s.punch_rating.reset(), s.die_rating.reset();
                 return s;
             }())
              .severity == Severity::stops);
    StrokeDemand weak = stroke();
    weak.punch_rating = 160.0;
    CHECK(of(Rule::load_per_metre, bench(), weak).severity == Severity::caution);
    CHECK(of(Rule::off_centre_load, press_with([](auto& p) { p.off_centre = 0.014; }), stroke()).severity ==
          Severity::stops);
    CHECK(of(Rule::throat, press_with([](auto& p) { p.throat = 99.0; }), stroke()).severity ==
          Severity::stops);
    CHECK(of(Rule::gauge_out, press_with([](auto& p) { p.gauge_reach = 39.0; }), stroke()).severity ==
          Severity::stops);
    StrokeDemand near = stroke();
    near.gauge = 3.0;
    int over = 0;
    for (const Finding& c : press_checks(bench(), near)) over += c.severity == Severity::stops;
    CHECK(over == 1);
    CHECK(of(Rule::press_energy, press_with([](auto& p) { p.energy = 1.9; }), stroke()).severity ==
          Severity::stops);
}

// Stroke 60 mm, crank 30 mm, 60 kN from 30 degrees down.
//   30 degrees: 30 (1 - cos 30) = 4.019 mm above the bottom: 60 kN up to there.
//   60 degrees: 30 (1 - 0.5) = 15 mm: 60 sin 30 / sin 60 = 34.64 kN.
//   90 degrees: 30 mm: 60 x 0.5 = 30 kN.
TEST_CASE("an eccentric press gives less above the angle that it is rated at") {
    const Eccentric drive{30.0 * degree};
    CHECK(crank_angle(60.0, 15.0) == Approx(60.0 * degree));
    CHECK(crank_force(60.0, 60.0, drive, 0.0) == 60.0);
    CHECK(crank_force(60.0, 60.0, drive, 4.0) == 60.0);
    CHECK(crank_force(60.0, 60.0, drive, 15.0) == Approx(34.641).epsilon(1e-4));
    CHECK(crank_force(60.0, 60.0, drive, 30.0) == Approx(30.0));
    CHECK(crank_force(60.0, 60.0, Eccentric{60.0 * degree}, 15.0) == Approx(60.0));
}

// The same press and 20 mm of strip. At 15 mm: 1732 N/mm are 34.64 kN, all that there is; four fifths of it
// are 1386 N/mm. At the bottom 2900 N/mm are 58 kN, within the rated force, which is another check's matter.
TEST_CASE("the force over the stroke is held against what the crank gives there") {
    PressLimits press = bench();
    press.stroke = 60.0, press.eccentric = Eccentric{30.0 * degree};
    StrokeDemand s = stroke();
    const auto severity_of = [&](double force) {
        s.on_the_way = {{20.0, 0.0}, {15.0, force}, {10.0, 0.5 * force}, {0.0, 2900.0}};
        return of(Rule::crank_force, press, s);
    };
    CHECK(severity_of(1380.0).severity == Severity::within);
    CHECK(severity_of(1390.0).severity == Severity::caution);
    CHECK(severity_of(1725.0).severity == Severity::caution);
    const Finding over = severity_of(1740.0);
    CHECK(over.severity == Severity::stops);
    CHECK(over.figure == Approx(34.8));
    CHECK(over.limit == Approx(34.641).epsilon(1e-4));
    CHECK(over.further[0] == 15.0);
    CHECK(over.further[1] == Approx(60.0));
    CHECK(over.further[3] == Approx(30.0));
    // Below the rated angle, and of a press that is not eccentric, it is not asked.
    const auto asked = [&] {
        int found = 0;
        for (const Finding& f : press_checks(press, s)) found += f.rule == Rule::crank_force;
        return found;
    };
    CHECK(asked() == 1);
    s.on_the_way = {{4.0, 2900.0}, {0.0, 2900.0}};
    CHECK(asked() == 0);
    s.on_the_way = {{15.0, 1740.0}};
    press.eccentric.reset();
    CHECK(asked() == 0);
}

TEST_CASE("what is not known of a press is not asked") {
    PressLimits press;
    press.force = 60.0, press.stroke = 80.0;
    StrokeDemand s = stroke();
    s.punch_rating.reset(), s.die_rating.reset();
    CHECK(press_checks(press, s).size() == 2);
    s.gauge = 0.0;
    CHECK(press_checks(bench(), s).size() == 8);
}

TEST_CASE("the time of a cycle") {
    CHECK(cycle_time(*bench().speeds, 40.0, 3.0) == Approx(1.82));
    CHECK(ram_rise(bench(), stroke()) == Approx(40.0));
    StrokeDemand high = stroke();
    high.part_room = 100.0;
    CHECK(ram_rise(bench(), high) == Approx(80.0));
    // No room to go fast: 6 mm at 10 mm/s and 80 back.
    CHECK(cycle_time(*bench().speeds, 6.0, 3.0) == Approx(0.6 + 0.2 + 0.075));
}

// 500 N/mm x 20 mm x 2 mm = 0.02 kN m, on whichever side of the axis.
TEST_CASE("a load on either side of the axis turns the ram") {
    for (const double side : {2.0, -2.0}) {
        PressLimits press;
        press.force = 60.0, press.stroke = 100.0, press.off_centre = 0.01;
        StrokeDemand stroke;
        stroke.strip_width = 20.0, stroke.peak_force = 500.0, stroke.load_centre = side;
        bool found = false;
        for (const Finding& check : press_checks(press, stroke)) {
            if (check.rule != Rule::off_centre_load) continue;
            found = true;
            CHECK(check.figure == doctest::Approx(0.02));
            CHECK(check.severity == Severity::stops);
        }
        CHECK(found);
    }
}
