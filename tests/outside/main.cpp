// Runs the checks against the outside and prints their table.
//
//   test_outside                   all checks; the last ones compare the manual with the table
//   test_outside --write-accuracy  writes assets/manual/accuracy.md instead of comparing
//   test_outside --run-vee-deck    works the slow deck out with finite elements, and writes its file
//   test_outside --run-stroke-decks [NAME]      the same of whole strokes, of all or of one
//   test_outside --show-stroke-deck NAME ROWS [TABLE]   prints such a deck, for a run by hand; or the figures
//                                               that come of the table that the solver wrote
//
// From the source folder; what doctest knows besides goes too.

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <cstdio>
#include <cstring>
#include <exception>
#include <string>

#include "tests/outside/closing.h"
#include "tests/outside/stroke_deck_file.h"
#include "tests/outside/stroke_decks.h"
#include "tests/outside/table.h"
#include "tests/outside/vee_deck_file.h"

namespace {

// Prints the table before doctest's own closing lines.
struct TablePrinter : doctest::IReporter {
    explicit TablePrinter(const doctest::ContextOptions&) {}
    void report_query(const doctest::QueryData&) override {}
    void test_run_start() override {}
    void test_run_end(const doctest::TestRunStats&) override {
        std::fputs(overbend::tests::table_text().c_str(), stdout);
        std::fflush(stdout);
    }
    void test_case_start(const doctest::TestCaseData&) override {}
    void test_case_reenter(const doctest::TestCaseData&) override {}
    void test_case_end(const doctest::CurrentTestCaseStats&) override {}
    void test_case_exception(const doctest::TestCaseException&) override {}
    void subcase_start(const doctest::SubcaseSignature&) override {}
    void subcase_end() override {}
    void log_assert(const doctest::AssertData&) override {}
    void log_message(const doctest::MessageData&) override {}
    void test_case_skipped(const doctest::TestCaseData&) override {}
};
REGISTER_LISTENER("table", 1, TablePrinter);

int run_slow_decks(int count, char** words) {
    try {
        const std::string word = words[1], name = count > 2 ? words[2] : "";
        if (word == "--run-vee-deck")
            overbend::tests::run_and_store_vee_deck();
        else if (word == "--run-stroke-decks")
            overbend::tests::run_and_store_stroke_decks(name);
        else if (count == 4)
            std::fputs(overbend::tests::stroke_deck(name, {std::stoi(words[3])}).c_str(), stdout);
        else
            overbend::tests::print_stroke_figures(name, std::stoi(words[3]), words[4]);
        return 0;
    } catch (const std::exception& e) {
        std::fprintf(stderr, "test_outside: %s\n", e.what());
        return 1;
    }
}

}  // namespace

int main(int count, char** words) {
    const std::string first = count > 1 ? words[1] : "";
    if (first == "--run-vee-deck" || first == "--run-stroke-decks" ||
        (first == "--show-stroke-deck" && (count == 4 || count == 5)))
        return run_slow_decks(count, words);
    bool whole = true;
    for (int i = 1; i < count; ++i) {
        if (std::strcmp(words[i], "--write-accuracy") == 0)
            overbend::tests::write_page = true;
        else
            whole = false;
    }
    doctest::Context context;
    context.applyCommandLine(count, words);
    // The closing checks look at all rows: they come last, and only when none was left out.
    context.setOption("order-by", "suite");
    if (!whole) context.addFilter("test-suite-exclude", overbend::tests::closing_suite);
    return context.run();
}
