// How a GIF gets smaller: every rung is smaller than the one before, and the next one keeps to the limit.

#include "render/film/gif_rungs.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace overbend::film;
using namespace overbend::picture;

TEST_CASE("rungs go down in frames a second, then in size, and end at 480 pixels and 5 frames") {
    for (const PictureSize size :
         {PictureSize{3840, 2160}, PictureSize{1280, 720}, PictureSize{1080, 1080}}) {
        const std::vector<GifRung> rungs = gif_rungs(size, 30.0);
        CHECK(rungs.front().size.width == 960);
        CHECK(rungs.front().frames_per_second == 25.0);
        CHECK(rungs.back().size.width == 480);
        CHECK(rungs.back().frames_per_second == 5.0);
        for (std::size_t i = 0; i < rungs.size(); ++i) {
            CHECK_NOTHROW(check_size(rungs[i].size));
            // A GIF counts hundredths of a second.
            const double hundredths = 100.0 / rungs[i].frames_per_second;
            CHECK(std::abs(hundredths - std::round(hundredths)) < 1e-9);
            if (i > 0) CHECK(expected_bytes(1e6, rungs[i - 1], rungs[i]) < 1e6);
        }
    }
}

TEST_CASE("what was asked for is not exceeded, and small and slow films stay as they are") {
    const std::vector<GifRung> small = gif_rungs({320, 180}, 4.0);
    CHECK(small.size() == 1);
    CHECK(small.front().size.width == 320);
    CHECK(small.front().frames_per_second == 4.0);
    CHECK(gif_rungs({640, 360}, 12.0).front().frames_per_second == 10.0);
    CHECK(gif_rungs({640, 360}, 3.0).front().frames_per_second == doctest::Approx(100.0 / 34.0));
}

TEST_CASE("the next rung is the first that is expected to do; at the end there is none") {
    const std::vector<GifRung> rungs = gif_rungs({1280, 720}, 30.0);
    const auto next = next_rung(rungs, 0, 2e6, 1000000);
    REQUIRE(next);
    CHECK(expected_bytes(2e6, rungs[0], rungs[*next]) <= 0.9e6);
    CHECK(expected_bytes(2e6, rungs[0], rungs[*next - 1]) > 0.9e6);
    CHECK(next_rung(rungs, 0, 1e12, 1000) == rungs.size() - 1);
    CHECK_FALSE(next_rung(rungs, rungs.size() - 1, 1e12, 1000));
}
