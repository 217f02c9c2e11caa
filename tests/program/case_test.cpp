// The command `case` from outside: the reference of keys, and a case to start from.

#include <doctest/doctest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

TEST_CASE("case --keys: every key has words, values and, unless it is a table of its own, an example") {
    const json r = json::parse(run_overbend("case --keys --json").out);
    std::set<std::string> seen;
    for (const json& table : r["tables"])
        for (const json& key : table["keys"]) {
            CAPTURE(key.dump());
            seen.insert(key["key"]);
            CHECK(key["words"].get<std::string>().size() > 3);
            CHECK(key["values"] != "");
            CHECK((key["example"] != "" || key["values"] == "a table"));
            CHECK(key["required"] == (key["left_out"] == ""));
        }
    for (const char* key : {"thickness_mm", "path.bend_deg", "nose_radius_mm", "spring.wire_mm",
                            "stop.free_deg", "hardening.K_MPa", "gauge.reach_mm", "inspected_percent"})
        CHECK_MESSAGE(seen.count(key) == 1, key);
    const Run text = run_overbend("case --keys");
    CHECK(text.status == 0);
    for (const std::string& key : seen) CHECK_MESSAGE(text.out.find("    " + key) != std::string::npos, key);
}

TEST_CASE("case --keys: the manual has what the program prints") {
    std::stringstream manual;
    manual << std::ifstream("assets/manual/keys.md").rdbuf();
    CHECK(run_overbend("case --keys --markdown").out == manual.str());
}

TEST_CASE("case --new: what is printed runs, and keeps what it promises") {
    const OwnFolder folder;
    const Run fresh = run_overbend("case --new");
    CHECK(fresh.status == 0);
    const Run checked = run_overbend("check '" + folder.write("case.toml", fresh.out).string() + "'");
    CAPTURE(checked.out);
    CHECK(checked.status == 0);
}

TEST_CASE("case: one thing at a time") {
    CHECK(run_overbend("case").status == 2);
    CHECK(run_overbend("case --keys --new").status == 2);
    CHECK(run_overbend("case --new --json").status == 2);
}
