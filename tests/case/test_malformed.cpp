// Files that are not a case: missing, not TOML, damaged at random. The result is a Case or a CaseError.

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <random>

#include "scenes/files/case/read_case.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend::files;
using namespace overbend::tests;
using namespace std::string_literals;

namespace {

CaseError mistake_of(const std::filesystem::path& file) {
    try {
        read_case(file);
    } catch (const CaseError& error) {
        return error;
    }
    FAIL("taken: " << file);
    return CaseError("", 0, 0, "", "", "");
}

// Reads the text; returns whether it was taken. Any other exception, or a crash, fails the test.
bool taken(const OwnFolder& folder, const std::string& text) {
    const auto file = folder.write("case.toml", text);
    try {
        read_case(file);
        return true;
    } catch (const CaseError& error) {
        CHECK(error.line > 0);
        CHECK(std::string(error.what()).find('\n') == std::string::npos);
        return false;
    }
}

using Random = std::mt19937;

std::size_t below(Random& random, std::size_t limit) {
    return random() % limit;
}

// Bytes changed, put in, left out.
std::string with_spoilt_bytes(std::string text, Random& random) {
    const std::string likely = "0123456789.-+eE_[]{}\"'=,#\n\t\\ \x00\x7f\xc3\xff"s;  // with the NUL
    for (std::size_t slips = 1 + below(random, 4); slips > 0; --slips) {
        const std::size_t at = below(random, text.size());
        const char byte = likely[below(random, likely.size())];
        switch (below(random, 3)) {
            case 0:
                text[at] = byte;
                break;
            case 1:
                text.insert(at, 1, byte);
                break;
            default:
                text.erase(at, 1 + below(random, 3));
        }
    }
    return text;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find('\n', at);
        lines.push_back(text.substr(at, end - at + 1));
        at = end + 1;
    }
    return lines;
}

// Lines left out, doubled, swapped, and values put where others belong.
std::string with_spoilt_lines(const std::string& text, Random& random) {
    std::vector<std::string> lines = lines_of(text);
    for (std::size_t slips = 1 + below(random, 3); slips > 0; --slips) {
        const std::size_t one = below(random, lines.size()), other = below(random, lines.size());
        switch (below(random, 4)) {
            case 0:
                lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(one));
                break;
            case 1:
                lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(one), lines[other]);
                break;
            case 2:
                std::swap(lines[one], lines[other]);
                break;
            default: {
                const std::size_t equals = lines[one].find('='), from = lines[other].find('=');
                if (equals == std::string::npos || from == std::string::npos) break;
                lines[one] = lines[one].substr(0, equals) + lines[other].substr(from);
            }
        }
    }
    std::string spoilt;
    for (const std::string& line : lines) spoilt += line;
    return spoilt;
}

// A number stretched to an extreme.
std::string with_spoilt_number(std::string text, Random& random) {
    const std::vector<std::string> extremes = {"0",         "-0.0", "1e-300", "1e300",
                                               "nan",       "-inf", "1e-9",   "179.99999999999999",
                                               "89.999999", "1e9",  "-1",     "9223372036854775807",
                                               "2000",      "5000", "0.05",   "20"};
    std::vector<std::size_t> starts;
    for (std::size_t at = text.find("= "); at != std::string::npos; at = text.find("= ", at + 1)) {
        if (std::isdigit(static_cast<unsigned char>(text[at + 2]))) starts.push_back(at + 2);
    }
    for (std::size_t slips = 1 + below(random, 3); slips > 0; --slips) {
        const std::size_t start = starts[below(random, starts.size())];
        const std::size_t end = text.find('\n', start);
        // from the back, so that the other starts stay where they are
        std::string value = extremes[below(random, extremes.size())];
        value.resize(std::max(value.size(), end - start), ' ');
        if (value.size() == end - start) text.replace(start, end - start, value);
        if (value.size() != end - start) return text.replace(start, end - start, value);
    }
    return text;
}

}  // namespace

