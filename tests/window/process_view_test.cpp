// The picture of a job in the window: zoomed about the pointer, dragged, with its magnifier, its colours, its
// charts, its springback; and a section of the strip that was clicked.

#include <doctest/doctest.h>

#include "render/picture/strip_hit.h"
#include "tests/window/process_session.h"

using namespace overbend;
using picture::Place;
using picture::Point;
using tests::Session;
using K = sf::Keyboard;

namespace {

// While it is pressed, near the stop.
void to_the_press(Session& s) {
    const window::Stretch& stroke = s.playback().strokes[0];
    s.scrub_to(stroke.first + 0.45 * (stroke.last - stroke.first));
    REQUIRE(s.shown()->instant.passage == film::Passage::press);
}

// The bend's place on the screen.
Point bend(Session& s) {
    const double line = s.playback().shown.strokes[0].bends[0].blank_position;
    return s.on_screen(picture::spot_on(s.recording(), s.state(), line).at);
}

void check_names(Session& s) {
    const picture::View& view = s.shown()->view;
    CHECK_FALSE(view.labels.empty());
    for (std::size_t i = 0; i < view.labels.size(); ++i) {
        CHECK(picture::holds(view.stage, view.labels[i].box));
        for (std::size_t j = 0; j < i; ++j)
            CHECK_FALSE(picture::overlap(view.labels[i].box, view.labels[j].box));
    }
}

}  // namespace

TEST_CASE("the wheel zooms about the pointer, a drag moves, fit brings all back") {
    Session s("one-bend-dc01");
    to_the_press(s);
    const double fitted = s.shown()->view.scale;
    // Whole pixels, as a mouse has them.
    const Point at = (bend(s) + Point(20.0, -30.0)).array().floor();
    const Place there = s.place_at(at);
    s.user.wheel(at, 4.0);
    REQUIRE(s.user.wait());
    CHECK(s.shown()->view.scale == doctest::Approx(fitted * std::pow(1.2, 4.0)));
    CHECK((s.place_at(at) - there).norm() < 1e-6);
    check_names(s);
    s.keep("zoomed_in");

    const Place held = s.place_at(at);
    s.user.drag(at, at + Point(60.0, 40.0));
    REQUIRE(s.user.wait());
    CHECK((s.place_at(at + Point(60.0, 40.0)) - held).norm() < 0.5);  // but for the first pixels of the drag
    CHECK_FALSE(s.user.has("Close section"));                         // it was no click
    check_names(s);
    s.user.drag(at, at + Point(30.0, 0.0), sf::Mouse::Right);
    REQUIRE(s.user.wait());
    const Place middle = s.shown()->view.centre;
    s.key(K::A);
    CHECK(s.shown()->view.centre.x() < middle.x());
    s.key(K::D);
    s.key(K::W);
    CHECK(s.shown()->view.centre.y() > middle.y());
    s.key(K::S);
    CHECK((s.shown()->view.centre - middle).norm() < 1e-9);
    s.click("Fit");
    CHECK(s.shown()->view.scale == fitted);
    s.click("Zoom in");
    CHECK(s.shown()->view.scale > fitted);
    s.key(K::Q);
    CHECK(s.shown()->view.scale == doctest::Approx(fitted));
    s.key(K::E);
    s.click("Zoom out");
    s.click("Zoom out");
    CHECK(s.shown()->view.scale < fitted);
    s.keep("zoomed_out");
    s.key(K::F);
    CHECK(s.shown()->view.scale == fitted);
    s.user.wheel(at, 500.0);
    REQUIRE(s.user.wait());
    CHECK(s.shown()->view.scale < 50.0 * fitted);
    s.user.wheel(at, -900.0);
    REQUIRE(s.user.wait());
    CHECK(s.shown()->view.scale > 0.2 * fitted);
    s.user.double_click_at(at);
    REQUIRE(s.user.wait());
    CHECK(s.shown()->view.scale == fitted);
}

