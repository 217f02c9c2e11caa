#include "tests/picture/perceptual.h"

#include <png.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "render/picture/palette.h"

namespace overbend::tests {

namespace {

using picture::Pixels;
using Plane = std::vector<float>;
using Lab = std::array<Plane, 3>;

// Of the 256 values of a channel, with the sRGB curve undone by the palette's own function through a table: a
// picture has few colours, so each is worked out once.
Lab to_lab(const Pixels& p, int ground) {
    const size_t count = size_t{1} * p.width * p.height;
    Lab lab;
    for (Plane& plane : lab) plane.resize(count);
    std::uint32_t last = 0;
    Eigen::Vector3d value = picture::to_lab(picture::Colour{0.0, 0.0, 0.0, 1.0});
    for (size_t i = 0; i < count; ++i) {
        std::array<int, 3> rgb{};
        const int alpha = p.alpha == picture::Alpha::unused ? 255 : p.bgra[4 * i + 3];
        for (int c = 0; c < 3; ++c)
            rgb[c] = std::min(255, p.bgra[4 * i + 2 - c] + ground * (255 - alpha) / 255);
        const std::uint32_t key = static_cast<std::uint32_t>(rgb[0] << 16 | rgb[1] << 8 | rgb[2]);
        if (key != last) {
            value = picture::to_lab({rgb[0] / 255.0, rgb[1] / 255.0, rgb[2] / 255.0, 1.0});
            last = key;
        }
        for (int c = 0; c < 3; ++c) lab[c][i] = static_cast<float>(value(c));
    }
    return lab;
}

void soften(Plane& plane, int width, int height) {
    Plane other(plane.size());
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const float* row = plane.data() + size_t{1} * y * width;
            other[size_t{1} * y * width + x] =
                0.25f * row[std::max(0, x - 1)] + 0.5f * row[x] + 0.25f * row[std::min(width - 1, x + 1)];
        }
    for (int y = 0; y < height; ++y) {
        const float* above = other.data() + size_t{1} * std::max(0, y - 1) * width;
        const float* here = other.data() + size_t{1} * y * width;
        const float* below = other.data() + size_t{1} * std::min(height - 1, y + 1) * width;
        for (int x = 0; x < width; ++x)
            plane[size_t{1} * y * width + x] = 0.25f * above[x] + 0.5f * here[x] + 0.25f * below[x];
    }
}

Difference on_ground(const Pixels& a, const Pixels& b, int ground) {
    Lab first = to_lab(a, ground);
    const Lab second = to_lab(b, ground);
    const size_t count = first[0].size();
    // Softening is linear: that of the difference is the difference of both.
    for (int c = 0; c < 3; ++c) {
        for (size_t i = 0; i < count; ++i) first[c][i] -= second[c][i];
        for (int times = 0; times < 4; ++times) soften(first[c], a.width, a.height);
    }
    Difference d;
    for (size_t i = 0; i < count; ++i) {
        const double distance = std::sqrt(static_cast<double>(
            first[0][i] * first[0][i] + first[1][i] * first[1][i] + first[2][i] * first[2][i]));
        d.greatest = std::max(d.greatest, distance);
        d.mean += distance / static_cast<double>(count);
    }
    return d;
}

}  // namespace

Difference difference(const Pixels& a, const Pixels& b) {
    if (a.width != b.width || a.height != b.height)
        throw std::runtime_error("pictures of different size: " + std::to_string(a.width) + " x " +
                                 std::to_string(a.height) + " and " + std::to_string(b.width) + " x " +
                                 std::to_string(b.height));
    Difference worst;
    for (const int ground : {255, 0}) {
        const Difference d = on_ground(a, b, ground);
        worst.greatest = std::max(worst.greatest, d.greatest);
        worst.mean = std::max(worst.mean, d.mean);
        if (a.alpha == picture::Alpha::unused && b.alpha == picture::Alpha::unused) break;
    }
    return worst;
}

Pixels read_png(const std::string& path) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    if (!png_image_begin_read_from_file(&image, path.c_str()))
        throw std::runtime_error(path + ": " + image.message);
    Pixels p;
    p.width = static_cast<int>(image.width);
    p.height = static_cast<int>(image.height);
    const bool alpha = (image.format & PNG_FORMAT_FLAG_ALPHA) != 0;
    p.alpha = alpha ? picture::Alpha::premultiplied : picture::Alpha::unused;
    image.format = PNG_FORMAT_BGRA;
    p.bgra.resize(PNG_IMAGE_SIZE(image));
    if (!png_image_finish_read(&image, nullptr, p.bgra.data(), 0, nullptr))
        throw std::runtime_error(path + ": " + image.message);
    if (alpha)
        for (size_t i = 0; i < p.bgra.size(); i += 4)
            for (size_t c = 0; c < 3; ++c)
                p.bgra[i + c] = static_cast<std::uint8_t>((p.bgra[i + c] * p.bgra[i + 3] + 127) / 255);
    return p;
}

}  // namespace overbend::tests
