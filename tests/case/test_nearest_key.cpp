// The word somebody probably meant.

#include "scenes/files/case/nearest_key.h"

#include <doctest/doctest.h>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/key_list.h"

using namespace overbend::files;

TEST_CASE("slips are counted") {
    CHECK(slips_between("", "") == 0);
    CHECK(slips_between("flat", "flat") == 0);
    CHECK(slips_between("", "flat") == 4);
    CHECK(slips_between("flat", "") == 4);
    CHECK(slips_between("falt", "flat") == 1);   // swapped
    CHECK(slips_between("fat", "flat") == 1);    // left out
    CHECK(slips_between("flaat", "flat") == 1);  // put in
    CHECK(slips_between("flit", "flat") == 1);   // changed
    CHECK(slips_between("thickness_mm", "width_mm") == slips_between("width_mm", "thickness_mm"));
    CHECK(slips_between("lfta", "flat") == 2);  // two swaps
    CHECK(slips_between("ca", "abc") == 3);     // no letter is moved twice
}

TEST_CASE("the nearest word is proposed, the first of equals") {
    CHECK(nearest_key("thicknes_mm", {"width_mm", "thickness_mm", "title"}) == "thickness_mm");
    CHECK(nearest_key("x", {"a", "b"}) == "a");
    CHECK(nearest_key("x", {}).empty());
    CHECK(nearest_key("", {"abc", "n"}) == "n");
}

TEST_CASE("one slip in any key of a tool leads back to it") {
    const std::vector<std::string> keys = key_names(keys_of<Tool>());
    for (const std::string& key : keys) {
        for (std::size_t i = 0; i + 1 < key.size(); ++i) {
            std::string swapped = key;
            std::swap(swapped[i], swapped[i + 1]);
            // x_mm and y_mm are one slip from one another, so their own slips may lead to either
            if (key.size() > 4) CHECK(nearest_key(swapped, keys) == key);
        }
    }
}

TEST_CASE("words are listed") {
    CHECK(listed({}).empty());
    CHECK(listed({"one"}) == "one");
    CHECK(listed({"one", "two"}) == "one, two");
}
