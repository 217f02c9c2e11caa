// The command `drawings` from outside: its files, whole and the same each time, and what is refused.

#include <doctest/doctest.h>

#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("drawings: tools, blank and part as SVG, PDF and DXF, the same bytes each time") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    const Run run =
        run_overbend("drawings " + file + " --dxf --png --tolerances --out '" + (folder / "a") + "'");
    CAPTURE(run.error);
    CHECK(run.status == 0);
    CHECK(has(run.out, "part "));
    const Files files = files_below(folder.path() / "a");
    for (const char* name : {"blank", "part"}) {
        for (const char* ending : {".svg", ".pdf", ".dxf", ".png"}) {
            CAPTURE(std::string(name) + ending);
            CHECK(files.count(std::string(name) + ending) == 1);
        }
    }
    int tools = 0;
    for (const auto& [name, bytes] : files) tools += has(name, "tool-") && has(name, ".dxf") ? 1 : 0;
    CHECK(tools >= 2);
    CHECK(has(files.at("part.svg"), "mm\" viewBox=\"0 0 "));
    CHECK(has(files.at("part.dxf"), "$INSUNITS\n 70\n4\n"));
    CHECK(files.at("drawings.pdf").substr(0, 5) == "%PDF-");
    run_overbend("drawings " + file + " --dxf --png --tolerances --out '" + (folder / "b") + "'");
    CHECK(files_below(folder.path() / "b") == files);
}

TEST_CASE("drawings: without DXF and PNG when they are not asked for; a folder that cannot be is refused") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    const Run run = run_overbend("drawings " + file + " --quiet --out '" + (folder / "a") + "'");
    CHECK(run.status == 0);
    CHECK(run.out.empty());
    for (const auto& [name, bytes] : files_below(folder.path() / "a"))
        CHECK((has(name, ".svg") || has(name, ".pdf")));
    const Run refused = run_overbend("drawings " + file + " --out '" + (folder / "case.toml") + "/x'");
    CHECK(refused.status == 2);
    CHECK(has(refused.error, "--out"));
}