TEST_CASE("names go along while it moves, and find their places when it rests") {
    Session s("one-bend-dc01");
    to_the_press(s);
    // It counts as moving for a while after the wheel; on a slow machine the picture comes later than that.
    bool carried = false;
    for (int tries = 0; tries < 20 && !carried; ++tries) {
        s.user.wheel(bend(s), tries % 2 == 0 ? 2.0 : -2.0);
        for (const sf::Clock clock; !carried && clock.getElapsedTime().asSeconds() < 0.3f;) {
            s.window.turn(s.show);
            carried = s.shown()->request.names == picture::Names::carried_along;
        }
    }
    CHECK(carried);
    REQUIRE(s.user.wait());
    CHECK(s.shown()->request.names == picture::Names::placed_anew);
    check_names(s);
}

TEST_CASE("magnifier: none, at the bend, at the pointer") {
    Session s("one-bend-dc01");
    to_the_press(s);
    REQUIRE(s.shown()->view.lens);
    const double at_bend = s.shown()->view.lens->blank_position;
    s.user.choose("Magnifier", "at the pointer");
    REQUIRE(s.user.wait());
    const Place left = picture::spot_on(s.recording(), s.state(), at_bend - 4.0).at;
    s.user.point_at(s.on_screen(left));
    REQUIRE(s.user.wait());
    REQUIRE(s.shown()->view.lens);
    CHECK(s.shown()->view.lens->blank_position == doctest::Approx(at_bend - 4.0).epsilon(0.02));
    s.keep("magnifier_at_pointer");
    s.key(K::M);  // none
    CHECK_FALSE(s.shown()->view.lens);
    s.key(K::M);  // at the bend
    REQUIRE(s.shown()->view.lens);
    CHECK(s.shown()->view.lens->blank_position == at_bend);
    CHECK(s.show.remembered().lens);
}

TEST_CASE("colours, charts and springback as they are chosen") {
    Session s("one-bend-dc01");
    to_the_press(s);
    s.user.choose("Colours", "plastic strain");
    REQUIRE(s.user.wait());
    CHECK(s.shown()->request.colouring == picture::Colouring::plastic_strain);
    CHECK(s.show.remembered().plastic_strain);
    s.keep("plastic_strain");
    s.key(K::C);
    CHECK(s.shown()->request.colouring == picture::Colouring::hoop_stress);
    const double narrow = s.shown()->view.stage.width;
    s.click("Charts");
    CHECK(s.shown()->view.stage.width > narrow + 100.0);
    CHECK_FALSE(s.show.remembered().charts);
    s.key(K::H);
    CHECK(s.shown()->view.stage.width == narrow);
    const ui::Control slider = s.user.find("Springback");
    s.user.click_at({slider.box.x + 0.5 * slider.box.width, slider.box.centre().y()});
    REQUIRE(s.user.wait());
    CHECK(s.show.remembered().springback_scale > 5.0);
    const window::Stretch& stroke = s.playback().strokes[0];
    s.scrub_to(stroke.first + 0.8 * (stroke.last - stroke.first));
    CHECK(s.shown()->instant.springback_scale > 5.0);
    s.keep("springback");
}

TEST_CASE("what is chosen is remembered") {
    window::Remembered r;
    r.charts = false, r.lens = false, r.plastic_strain = true, r.springback_scale = 5.0, r.speed = 0.5;
    Session s("one-bend-dc01", r);
    CHECK(s.playback().options.charts == picture::Charts::hidden);
    CHECK(s.playback().options.lens == picture::Lens::hidden);
    CHECK(s.shown()->request.colouring == picture::Colouring::plastic_strain);
    CHECK(s.show.process().head().speed == 0.5);
    const window::Remembered again = s.show.remembered();
    CHECK_FALSE(again.charts);
    CHECK_FALSE(again.lens);
    CHECK(again.springback_scale == 5.0);
    CHECK(std::filesystem::path(again.last_case).is_absolute());
    CHECK(std::filesystem::exists(again.last_case));
}

TEST_CASE("the last case comes again where none is named") {
    window::Remembered r;
    r.last_case = std::filesystem::absolute("cases/one-bend-dc01/case.toml").string();
    window::MainShow show(r, {});
    ui::Window window({});
    tests::Script user(window, show);
    REQUIRE(user.wait());
    CHECK(show.process().shown());
}

