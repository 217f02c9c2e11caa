// What only the whole table shows: that nothing was left out, and that the manual says what it says.

#include "tests/outside/closing.h"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <optional>
#include <set>

#include "render/output/whole_file.h"
#include "scenes/files/case/work.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/rounding.h"
#include "tests/outside/accuracy_page.h"
#include "tests/outside/handbook.h"
#include "tests/outside/table.h"

using namespace overbend::tests;

namespace {

// The kind of stroke whose springback a row compares with finite elements'.
std::optional<overbend::files::Work> compared_work(const About& about) {
    using overbend::files::Work;
    const auto begins = [](const std::string& text, const char* with) { return text.rfind(with, 0) == 0; };
    if (about.quantity != "springback") return {};
    if (begins(about.group, "V bend") || about.group == "shape of a V bend") return Work::vee;
    if (about.group == "shape of a wiped bend") return Work::wiping;
    if (about.group == "shape of a channel") return Work::channel;
    if (about.group != "strokes, decks of ours") return {};
    if (about.name == "offset") return Work::offset;
    return about.name == "hem" ? Work::hem : Work::vee;
}

}  // namespace

TEST_SUITE("the whole table") {
    TEST_CASE("every row of the handbooks ends in the table") {
        // A row may look at several cases of one: "ID CASE".
        std::set<std::string> names;
        for (const Row& row : all_rows()) {
            names.insert(row.about.name);
            names.insert(row.about.name.substr(0, row.about.name.find(' ')));
        }
        for (const HandbookRow& row : handbook()) {
            CAPTURE(row.id);
            CHECK(names.count(row.id) == 1);
        }
    }

    TEST_CASE("no row stands twice, and every known miss is a row") {
        std::set<std::string> names;
        for (const Row& row : all_rows()) {
            const std::string name = row.about.name + " " + row.about.quantity;
            CAPTURE(name);
            CHECK(names.insert(name).second);
        }
        for (const KnownMiss& miss : known_misses())
            for (const std::string& row : miss.rows) {
                CAPTURE(row);
                CHECK(names.count(row) == 1);
            }
    }

    TEST_CASE("kinds of work are said to agree as nearly as their rows do") {
        std::map<overbend::files::Work, double> worst;  // deg
        for (const Row& row : all_rows())
            if (const auto work = compared_work(row.about))
                worst[*work] = std::max(worst[*work], std::abs(*row.ours - *row.reference));
        for (const overbend::files::WorkKind& kind : overbend::files::work_kinds()) {
            CAPTURE(kind.stroke);
            CAPTURE(worst[kind.work]);
            CHECK((kind.agreed > 0.0) == (worst.count(kind.work) == 1 && worst[kind.work] > 0.0));
            CHECK(worst[kind.work] <= kind.agreed / overbend::degree);
        }
    }

    TEST_CASE("the manual says what the table says; test_outside --write-accuracy writes it") {
        const std::string page = bytes_of(accuracy_page), part = accuracy_part(all_rows());
        if (write_page)
            overbend::output::write_whole(accuracy_page, with_marked_part(page, part));
        else
            CHECK(same_but_for_rounding(marked_part(page), part));
    }

    TEST_CASE("the README counts the rows as the table does") {
        const std::string part = accuracy_part(all_rows());
        const std::string counts = part.substr(0, part.find('\n'));
        CAPTURE(counts);
        CHECK(bytes_of("README.md").find(counts) != std::string::npos);
    }

    TEST_CASE("rounding is forgiven on the page, and nothing else is") {
        CHECK(same_but_for_rounding("| 25 | 0.31 % |", "| 25 | 0.30 % |"));
        CHECK(same_but_for_rounding("9.4e-05 per mm", "9.3e-05 per mm"));
        CHECK_FALSE(same_but_for_rounding("| 25 | 0.31 % |", "| 25 | 0.41 % |"));
        CHECK_FALSE(same_but_for_rounding("| 25 | 0.31 % |", "| 24 | 0.31 % |"));
        CHECK_FALSE(same_but_for_rounding("moment 0.31 %", "force 0.31 %"));
    }
}  // TEST_SUITE
