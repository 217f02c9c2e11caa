// The bench in its window: every control, by mouse and by keys.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

#include "scenes/window/bench/controls.h"
#include "scenes/window/main_show.h"
#include "sim/units.h"
#include "tests/window/script.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;
using K = sf::Keyboard;

namespace {

Remembered on_the_bench(picture::Theme theme = picture::Theme::light, int width = 1280, int height = 720) {
    Remembered r;
    r.scene = SceneKind::bench, r.dark = theme == picture::Theme::dark, r.width = width, r.height = height;
    return r;
}

struct Bench {
    MainShow show;
    ui::Window window;
    tests::Script user;

    explicit Bench(const Remembered& remembered = on_the_bench(), double scale = 1.0)
        : show(remembered, {}),
          window(ui::WindowOptions{"overbend", remembered.width, remembered.height, scale}),
          user(window, show) {
        REQUIRE(user.wait());
        REQUIRE(told().shown);
    }
    const BenchState& state() { return show.bench().state(); }
    const BenchTold& told() { return show.bench().told(); }
    const BenchReading& first() { return told().shown->readings.front(); }
    void click(const std::string& words) {
        user.click(words);
        REQUIRE(user.wait());
    }
    void key(K::Key code) {
        user.key(code);
        REQUIRE(user.wait());
    }
    // A slider to a part of its width.
    void slide(const std::string& words, double part) {
        const picture::Rect box = user.find(words).box;
        user.click_at({box.x + 6.0 + part * (box.width - 12.0), box.centre().y()});
        REQUIRE(user.wait());
    }
    void keep(const std::string& name) {
        if (const char* folder = std::getenv("OVERBEND_SCREENSHOTS"))
            user.save(std::string(folder) + "/" + name + ".png");
    }
};

BenchSetup setup_with(Bench& b, double thickness) {
    BenchSetup setup = b.state().setup;
    setup.thickness = thickness;
    return setup;
}

}  // namespace

TEST_CASE("bench: the punch follows the mouse, and on release the strip springs back") {
    Bench b;
    b.keep("bench-pressed");
    const double before = b.state().way;
    const picture::Point middle = b.user.find("Punch").box.centre() - picture::Point(150.0, 0.0);
    b.user.drag(middle, middle + picture::Point(0.0, 20.0));
    CHECK(b.state().way > before + 0.1);
    REQUIRE(b.user.wait());
    CHECK(b.state().phase == BenchPhase::free);
    CHECK(b.first().let_go);
    b.keep("bench-free");
    CHECK(b.told().shown->way == 0.0);
    const VeeResult alone =
        bend_vee(vee_of(b.state().setup, 0), {stroke::StopKind::travel, b.state().depth}, {});
    CHECK(b.first().free == doctest::Approx(alone.free).epsilon(1e-6));
    CHECK(b.told().rate > 0.0);
    CHECK_FALSE(b.user.find("Release").enabled);
    b.click("Press again");
    CHECK(b.state().phase == BenchPhase::pressed);
    CHECK(b.first().presses == 2);
    CHECK_FALSE(b.first().let_go);
    b.keep("bench-second-press");
    b.click("Release");
    CHECK(b.state().phase == BenchPhase::free);
    // Raised by hand it stays as bent as by the button.
    b.click("New strip");
    const double loaded = b.first().loaded;
    b.slide("Travel", 0.05);
    CHECK(b.first().let_go);
    CHECK(b.first().presses == 1);
    CHECK(b.first().loaded == doctest::Approx(loaded).epsilon(1e-9));
    CHECK(b.first().free > 0.9 * loaded);
    b.keep("bench-raised");
}

