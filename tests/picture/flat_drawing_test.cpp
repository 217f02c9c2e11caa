// The flat pattern's drawing: words that can be read, lines that cross none of them, true proportions.

#include "render/picture/flat_drawing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "render/picture/flat_layout.h"
#include "render/picture/palette.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::check_words;
using overbend::tests::words_of;

namespace {

// The bends of a hook: some close together, some far apart.
FlatSheet hook() {
    FlatSheet s;
    s.title = "Under-desk cable hook";
    s.material = "Stainless steel, 1 mm";
    s.remark = "Bend lines by the mechanics.";
    s.length = 186.1, s.width = 20.0, s.mass_g = 29.3;
    const double at[] = {8.27, 23.7, 41.73, 68.86, 75.11, 101.96, 150.41, 174.86};
    const double turn[] = {90.0, 90.0, 90.0, -45.0, 45.0, -90.0, -110.0, 90.0};
    for (int i = 0; i < 8; ++i)
        s.bends.push_back({"channel left " + std::to_string(i), at[i], 1.4, turn[i] * degree, 1.4});
    s.holes = {{29.0, 10.0, 4.5, 4.5, true}, {125.0, 8.0, 4.0, 9.0, false}};
    s.cautions = {"cut-out 1: its edge is 1.09 mm from where the bend begins, less than 3.60 mm (r + 1.5 s)"};
    return s;
}

FlatSheet many_bends() {
    FlatSheet s = hook();
    s.bends.clear(), s.holes.clear();
    s.length = 300.0, s.width = 8.0;
    for (int i = 0; i < 30; ++i)
        s.bends.push_back(
            {"bend " + std::to_string(i + 1), 8.0 + 9.7 * i, 1.0, (i % 3 == 0 ? -90.0 : 90.0) * degree, 0.8});
    for (int i = 0; i < 9; ++i)
        s.cautions.push_back("bend " + std::to_string(i + 1) + ": sharper than the table");
    return s;
}

FlatSheet far_wider_than_long() {
    FlatSheet s = hook();
    s.bends = {{"left", 10.0, 1.0, 90.0 * degree, 1.0}, {"right", 20.0, 1.0, 90.0 * degree, 1.0}};
    s.holes.clear();
    s.length = 30.0, s.width = 900.0;
    return s;
}

FlatSheet far_longer_than_wide() {
    FlatSheet s = hook();
    s.title = "A title that goes on and on and on and on and on and on and on and on and on and on";
    s.length = 4000.0, s.width = 3.0;
    return s;
}

bool is_upright_line(const Shape& shape) {
    return shape.stroke && shape.path.size() == 2 &&
           std::abs(shape.path[0].to.x() - shape.path[1].to.x()) < 1e-9;
}

// Bend lines, poles and cut-outs' lines; the fine grey ones at the blank's ends are broken where words stand.
void check_lines_clear_of_words(const DrawingList& list) {
    std::vector<Rect> boxes;
    for (const Text& text : words_of(list)) boxes.push_back(painted_box(text));
    const ThemeColours& colours = theme_colours(Theme::light);
    int lines = 0;
    for (const Item& item : list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (!shape || !is_upright_line(*shape) || shape->stroke->red == colours.muted.red) continue;
        ++lines;
        const double x = shape->path[0].to.x(), a = shape->path[0].to.y(), b = shape->path[1].to.y();
        const Rect line{x - 0.5, std::min(a, b), 1.0, std::abs(a - b)};
        for (const Rect& box : boxes) CHECK_FALSE(overlap(line, box));
    }
    CHECK(lines > 4);
}

// The outline is the last unfilled, thick shape of four corners.
Rect outline_of(const DrawingList& list) {
    Rect found;
    for (const Item& item : list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (!shape || shape->fill || !shape->stroke || shape->path.size() != 5) continue;
        found = {shape->path[0].to.x(), shape->path[0].to.y(), shape->path[2].to.x() - shape->path[0].to.x(),
                 shape->path[2].to.y() - shape->path[0].to.y()};
    }
    return found;
}

}  // namespace

TEST_CASE("flat pattern: words can be read, and no line crosses them") {
    int sheet = 0;
    for (const FlatSheet& s : {hook(), many_bends(), far_wider_than_long(), far_longer_than_wide()})
        for (const int height : {794, 1588}) {
            CAPTURE(++sheet);
            const DrawingList list = draw_flat(s, height);
            CHECK(list.height == height);
            CHECK(list.width >= 1.41 * height);
            if (s.bends.size() > 2) check_words(list);
            check_lines_clear_of_words(list);
        }
}

TEST_CASE("flat pattern: true proportions, bend lines where they are") {
    for (const FlatSheet& s : {hook(), far_wider_than_long()}) {
        const DrawingList list = draw_flat(s, 1588);
        const Rect outline = outline_of(list);
        CHECK(outline.width / outline.height == doctest::Approx(s.length / s.width).epsilon(1e-9));
        int bend_lines = 0;
        for (const Item& item : list.items) {
            const Shape* shape = std::get_if<Shape>(&item);
            if (!shape || shape->dash.empty()) continue;
            CHECK(shape->dash.size() == 4);  // dash and dot
            const double at = (shape->path[0].to.x() - outline.x) * s.length / outline.width;
            CHECK(at == doctest::Approx(s.bends[bend_lines].at));
            ++bend_lines;
        }
        CHECK(bend_lines == static_cast<int>(s.bends.size()));
    }
}

TEST_CASE("flat pattern: says what a bender needs of each line") {
    std::string all;
    for (const Text& text : words_of(draw_flat(hook(), 794))) all += text.words + "\n";
    for (const char* part : {"channel left 3", "45\u00b0 down", "110\u00b0 down", "90\u00b0 up", "R 1.4",
                             "8.27\n", "174.86\n", "186.10\n", "20\n", "hole 4.5, too close to a bend",
                             "slot 9 x 4", "29.00 | 10.00", "20 mm\n", "Caution: cut-out 1", "29.3 g"}) {
        CAPTURE(std::string(part));
        CHECK(all.find(part) != std::string::npos);
    }
}

TEST_CASE("flat pattern: the same sheet gives the same list, and more cautions than fit are counted") {
    CHECK(as_text(draw_flat(hook(), 794)) == as_text(draw_flat(hook(), 794)));
    std::string all;
    for (const Text& text : words_of(draw_flat(many_bends(), 794))) all += text.words + "\n";
    CHECK(all.find("and 8 more cautions") != std::string::npos);
}

TEST_CASE("flat pattern: what cannot be drawn is refused") {
    CHECK_THROWS_AS(draw_flat(hook(), 399), OutOfRange);
    FlatSheet none = hook();
    none.width = 0.0;
    CHECK_THROWS_AS(draw_flat(none, 794), OutOfRange);
}

// By hand: 0 lies over the poles of 1 and 2, 2 over that of 3.
TEST_CASE("flags: one step above the highest whose pole they would lie over") {
    std::vector<Flag> flags = {
        {0.0, 100.0, 0}, {40.0, 10.0, 0}, {90.0, 50.0, 0}, {130.0, 50.0, 0}, {400.0, 50.0, 0}};
    CHECK(set_steps(flags, 5.0) == 3);
    const int steps[] = {2, 0, 1, 0, 0};
    for (int i = 0; i < 5; ++i) CHECK(flags[i].step == steps[i]);
    std::vector<Flag> none;
    CHECK(set_steps(none, 5.0) == 0);
}
