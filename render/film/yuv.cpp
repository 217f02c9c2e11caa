#include "render/film/yuv.h"

#include <cstring>
#include <string>

#include "sim/errors.h"

namespace overbend::film {

using namespace picture;

namespace {

// In parts of 256 and in 16 bits, which processors do eight or sixteen at a time. Rounded so that the sums
// are 256 * 219 / 255 = 220 for brightness and 0 for colour: white is 235, and grey has no colour. No value
// is off by more than one step.
constexpr int luma_red = 47, luma_green = 157, luma_blue = 16;
constexpr int blue_red = -26, blue_green = -86, blue_blue = 112;
constexpr int red_red = 112, red_green = -102, red_blue = -10;

std::uint32_t pixel_at(const std::uint8_t* bgra, int x) {
    std::uint32_t pixel = 0;
    std::memcpy(&pixel, bgra + 4 * x, 4);
    return pixel;
}

void luma_row(const std::uint8_t* bgra, int width, std::uint8_t* __restrict out) {
    for (int x = 0; x < width; ++x) {
        const std::uint32_t pixel = pixel_at(bgra, x);
        const auto blue = static_cast<std::uint16_t>(pixel & 0xff);
        const auto green = static_cast<std::uint16_t>((pixel >> 8) & 0xff);
        const auto red = static_cast<std::uint16_t>((pixel >> 16) & 0xff);
        // At most 220 * 255 + 128.
        const auto sum =
            static_cast<std::uint16_t>(luma_blue * blue + luma_green * green + luma_red * red + 128);
        out[x] = static_cast<std::uint8_t>(16 + (sum >> 8));
    }
}

// Means of two by two pixels, a plane for each colour.
struct Means {
    std::vector<std::int16_t> blue, green, red;
};

// Two colours are added at once, in the two halves of a word: blue and red, and green alone.
void mean_row(const std::uint8_t* upper, const std::uint8_t* lower, int half_width, Means& means) {
    std::int16_t* __restrict blue = means.blue.data();
    std::int16_t* __restrict green = means.green.data();
    std::int16_t* __restrict red = means.red.data();
    for (int x = 0; x < half_width; ++x) {
        const std::uint32_t a = pixel_at(upper, 2 * x), b = pixel_at(upper, 2 * x + 1);
        const std::uint32_t c = pixel_at(lower, 2 * x), d = pixel_at(lower, 2 * x + 1);
        const std::uint32_t outer =
            (a & 0xff00ff) + (b & 0xff00ff) + (c & 0xff00ff) + (d & 0xff00ff) + 0x20002;
        const std::uint32_t inner =
            ((a >> 8) & 0xff) + ((b >> 8) & 0xff) + ((c >> 8) & 0xff) + ((d >> 8) & 0xff) + 2;
        blue[x] = static_cast<std::int16_t>((outer >> 2) & 0xff);
        red[x] = static_cast<std::int16_t>(outer >> 18);
        green[x] = static_cast<std::int16_t>(inner >> 2);
    }
}

void chroma_row(const Means& means, int half_width, std::uint8_t* __restrict u, std::uint8_t* __restrict v) {
    for (int x = 0; x < half_width; ++x) {
        const std::int16_t blue = means.blue[x], green = means.green[x], red = means.red[x];
        // At most 112 * 255 either way.
        const auto of_blue =
            static_cast<std::int16_t>(blue_red * red + blue_green * green + blue_blue * blue + 128);
        const auto of_red =
            static_cast<std::int16_t>(red_red * red + red_green * green + red_blue * blue + 128);
        u[x] = static_cast<std::uint8_t>(128 + (of_blue >> 8));
        v[x] = static_cast<std::uint8_t>(128 + (of_red >> 8));
    }
}

}  // namespace

void to_yuv420p(const Pixels& pixels, std::vector<std::uint8_t>& into) {
    const int width = pixels.width;
    const int height = pixels.height;
    if (width % 2 != 0 || height % 2 != 0 || width < 2 || height < 2)
        throw OutOfRange("picture size of a film",
                         std::to_string(width) + " x " + std::to_string(height) + " px",
                         "width and height must be even");
    const std::size_t all = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    into.resize(all * 3 / 2);
    std::uint8_t* luma = into.data();
    std::uint8_t* u = luma + all;
    std::uint8_t* v = u + all / 4;
    const int half_width = width / 2;
    Means means;
    for (auto* plane : {&means.blue, &means.green, &means.red})
        plane->resize(static_cast<std::size_t>(half_width));
    const std::size_t stride = std::size_t{4} * static_cast<std::size_t>(width);
    for (int y = 0; y < height; y += 2) {
        const std::uint8_t* upper = pixels.bgra.data() + stride * static_cast<std::size_t>(y);
        const std::uint8_t* lower = upper + stride;
        luma_row(upper, width, luma);
        luma_row(lower, width, luma + width);
        mean_row(upper, lower, half_width, means);
        chroma_row(means, half_width, u, v);
        luma += 2 * width;
        u += half_width;
        v += half_width;
    }
}

}  // namespace overbend::film
