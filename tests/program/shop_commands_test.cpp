// The commands `tools` and `cost` from outside.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

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
    CHECK(has(table.out, "two.toml is cheaper, below it the other"));
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
