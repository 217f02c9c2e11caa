// The commands `tools` and `cost` from outside.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

namespace {

std::string quoted(const std::filesystem::path& path) {
    return "'" + path.string() + "'";
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("cost: groups add up, at every batch that is asked for") {
    const OwnFolder folder;
    const std::string file =
        quoted(folder.write("case.toml", small_case + "\n[cost]\nmoney = \"EUR\"\nbatch = 50\n"));
    const Run run = run_overbend("cost " + file + " --batch 1000000,1,50 --json");
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    const json r = json::parse(run.out);
    const json& cost = r["cost"];
    CHECK(cost["money"] == "EUR");
    CHECK(cost["batch"] == 50);
    double part = 0.0, batch = 0.0;
    for (const json& group : cost["groups"]) {
        part += group["per_part"]["value"].get<double>();
        batch += group["per_batch"]["value"].get<double>();
        CHECK_FALSE(group["per_part"]["formula"].get<std::string>().empty());
    }
    CHECK(part == doctest::Approx(cost["per_part"].get<double>()));
    CHECK(batch == doctest::Approx(cost["per_batch"].get<double>()));
    REQUIRE(r["over_batch"].size() == 3);
    CHECK(r["over_batch"][0]["batch"] == 1);
    CHECK(r["over_batch"][0]["per_part"].get<double>() == doctest::Approx(part + batch));
    CHECK(r["over_batch"][1]["per_part"].get<double>() == doctest::Approx(part + batch / 50.0));
    CHECK(r["over_batch"][2]["per_part"].get<double>() == doctest::Approx(part).epsilon(1e-3));
    CHECK(r["against"].is_null());
    // the same figures stand in the job's results
    const json results = json::parse(run_overbend("check " + file + " --json").out);
    CHECK(results["cost"] == cost);
}

// Tools of the one cost nothing and its hour is dear; the other has dear tools and a cheap hour.
TEST_CASE("cost: the batch from which another case is cheaper") {
    const OwnFolder folder;
    const std::string one =
        quoted(folder.write("one.toml", small_case + "\n[cost]\nworker_price_per_h = 60\n"));
    const std::string two = quoted(folder.write("two.toml", small_case + "\n[cost]\nfitting_h = 9\n"));
    const Run run =
        run_overbend("cost " + one + " --against " + two + " --json --out " + quoted(folder.path() / "out"));
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    const json r = json::parse(run.out);
    const json &a = r["cost"], &b = r["against"]["cost"];
    const auto number = [](const json& of, const char* key) { return of[key].get<double>(); };
    const double batch = r["against"]["break_even_batch"].get<double>();
    CHECK(batch > 1.0);
    CHECK(number(a, "per_part") + number(a, "per_batch") / batch ==
          doctest::Approx(number(b, "per_part") + number(b, "per_batch") / batch));
    CHECK(has(r["against"]["cheaper_for_large_batches"].get<std::string>(), "two.toml"));
    for (const char* name : {"cost.json", "cost.svg", "cost.pdf", "cost.png"})
        CHECK(std::filesystem::file_size(folder.path() / "out" / name) > 500);
    const Run table = run_overbend("cost " + one + " --against " + two);
    CHECK(has(table.out, "two.toml is cheaper; below it, the other"));
}

// Three ways to do it differently, each with the batch from which one is cheaper, as the manual tells them.
// Hand calculation of each: (fixed_b - fixed_a) / (variable_a - variable_b), from the figures of both cases.
TEST_CASE("cost: another order, two dies for a two-way one, bought tools for made ones") {
    const OwnFolder folder;
    const std::string demo_file = "cases/cable-hook/case.toml",
                      rail_file = "cases/channel-with-pad/case.toml";
    const std::string demo = bytes_of(demo_file), rail = bytes_of(rail_file),
                      manual = bytes_of("assets/manual/commands.md");
    const auto crossing = [&](const std::string& file, const std::string& text, const char* large) {
        const Run run = run_overbend("cost " + file + " --against " +
                                     quoted(folder.write("other.toml", text)) + " --json");
        CAPTURE(run.error);
        REQUIRE(run.status == 0);
        const json r = json::parse(run.out);
        const json &a = r["cost"], &b = r["against"]["cost"];
        const auto number = [](const json& of, const char* key) { return of[key].get<double>(); };
        const double batch = r["against"]["break_even_batch"].get<double>();
        CHECK(batch == doctest::Approx((number(b, "per_batch") - number(a, "per_batch")) /
                                       (number(a, "per_part") - number(b, "per_part"))));
        // A way that is not feasible is no alternative.
        const json& cheaper = r["against"]["cheaper_for_large_batches"];
        CHECK(cheaper.is_null() == (r["against"]["verdict"] != "Feasible: no problems found."));
        if (!cheaper.is_null()) CHECK(has(cheaper.get<std::string>(), large));
        return std::pair(r, std::floor(batch) + 1.0);
    };
    // To two digits.
    const auto told = [&](double batch) {
        const double digit = std::pow(10.0, std::max(0.0, std::floor(std::log10(batch)) - 1.0));
        const std::string text = std::to_string(std::lround(digit * std::round(batch / digit))) + " parts";
        CAPTURE(text);
        CHECK(has(manual, text));
    };

    // The offset first: one set-up of its gauge less, one turn of the strip more.
    const std::size_t lip = demo.find("[[step]]"), offset = demo.find("[[step]]\nname = \"offset\""),
                      shelf = demo.find("[[step]]\nname = \"shelf\"");
    const auto [order, from_order] = crossing(demo_file,
                                              demo.substr(0, lip) + demo.substr(offset, shelf - offset) +
                                                  demo.substr(lip, offset - lip) + demo.substr(shelf),
                                              "cable-hook");
    CHECK(order["cost"]["per_part"] < order["against"]["cost"]["per_part"]);
    told(from_order);

    // Each groove of the two-way block in a block of its own: one more
    // block to make. The parts' own cost differs by the ram's way alone.
    std::string separate = demo;
    const auto replace = [](std::string& text, const std::string& old, const std::string& by) {
        std::size_t at = text.find(old);
        REQUIRE(at != std::string::npos);
        for (; at != std::string::npos; at = text.find(old, at + by.size())) text.replace(at, old.size(), by);
    };
    replace(separate, ", { angle_deg = 56.0, opening_mm = 9.0 } ]",
            " ]\n\n[[tool]]\nname = \"acute block\"\nsteel = \"1.2842\"\nkind = \"vee-die\"\nfaces = [ { "
            "angle_deg = 56.0, opening_mm = 9.0 } ]");
    replace(separate, "{ tool = \"two-way block\", face = 2 }", "\"acute block\"");
    replace(separate, "{ tool = \"two-way block\", face = 1 }", "\"two-way block\"");
    const auto [dies, from_dies] = crossing(demo_file, separate, "other.toml");
    CHECK(dies["against"]["cost"]["per_batch"].get<double>() >
          dies["cost"]["per_batch"].get<double>() + 50.0);
    CHECK(from_dies > 1e5);
    CHECK(has(manual, "two dies, from about a million parts on"));

    // The rail's channel tools, made for it, against a bought wedge and block and two strokes.
    const std::string two_strokes =
        rail.substr(0, rail.find("[[tool]]")) +
        "[[tool]]\nname = \"bought wedge\"\nkind = \"vee-punch\"\nangle_deg = 80.0\nnose_radius_mm = 1.0\n"
        "price = 90.0\n[[tool]]\nname = \"bought block\"\nkind = \"vee-die\"\nprice = 80.0\n"
        "faces = [ { angle_deg = 84.0, opening_mm = 8.0 } ]\n"
        "[[step]]\nname = \"left\"\nbends = [\"left\"]\npunch = \"bought wedge\"\ndie = \"bought block\"\n"
        "[[step]]\nname = \"right\"\nbends = [\"right\"]\npunch = \"bought wedge\"\n"
        "die = \"bought block\"\nplace = { first = \"right\" }\n" +
        rail.substr(rail.find("[press]"));
    const auto [bought, from_bought] = crossing(rail_file, two_strokes, "channel-with-pad");
    for (const json& group : bought["against"]["cost"]["groups"])
        if (group["group"] == "tools") CHECK(group["per_batch"]["value"].get<double>() == 90.0 + 80.0);
    told(from_bought);
}

TEST_CASE("cost: what cannot be is told") {
    const OwnFolder folder;
    const std::string file = quoted(folder.write("case.toml", small_case));
    const std::string other = quoted(folder.write("other.toml", small_case + "\n[cost]\nmoney = \"EUR\"\n"));
    CHECK(run_overbend("cost " + file + " --batch 0").status == 2);
    CHECK(run_overbend("cost " + file + " --batch 1.5").status == 2);
    CHECK(run_overbend("cost " + file + " --against none.toml").status == 2);
    const Run money = run_overbend("cost " + file + " --against " + other);
    CHECK(money.status == 2);
    CHECK(has(money.error, "units"));
    CHECK(has(money.error, "EUR"));
    CHECK(run_overbend("cost " + quoted(folder.write("bad.toml", unsolvable_case()))).status == 3);
}

TEST_CASE("tools: every tool that is used, with its block and its worst section") {
    const OwnFolder folder;
    const std::string file = quoted(folder.write("case.toml", small_case));
    const Run run = run_overbend("tools " + file + " --json --out " + quoted(folder.path() / "out"));
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    const json r = json::parse(run.out);
    CHECK(r["tools"].size() >= 2);
    for (const json& tool : r["tools"]) {
        CHECK(tool["mass_kg"].get<double>() < tool["block_kg"].get<double>());
        CHECK(tool["peak_kN_per_m"].get<double>() > 0.0);
        CHECK_FALSE(tool["steps"].empty());
    }
    CHECK(std::filesystem::exists(folder.path() / "out" / "tools.json"));
    CHECK(has(run_overbend("tools " + file).out, "no steel"));
}
