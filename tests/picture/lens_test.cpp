// What the stage shows besides: the magnifier, the elastic core, the neutral line, bend lines as ticks,
// springback drawn larger, the gauge's name, and a picture without background.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "render/picture/drawn_springback.h"
#include "render/picture/elastic_core.h"
#include "render/picture/painter.h"
#include "render/picture/stage.h"
#include "render/picture/swept.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "tests/files/own_folder.h"
#include "tests/picture/check_words.h"
#include "tests/picture/perceptual.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::synthetic_recording;
using overbend::tests::SyntheticStroke;
using overbend::tests::words_of;

namespace {

constexpr double held = 25.0;
constexpr double released = 28.0;
constexpr PictureSize size{1280, 720};

StageInfo lip_info() {
    StageInfo info;
    info.step_name = "lip";
    info.strip_width = 20.0;
    info.caption = "Press: the punch presses the strip into the die.";
    info.bends = {{"lip", 18.0, 0.0, {}, {}}};
    return info;
}

bool says(const DrawingList& list, const std::string& words) {
    const std::vector<Text> all = words_of(list);
    return std::any_of(all.begin(), all.end(), [&](const Text& t) { return t.words == words; });
}

double bend_angle(const stroke::Recording& r, const stroke::State& s) {
    return measured(r, s, {"lip", 18.0, 8.0, {}, {}}).angle;
}

}  // namespace

TEST_CASE("springback drawn k times as large opens the bend k times as far, and lengths stay") {
    const stroke::Recording r = synthetic_recording();
    const stroke::State& loaded = r.states[25];
    const stroke::State& free = r.states[28];
    const double sprung = bend_angle(r, free) - bend_angle(r, loaded);
    REQUIRE(std::abs(sprung) > 0.01);
    for (const double scale : {1.0, 2.5, 5.0, 20.0}) {
        CAPTURE(scale);
        const stroke::State drawn = with_larger_springback(r, loaded, free, scale, 18.0);
        CHECK(bend_angle(r, drawn) - bend_angle(r, loaded) == doctest::Approx(scale * sprung).epsilon(1e-9));
        for (size_t e = 0; e + 1 < free.x.size(); ++e)
            CHECK(std::hypot(drawn.x[e + 1] - drawn.x[e], drawn.y[e + 1] - drawn.y[e]) ==
                  doctest::Approx(std::hypot(free.x[e + 1] - free.x[e], free.y[e + 1] - free.y[e]))
                      .epsilon(1e-9));
        CHECK(drawn.hoop_stress == free.hoop_stress);
    }
    // A strip that has only been lifted as a whole is where it was.
    stroke::State lifted = loaded;
    for (double& y : lifted.y) y += 3.0;
    CHECK(with_larger_springback(r, loaded, lifted, 7.0, 18.0).y == lifted.y);
}

TEST_CASE("the picture says how large springback is drawn, and its numbers stay the true ones") {
    const stroke::Recording r = synthetic_recording();
    StageInfo info = lip_info();
    info.ghost = held;
    const DrawingList plain = draw_stage(r, released, info, size);
    info.springback_scale = 5.0;
    const DrawingList larger = draw_stage(r, released, info, size);
    CHECK(says(larger, "springback drawn 5 times as large"));
    CHECK_FALSE(says(plain, "springback drawn 5 times as large"));
    for (const char* words : {"lip free 90.2\u00b0", "90.2\u00b0", "under load 92.8\u00b0"}) {
        CAPTURE(words);
        CHECK(says(plain, words));
        CHECK(says(larger, words));
    }
    CHECK(as_text(plain) != as_text(larger));
    // Nothing has sprung back yet, or nothing is said of what it sprung from.
    info.springback_scale = 5.0;
    info.ghost.reset();
    StageInfo true_size = info;
    true_size.springback_scale = 1.0;
    CHECK(as_text(draw_stage(r, held, info, size)) == as_text(draw_stage(r, held, true_size, size)));
    for (const double wrong : {0.5, 21.0, std::nan("")}) {
        info.springback_scale = wrong;
        CHECK_THROWS_WITH_AS(draw_stage(r, held, info, size), doctest::Contains("springback"), OutOfRange);
    }
}

