// V strokes: they end where they were told to, forces balance and work adds up, the same stroke twice is the
// same bit for bit, and the peak force lies where the trade's formula has it.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "sim/units.h"
#include "tests/stroke/strip_metals.h"
#include "tests/tolerance.h"

using namespace overbend;
using namespace overbend::tests;

TEST_SUITE("stroke") {
    // Allowed travel 1e-9 mm, force 0.1 per cent, free angle 0.01 degree.
    TEST_CASE("a stroke ends at its stop") {
        const job::VeeBend vee = plain_bend();
        const job::VeeResult by_travel = job::bend_vee(vee, stop_at(stroke::StopKind::travel, 1.5), {});
        CHECK(by_travel.stroke.outcome == stroke::Outcome::reached);
        CHECK(std::abs(by_travel.stroke.stop_travel - 1.5) < 1e-8);

        for (const double force : {20.0, 45.0, 55.0}) {
            CAPTURE(force);
            const job::VeeResult r = job::bend_vee(vee, stop_at(stroke::StopKind::force, force), {});
            CHECK(r.stroke.outcome == stroke::Outcome::reached);
            CHECK(relative_error(r.stroke.stop_force, force) < 1e-3);
        }
        for (const double angle : {10.0, 30.0, 60.0, 90.0, 110.0}) {
            CAPTURE(angle);
            const job::VeeResult r =
                job::bend_vee(vee, stop_at(stroke::StopKind::free_angle, angle * degree), {});
            CHECK(r.stroke.outcome == stroke::Outcome::reached);
            CHECK(std::abs(r.free / degree - angle) < 0.01);
            CHECK(r.loaded > r.free);
        }
    }

    // Source  balance of forces and of work.
    // Allowed balance 1e-3 of the peak force; 1 per cent of the work put in unaccounted for. Measured:
    // printed.
    TEST_CASE("forces balance and work adds up, air bent or bottomed") {
        struct Stroke {
            const char* name;
            material::Card card;
            double thickness, opening, nose, friction, die_angle, angle, force;
        };
        const double open = 0.0;
        const std::vector<Stroke> strokes = {
            {"plain", hardening_metal(), 1.0, 8.0, 1.0, 0.1, open, 90.0, 0.0},
            {"no friction", hardening_metal(), 1.0, 8.0, 1.0, 0.0, open, 90.0, 0.0},
            {"perfectly plastic", perfectly_plastic_metal(), 1.0, 8.0, 1.0, 0.1, open, 90.0, 0.0},
            {"sharp nose", hardening_metal(), 2.0, 16.0, 0.8, 0.1, open, 60.0, 0.0},
            {"wide nose", hardening_metal(), 0.5, 8.0, 3.0, 0.15, open, 60.0, 0.0},
            {"shallow", perfectly_plastic_metal(), 1.0, 10.0, 1.0, 0.2, open, 20.0, 0.0},
            {"bottomed at 200 N/mm", hardening_metal(), 1.0, 8.0, 1.0, 0.1, 88.0, 0.0, 200.0},
            {"bottomed at 500 N/mm", hardening_metal(), 1.0, 8.0, 1.0, 0.1, 88.0, 0.0, 500.0},
            {"perfectly plastic, bottomed", perfectly_plastic_metal(), 1.0, 8.0, 1.0, 0.1, 88.0, 0.0, 300.0}};
        for (const Stroke& s : strokes) {
            CAPTURE(std::string(s.name));
            job::VeeBend vee = plain_bend();
            vee.material = s.card;
            vee.thickness = s.thickness;
            vee.die_opening = s.opening;
            vee.nose_radius = s.nose;
            vee.shoulder_radius = s.thickness;
            vee.friction = s.friction;
            if (s.die_angle > 0.0) {
                vee.die_angle = s.die_angle * degree;
                vee.punch_angle = 85.0 * degree;
            }
            const stroke::Stop stop = s.force > 0.0 ? stop_at(stroke::StopKind::force, s.force)
                                                    : stop_at(stroke::StopKind::free_angle, s.angle * degree);
            const job::VeeResult r = job::bend_vee(vee, stop, {});
            CAPTURE(r.stroke.reason);
            std::printf("%-28s %s, free %.2f deg, balance %.1e, residue %.2f %%\n", s.name,
                        stroke::outcome_words(r.stroke.outcome), r.free / degree, r.stroke.balance_error,
                        r.stroke.audit.residue_percent());
            CHECK(r.stroke.outcome == stroke::Outcome::reached);
            CHECK(r.stroke.balance_error < 1e-3);
            CHECK(r.stroke.audit.residue_percent() < 1.0);
            if (s.force > 0.0) CHECK(relative_error(r.stroke.stop_force, s.force) < 1e-3);
        }
    }

    // Source  balance of work. Allowed 1 per cent, of strokes that hardly touch the strip.
    TEST_CASE("the smallest strokes add up too") {
        for (const double force : {0.5, 5.0, 10.0}) {
            CAPTURE(force);
            const job::VeeResult r = job::bend_vee(plain_bend(), stop_at(stroke::StopKind::force, force), {});
            CHECK(r.stroke.outcome == stroke::Outcome::reached);
            std::printf("%.1f N/mm: free %.4f deg, residue %.2f %%\n", force, r.free / degree,
                        r.stroke.audit.residue_percent());
            CHECK(r.stroke.audit.residue_percent() < 1.0);
        }
    }

    TEST_CASE("the same stroke twice is the same bit for bit") {
        const auto bend = [] {
            return job::bend_vee(plain_bend(), stop_at(stroke::StopKind::free_angle, 80.0 * degree), {});
        };
        const job::VeeResult a = bend(), b = bend();
        CHECK(a.free == b.free);
        CHECK(a.stroke.peak_force == b.stroke.peak_force);
        CHECK(a.stroke.iterations == b.stroke.iterations);
        CHECK(a.stroke.free.x == b.stroke.free.x);
        CHECK(a.stroke.free.y == b.stroke.free.y);
        CHECK(a.stroke.free.history == b.stroke.free.history);
    }

    // P = k Rm T^2 / W for each mm of width, k from 1.2 to 1.45.
    //
    // Source  S. Kalpakjian & S. R. Schmid, Manufacturing Engineering and Technology, sheet-metal forming,
    //         has k = 1.3; M. P. Groover, Fundamentals of Modern Manufacturing, 1.33 (both from memory). The
    //         spread 1.2 to 1.45 over W/T is common practice, no source.
    // Here    Rm = K n^n exp(e0 - n) of a Swift law K (e0 + p)^n (Considere), greatest force of a bend to 90
    //         degrees. The trade measures W between the corners where a groove of 90 degrees meets the die's
    //         top, before they are rounded: 2 R tan 22.5 less than between the arcs' centres. With the
    //         centres' distance for W, k is 1.40 to 1.54; so it is in the finite-element bend B1_90, 1.56.
    // Holds   as a rule of thumb, for W from 6 to 12 T and ordinary noses.
    // Allowed k from 1.2 to 1.45. Measured: 1.28 to 1.38.
    TEST_CASE("the peak force lies where the trade's formula has it") {
        const std::vector<material::Swift> laws = {
            {520.0, 0.006, 0.22}, {600.0, 0.004, 0.18}, {900.0, 0.005, 0.15}};
        for (const material::Swift& law : laws)
            for (const double opening : {8.0, 10.0}) {
                job::VeeBend vee = plain_bend();
                vee.material.hardening = law;
                vee.die_opening = opening;
                const job::VeeResult r =
                    job::bend_vee(vee, stop_at(stroke::StopKind::free_angle, 90.0 * degree), {});
                const double strength = law.K * std::pow(law.n, law.n) * std::exp(law.e0 - law.n);
                const double corners = opening - 2.0 * vee.shoulder_radius * std::tan(22.5 * degree);
                const double k = r.stroke.peak_force * corners / strength;
                std::printf("K %.0f n %.2f, Rm %.0f MPa, W/T %.0f: k = %.3f\n", law.K, law.n, strength,
                            opening, k);
                CHECK(k > 1.2);
                CHECK(k < 1.45);
            }
    }

}  // TEST_SUITE
