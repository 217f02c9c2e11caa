#include "render/film/yuv.h"

#include <string>

#include "sim/errors.h"

namespace overbend::render {

namespace {

// Parts of 65536, rounded so that the sums are 65536 * 219 / 255 = 56284 for brightness and 0 for colour:
// white is 235, and grey has no colour.
constexpr int luma_red = 11966, luma_green = 40254, luma_blue = 4064;
constexpr int blue_red = -6596, blue_green = -22189, blue_blue = 28785;
constexpr int red_red = 28785, red_green = -26145, red_blue = -2640;

void luma_row(const std::uint8_t* bgra, int width, std::uint8_t* out) {
    for (int x = 0; x < width; ++x) {
        const int sum = luma_blue * bgra[4 * x] + luma_green * bgra[4 * x + 1] + luma_red * bgra[4 * x + 2];
        out[x] = static_cast<std::uint8_t>((sum + (16 << 16) + 32768) >> 16);
    }
}

// Of two rows; sums of four pixels, so two bits more are shifted out.
void chroma_row(const std::uint8_t* upper, const std::uint8_t* lower, int width, std::uint8_t* u,
                std::uint8_t* v) {
    constexpr int half_way = (128 << 18) + (1 << 17);
    for (int x = 0; x < width / 2; ++x) {
        const std::uint8_t* a = upper + 8 * x;
        const std::uint8_t* b = lower + 8 * x;
        const int blue = a[0] + a[4] + b[0] + b[4];
        const int green = a[1] + a[5] + b[1] + b[5];
        const int red = a[2] + a[6] + b[2] + b[6];
        u[x] = static_cast<std::uint8_t>(
            (blue_red * red + blue_green * green + blue_blue * blue + half_way) >> 18);
        v[x] =
            static_cast<std::uint8_t>((red_red * red + red_green * green + red_blue * blue + half_way) >> 18);
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
    const std::size_t stride = std::size_t{4} * static_cast<std::size_t>(width);
    for (int y = 0; y < height; y += 2) {
        const std::uint8_t* upper = pixels.bgra.data() + stride * static_cast<std::size_t>(y);
        const std::uint8_t* lower = upper + stride;
        luma_row(upper, width, luma);
        luma_row(lower, width, luma + width);
        chroma_row(upper, lower, width, u, v);
        luma += 2 * width;
        u += width / 2;
        v += width / 2;
    }
}

}  // namespace overbend::render
