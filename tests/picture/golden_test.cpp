// The stage against pictures that somebody has looked at and found good: tests/picture/golden.
//
// Compared by how different they look, so that another release of the painting libraries may
// smooth an edge otherwise, and that a label that has moved, a changed colour or a thing that is missing is
// found: each of the three is tried below.
// Renewed (golden_picture.h) by OVERBEND_RENEW_PICTURES=1 build/release/tests/picture/test_picture
// -tc='*golden*'

#include <doctest/doctest.h>

#include "render/picture/stage.h"
#include "tests/picture/golden_picture.h"
#include "tests/picture/perceptual.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::Difference;
using overbend::tests::difference;
using overbend::tests::look_alike;
using overbend::tests::read_png;
using overbend::tests::synthetic_recording;

namespace {

constexpr PictureSize size{640, 360};
constexpr double pressing = 16.4;
constexpr double held = 25.0;
constexpr double released = 28.0;

StageInfo plain() {
    StageInfo info;
    info.job_title = "Under-desk cable hook";
    info.step_name = "lip";
    info.step_number = 2;
    info.step_count = 5;
    info.caption = "Press: the punch presses the strip into the die.";
    info.strip_width = 20.0;
    info.bends = {{"lip", 18.0, 0.0, {}, {}}};
    info.ticks = {{"lip", 18.0}, {"root", 30.0}};
    return info;
}

struct Golden {
    std::string name;
    double instant;
    StageInfo info;
};

std::vector<Golden> golden_pictures() {
    std::vector<Golden> all;
    StageInfo info = plain();
    all.push_back({"light", pressing, info});
    info.theme = Theme::dark;
    info.lens = Lens::shown;
    all.push_back({"dark_lens", held, info});
    info = plain();
    info.lens = Lens::shown;
    info.ghost = held;
    info.springback_scale = 5.0;
    info.caption = "Free: the bend opens.";
    all.push_back({"light_springback_5", released, info});
    info = plain();
    info.backdrop = Backdrop::transparent;
    info.charts = Charts::hidden;
    info.lens = Lens::shown;
    all.push_back({"transparent", pressing, info});
    info = plain();
    info.interferences = {{{6.0, 7.0}, 0.42, "flange and punch"}};
    all.push_back({"light_interference", held, info});
    info.theme = Theme::dark;
    info.colouring = Colouring::plastic_strain;
    all.push_back({"dark_interference", held, info});
    return all;
}

const stroke::Recording& recording() {
    static const stroke::Recording r = synthetic_recording();
    return r;
}

DrawingList list_of(const Golden& g) {
    return draw_stage(recording(), g.instant, g.info, size);
}

std::string path_of(const Golden& g) {
    return "tests/picture/golden/" + g.name + ".png";
}

}  // namespace

TEST_CASE("pictures look like the golden ones") {
    for (const Golden& g : golden_pictures())
        overbend::tests::check_against_golden(path_of(g), paint(list_of(g)));
}

TEST_CASE("a label that has moved is found") {
    const Pixels whole = paint(list_of(golden_pictures()[0]));
    for (const Point& by : {Point(1.0, 0.0), Point(0.0, 1.0)}) {
        DrawingList list = list_of(golden_pictures()[0]);
        int moved = 0;
        for (Item& item : list.items)
            if (Text* text = std::get_if<Text>(&item); text && text->words == "travel") {
                text->at += by;
                ++moved;
            }
        REQUIRE(moved == 1);
        const Difference d = difference(whole, paint(list));
        CAPTURE(d.greatest);
        CHECK(d.greatest > 1.3 * tests::greatest_allowed);
    }
}

// What another release of the painting libraries may do to edges is of the size of a twentieth of a pixel:
// they cut a pixel into 15 or 16 parts.
TEST_CASE("a twentieth of a pixel is let pass") {
    for (const Golden& g : golden_pictures()) {
        const Pixels whole = paint(list_of(g));
        DrawingList list = list_of(g);
        for (Item& item : list.items) {
            if (Shape* shape = std::get_if<Shape>(&item))
                for (Segment& s : shape->path)
                    for (Point* p : {&s.to, &s.handle_start, &s.handle_end}) *p += Point(0.05, 0.05);
            if (Text* text = std::get_if<Text>(&item)) text->at += Point(0.05, 0.05);
        }
        const Difference d = difference(whole, paint(list));
        CAPTURE(g.name);
        CAPTURE(d.greatest);
        CAPTURE(d.mean);
        CHECK(look_alike(d));
        CHECK(d.greatest > 0.0);
    }
}

TEST_CASE("a colour that has changed is found") {
    const Pixels whole = paint(list_of(golden_pictures()[0]));
    DrawingList list = list_of(golden_pictures()[0]);
    // The die's fill, turned a little towards grey.
    const Colour fill = tool_colours(tool::Role::die, Theme::light).fill;
    int changed = 0;
    for (Item& item : list.items)
        if (Shape* shape = std::get_if<Shape>(&item);
            shape && shape->fill && shape->fill->red == fill.red && shape->fill->blue == fill.blue) {
            shape->fill = mixed(fill, Colour{0.5, 0.5, 0.5, 1.0}, 0.15);
            ++changed;
        }
    REQUIRE(changed == 1);
    const Difference d = difference(whole, paint(list));
    CAPTURE(d.greatest);
    CHECK(d.greatest > 1.3 * tests::greatest_allowed);
}

TEST_CASE("a thing that is missing is found, whichever it is of those that can be seen") {
    const DrawingList list = list_of(golden_pictures()[0]);
    const Pixels whole = paint(list);
    int texts = 0;
    for (size_t i = 0; i < list.items.size(); ++i) {
        if (!std::holds_alternative<Text>(list.items[i])) continue;
        DrawingList without = list;
        without.items.erase(without.items.begin() + static_cast<std::ptrdiff_t>(i));
        CAPTURE(std::get<Text>(list.items[i]).words);
        CHECK_FALSE(look_alike(difference(whole, paint(without))));
        ++texts;
    }
    CHECK(texts > 20);
}

TEST_CASE("the same picture has no difference, and pictures of two sizes are no pair") {
    const Pixels whole = paint(list_of(golden_pictures()[3]));
    CHECK(difference(whole, whole).greatest == 0.0);
    CHECK_THROWS_AS(difference(whole, paint(draw_stage(recording(), 0.0, plain(), {320, 180}))),
                    std::runtime_error);
}
