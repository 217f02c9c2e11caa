// Parts of a study on disk: put together they are the whole, byte by byte; what was cut off is run again,
// what does not belong there is refused.

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>

#include "render/output/row_file.h"
#include "scenes/documents/study/study_parts.h"
#include "scenes/documents/study/study_tables.h"
#include "scenes/files/case/case_error.h"
#include "scenes/files/reading/whole_text.h"
#include "tests/files/own_folder.h"
#include "tests/study/small_study.h"

using namespace overbend;
using documents::Shard;
namespace fs = std::filesystem;

namespace {

const tests::SmallStudy& made() {
    static const tests::SmallStudy all = tests::run_small_study(tests::vee_case_of_study(), 2);
    return all;
}

std::string head(const std::string& mark = "0123456789abcdef") {
    return documents::shard_head(mark, documents::study_csv_head(made().plan, made().sizes));
}

std::string text_of(const fs::path& file) {
    return files::whole_text(file, 1u << 24);
}

// As a run of that part leaves it, in an order of its own.
void write_part(const fs::path& folder, const Shard& shard) {
    const tests::SmallStudy& m = made();
    output::RowFile file(documents::shard_file(folder, shard), head());
    for (std::size_t i = m.rows.size(); i-- > 0;)
        if (static_cast<int>(i) % shard.of == shard.part - 1)
            file.add(documents::study_csv_row(m.plan, m.rows[i], m.sizes));
}

std::vector<job::StudyRow> read(const fs::path& folder) {
    return documents::read_parts(folder, "0123456789abcdef", made().plan, made().sizes);
}

std::string merged(const fs::path& folder) {
    documents::write_rows(folder / "results.csv", made().plan, made().sizes, read(folder));
    return text_of(folder / "results.csv");
}

std::string wrong_of(const fs::path& folder) {
    try {
        read(folder);
    } catch (const files::CaseError& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("study parts: a row that is written and read is the same") {
    const tests::SmallStudy& m = made();
    for (job::StudyRow row : m.rows) {
        row.why = row.number % 2 == 0 ? "angle of 'a \"b\", c'" : "";
        const std::string text = documents::study_csv_row(m.plan, row, m.sizes);
        const auto again = documents::read_study_row(text.substr(0, text.size() - 1), m.plan, m.sizes);
        REQUIRE(again);
        CHECK(documents::study_csv_row(m.plan, *again, m.sizes) == text);
        CHECK(again->why == row.why);
    }
}

TEST_CASE("study parts: shards are the whole, byte by byte, whatever their number") {
    const tests::OwnFolder one, three, mixed;
    write_part(one.path(), {1, 1});
    const std::string whole = merged(one.path());
    for (int k = 1; k <= 3; ++k) write_part(three.path(), {k, 3});
    CHECK(merged(three.path()) == whole);
    // of two studies in parts, what overlaps counts once
    for (const Shard& shard : {Shard{1, 2}, Shard{2, 2}, Shard{2, 5}}) write_part(mixed.path(), shard);
    CHECK(merged(mixed.path()) == whole);
    CHECK(std::count(whole.begin(), whole.end(), '\n') ==
          static_cast<std::ptrdiff_t>(made().rows.size() + 1));
}

TEST_CASE("study parts: what is missing is known") {
    const tests::OwnFolder folder;
    write_part(folder.path(), {2, 7}), write_part(folder.path(), {5, 7});
    CHECK(documents::missing_parts(made().plan, read(folder.path()), 7) == "1,3-4,6-7");
    CHECK(documents::missing_rows(made().plan, read(folder.path()), {2, 7}).empty());
    CHECK(documents::missing_rows(made().plan, read(folder.path()), {1, 7}) ==
          std::vector<std::uint64_t>{0, 7});
}

TEST_CASE("study parts: a row that was cut off is run again, the ones before it stay") {
    const tests::OwnFolder folder;
    write_part(folder.path(), {1, 1});
    const fs::path file = documents::shard_file(folder.path(), {1, 1});
    const std::string whole = text_of(file), results = merged(folder.path());
    for (const std::size_t less : {1u, 20u, 400u}) {
        CAPTURE(less);
        std::ofstream(file, std::ios::binary) << whole.substr(0, whole.size() - less);
        const std::vector<job::StudyRow> rows = read(folder.path());
        CHECK(rows.size() < made().rows.size());
        const std::vector<std::uint64_t> missing = documents::missing_rows(made().plan, rows, {1, 1});
        REQUIRE(!missing.empty());
        {
            output::RowFile again(file, head());
            for (const std::uint64_t k : missing)
                again.add(documents::study_csv_row(made().plan, made().rows[k], made().sizes));
        }
        CHECK(merged(folder.path()) == results);
    }
    // cut off within its first lines it begins again
    std::ofstream(file, std::ios::binary) << whole.substr(0, 10);
    output::RowFile again(file, head());
    CHECK(text_of(file) == head());
}

TEST_CASE("study parts: a second run of one part waits for nobody") {
    const tests::OwnFolder folder;
    const fs::path file = documents::shard_file(folder.path(), {1, 2});
    const output::RowFile first(file, head());
    CHECK_THROWS_WITH(output::RowFile(file, head()), doctest::Contains("another run is writing it"));
}

TEST_CASE("study parts: what does not belong there is refused by file and line") {
    const tests::OwnFolder folder;
    write_part(folder.path(), {1, 2});
    const fs::path file = documents::shard_file(folder.path(), {1, 2});
    const std::string whole = text_of(file);
    CHECK_THROWS_WITH(output::RowFile(file, head("another mark.... ")), doctest::Contains("another case"));
    CHECK(text_of(file) == whole);

    std::ofstream(file, std::ios::binary) << head("ffffffffffffffff") << whole.substr(head().size());
    CHECK(wrong_of(folder.path()).find("rows-1-of-2.csv:1:") != std::string::npos);
    std::ofstream(file, std::ios::binary) << whole << "12,A,what\n";
    CHECK(wrong_of(folder.path()).find("this is no row") != std::string::npos);
    std::ofstream(file, std::ios::binary) << head() << "\n";
    CHECK(wrong_of(folder.path()).find("rows-1-of-2.csv:3:") != std::string::npos);
    job::StudyRow other = made().rows[0];
    other.values[0] += 0.01;
    std::ofstream(file, std::ios::binary) << whole;
    std::ofstream(documents::shard_file(folder.path(), {1, 3}), std::ios::binary)
        << head() << documents::study_csv_row(made().plan, other, made().sizes);
    CHECK(wrong_of(folder.path()).find("row 0 differently") != std::string::npos);
}

TEST_CASE("study parts: case, study and stops make the mark") {
    const tests::SmallStudy& m = made();
    const std::string mark = documents::study_mark(m.plan, m.held, "case");
    CHECK(mark.size() == 16);
    CHECK(documents::study_mark(m.plan, m.held, "case ") != mark);
    job::HeldStops other = m.held;
    *other.ram_stop[0] += 1e-6;
    CHECK(documents::study_mark(m.plan, other, "case") != mark);
}

TEST_CASE("study tables: the figures of the rows") {
    const tests::SmallStudy& m = made();
    const documents::StudyReport report = documents::study_report(m.plan, m.held, m.sizes, m.rows);
    CHECK(documents::good_words(report).find("of 4 samples") != std::string::npos);
    const documents::Table scatter = documents::scatter_table(report);
    CHECK(scatter.rows.size() == m.sizes.size());
    CHECK(documents::inputs_table(report).rows.size() == 5);
    CHECK(documents::worth_table(report).rows.size() == 5);
    for (const documents::Table& table : documents::study_tables(report))
        for (const auto& row : table.rows) CHECK(row.size() == table.columns.size());
}
