// Numbers as people type them.

#include <doctest/doctest.h>

#include "render/ui/typed_number.h"

using namespace overbend::ui;

TEST_CASE("a comma and a point both stand before the decimals") {
    const NumberField field{0.05, 6.0, "%.3f mm"};
    for (const char* text : {"0.8", "0,8", " 0,80 ", "0.8 mm", "0,8mm", "8e-1", "+.8", ",8"}) {
        CAPTURE(text);
        const TypedNumber read = read_typed(text, field);
        REQUIRE(read.value);
        CHECK(*read.value == doctest::Approx(0.8).epsilon(1e-12));
        CHECK(read.wrong == "");
    }
    CHECK(*read_typed("-3,5\u00b0", {-10.0, 10.0, "%.1f\u00b0"}).value == -3.5);
    // What the field itself shows is always taken.
    CHECK(*read_typed(shown_number(0.05, {0.05, 6.0, "%.1f mm"}), {0.05, 6.0, "%.1f mm"}).value == 0.1);
    CHECK(*read_typed("0.3", {0.3333, 1.0, "%.1f"}).value == 0.3333);
}

TEST_CASE("what is no number, or out of range, is refused with a word") {
    const NumberField field{0.05, 6.0, "%.3f mm"};
    for (const char* text : {"x", "0.8x", "1,234.5", "1.2.3", "1,2,3", "0x1p3", "nan", "inf", "1e999", "mm",
                             "0.8 cm", "--1", "1 2"}) {
        CAPTURE(text);
        const TypedNumber read = read_typed(text, field);
        CHECK_FALSE(read.value);
        CHECK(read.wrong.find("not a number") != std::string::npos);
    }
    CHECK(read_typed("  ", field).wrong == "nothing was typed");
    CHECK(read_typed("0.01", field).wrong == "0.01 is less than 0.050 mm");
    CHECK(read_typed("9 mm", field).wrong == "9 mm is more than 6.000 mm");
}
