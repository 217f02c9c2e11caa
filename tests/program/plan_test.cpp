// The command `plan` from outside: a completed case that `check` accepts, the table, the verdicts, bad input.

#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

namespace {

const std::string drawing = R"(format = 1
title = "Two flanges"

[strip]
material = "dc01"
thickness_mm = 1.0
width_mm = 20.0

[part]
path = [
  { flat_mm = FIRST },
  { bend_deg = 90.0, inside_radius_mm = 1.2, name = "left" },
  { flat_mm = 40.0 },
  { bend_deg = -60.0, inside_radius_mm = 1.2, name = "right" },
  { flat_mm = 25.0 },
]
)";

std::string drawing_in(const OwnFolder& folder, const std::string& first_flat) {
    std::string text = drawing;
    text.replace(text.find("FIRST"), 5, first_flat);
    return "'" + folder.write("drawing.toml", text).string() + "'";
}

}  // namespace

TEST_CASE("plan: a drawing without tools and steps becomes a case that check accepts as it is") {
    const OwnFolder folder;
    const Run run = run_overbend("plan " + drawing_in(folder, "20.0") + " --out '" + folder / "out" + "'");
    CAPTURE(run.out);
    CAPTURE(run.error);
    CHECK(run.status <= 1);  // the drawing met to the last, or not
    CHECK(run.out.find("Proposed tools:") != std::string::npos);
    CHECK(run.out.find("rank") != std::string::npos);
    const std::string planned = folder / "out" + "/case.toml";
    REQUIRE(std::filesystem::exists(planned));
    CHECK(std::filesystem::exists(folder / "out" + "/results.json"));
    const Run check = run_overbend("check '" + planned + "'");
    CAPTURE(check.out);
    CHECK(check.status == 0);
}

TEST_CASE("plan: --json has the orders and what was turned down") {
    const OwnFolder folder;
    const Run run =
        run_overbend("plan cases/wrong-order/case.toml --rack-only --json --out '" + folder / "out" + "'");
    CHECK(run.status == 0);
    const json plan = json::parse(run.out);
    CHECK(plan["found"] == true);
    CHECK(plan["drawing_met"] == true);
    REQUIRE_FALSE(plan["orders"].empty());
    CHECK(plan["orders"][0]["seconds"] <= plan["orders"].back()["seconds"]);
    CHECK(plan["orders"][0]["steps"].size() == 3);
    CHECK_FALSE(plan["rejected"].empty());
    REQUIRE(plan["measures"].size() == 3 + 4 + 3 + 1);
    for (const json& size : plan["measures"]) CHECK(size["within"] == true);
}

TEST_CASE("plan: a part that cannot be made is a verdict of no with its reason, and no case") {
    const OwnFolder folder;
    const Run run = run_overbend("plan " + drawing_in(folder, "0.3") + " --out '" + folder / "out" + "'");
    CHECK(run.status == 1);
    CHECK(run.out.find("No plan found for this part") != std::string::npos);
    CHECK(run.out.find("too short") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(folder / "out" + "/case.toml"));
}

TEST_CASE("plan: what it cannot take is bad input") {
    const OwnFolder folder;
    CHECK(run_overbend("plan nowhere.toml").status == 2);
    CHECK(run_overbend("plan cases/flat-hem/case.toml --out '" + folder / "out" + "'").status == 2);
    CHECK(run_overbend("plan cases/wrong-order/case.toml --orders 0").status == 2);
    CHECK(run_overbend("plan cases/wrong-order/case.toml --out /proc/none").status == 2);
    // a drawing alone is not for check, which says who makes its steps
    const Run check = run_overbend("check " + drawing_in(folder, "20.0"));
    CHECK(check.status == 2);
    CHECK(check.error.find("overbend plan") != std::string::npos);
}
