#include "tests/window/golden.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>

#include "tests/picture/perceptual.h"

namespace overbend::tests {

namespace {

// A piece of a screenshot.
render::Pixels piece(const render::Pixels& whole, const render::Rect& box) {
    render::Pixels part;
    part.width = static_cast<int>(box.width), part.height = static_cast<int>(box.height);
    const int x = static_cast<int>(box.x), y = static_cast<int>(box.y);
    for (int row = 0; row < part.height; ++row) {
        const auto from = whole.bgra.begin() + 4 * (static_cast<std::ptrdiff_t>(y + row) * whole.width + x);
        part.bgra.insert(part.bgra.end(), from, from + 4 * static_cast<std::ptrdiff_t>(part.width));
    }
    return part;
}

}  // namespace

void compare_golden(Script& user, const std::string& control, const std::string& name) {
    CAPTURE(name);
    user.point_at({3.0, 3.0});  // off everything that would tell something beside the pointer
    const render::Pixels found = piece(user.screenshot(), user.find(control).box);
    const std::string file = "tests/window/golden/" + name + ".png";
    if (std::getenv("OVERBEND_RENEW_PICTURES") != nullptr) {
        render::write_whole(file, render::png_bytes(found));
        return;
    }
    const Difference d = difference(read_png(file), found);
    CAPTURE(d.greatest);
    CAPTURE(d.mean);
    const bool alike = look_alike(d);
    CHECK(alike);
    if (alike) return;
    const std::filesystem::path there =
        std::filesystem::temp_directory_path() / ("overbend_" + name + ".png");
    render::write_whole(there, render::png_bytes(found));
    MESSAGE("what was painted lies in " << there.string());
}

}  // namespace overbend::tests
