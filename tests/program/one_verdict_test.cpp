// One verdict: what `check` finds of a case is what every other command prints of it, with the same words,
// figures and exit status. Ten cases, five of them refused for five reasons.

#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

namespace {

using Changes = std::vector<std::pair<std::string, std::string>>;  // what stands there, what is to

std::string changed(const Changes& changes) {
    std::string text = small_case;
    for (const auto& [from, to] : changes) {
        const auto at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
    }
    return text;
}

struct Example {
    const char* what;
    Changes changes;
    const char* reason;  // words of what stops it; empty: it is feasible
};

// The fitted blank of the small case is 47.69 mm long.
const std::vector<Example> examples = {
    {"as it is", {}, ""},
    {"bend lines along the rolling direction", {{"[part]", "rolling = \"crosswise\"\n\n[part]"}}, ""},
    {"a radius for reference",
     {{"inside_radius_mm = 1.4, name = \"heel\"",
       "inside_radius_mm = 5.0, name = \"heel\", radius_tolerance_mm = \"reference\""}},
     ""},
    {"a wide tolerance",
     {{"stop = { free_deg = 60.0 }", "stop = { free_deg = 58.5 }"},
      {"[part]", "[part]\nangle_tolerance_deg = 2.0"}},
     ""},
    {"a hole in its middle",
     {{"[[tool]]", "cutouts = [ { at_mm = 23.5, across_mm = 10.0, hole_mm = 5.0 } ]\n\n[[tool]]"}},
     ""},
    {"a bend line off its place",
     {{"width_mm = 20.0", "width_mm = 20.0\nblank_length_mm = 47.69\nbend_lines_mm = [24.96, 34.73]"}},
     "leg 1 is"},
    {"a radius that no nose makes",
     {{"inside_radius_mm = 1.4, name = \"toe\"", "inside_radius_mm = 20.0, name = \"toe\""}},
     "instead of 20.00"},
    {"a blank too short", {{"width_mm = 20.0", "width_mm = 20.0\nblank_length_mm = 46.69"}}, "leg 3 is"},
    {"a stop too early",
     {{"stop = { free_deg = 60.0 }", "stop = { free_deg = 57.0 }"}},
     "degrees instead of 60.00"},
    {"a press too weak",
     {{"[run]", "[press]\ntitle = \"weak\"\nforce_kN = 0.2\nstroke_mm = 80.0\n\n[run]"}},
     "kN"}};

std::string between_quotes(const std::string& text) {
    return "'" + text + "'";
}

// As a page writes it.
std::string escaped(std::string text) {
    for (const auto& [from, to] : Changes{{"&", "&amp;"}, {"<", "&lt;"}, {"'", "&#39;"}})
        for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
            text.replace(at, from.size(), to);
    return text;
}

void check_says(const std::string& text, const std::string& verdict, const json& findings) {
    CAPTURE(text);
    CHECK(text.find(verdict) != std::string::npos);
    for (const json& f : findings) CHECK(text.find(f.get<std::string>()) != std::string::npos);
}

}  // namespace

TEST_CASE("every command has the verdict of check") {
    for (const Example& e : examples) {
        CAPTURE(e.what);
        const OwnFolder folder;
        const std::string file = between_quotes(folder.write("case.toml", changed(e.changes)).string());
        const Run check = run_overbend("check " + file + " --json");
        const json results = json::parse(check.out, nullptr, false);
        CAPTURE(check.error);
        REQUIRE(results.is_object());
        const bool feasible = std::string(e.reason).empty();
        const json findings = results["findings"];
        CAPTURE(findings.dump(1));
        REQUIRE(results["feasible"] == feasible);
        CHECK(check.status == (feasible ? 0 : 1));
        CHECK(findings.empty() == feasible);
        if (!feasible)
            CHECK(std::any_of(findings.begin(), findings.end(), [&](const json& f) {
                return f.get<std::string>().find(e.reason) != std::string::npos;
            }));
        const std::string count =
            std::to_string(findings.size()) + (findings.size() == 1 ? " problem." : " problems.");
        const std::string verdict = feasible ? "Feasible: no problems found." : "Not feasible: " + count;

        for (const char* command : {"check", "blank"}) {
            CAPTURE(command);
            for (const char* quiet : {"", " --quiet"}) {
                const Run run = run_overbend(std::string(command) + " " + file + quiet);
                CHECK(run.status == check.status);
                check_says(run.out, verdict, findings);
            }
        }
        for (const char* command : {"tools", "cost", "blank"}) {
            CAPTURE(command);
            const Run run = run_overbend(std::string(command) + " " + file + " --json");
            CHECK(run.status == check.status);
            const json object = json::parse(run.out, nullptr, false);
            REQUIRE(object.is_object());
            CHECK(object["verdict"] == verdict);
            CHECK(object["findings"] == findings);
        }
        const std::string out = " --out " + between_quotes(folder / "out");
        for (const std::string& command :
             {"tools " + file, "cost " + file, "drawings " + file + out,
              "film " + file + out + " --formats png --rate 1 --seconds 1 --size 320x180",
              "report " + file + out + " --only page"}) {
            CAPTURE(command);
            const Run run = run_overbend(command);
            CHECK(run.status == check.status);
            if (feasible)
                CHECK(run.out.find("Not feasible") == std::string::npos);
            else
                check_says(run.out, verdict, findings);
        }
        const std::string page = files_below(folder / "out").at("report.html");
        CHECK(page.find(escaped(verdict)) != std::string::npos);
        for (const json& f : findings) CHECK(page.find(escaped(f.get<std::string>())) != std::string::npos);
    }
}

// A plan of each drawing: check accepts what it completes, and refuses what it calls the nearest.
TEST_CASE("check has the verdict of plan") {
    const OwnFolder folder;
    for (const Example& e : {examples[0], examples[6]}) {
        CAPTURE(e.what);
        const std::string file = between_quotes(folder.write("case.toml", changed(e.changes)).string());
        const std::string out = folder / e.what;
        const Run plan = run_overbend("plan " + file + " --json --out " + between_quotes(out));
        const json object = json::parse(plan.out, nullptr, false);
        CAPTURE(plan.error);
        REQUIRE(object.is_object());
        if (!object["found"]) continue;
        const bool met = object["drawing_met"];
        CHECK(plan.status == (met ? 0 : 1));
        const Run check =
            run_overbend("check " + between_quotes(out + (met ? "/case.toml" : "/nearest.toml")) + " --json");
        CHECK(check.status == plan.status);
        const json results = json::parse(check.out, nullptr, false);
        REQUIRE(results.is_object());
        CHECK(results["feasible"] == met);
    }
}