// A strip bent to one curvature all along, of a metal that flows where |z| curvature is above a strain: the
// core ends at that height. Allowed 2 per cent of the thickness: the layers' heights are bowed a little by
// the bend.
TEST_CASE("the elastic core ends where the metal has flowed") {
    stroke::Recording r = synthetic_recording();
    stroke::State& s = r.states[25];
    const double yield = 0.002;
    for (const double half : {0.12, 0.2, 0.31, 0.42}) {  // of the thickness
        const double curvature = yield / (half * r.thickness);
        std::fill(s.curvature.begin(), s.curvature.end(), curvature);
        std::fill(s.stretch.begin(), s.stretch.end(), 1.0);
        for (size_t e = 0; e < s.curvature.size(); ++e)
            for (int k = 0; k < r.layers(); ++k)
                s.plastic_strain[e * r.layers() + k] =
                    static_cast<float>(std::max(0.0, std::abs(r.layer_height[k]) * curvature - yield));
        const std::vector<Station> at = stations(r, s, 1.0);
        const std::optional<Core> core = elastic_core(r, s, at[at.size() / 2]);
        CAPTURE(half);
        REQUIRE(core);
        CHECK_FALSE(core->whole);
        CHECK(std::abs(core->high / r.thickness - half) < 0.02);
        CHECK(std::abs(core->low / r.thickness + half) < 0.02);
    }
    std::fill(s.plastic_strain.begin(), s.plastic_strain.end(), 0.0f);
    CHECK(elastic_core(r, s, stations(r, s, 1.0)[5])->whole);
    std::fill(s.plastic_strain.begin(), s.plastic_strain.end(), 0.01f);
    CHECK_FALSE(elastic_core(r, s, stations(r, s, 1.0)[5]));
}

TEST_CASE("the neutral line moves inwards with the stretch, and a straight strip has none") {
    stroke::Recording r = synthetic_recording();
    stroke::State& s = r.states[25];
    std::fill(s.curvature.begin(), s.curvature.end(), 0.2);
    std::fill(s.stretch.begin(), s.stretch.end(), 1.01);
    const std::vector<Station> at = stations(r, s, 1.0);
    const std::optional<double> height = neutral_height(r, s, at[at.size() / 2]);
    REQUIRE(height);
    // lambda^2 - 2 z kappa = 1, where the height is 2 z / (lambda + 1); between layers it is taken in
    // proportion.
    CHECK(*height == doctest::Approx((1.01 * 1.01 - 1.0) / 0.2 / (1.01 + 1.0)).epsilon(0.002));
    CHECK(*height > 0.0);  // towards the centre of a bend that turns up
    std::fill(s.curvature.begin(), s.curvature.end(), 0.0);
    CHECK_FALSE(neutral_height(r, s, at[at.size() / 2]));
}

TEST_CASE("a part of the stations is what it is of the whole") {
    const stroke::Recording r = synthetic_recording();
    const std::vector<Station> whole = stations(r, r.states[25], 0.2);
    const std::vector<Station> part = stations(r, r.states[25], 0.2, 20, 40);
    REQUIRE(part.size() > 20);
    CHECK(part.front().along == 20.0);
    CHECK(part.back().along == 41.0);
    for (const Station& p : part) {
        const auto same = std::find_if(whole.begin(), whole.end(),
                                       [&](const Station& w) { return std::abs(w.along - p.along) < 1e-12; });
        REQUIRE(same != whole.end());
        CHECK((same->middle - p.middle).norm() < 1e-12);
        CHECK(std::abs(same->edge.front() - p.edge.front()) < 1e-12);
    }
}

TEST_CASE("the magnifier is shown when asked for, says how large, and stays while the strip moves") {
    const stroke::Recording r = synthetic_recording();
    StageInfo info = lip_info();
    CHECK_FALSE(choose_view(r, size, info).lens);
    info.lens = Lens::shown;
    const View view = choose_view(r, size, info);
    REQUIRE(view.lens);
    CHECK(view.lens->blank_position == 18.0);
    const std::string times =
        fixed(view.lens->magnification,
              view.lens->magnification == std::floor(view.lens->magnification) ? 0 : 1) +
        " times as large";
    for (const double instant : {0.0, 12.0, held, released})
        CHECK(says(draw_stage(r, instant, info, size, view), times));
    info.lens = Lens::hidden;
    CHECK_FALSE(says(draw_stage(r, held, info, size, view), times));
    info.lens = Lens::shown;
    info.motion = StripMotion{};
    CHECK_FALSE(says(draw_stage(r, held, info, size, view), times));
}

