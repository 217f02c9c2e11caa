// Files that are damaged, cut off or no drawings at all: each is refused or taken, none does harm.
//
// The random ones are the same in every run. Run under the address sanitizer too.

#include <doctest/doctest.h>

#include <random>

#include "tests/dxf/dxf_files.h"

using namespace overbend::tests;

namespace {

std::string drawing() {
    return dxf_file(line(0, 0, 10, 0) + arc(10, 5, 5, 270, 90) +
                    light_polyline({{10, 10, 0}, {5, 12, 0.3}, {0, 10, 0}}, Ring::open) +
                    heavy_polyline({{0, 10, 0}, {-3, 5, 0.1}, {0, 0, 0}}, Ring::open));
}

}  // namespace

TEST_CASE("the drawing that is spoilt below is right as it stands") {
    const Mistake mistake = mistake_of(drawing());
    CAPTURE(mistake.wrong);
    CHECK(mistake.line == -1);
}

TEST_CASE("a file cut off anywhere is refused") {
    const std::string text = drawing();
    const std::size_t end = text.rfind("EOF");
    for (std::size_t length = 0; length < end + 3; ++length) {
        CAPTURE(length);
        CHECK(mistake_of(text.substr(0, length)).line >= 0);
    }
}

TEST_CASE("a line left out, doubled or replaced ends in an outline or in a message") {
    const std::string text = drawing();
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size(); at = text.find('\n', at) + 1)
        lines.push_back(text.substr(at, text.find('\n', at) - at));
    const std::vector<std::string> others = {
        "",           "nan",        "-1",         "999999999999999999999",
        "1e308",      "LINE",       "0",          "90",
        "10",         "42",         "SEQEND",     "EOF",
        "LWPOLYLINE", "2147483647", "-2147483648"};
    int refused = 0, tried = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        for (std::size_t k = 0; k < others.size() + 2; ++k) {
            std::string spoilt;
            for (std::size_t j = 0; j < lines.size(); ++j) {
                if (j == i && k == 0) continue;
                spoilt += (j == i && k > 1 ? others[k - 2] : lines[j]) + "\n";
                if (j == i && k == 1) spoilt += lines[j] + "\n";
            }
            refused += mistake_of(spoilt).line >= 0 ? 1 : 0;
            ++tried;
        }
    }
    CHECK(refused > tried / 2);
    CHECK(refused < tried);
}

TEST_CASE("random bytes and random damage do no harm") {
    std::mt19937 random(1);
    for (int i = 0; i < 300; ++i) {
        std::string noise(random() % 400, ' ');
        for (char& c : noise) c = static_cast<char>(random());
        CHECK(mistake_of(noise).line >= 0);
    }
    for (int i = 0; i < 2000; ++i) {
        std::string text = drawing();
        for (int k = 0; k < 5; ++k) text[random() % text.size()] = static_cast<char>(random() % 128);
        mistake_of(text);
    }
    CHECK(mistake_of(std::string("binary\r\n\x1a\0", 10) + drawing()).wrong.find("binary") !=
          std::string::npos);
    CHECK(mistake_of(std::string(1 << 20, '9')).line >= 0);
    CHECK(mistake_of(dxf_file("0\n" + std::string(1 << 20, 'A') + "\n")).line >= 0);
}
