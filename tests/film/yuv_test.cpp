// Pixels as the encoder takes them, against the formula of the standard in floating point.
//
//   Y = 16 + 219 (0.2126 R + 0.7152 G + 0.0722 B),  Cb = 128 + 224 (B - Y') / 1.8556,  Cr = 128 + 224 (R -
//   Y') / 1.5748
//
// Source   ITU-R BT.709-6, item 3 (R, G, B and Y' from 0 to 1).
// Allowed  1.6 of 255 steps: 16-bit sums and rounding; measured 1.3 at most.

#include "render/film/yuv.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/errors.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;

namespace {

// Every block of two by two pixels has one colour; the colours run through a lattice of the cube.
Pixels lattice() {
    Pixels pixels;
    pixels.width = 2 * 16 * 16;
    pixels.height = 2 * 16;
    pixels.bgra.resize(std::size_t{4} * pixels.width * pixels.height);
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) {
            std::uint8_t* p = pixels.bgra.data() + 4 * (y * pixels.width + x);
            p[0] = static_cast<std::uint8_t>(17 * ((x / 2) % 16));
            p[1] = static_cast<std::uint8_t>(17 * ((x / 2) / 16));
            p[2] = static_cast<std::uint8_t>(17 * (y / 2));
            p[3] = 99;  // unused: it must not matter
        }
    return pixels;
}

}  // namespace

TEST_CASE("brightness and colours follow the standard") {
    const Pixels pixels = lattice();
    std::vector<std::uint8_t> yuv;
    to_yuv420p(pixels, yuv);
    const int all = pixels.width * pixels.height;
    REQUIRE(yuv.size() == static_cast<std::size_t>(all) * 3 / 2);
    double worst = 0.0;
    for (int y = 0; y < pixels.height; ++y)
        for (int x = 0; x < pixels.width; ++x) {
            const std::uint8_t* p = pixels.bgra.data() + 4 * (y * pixels.width + x);
            const double b = p[0] / 255.0, g = p[1] / 255.0, r = p[2] / 255.0;
            const double luma = 0.2126 * r + 0.7152 * g + 0.0722 * b;
            const int block = (y / 2) * (pixels.width / 2) + x / 2;
            worst = std::max(worst, std::abs(yuv[y * pixels.width + x] - (16.0 + 219.0 * luma)));
            worst = std::max(worst, std::abs(yuv[all + block] - (128.0 + 224.0 * (b - luma) / 1.8556)));
            worst =
                std::max(worst, std::abs(yuv[all + all / 4 + block] - (128.0 + 224.0 * (r - luma) / 1.5748)));
        }
    MESSAGE("worst: ", worst);
    CHECK(worst < 1.6);
}

TEST_CASE("white, black and grey have no colour, and the standard's ends") {
    for (const auto& [grey, luma] : {std::pair{0, 16}, {255, 235}, {128, 126}}) {
        Pixels pixels;
        pixels.width = 34;
        pixels.height = 4;
        pixels.bgra.assign(std::size_t{4} * 34 * 4, static_cast<std::uint8_t>(grey));
        std::vector<std::uint8_t> yuv;
        to_yuv420p(pixels, yuv);
        CHECK(yuv.front() == luma);
        CHECK(yuv[34 * 4 - 1] == luma);
        for (std::size_t i = 34 * 4; i < yuv.size(); ++i) CHECK(yuv[i] == 128);
    }
}

TEST_CASE("the colour of four pixels is their mean") {
    Pixels pixels;
    pixels.width = 2;
    pixels.height = 2;
    pixels.bgra = {255, 0, 0, 0, 0, 0, 255, 0, 0, 255, 0, 0, 255, 255, 255, 0};
    Pixels mean = pixels;
    mean.bgra = {128, 128, 128, 0, 128, 128, 128, 0, 128, 128, 128, 0, 128, 128, 128, 0};
    std::vector<std::uint8_t> of_four, of_mean;
    to_yuv420p(pixels, of_four);
    to_yuv420p(mean, of_mean);
    CHECK(of_four[4] == of_mean[4]);
    CHECK(of_four[5] == of_mean[5]);
}

TEST_CASE("an odd size is refused") {
    Pixels pixels;
    pixels.width = 3;
    pixels.height = 2;
    pixels.bgra.resize(24);
    std::vector<std::uint8_t> yuv;
    CHECK_THROWS_WITH_AS(to_yuv420p(pixels, yuv), doctest::Contains("even"), OutOfRange);
}