TEST_CASE("a click on the strip shows what is there, and it follows") {
    Session s("one-bend-dc01");
    to_the_press(s);
    s.user.click_at(s.corner() + s.shown()->view.stage.centre() +
                    Point(0.0, -0.45 * s.shown()->view.stage.height));
    REQUIRE(s.user.wait());
    CHECK_FALSE(s.user.has("Close section"));  // that was not on the strip

    // On its lower side, where it is pulled.
    const double line = s.playback().shown.strokes[0].bends[0].blank_position;
    const picture::Station cut = picture::station_at(s.recording(), s.state(), line);
    s.user.click_at(s.on_screen(cut.at(0.8 * cut.edge.front())));
    REQUIRE(s.user.wait());
    REQUIRE(s.user.has("Close section"));
    REQUIRE(s.shown()->section);
    const chart::SectionNow now = *s.shown()->section;
    CHECK(std::abs(now.blank_position - line) < 0.5);
    REQUIRE(now.marked);
    CHECK(now.layers[*now.marked].height < 0.0);
    CHECK(now.layers[*now.marked].stress > 100.0);
    CHECK(now.layers[*now.marked].plastic_strain > 0.0);
    CHECK(now.path.unloading.empty());
    CHECK(s.user.has("Section charts"));
    s.keep("section");

    const window::Stretch& stroke = s.playback().strokes[0];
    s.scrub_to(stroke.last);
    REQUIRE(s.shown()->section);
    CHECK(s.shown()->section->path.unloading.size() > 1);
    CHECK(std::abs(s.shown()->section->at.moment) < 0.02 * now.at.moment);
    s.keep("section_free");
    const double before = s.shown()->section->blank_position;
    const int layer = *s.shown()->section->marked;
    for (int i = 0; i < 8; ++i) s.key(K::Period, false, true);
    CHECK(s.shown()->section->blank_position > before);
    for (int i = 0; i < 9; ++i) s.key(K::Comma, false, true);
    CHECK(s.shown()->section->blank_position < before);
    s.key(K::W, false, true);
    CHECK(*s.shown()->section->marked == layer + 1);
    s.key(K::S, false, true);
    CHECK(*s.shown()->section->marked == layer);
    s.click("Close section");
    CHECK_FALSE(s.user.has("Close section"));
    s.key(K::N);
    REQUIRE(s.shown()->section);
    CHECK(std::abs(s.shown()->section->blank_position - line) < 0.5);
    s.key(K::X);
    CHECK_FALSE(s.user.has("Close section"));
}

TEST_CASE("a bend that is made keeps its path in later strokes, whichever way the strip lies") {
    Session s("cable-hook");
    const auto strokes = s.playback().strokes;
    s.key(K::N);
    s.scrub_to(strokes[0].last);
    const chart::SectionNow made = *s.shown()->section;
    CHECK(made.before.empty());
    CHECK(made.at.curvature > 0.1);
    for (std::size_t k = 1; k < strokes.size(); ++k) {
        CAPTURE(k);
        s.scrub_to(0.5 * (strokes[k].first + strokes[k].last));
        REQUIRE(s.shown()->instant.stroke == static_cast<int>(k));
        const chart::SectionNow& later = *s.shown()->section;
        // The path comes in one piece to where it is now: it is bent no more but a little, elastically.
        REQUIRE_FALSE(later.before.empty());
        CHECK(later.before.back().curvature ==
              doctest::Approx(later.path.loading.front().curvature).epsilon(0.01));
        CHECK(later.at.curvature == doctest::Approx(made.at.curvature).epsilon(0.05));
    }
    s.keep("section_later");
}

TEST_CASE("what is shown can be had as a drawing, zoomed and marked as it is") {
    Session s("one-bend-dc01");
    to_the_press(s);
    s.key(K::E);
    s.key(K::N);
    s.user.point_at({3.0, 3.0});
    const picture::DrawingList list = window::PicturePainter::drawing_of(s.shown()->request);
    const picture::Pixels drawn = picture::paint(list), seen = s.user.screenshot();
    const Point corner = s.corner();
    int different = 0;
    for (int y = 0; y < drawn.height; y += 7)
        for (int x = 0; x < drawn.width; x += 5) {
            const std::size_t a = 4 * (static_cast<std::size_t>(y) * drawn.width + x);
            const std::size_t b =
                4 * (static_cast<std::size_t>(y + static_cast<int>(corner.y())) * seen.width + x +
                     static_cast<int>(corner.x()));
            different += drawn.bgra[a] != seen.bgra[b] || drawn.bgra[a + 1] != seen.bgra[b + 1] ? 1 : 0;
        }
    CHECK(different == 0);
}