TEST_CASE("a file that cannot be read at all") {
    const OwnFolder folder;
    CHECK(mistake_of(folder.path() / "nowhere.toml").line == 0);
    CHECK(mistake_of(folder.path()).line == 0);
    CHECK(mistake_of("").line == 0);
    const auto closed = folder.write("closed.toml", whole_case);
    chmod(closed.c_str(), 0);
    if (geteuid() != 0) CHECK(mistake_of(closed).line == 0);  // root reads it all the same
    const auto huge = folder.write("huge.toml", std::string(5u << 20, '#'));
    const CaseError error = mistake_of(huge);
    CHECK(error.line == 0);
    CHECK(error.wrong.find("4 MB") != std::string::npos);
}

TEST_CASE("a file that is not TOML") {
    const OwnFolder folder;
    for (const char* text : {"a =", "[strip", "x", "format = 1\nformat = 1\n", "a = \"\xff\"", "= 3",
                             "a = 1e", "[a]\n[a]\n", "a = [1, 2", "a = {b = 1"}) {
        CAPTURE(text);
        const CaseError error = mistake_of(folder.write("case.toml", text));
        CHECK(error.line >= 1);
        CHECK(error.key.empty());
        CHECK(error.wrong.rfind("not valid TOML: ", 0) == 0);
    }
    const CaseError second = mistake_of(folder.write("case.toml", "format = 1\nformat = 2\n"));
    CHECK(second.line == 2);
    CHECK(mistake_of(folder.write("case.toml", std::string(2000, '['))).line == 1);
    CHECK(mistake_of(folder.write("case.toml", "a = " + std::string(100000, '['))).line == 1);
    CHECK(mistake_of(folder.write("case.toml", std::string(100000, 'k') + " = 1")).line == 1);
}

TEST_CASE("keys of too many parts and brackets too deep are refused before they are parsed") {
    const OwnFolder folder;
    std::string parts = "a";
    for (int i = 1; i < 40000; ++i) parts += ".a";
    for (const std::string& deep :
         {"[" + parts + "]\nx = 1", "[[" + parts + "]]", parts + " = 1", "x = { " + parts + " = 1 }",
          "a . a . a . a . a . a . a . a . a = 1"s, R"(a.'b.'."\".".d.e.f.g.h.i = 1)"s,
          "x = " + std::string(100000, '['), "x = [\n[\n[[[[[[[1]]]]]]]\n]\n]"s}) {
        CAPTURE(deep.substr(0, 50));
        const CaseError error =
            mistake_of(folder.write("case.toml", "# .........\ntitle = \"[[[[[[[[[[\"\n" + deep));
        CHECK(error.line >= 3);
        CHECK(error.column > 0);
        const bool of_parts = error.wrong == "this key has more than 8 parts";
        CHECK((of_parts || error.wrong == "brackets stand more than 8 deep"));
    }
    // Dots and brackets that are quoted, in comments or in numbers are none.
    for (const std::string& flat :
         {"x = '''\n.........[[[[[[[[[\n'''"s, "x = \"\"\"\n.........\\\"\"\"[[[[[[[[[\n\"\"\""s,
          "x = [1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0] # ........."s, "'.........[[[[[[[[[' = 1"s,
          "x = \"[[[[[[[[[\ny = \"........."s}) {
        CAPTURE(flat);
        const CaseError error = mistake_of(folder.write("case.toml", flat));
        CHECK(error.wrong.find(" deep") == std::string::npos);
        CHECK(error.wrong.find(" parts") == std::string::npos);
    }
    CHECK(mistake_of(folder.write("case.toml", "a.b.c.d.e.f.g.h = 1")).key == "a");
}

TEST_CASE("a pipe or a device is refused at once") {
    const OwnFolder folder;
    const std::filesystem::path pipe = folder.path() / "pipe.toml";
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    for (const std::filesystem::path& file : {pipe, std::filesystem::path("/dev/zero")}) {
        CAPTURE(file);
        const CaseError error = mistake_of(file);
        CHECK(error.line == 0);
        CHECK(error.wrong == "this is a pipe or a device, not a file");
    }
}

