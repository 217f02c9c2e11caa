#include "tests/window/golden.h"

#include "tests/picture/golden_picture.h"

namespace overbend::tests {

namespace {

// A piece of a screenshot.
picture::Pixels piece(const picture::Pixels& whole, const picture::Rect& box) {
    picture::Pixels part;
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
    user.point_at({3.0, 3.0});  // off everything that would tell something beside the pointer
    const picture::Pixels found = piece(user.screenshot(), user.find(control).box);
    check_against_golden("tests/window/golden/" + name + ".png", found);
}

}  // namespace overbend::tests
