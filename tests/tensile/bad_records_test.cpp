// Files that are no records, each with its sentence: file, line, what is wrong, what would be right.

#include <doctest/doctest.h>

#include "scenes/files/case/case_error.h"
#include "scenes/files/tensile/read_record.h"
#include "tests/tensile/synthetic.h"
#include "tests/tensile/written.h"

using namespace overbend;
using overbend::tests::synthetic_record;
using overbend::tests::written;

namespace {

std::string refusal(const std::string& text, const files::RecordOptions& options = {}) {
    try {
        files::parse_record(text, "test.csv", options);
    } catch (const files::CaseError& error) {
        return error.what();
    }
    return "it was read";
}

std::string record(const std::string& above, const std::string& separator = ",") {
    return written(synthetic_record({}), {above, separator});
}

// A good record with another line in place of this one (from 1).
std::string with_line(const std::string& text, int line, const std::string& other) {
    std::size_t from = 0;
    for (int i = 1; i < line; ++i) from = text.find('\n', from) + 1;
    return text.substr(0, from) + other + text.substr(text.find('\n', from));
}

}  // namespace

TEST_CASE("bad records: no text and no figures") {
    CHECK(refusal("") == "test.csv: the file is empty; give the record of a tensile test");
    CHECK(refusal("\n\n  \n") == "test.csv: the file is empty; give the record of a tensile test");
    CHECK(refusal(std::string("strain,stress\n1,\0", 18)).find("test.csv:2: this is no text") == 0);
    CHECK(refusal("\xff\xfe s") == "test.csv: the text is UTF-16; save it as UTF-8");
    CHECK(refusal("one,two\nthree,four\n").find("test.csv: two columns of figures are not found; give") == 0);
    CHECK(refusal("1\n2\n3\n").find("two columns of figures are not found") != std::string::npos);
}

TEST_CASE("bad records: a file that is not there, or a folder") {
    CHECK_THROWS_WITH_AS(files::read_record("no/such.csv", {}),
                         "no/such.csv: there is no such file; check the path", files::CaseError);
    CHECK_THROWS_WITH_AS(files::read_record("tests", {}),
                         "tests: this is a folder; give the path of a record as text (.csv, .txt)",
                         files::CaseError);
}

TEST_CASE("bad records: a line among the figures") {
    const std::string good = record("strain,stress (MPa)\n");
    CHECK(refusal(with_line(good, 40, "0.01,3x2")) ==
          "test.csv:40: column 2: \"3x2\" is no figure; correct or remove this line");
    CHECK(refusal(with_line(good, 40, "0.01,nan")) ==
          "test.csv:40: column 2: \"nan\" is no figure; correct or remove this line");
    CHECK(refusal(with_line(good, 40, "0.01,2,3")) ==
          "test.csv:40: 3 figures stand here, 2 in the other lines; give as many on every line; see "
          "--separator and "
          "--decimal");
    CHECK(refusal(with_line(good, 40, "0.01")) ==
          "test.csv:40: 1 figure stands here, 2 in the other lines; give as many on every line; see "
          "--separator and --decimal");
    CHECK(refusal(with_line(good, 40, "0.01,")) ==
          "test.csv:40: 1 figure stands here, 2 in the other lines; give as many on every line; see "
          "--separator and --decimal");
    CHECK(refusal(with_line(good, 2, "0,0,1")) ==
          "test.csv:2: 3 figures stand here, 2 in the other lines; give as many on every line; see "
          "--separator and "
          "--decimal");
    CHECK(refusal(with_line(good, 40, "test two")) ==
          "test.csv:40: words stand between the figures; remove the line; give one test a file");
}

TEST_CASE("bad records: columns that cannot be told") {
    CHECK(refusal(record("a,b,c\n") + "").find("it was read") == 0);  // two columns are told by their size
    std::string three = "a,b,c\n";
    for (int i = 0; i < 30; ++i) three += "1,2,3\n";
    CHECK(refusal(three) ==
          "test.csv: no column is known as strain and stress (elongation and force); name the columns in "
          "turn, such as "
          "--columns elongation:mm,force:kN,-");
    CHECK(refusal(record("time (s),stress (MPa)\n"))
              .find("test.csv:1: no column is known as strain or elongation") == 0);
    CHECK(refusal(record("strain (furlong),stress (MPa)\n"))
              .find("test.csv:1: column 1: \"furlong\" is no unit of strain; give one of %") == 0);
    CHECK(refusal(record("strain,stress (bar)\n")).find("column 2: \"bar\" is no unit of stress") !=
          std::string::npos);
}

TEST_CASE("bad records: the option --columns") {
    files::RecordOptions options;
    const std::string good = record("strain,stress (MPa)\n");
    options.columns = {"strain", "stres"};
    CHECK(refusal(good, options).find("test.csv: --columns: \"stres\" is no column; give one of strain,") ==
          0);
    options.columns = {"strain", "stress:bar"};
    CHECK(refusal(good, options).find("\"bar\" is no unit of stress") != std::string::npos);
    options.columns = {"strain", "stress", "force"};
    CHECK(refusal(good, options).find("3 columns are named, 2 are here") != std::string::npos);
    options.columns = {"strain", "elongation"};
    CHECK(refusal(good, options).find("\"elongation\" is the second of its kind") != std::string::npos);
}

TEST_CASE("bad records: a specimen that is not known") {
    CHECK(refusal(record("strain,force (kN)\n")) ==
          "test.csv: the force is given, and the specimen's section is not known; give --width and "
          "--thickness, or --area "
          "(mm, mm2)");
    CHECK(refusal(record("extension (mm),stress (MPa)\n")) ==
          "test.csv: the elongation is given, and the gauge length is not known; give --gauge-length (mm)");
}

TEST_CASE("bad records: bytes that mean nothing are refused, never read as a record") {
    std::uint32_t state = 7;
    const auto next = [&] { return state = state * 1664525u + 1013904223u, state >> 16; };
    const std::string good = record("strain,stress (MPa)\n");
    for (int round = 0; round < 400; ++round) {
        std::string text = good.substr(0, 200 + next() % 3000);
        for (int i = 0; i < 6; ++i) text[next() % text.size()] = static_cast<char>(next() % 256);
        refusal(text);  // any other error would end this check
    }
}
