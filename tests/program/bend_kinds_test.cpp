// The kinds of stroke that `bend` knows besides the V bend, from outside: each with an example, what belongs
// to it, and what it prints.

#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/program/run_overbend.h"

namespace {

using nlohmann::json;
using overbend::tests::Run;
using overbend::tests::run_overbend;

const std::string strip = " --material dc01 --thickness 1 --layers 9 ";
const std::string offset = "bend --kind offset" + strip + "--offset 5 --offset-angle 45 --nose 1 ";
const std::string channel =
    "bend --kind channel" + strip + "--punch-width 20 --corner 2 --shoulder 2 --depth 12 ";
const std::string wiping = "bend --kind wiping" + strip + "--edge 2 --corner 3 --flange 15 ";
const std::string hem = "bend --kind hem" + strip + "--hem 8 --die-opening 9 --shoulder 1 --nose 1 ";
const std::string draw =
    "bend --kind draw --material dc01 --thickness 0.8 --layers 9 --punch-width 30 --corner 5 "
    "--shoulder 5 --flange 35 --travel 18 ";

json parsed(const std::string& options) {
    CAPTURE(options);
    const Run run = run_overbend(options + " --json --quiet");
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    const json object = json::parse(run.out, nullptr, false);
    REQUIRE(object.is_object());
    CHECK(object["outcome"] == "reached");
    CHECK(object["audit_residue_percent"].get<double>() < 2.0);
    CHECK(object["peak_force_N_per_mm"].get<double>() > 0.0);
    for (const json& b : object["bends"])
        CHECK(std::abs(b["loaded_deg"].get<double>() - b["free_deg"].get<double>() -
                       b["springback_deg"].get<double>()) < 1e-9);
    return object;
}

double free_deg(const json& object, std::size_t bend) {
    return object["bends"].at(bend)["free_deg"].get<double>();
}

void check_refused(const std::string& options, const std::string& blamed, const std::string& right) {
    CAPTURE(options);
    const Run run = run_overbend(options);
    CAPTURE(run.error);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: ", 0) == 0);
    CHECK(run.error.find('\n') == run.error.size() - 1);
    CHECK(run.error.find(blamed) != std::string::npos);
    CHECK(run.error.find(right) != std::string::npos);
}

}  // namespace

TEST_CASE("bend: the vee is the kind that needs no name") {
    const std::string tools = strip + "--die-opening 8 --shoulder 1 --nose 1 --free 90 --json";
    const Run plain = run_overbend("bend" + tools), named = run_overbend("bend --kind vee" + tools);
    CHECK(plain.status == 0);
    CHECK(plain.out == named.out);
    CHECK(json::parse(plain.out).count("kind") == 0);
}

TEST_CASE("bend: an offset prints both its bends, the first as it was asked for") {
    const json r = parsed(offset + "--free 42");
    CHECK(r["kind"] == "offset");
    REQUIRE(r["bends"].size() == 2);
    CHECK(std::abs(free_deg(r, 0) - 42.0) < 0.01);
    CHECK(std::abs(free_deg(r, 1) - 42.0) < 1.5);
    CHECK(r["bends"][0]["inside_radius_free_mm"].get<double>() > 0.0);
}

TEST_CASE("bend: a channel over a pad, whose spring is given by its rate or by its wire") {
    const json rate = parsed(channel + "--travel 11 --width 50 --pad-preload 20 --pad-rate 2");
    REQUIRE(rate["bends"].size() == 2);
    CHECK(std::abs(free_deg(rate, 0) - free_deg(rate, 1)) < 0.1);
    CHECK(std::abs(free_deg(rate, 0) - 90.0) < 4.0);
    // 80000 4^4 / (8 20^3 6.4) = 50 N/mm each; two of them on 50 mm of strip: 2 N/mm2
    const json wire =
        parsed(channel + "--travel 11 --width 50 --pad-preload 20 --pad-spring 4,20,6.4,80000 --pad-count 2");
    CHECK(std::abs(free_deg(wire, 0) - free_deg(rate, 0)) < 1e-6);
    const json floor = parsed(channel + "--travel 11 --width 50");
    CHECK(floor["peak_force_N_per_mm"].get<double>() < rate["peak_force_N_per_mm"].get<double>());
}

TEST_CASE("bend: a flange is wiped to a travel and to a free angle, under a firm clamp and one on a spring") {
    const json firm = parsed(wiping + "--travel 9");
    REQUIRE(firm["bends"].size() == 1);
    CHECK(free_deg(firm, 0) < 89.5);
    CHECK(free_deg(firm, 0) > 80.0);
    CHECK(firm["bends"][0]["springback_deg"].get<double>() > 0.3);
    CHECK(std::abs(free_deg(parsed(wiping + "--free 60 --clamp-force 100"), 0) - 60.0) < 0.01);
    const json on_ram = parsed(wiping + "--travel 9 --clamp-force 100 --clamp-rate 3 --clamp-on ram");
    CHECK(on_ram["peak_force_N_per_mm"].get<double>() > firm["peak_force_N_per_mm"].get<double>() + 90.0);
}

