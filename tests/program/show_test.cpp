// overbend show where there is no display, and with what cannot be shown.

#include <doctest/doctest.h>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("show: without a display it says so, and what shows the same without one") {
    for (const char* what : {"cases/one-bend-dc01/case.toml", "--bench"}) {
        for (const char* before : {"unset DISPLAY; ", "export DISPLAY=:4099; "}) {
            const Run run = run_overbend(std::string("show ") + what, before);
            CHECK(run.status == 3);
            CHECK(run.out.empty());
            CHECK(has(run.error, "DISPLAY"));
            CHECK(has(run.error, "overbend film"));
            CHECK(has(run.error, "overbend report"));
        }
    }
}

TEST_CASE("show: what cannot be shown is told before the display is asked for") {
    const OwnFolder folder;
    const Run nothing = run_overbend("show", "unset DISPLAY; ");
    CHECK(nothing.status == 2);
    CHECK(has(nothing.error, "--bench"));
    const Run missing = run_overbend("show " + folder / "none.toml", "unset DISPLAY; ");
    CHECK(missing.status == 2);
    CHECK(has(missing.error, "none.toml"));
    const Run broken = run_overbend(
        "show " + folder.write("case.toml", "format = 1\ntitel = \"x\"\n").string(), "unset DISPLAY; ");
    CHECK(broken.status == 2);
    CHECK(has(broken.error, "case.toml:2: titel"));
}