TEST_CASE("keys and texts that no person would write") {
    const OwnFolder folder;
    const auto said_of = [&](const std::string& text) {
        return std::string(mistake_of(folder.write("case.toml", text)).what());
    };
    for (const std::string& text :
         {std::string("\"a\\nb\" = 1"), std::string("\"\" = 1"), std::string("\"\\u0000\" = 1"),
          std::string(5000, 'k') + " = 1", "\"" + std::string(2000, '\xc3') + "\" = 1",
          "format = \"" + std::string(5000, 'x') + "\"",
          "format = 1\ntitle = \"" + std::string(5000, 'x') + "\""}) {
        const std::string said = said_of(text);
        CHECK(said.find('\n') == std::string::npos);
        CHECK(said.size() < 1000);
    }
    // shortened between characters of two bytes each
    std::string accents;
    for (int i = 0; i < 100; ++i) accents += "\xc3\xa9";
    const CaseError error = mistake_of(folder.write("case.toml", "x" + accents + " = 1"));
    CHECK(error.wrong.rfind("not valid TOML", 0) == 0);  // a bare key is plain letters
    CHECK(mistake_of(folder.write("case.toml", "\"x" + accents + "\" = 1")).key ==
          "x" + accents.substr(0, 58) + "...");
}

TEST_CASE("letters that can be neither drawn nor written are refused with their line and key") {
    const OwnFolder folder;
    const auto mistake_in = [&](const std::string& name) {
        std::string text = whole_case;
        text.insert(text.find("title = \"") + 9, name);
        return mistake_of(folder.write("case.toml", text));
    };
    // Noncharacters of the first and the last plane, ends of lines, controls, marks of direction.
    for (const char* letter :
         {"\xef\xbf\xbe", "\xef\xbf\xbf", "\xef\xb7\x90", "\xef\xb7\xaf", "\xf4\x8f\xbf\xbf", "\\uFFFE",
          "\\uFDD0", "\\U0001FFFE", "\\u2028", "\\u0085", "\\u0007", "\\u202E"}) {
        CAPTURE(letter);
        const CaseError error = mistake_in(letter);
        CHECK(error.key == "title");
        CHECK(error.line > 1);
        CHECK(error.wrong.rfind("the text has ", 0) == 0);
    }
    CHECK(mistake_in("\\uFFFE").wrong.find("U+FFFE") != std::string::npos);
    CHECK(mistake_in(std::string(500, 'x')).right.find("at most 120 letters") != std::string::npos);
    // Letters are counted, not bytes; what cannot be drawn by our font is a letter all the same.
    std::string name;
    for (int i = 0; i < 60; ++i) name += "\xe4\xba\xba";
    std::string text = whole_case;
    text.insert(text.find("title = \"") + 9, name);
    CHECK_NOTHROW(read_case(folder.write("case.toml", text)));
}

TEST_CASE("lists that are too long are refused before their entries are read") {
    const OwnFolder folder;
    const auto times = [](int count, const std::string& part) {
        std::string text;
        for (int i = 0; i < count; ++i) text += part;
        return text;
    };
    const auto check = [&](const std::string& text, const std::string& key, const std::string& right) {
        const CaseError error = mistake_of(folder.write("case.toml", text));
        CHECK(error.key == key);
        CHECK(error.line > 0);
        CHECK(error.right == right);
    };
    const std::string many = "give at most 1000", whole = whole_case;
    check(whole + "[[tool]]\nname = \"t\"\nkind = \"outline\"\npoints = [" +
              times(60000, "{ x_mm = 1, y_mm = 1 },") + "]\n",
          "tool[9].points", many);
    check(whole + times(60000, "[[tool]]\n"), "tool", many);
    check(whole + times(300, "[[tool]]\n"), "tool", "give at most 200");
    check(whole + times(300, "[[step]]\n"), "step", "give at most 200");
    check(replaced(whole, "bend_lines_mm = [", "bend_lines_mm = [" + times(60000, "1.0, ")),
          "strip.bend_lines_mm", many);
}

TEST_CASE("a case spoilt at random is a case or an error, and nothing else") {
    const OwnFolder folder;
    Random random(20240229);
    int cases = 0, errors = 0;
    for (int round = 0; round < 4000; ++round) {
        CAPTURE(round);
        std::string text = whole_case;
        if (round % 3 == 0) text = with_spoilt_bytes(text, random);
        if (round % 3 == 1) text = with_spoilt_lines(text, random);
        if (round % 3 == 2) text = with_spoilt_number(text, random);
        ++(taken(folder, text) ? cases : errors);
    }
    // the slips are neither all harmless nor all deadly
    CHECK(cases > 100);
    CHECK(errors > 1000);
}
