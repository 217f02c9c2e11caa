// The command `list` from outside: what a case can name, with the figures of the files in assets.

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

namespace {

std::set<std::string> names_in(const std::string& folder) {
    std::set<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        names.insert(entry.path().stem().string());
    return names;
}

const json& named(const json& list, const std::string& name) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const json& one) { return one["name"] == name; });
    REQUIRE(found != list.end());
    return *found;
}

}  // namespace

TEST_CASE("list: everything in assets is listed, in the table and in the JSON") {
    const Run table = run_overbend("list"), run = run_overbend("list --json");
    CHECK(table.status == 0);
    REQUIRE(run.status == 0);
    const json all = json::parse(run.out);
    for (const auto& [key, folder] :
         {std::pair("materials", "assets/materials"), std::pair("racks", "assets/tools"),
          std::pair("presses", "assets/presses"), std::pair("steels", "assets/tool-steels")}) {
        CAPTURE(std::string(key));
        std::set<std::string> listed;
        for (const json& one : all[key]) {
            listed.insert(one["name"].get<std::string>());
            CHECK(table.out.find(one["name"].get<std::string>()) != std::string::npos);
            CHECK(table.out.find(one["title"].get<std::string>()) != std::string::npos);
        }
        CHECK(listed == names_in(folder));
    }
}

// The card of DC01 is made for 210 MPa at 0.2 per cent and 340 MPa of strength.
TEST_CASE("list: figures are those of the files") {
    const json materials = json::parse(run_overbend("list materials --json").out);
    CHECK(materials.size() == 2);
    const json& dc01 = named(materials["materials"], "dc01");
    CHECK(dc01["yield_MPa"].get<double>() == doctest::Approx(210.0).epsilon(0.01));
    CHECK(dc01["tensile_strength_MPa"] == 340.0);
    CHECK(dc01["elongation_percent"].get<double>() == doctest::Approx(28.0));

    const json presses = json::parse(run_overbend("list presses --json").out);
    const json& bench = named(presses["presses"], "bench-60");
    CHECK(bench["force_kN"] == 60.0);
    CHECK(bench["daylight_mm"] == 255.0);

    const json steels = json::parse(run_overbend("list steels --json").out);
    const json& steel = named(steels["steels"], "1.2379");
    CHECK(steel["compressive_yield_MPa"] == 2200.0);

    const json racks = json::parse(run_overbend("list racks --json").out);
    const json& die = named(named(racks["racks"], "small-press")["tools"], "two-way die 8");
    CHECK(die["kind"] == "vee-die");
    CHECK(die["sizes"]["opening of face 2"] == 8.0);
    CHECK(die["sizes"]["angle of face 1"] == 84.0);
}

TEST_CASE("list: what is not known is refused with what is") {
    const Run run = run_overbend("list metals");
    CHECK(run.status == 2);
    CHECK(run.error.find("give one of materials, racks, presses, steels, all") != std::string::npos);
}
