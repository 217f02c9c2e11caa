// The fonts are the shipped ones, and the table of widths is theirs.

#include <doctest/doctest.h>

#include <filesystem>

#include "render/picture/fonts.h"
#include "render/picture/painter.h"
#include "render/picture/text_width.h"
#include "tests/files/own_folder.h"

using namespace overbend;
using namespace overbend::render;

TEST_CASE("the fonts lie in the assets, with their licence") {
    const std::filesystem::path folder = fonts_folder();
    CHECK(std::filesystem::exists(folder / "DejaVuSans.ttf"));
    CHECK(std::filesystem::exists(folder / "DejaVuSans-Bold.ttf"));
    CHECK(tests::bytes_of("assets/fonts/LICENSE.txt").find("Bitstream") != std::string::npos);
}

// The ink of ten more of a letter is ten times its advance wider: no pair of one letter is kerned.
TEST_CASE("each letter is as wide when it is painted as the table says") {
    for (const Weight weight : {Weight::normal, Weight::bold})
        for (char c = 33; c < 127; ++c) {
            if (c == 'f') continue;  // two of them are joined
            const auto ink = [&](int count) {
                Text text;
                text.words = std::string(static_cast<size_t>(count), c);
                text.size = 100.0;
                text.weight = weight;
                return painted_box(text).width;
            };
            CAPTURE(c);
            CHECK(ink(15) - ink(5) ==
                  doctest::Approx(10.0 * text_width(std::string(1, c), 100.0, weight)).epsilon(0.002));
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