TEST_CASE("bend lines are named while the strip lies, and go with it") {
    const stroke::Recording r = synthetic_recording();
    StageInfo info = lip_info();
    const size_t without = draw_stage(r, 0.0, info, size).items.size();
    info.ticks = {{"lip", 18.0}, {"root", 30.0}};
    const DrawingList placed = draw_stage(r, 0.0, info, size);
    CHECK(says(placed, "root"));
    CHECK(says(placed, "lip"));
    CHECK(placed.items.size() == without + 3);  // one more tick with its casing, and a name
    CHECK_FALSE(says(draw_stage(r, 12.0, info, size), "root"));
}

TEST_CASE("a gauge has its name while the strip lies against it") {
    stroke::Recording r = synthetic_recording();
    tool::RigidTool gauge = r.tools[1];
    gauge.name = "";
    gauge.role = tool::Role::gauge;
    gauge.outline =
        tool::round_corners({{{0.0, 0.0}, 0.0}, {{30.0, 0.0}, 0.0}, {{30.0, 6.0}, 0.0}, {{0.0, 6.0}, 0.0}});
    gauge.position = {r.states[0].x.back(), r.states[0].y.back() - 3.0};
    gauge.draws_back = 1.0;  // still in the picture
    r.tools.push_back(gauge);
    CHECK(says(draw_stage(r, 0.0, lip_info(), size), "gauge"));
    CHECK_FALSE(says(draw_stage(r, 12.0, lip_info(), size), "gauge"));
}

TEST_CASE("without charts the stage has the whole width, and the legend is on it") {
    const Layout with = lay_out(size);
    const Layout without = lay_out(size, Charts::hidden);
    CHECK(without.stage.width > with.stage.width + 15.0 * with.unit);
    CHECK(holds(without.stage, without.legend));
    StageInfo info = lip_info();
    info.charts = Charts::hidden;
    const DrawingList list = draw_stage(synthetic_recording(), held, info, size);
    CHECK(says(list, "hoop stress, MPa"));
    CHECK_FALSE(says(list, "travel, mm"));
}

TEST_CASE("a picture without background has alpha, and the same colours where it is painted") {
    StageInfo info = lip_info();
    info.backdrop = Backdrop::transparent;
    const Pixels clear = paint(draw_stage(synthetic_recording(), held, info, {640, 360}));
    CHECK(clear.alpha == Alpha::premultiplied);
    CHECK(clear.bgra[3] == 0);
    const std::string png = png_bytes(clear);
    CHECK(png[25] == 6);  // red, green, blue and alpha
    info.backdrop = Backdrop::page;
    const Pixels opaque = paint(draw_stage(synthetic_recording(), held, info, {640, 360}));
    CHECK(opaque.alpha == Alpha::unused);
    CHECK(png_bytes(opaque)[25] == 2);
    // In the middle of the die, where both have the same fills.
    int solid = 0;
    for (size_t i = 0; i < clear.bgra.size(); i += 4) {
        if (clear.bgra[i + 3] != 255) continue;
        ++solid;
    }
    CHECK(solid > 640 * 360 / 10);
}

TEST_CASE("a colour that covers half comes out of a PNG as it was") {
    DrawingList list;
    list.width = 4;
    list.height = 4;
    list.background = {1.0, 1.0, 1.0, 0.0};
    Shape half;
    half.path = rectangle({0.0, 0.0, 4.0, 2.0});
    half.fill = Colour{1.0, 0.5, 0.0, 0.5};
    list.items = {half};
    const Pixels pixels = paint(list);
    CHECK(pixels.bgra[3] == 128);
    CHECK(pixels.bgra[2] == 128);  // multiplied by the half
    CHECK(pixels.bgra[4 * 15 + 3] == 0);
    const tests::OwnFolder folder;
    const Pixels back = tests::read_png(folder.write("half.png", png_bytes(pixels)).string());
    CHECK(back.alpha == Alpha::premultiplied);
    CHECK(back.bgra == pixels.bgra);
}
