// The fonts are the shipped ones, and the table of widths is theirs.

#include <doctest/doctest.h>

#include <filesystem>

#include "render/picture/fonts.h"
#include "render/picture/painter.h"
#include "render/picture/text_width.h"
#include "tests/files/own_folder.h"

using namespace overbend;
using namespace overbend::picture;

TEST_CASE("the fonts lie in the assets, with their licence") {
    const std::filesystem::path folder = fonts_folder();
    CHECK(std::filesystem::exists(folder / "DejaVuSans.ttf"));
    CHECK(std::filesystem::exists(folder / "DejaVuSans-Bold.ttf"));
    CHECK(tests::bytes_of("assets/fonts/LICENSE.txt").find("Bitstream") != std::string::npos);
}

// The ink of ten more of "cH" is ten times both advances wider: next to an H nothing is joined, and only a
// full stop is kerned, by 1.7 per cent of the pair.
TEST_CASE("each letter is as wide when it is painted as the table says") {
    for (const Weight weight : {Weight::normal, Weight::bold})
        for (char c = 33; c < 127; ++c) {
            const std::string pair = std::string(1, c) + "H";
            const auto ink = [&](int count) {
                Text text;
                text.words = "H";
                for (int i = 0; i < count; ++i) text.words += pair;
                text.size = 100.0;
                text.weight = weight;
                return painted_box(text).width;
            };
            CAPTURE(c);
            const double painted = ink(15) - ink(5);
            const double table = 10.0 * text_width(pair, 100.0, weight);
            CAPTURE(painted);
            CAPTURE(table);
            CHECK(painted < 1.001 * table);
            CHECK(painted > (c == '.' ? 0.98 : 0.999) * table);
        }
}

TEST_CASE("bold words are wider than plain ones: both fonts are there") {
    Text text;
    text.words = "springback";
    text.size = 100.0;
    const double plain = painted_box(text).width;
    text.weight = Weight::bold;
    CHECK(painted_box(text).width > 1.08 * plain);
}
