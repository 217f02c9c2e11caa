// Packed lists: base64 against the standard's own examples, and lists that come back as they were.
//
// Source  S. Josefsson, RFC 4648, 2006, section 10.

#include <doctest/doctest.h>

#include <limits>

#include "render/report/packing.h"
#include "tests/report/unpacked.h"

using namespace overbend;
using overbend::tests::unpacked;

TEST_CASE("base64 as in the standard's examples") {
    const auto of = [](const std::string& text) { return report::base64({text.begin(), text.end()}); };
    CHECK(of("") == "");
    CHECK(of("f") == "Zg==");
    CHECK(of("fo") == "Zm8=");
    CHECK(of("foo") == "Zm9v");
    CHECK(of("foob") == "Zm9vYg==");
    CHECK(of("fooba") == "Zm9vYmE=");
    CHECK(of("foobar") == "Zm9vYmFy");
}

TEST_CASE("packed lists come back as they were") {
    const std::vector<std::vector<int>> lists = {
        {},
        {0},
        {1},
        {-1},
        {0, 0, 0},
        {63, 64, -64, -65, 8191, 8192, -8193},
        {std::numeric_limits<int>::max(), std::numeric_limits<int>::min(), 0, 7},
        std::vector<int>(1000, 0)};
    for (const std::vector<int>& list : lists) CHECK(unpacked(report::packed(list)) == list);

    // A list of all sizes with runs of zeros of all lengths, by a rule of its own.
    std::vector<int> list;
    unsigned state = 1;
    for (int i = 0; i < 5000; ++i) {
        state = state * 1664525u + 1013904223u;
        const int value = static_cast<int>(state >> (state % 31u)) * (i % 2 == 0 ? 1 : -1);
        list.push_back(state % 3u == 0 ? 0 : value);
    }
    CHECK(unpacked(report::packed(list)) == list);
}

TEST_CASE("what stands still takes no room") {
    CHECK(report::packed(std::vector<int>(100000, 0)).size() <= 8);
    CHECK(report::packed(std::vector<int>(300, 5)).size() == 400);  // a byte each, four letters for three
}