TEST_CASE("bend: a hem says what is left between its faces") {
    const json r = parsed(hem + "--force-per-mm 323");
    CHECK(std::abs(free_deg(r, 0) - 180.0) < 3.0);
    CHECK(r["gap_free_mm"].get<double>() < 0.1);
    CHECK(parsed(hem + "--gap 1.2")["gap_free_mm"].get<double>() > 0.5);
}

TEST_CASE("bend: a draw prints four bends and the curl of its walls") {
    const json r = parsed(draw + "--clamp-force 20");
    REQUIRE(r["bends"].size() == 4);
    CHECK(r["bends"][1]["springback_deg"].get<double>() > 0.3);
    CHECK(r["wall_curvature_free_per_mm"].get<double>() > 0.0);
    const Run table = run_overbend(draw + "--clamp-force 20 --quiet");
    for (const char* words :
         {"left shoulder: bend angle free", "right corner: springback", "curvature of the walls"})
        CHECK(table.out.find(words) != std::string::npos);
}

TEST_CASE("bend: gravity hardly matters to a short strip, and is refused where nothing holds it") {
    const json with = parsed(channel + "--travel 11 --gravity"), without = parsed(channel + "--travel 11");
    CHECK(std::abs(free_deg(with, 0) - free_deg(without, 0)) < 0.05);
    check_refused(offset + "--free 42 --gravity", "gravity", "leave gravity out");
}

TEST_CASE("bend: what does not belong to a kind, or is missing, is named") {
    check_refused("bend --kind wipe" + strip, "--kind: \"wipe\" is not known", "give one of vee, offset");
    check_refused(wiping + "--free 80 --nose 1", "--nose: it is not used by --kind wiping",
                  "vee, offset, hem");
    check_refused(wiping + "--force-per-mm 80", "--force-per-mm", "remove it");
    check_refused(wiping, "--travel, --free: 0 stops", "exactly one");
    check_refused(draw + "--clamp-force 10 --free 80", "--free", "it is not used by --kind draw");
    check_refused(draw, "--clamp-force: it is missing", "needs it");
    check_refused("bend --kind hem" + strip + "--gap 1", "it is missing", "--kind hem needs it");
    check_refused(hem + "--gap 1 --force-per-mm 3", "2 stops", "exactly one");
    check_refused(channel + "--travel 9 --pad-preload 5 --clamp-force 4", "--clamp-force", "wiping, draw");
    check_refused(channel + "--travel 9 --clamp-on ram", "--clamp-on", "wiping");
    check_refused(wiping + "--travel 9 --clamp-on ram", "--clamp-on", "give --clamp-force");
    check_refused(channel + "--travel 9 --pad-spring 4,20,6.4,80000", "--pad-spring", "give --width");
    check_refused(channel + "--travel 9 --width 20 --pad-spring 4,20,6.4", "--pad-spring: 3 numbers",
                  "wire,coil");
    check_refused(channel + "--travel 9 --width 20 --pad-spring 4,3,6,80000", "coil diameter",
                  "mean diameter");
    check_refused(channel + "--travel 9 --width 20 --pad-spring 4,20,6,80000 --pad-rate 1", "--pad-rate",
                  "exactly one");
    check_refused(channel + "--travel 9 --pad-count 2", "--pad-count", "both or neither");
    check_refused(channel + "--travel 9 --pad-preload 0", "spring", "above 0");
}

TEST_CASE("bend: lengths that do not suit one another or the thickness are refused") {
    check_refused(wiping + "--travel 9 --clearance 0.9", "clearance", "at least 1 mm");
    check_refused(wiping + "--travel 9 --hold 501", "--hold", "at most 500 mm");
    check_refused(offset + "--free 42 --flange 2", "flange", "give at least");
    check_refused(offset + "--free 42 --root 30", "radius", "fits");
    check_refused(channel + "--travel 9 --flange 2", "flange", "give at least");
    check_refused("bend --kind draw" + strip +
                      "--punch-width 30 --corner 3 --shoulder 3 --flange 16 --travel 14 --clamp-force 10",
                  "flange", "less travel");
    check_refused("bend --kind vee" + strip + "--die-opening 8 --shoulder 1 --nose 1 --free 90 --bottom 1",
                  "--bottom", "--die-angle");
}

TEST_CASE("bend: every example of the help works as it stands") {
    const std::string help = run_overbend("bend --help").out, mark = "Example: overbend ";
    int examples = 0;
    for (std::size_t at = help.find(mark); at != std::string::npos;
         at = help.find(mark, at + 1), ++examples) {
        const std::size_t from = at + mark.size();
        const std::string example = help.substr(from, help.find('\n', from) - from);
        CAPTURE(example);
        CHECK(run_overbend(example + " --quiet").status == 0);
    }
    CHECK(examples == 6);
}
