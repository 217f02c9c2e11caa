// Every kind of tool that is a punch or a die is for a kind of work that is there, once.

#include <doctest/doctest.h>

#include <algorithm>

#include "scenes/files/case/work.h"

using namespace overbend::files;

TEST_CASE("each kind of tool is for one kind of work, which says how it holds the strip") {
    for (const Kind& tool : all_kinds()) {
        CAPTURE(std::string(tool.word));
        const auto is_its = [&](const WorkKind& w) { return w.work == tool.work; };
        CHECK(std::count_if(work_kinds().begin(), work_kinds().end(), is_its) == 1);
    }
    for (const WorkKind& w : work_kinds()) {
        CAPTURE(std::string(w.stroke));
        CHECK(static_cast<bool>(w.hold));
        CHECK((w.bends > 0) == (w.work != Work::any));
    }
}
