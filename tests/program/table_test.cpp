// overbend table: from options or a case's tools to a table, and what it refuses.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string strip = "table --material dc01 --thickness 1 ",
                  tools = "--die-opening 8 --shoulder 1 --nose 1 ";

void check_refused(const std::string& options, const std::string& said) {
    CAPTURE(options);
    const Run run = run_overbend(options);
    CAPTURE(run.error);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(run.error.find('\n') == run.error.size() - 1);
    CHECK(run.error.find(said) != std::string::npos);
}

}  // namespace

TEST_CASE("table: openings and angles, files, and the same figures as bend") {
    const OwnFolder folder;
    const Run run = run_overbend(strip + "--die-opening 8,12 --shoulder 1 --nose 1 --angles 60,90 --out '" +
                                 folder.path().string() + "' --json --quiet");
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    CHECK(run.error.empty());
    for (const char* name : {"table.csv", "table.pdf", "table.svg"}) CHECK(fs::exists(folder.path() / name));
    const json r = json::parse(run.out);
    REQUIRE(r["rows"].size() == 4);
    CHECK(r["rows"][3]["die_opening_mm"] == 12.0);
    CHECK(r["rows"][3]["inside_radius_mm"] > r["rows"][1]["inside_radius_mm"]);
    const json b = json::parse(
        run_overbend("bend --material dc01 --thickness 1 " + tools + "--free 90 --layers 11 --json").out);
    CHECK(std::abs(b["springback_deg"].get<double>() - r["rows"][1]["springback_deg"].get<double>()) < 0.05);
}

TEST_CASE("table: tools and strip of a case") {
    const Run run = run_overbend("table --tools cases/one-bend-dc01/case.toml --angles 90");
    CHECK(run.status == 0);
    CHECK(run.out.find("punch in die (opening 12 mm") != std::string::npos);
    CHECK(run.out.find("How to use it:") != std::string::npos);
}

TEST_CASE("table: a bend that is not made is said, with status 1") {
    const Run run = run_overbend(strip + tools + "--angles 170");
    CHECK(run.status == 1);
    CHECK(run.out.find("170.0 deg is not made: ") != std::string::npos);
}

TEST_CASE("table: what is refused") {
    check_refused("table --thickness 1 " + tools, "--material: it is missing; give it, or --tools CASE");
    check_refused("table --material dc01 " + tools, "--thickness: it is missing");
    check_refused(strip, "--die-opening: it is missing");
    check_refused(strip + "--die-opening 8 --nose 1", "--shoulder: it is missing");
    check_refused(strip + "--die-opening 8 --shoulder 1", "--nose: it is missing");
    check_refused(strip + tools + "--bottom 1", "an open die has no bottom");
    check_refused(strip + tools + "--angles 0", "--angles");
    check_refused(strip + tools + "--angles 90,x", "--angles");
    check_refused(strip + "--die-opening 1 --shoulder 1 --nose 1", "does not suit the thickness");
    check_refused(strip + "--die-opening 8 --shoulder 5 --nose 1", "shoulder radius");
    check_refused(strip + tools + "--tools cases/one-bend-dc01/case.toml",
                  "give either the case or the sizes");
    check_refused("table --tools no/such.toml", "no/such.toml: there is no such file");
}
