// The commands `bend` and `moment` from outside: numbers, exit statuses, and what stands where.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/program/run_overbend.h"

namespace {

using nlohmann::json;
using overbend::tests::Run;
using overbend::tests::run_overbend;

const std::string strip = "--material dc01 --thickness 1 ";
const std::string tools = "--die-opening 8 --shoulder 1 --nose 1 ";
const std::string bend = "bend " + strip + tools;

// Every number in it is finite (JSON has no others, so null stands for them).
bool all_finite(const json& value) {
    if (value.is_null()) return false;
    if (value.is_number()) return std::isfinite(value.get<double>());
    if (!value.is_structured()) return true;
    for (const json& inner : value)
        if (!all_finite(inner)) return false;
    return true;
}

json parsed(const Run& run) {
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    const json object = json::parse(run.out, nullptr, false);
    REQUIRE(object.is_object());
    CHECK(all_finite(object));
    return object;
}

// Exit status, nothing on stdout, and one line on stderr that names what is to blame.
void check_refused(const std::string& options, int status, const std::string& blamed) {
    CAPTURE(options);
    const Run run = run_overbend(options);
    CAPTURE(run.error);
    CHECK(run.status == status);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: ", 0) == 0);
    CHECK(run.error.find('\n') == run.error.size() - 1);
    CHECK(run.error.find(blamed) != std::string::npos);
}

}  // namespace

TEST_CASE("bend: a free angle that was asked for is what comes out") {
    const json r = parsed(run_overbend(bend + "--free 90 --json"));
    CHECK(r["outcome"] == "reached");
    CHECK(std::abs(r["free_deg"].get<double>() - 90.0) < 0.01);
    CHECK(r["springback_deg"].get<double>() > 0.0);
    CHECK(std::abs(r["loaded_deg"].get<double>() - r["free_deg"].get<double>() -
                   r["springback_deg"].get<double>()) < 1e-9);
    CHECK(r["inside_radius_free_mm"].get<double>() > r["inside_radius_loaded_mm"].get<double>());
    CHECK(r["travel_mm"].get<double>() > 0.0);
    CHECK(r["increments"].get<int>() > 0);
    CHECK(r["iterations"].get<int>() >= r["increments"].get<int>());
    CHECK(r["audit_residue_percent"].get<double>() < 5.0);
    CHECK(r.count("curve") == 0);
}

TEST_CASE("bend: a travel is kept, and the curve has its peak and ends without force") {
    const json r = parsed(run_overbend(bend + "--travel 2 --curve --json"));
    CHECK(std::abs(r["travel_mm"].get<double>() - 2.0) < 1e-6);
    double peak = 0.0;
    for (const json& point : r["curve"]) peak = std::max(peak, point["force_N_per_mm"].get<double>());
    CHECK(peak == r["peak_force_N_per_mm"].get<double>());
    CHECK(std::abs(r["curve"].back()["force_N_per_mm"].get<double>()) < 1e-3 * peak);
}

TEST_CASE("bend: a force is kept, in a groove that the strip is pressed into") {
    const json r = parsed(run_overbend(bend + "--die-angle 85 --force-per-mm 100 --json"));
    CHECK(std::abs(r["peak_force_N_per_mm"].get<double>() - 100.0) < 0.1);
}

TEST_CASE("bend: the table says the same as the JSON, with units") {
    const Run run = run_overbend(bend + "--travel 2 --quiet");
    CHECK(run.status == 0);
    CHECK(run.error.empty());
    for (const char* words :
         {"bend angle free", "springback", " deg\n", "travel", "2.000  mm\n", " N/mm\n"}) {
        CAPTURE(words);
        CHECK(run.out.find(words) != std::string::npos);
    }
}

TEST_CASE("bend and moment: the same bytes twice") {
    for (const std::string& options :
         {bend + "--free 60 --json --curve", "moment " + strip + "--curvatures 0.1,0.3,-0.1 --json"}) {
        const Run first = run_overbend(options), second = run_overbend(options);
        CHECK(first.status == 0);
        CHECK(!first.out.empty());
        CHECK(first.out == second.out);
    }
}

TEST_CASE("bend: a stroke that does not reach its stop says so, and how far it came") {
    const auto check_short = [](const std::string& options, const std::string& outcome,
                                const std::string& why) {
        CAPTURE(options);
        const Run run = run_overbend(options);
        CHECK(run.status == 1);
        CHECK(run.error.find("the stop is not reached") != std::string::npos);
        CHECK(run.error.find(why) != std::string::npos);
        const json r = json::parse(run.out);
        CHECK(r["outcome"] == outcome);
        CHECK(r["reason"].get<std::string>().find(why) != std::string::npos);
        CHECK(run_overbend(options + " --quiet").error.empty());
    };
    check_short(bend + "--die-angle 85 --force-per-mm 90000 --json", "travel limit", "the tools close");
    check_short(bend + "--free 179 --json", "jammed", "squeezed between punch and die");
}