TEST_CASE("bench: travel by keys, fine and coarse") {
    Bench b;
    const double start = b.state().way;
    b.key(K::Down);
    const double fine = b.state().way - start;
    CHECK(fine > 0.0);
    b.key(K::Up);
    CHECK(b.state().way == doctest::Approx(start));
    b.key(K::PageDown);
    CHECK(b.state().way - start == doctest::Approx(20.0 * fine));
    b.key(K::PageUp);
    b.key(K::PageUp);
    CHECK(b.state().way < start);
    b.key(K::L);
    CHECK(b.state().phase == BenchPhase::free);
    b.key(K::P);
    CHECK(b.state().phase == BenchPhase::pressed);
    b.key(K::B);
    CHECK(b.first().presses == 1);
    b.key(K::R);
    CHECK(b.state().way == doctest::Approx(start));
    b.key(K::M);
    CHECK(b.state().setup.metals[0].card == "dc04");
    // A slider that is being used has the arrows.
    while (b.window.ui().framed() != "Thickness") b.key(K::Tab);
    b.key(K::Space);
    const double there = b.state().way, thickness = b.state().setup.thickness;
    b.key(K::Right);
    CHECK(b.state().setup.thickness > thickness);
    b.key(K::Space);
    const double part = b.state().way / deepest(b.state().setup);
    CHECK(part == doctest::Approx(there / deepest(setup_with(b, thickness))));
    b.key(K::Down);
    CHECK(b.state().way / deepest(b.state().setup) > part);
}

TEST_CASE("bench: figures and tools; what cannot be made is told, and the last picture stays") {
    Bench b;
    const double springback = b.first().loaded - b.first().free;
    b.slide("Modulus", 0.2);
    CHECK(b.first().loaded - b.first().free > 1.5 * springback);
    CHECK(b.state().setup.metals[0].name == "dc01, changed");
    b.slide("Yield", 0.4);
    b.slide("Hardening", 0.6);
    b.click("Reset to card");
    CHECK(b.state().setup.metals[0].name == "dc01");
    CHECK(b.first().loaded - b.first().free == doctest::Approx(springback));
    b.slide("Thickness", 0.2);
    b.slide("Opening", 0.3);
    b.slide("Friction", 0.8);
    b.slide("Travel", 0.5);
    CHECK(b.state().way == doctest::Approx(0.5 * deepest(b.state().setup)).epsilon(0.03));
    CHECK_FALSE(b.told().trouble);
    const double shown = b.first().free;
    const double nose = b.state().setup.nose_radius;
    b.slide("Nose radius", 0.97);
    REQUIRE(b.told().trouble);
    CHECK(b.told().trouble->at == BenchSlider::nose);
    CHECK(b.first().free == shown);
    b.keep("bench-trouble");
    // It is not begun with the next time.
    CHECK(b.state().setup.nose_radius > 5.0);
    CHECK(b.show.remembered().bench.nose_radius == nose);
    b.slide("Nose radius", 0.05);
    CHECK_FALSE(b.told().trouble);
    b.click("Reset");
    CHECK(b.state().setup.thickness == 1.0);
    b.user.choose("Card", "brass-cuzn37");
    REQUIRE(b.user.wait());
    CHECK(b.first().name == "brass-cuzn37");
    b.click("Next material");
    CHECK(b.first().name == "bronze-cusn6");
}

TEST_CASE("bench: numbers are typed beside the sliders, with a comma or a point") {
    Bench b;
    b.user.type("Thickness, typed", "1,2");
    REQUIRE(b.user.wait());
    CHECK(b.state().setup.thickness == 1.2);
    b.user.type("Travel, typed", "2.5 mm");
    REQUIRE(b.user.wait());
    CHECK(b.state().way == 2.5);
    b.user.type("Yield, typed", "many");
    REQUIRE(b.user.wait());
    CHECK(b.state().setup.metals[0].yield == metal_of("dc01").yield);
    CHECK(b.user.window().ui().refused().count("Yield") == 1);
    b.keep("bench-refused");
    b.user.type("Yield, typed", "300");
    REQUIRE(b.user.wait());
    CHECK(b.state().setup.metals[0].yield == 300.0);
}