TEST_CASE("bend: options that cannot be are refused by name, with what would be right") {
    check_refused(bend, 2, "give exactly one");
    check_refused(bend + "--free 90 --travel 2", 2, "give exactly one");
    check_refused("bend " + strip + "--die-opening 8 --shoulder 1 --free 90", 2, "--nose");
    check_refused(bend + "--free 180", 2,
                  "--free: 180 is out of range; give a number above 0 and below 180 (deg)");
    check_refused(bend + "--free 0", 2, "--free");
    check_refused(bend + "--free nan", 2, "--free");
    check_refused(bend + "--free 1e999", 2, "--free");
    check_refused(bend + "--free ninety", 2, "--free");
    check_refused(bend + "--travel -1", 2, "--travel");
    check_refused(bend + "--travel 30", 2, "--travel");
    check_refused(bend + "--force-per-mm inf", 2, "--force-per-mm");
    check_refused(bend + "--free 90 --friction 0.31", 2,
                  "--friction: 0.31 is out of range; give a number from 0 to 0.3");
    check_refused(bend + "--free 90 --friction -0.1", 2, "--friction");
    check_refused(bend + "--free 90 --layers 4", 2, "--layers");
    check_refused(bend + "--free 90 --layers 42", 2, "--layers");
    check_refused(bend + "--free 90 --layers 7.5", 2, "--layers");
    check_refused(bend + "--free 90 --die-angle 180", 2, "--die-angle");
    check_refused(bend + "--free 90 --punch-angle 0", 2, "--punch-angle");
    check_refused(bend + "--free 90 --flange 3", 2, "--flange");
    check_refused(bend + "--free 90 --nonsense 3", 2, "--nonsense");
    check_refused("bend --material dc01 --thickness 0.04 " + tools + "--free 90", 2, "--thickness");
    check_refused("bend --material dc01 --thickness 20.1 " + tools + "--free 90", 2, "--thickness");
    check_refused("bend --material dc01 --thickness 5 " + tools + "--free 90", 2, "--die-opening");
    check_refused("bend " + strip + "--die-opening 8 --shoulder 5 --nose 1 --free 90", 2, "shoulder radius");
    check_refused("bend --material dc0 --thickness 1 " + tools + "--free 90", 2, "the nearest is dc01");
    check_refused("bend --material ./none.toml --thickness 1 " + tools + "--free 90", 2, "none.toml");
}

TEST_CASE("moment: a point for each curvature, in their order") {
    const json r = parsed(run_overbend("moment " + strip + "--curvatures 0.1,0.2,-0.1 --json"));
    REQUIRE(r["points"].size() == 3);
    const double asked[] = {0.1, 0.2, -0.1};
    for (int i = 0; i < 3; ++i) {
        const json& p = r["points"][i];
        CHECK(p["curvature_per_mm"].get<double>() == asked[i]);
        CHECK(p["moment_N_mm_per_mm"].get<double>() * asked[i] > 0.0);
        CHECK(std::abs(p["free_curvature_per_mm"].get<double>()) < std::abs(asked[i]));
        CHECK(p["inner_log_strain"].get<double>() < 0.0);
        CHECK(p["outer_log_strain"].get<double>() > 0.0);
        CHECK(std::abs(p["thickness_mm"].get<double>() - 1.0) < 0.05);
    }
}

TEST_CASE("moment: a list may begin with a negative curvature, and a table has a line for each") {
    const Run run = run_overbend("moment " + strip + "--curvatures -0.1,0.1 --layers 5");
    CHECK(run.status == 0);
    CHECK(run.out.find(" -0.100000 ") < run.out.find("  0.100000 "));
    CHECK(run.out.find("  0.100000 ") != std::string::npos);
}

TEST_CASE("moment: options that cannot be are refused by name") {
    check_refused("moment " + strip, 2, "--curvatures");
    check_refused("moment " + strip + "--curvatures 0.1,x", 2, "--curvatures");
    check_refused("moment " + strip + "--curvatures 0.1,nan", 2, "--curvatures");
    check_refused("moment " + strip + "--curvatures 0.1,2", 2, "--curvatures");
    check_refused("moment " + strip + "--curvatures 0.1 --layers 2", 2, "--layers");
    check_refused("moment " + strip + "--curvatures 0.1 --layers 65", 2, "--layers");
    check_refused("moment --material dc01 --thickness 0 --curvatures 0.1", 2, "--thickness");
}

TEST_CASE("Help of every command has an example that works as it stands") {
    for (const std::string command : {"bend", "moment"}) {
        CAPTURE(command);
        const Run help = run_overbend(command + " --help");
        CHECK(help.status == 0);
        CHECK(help.error.empty());
        for (const char* option : {"--json", "--quiet", "--material"})
            CHECK(help.out.find(option) != std::string::npos);
        const std::string mark = "Example: overbend ";
        const std::size_t at = help.out.find(mark);
        REQUIRE(at != std::string::npos);
        const std::size_t from = at + mark.size();
        const std::string example = help.out.substr(from, help.out.find('\n', from) - from);
        CHECK(run_overbend(example).status == 0);
    }
}

TEST_CASE("Without a command, or with one that does not exist, the commands are named") {
    check_refused("", 2, "give one of ");
    check_refused("bnd", 2, "there is no command \"bnd\"");
    const Run help = run_overbend("--help");
    CHECK(help.status == 0);
    CHECK(help.out.find("bend") != std::string::npos);
    CHECK(run_overbend("--version").out.rfind("overbend ", 0) == 0);
}

TEST_CASE("An output that cannot be written is no success") {
    CHECK(run_overbend("moment " + strip + "--curvatures 0.1 >/dev/full").status == 3);
}