TEST_CASE("bench: four strips under one punch") {
    Bench b;
    for (int i = 0; i < 3; ++i) b.click("Add strip");
    REQUIRE(b.told().shown->readings.size() == 4);
    CHECK_FALSE(b.user.find("Add strip").enabled);
    b.click("Release");
    b.keep("bench-four");
    b.click("Dark");
    b.keep("bench-four-dark");
    b.click("Strip 2");
    CHECK(b.state().metal == 1);
    b.key(K::Num4);
    CHECK(b.state().metal == 3);
    b.click("Remove strip");
    CHECK(b.told().shown->readings.size() == 3);
    b.key(K::Delete);
    CHECK(b.told().shown->readings.size() == 2);
    b.keep("bench-two-dark");
}

TEST_CASE("bench: pure bending") {
    Bench b;
    b.click("Pure bending");
    CHECK(b.state().setup.kind == BenchKind::pure);
    const double before = b.first().loaded;
    b.slide("Curvature", 0.8);
    CHECK(b.first().loaded > before);
    const picture::Point middle = b.user.find("Punch").box.centre();
    b.user.drag(middle, middle - picture::Point(0.0, 30.0));
    REQUIRE(b.user.wait());
    CHECK(b.state().phase == BenchPhase::free);
    b.keep("bench-pure");
    b.slide("Curvature", 0.3);
    CHECK(b.state().way < 0.0);
    CHECK(b.first().loaded < 0.0);
    CHECK(b.first().presses == 2);
    b.keep("bench-bent-back");
    b.click("V bend");
    CHECK(b.state().setup.kind == BenchKind::vee);
}

TEST_CASE("bench: a class guesses, and the angle is told nowhere until then") {
    Bench b;
    b.key(K::G);
    CHECK(b.state().game.stage == GuessStage::guessing);
    CHECK(b.told().shown->request.look.free == FreeAngle::hidden);
    b.key(K::L);
    CHECK(b.state().phase == BenchPhase::pressed);
    CHECK_FALSE(b.user.has("Calculate"));
    b.user.type("Name and angle", "Ann 70");
    b.user.type("Name and angle", "65");
    b.user.type("Name and angle", "Bob");
    REQUIRE(b.user.wait());
    CHECK(b.state().game.guesses.size() == 2);
    CHECK(b.state().typed_wrong != "");
    b.keep("bench-guess");
    b.click("Show angle");
    CHECK(b.state().phase == BenchPhase::free);
    CHECK(b.told().shown->request.look.free == FreeAngle::told);
    CHECK(b.told().shown->request.look.line.substr(0, 8) == "Closest:");
    b.keep("bench-guess-shown");
    const std::string card = b.state().setup.metals[0].card;
    b.click("New round");
    CHECK(b.state().setup.metals[0].card != card);
    CHECK(b.state().game.guesses.empty());
    CHECK(b.told().shown->request.look.free == FreeAngle::hidden);
    b.click("Guess");
    CHECK(b.state().game.stage == GuessStage::off);
}

TEST_CASE("bench: the overbend that is needed") {
    Bench b;
    b.user.type("Target angle", "85");
    b.click("Calculate");
    REQUIRE(b.told().overbend);
    CHECK(b.told().overbend->reason == "");
    b.click("Press to this angle");
    CHECK(b.first().free / degree == doctest::Approx(85.0).epsilon(1e-4));
    b.keep("bench-overbend");
}

TEST_CASE("bench: large letters, a large window, and one that has no room") {
    {
        Bench b(on_the_bench(picture::Theme::dark, 1920, 1080), 1.5);
        b.click("Release");
        b.keep("bench-1080-dark");
    }
    MainShow show(on_the_bench(picture::Theme::light, 400, 300), {});
    ui::Window window(ui::WindowOptions{"overbend", 400, 300, 1.0});
    tests::Script user(window, show);
    CHECK(user.wait());
    CHECK(show.bench().told().error != "");
}
