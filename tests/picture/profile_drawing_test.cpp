// The finished profile on the drawing: words that can be read, spikes as long as they say, true proportions.

#include "render/picture/profile_drawing.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "render/picture/palette.h"
#include "sim/errors.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::check_words;
using overbend::tests::words_of;

namespace {

// An angle, one of its flats off by 0.05 mm at the end.
ProfileSheet angle() {
    ProfileSheet s;
    s.title = "Angle";
    s.remark = "DC01, 1 mm; every angle within 0.010 degrees";
    s.thickness = 1.0;
    s.drawn = {{0.0, 0.0}, {40.0, 0.0}, {40.0, 30.0}};
    s.made = {{0.0, 0.05}, {40.0, 0.0}, {40.0, 30.0}};
    s.places = {{{0.0, 0.0}, {0.0, 0.05}, "flat 1", true}, {{20.0, 0.0}, {20.0, 0.025}, "flat 1", false}};
    return s;
}

std::vector<Shape> lines_in(const DrawingList& list, const Colour& colour) {
    std::vector<Shape> found;
    for (const Item& item : list.items)
        if (const Shape* shape = std::get_if<Shape>(&item))
            if (shape->stroke && shape->stroke->red == colour.red && shape->stroke->green == colour.green)
                found.push_back(*shape);
    return found;
}

}  // namespace

TEST_CASE("the profile's words can be read at every size, with long titles and names too") {
    ProfileSheet sheet = angle();
    for (const int height : {400, 794, 1588}) check_words(draw_profile(sheet, height), 7);
    sheet.title =
        "A bracket with a title that is far longer than any sheet of paper is wide, twice over at least";
    sheet.remark = sheet.title + "; " + sheet.title;
    for (ProfilePlace& p : sheet.places) p.name = "bend 'a name that goes on and on and on'", p.worst = true;
    check_words(draw_profile(sheet, 794), 7);
}

TEST_CASE("spikes are as many times as long as the deviation as the picture says") {
    const DrawingList list = draw_profile(angle(), 794);
    double times = 0.0;
    for (const Text& t : words_of(list))
        if (t.words.rfind("deviation \u00d7 ", 0) == 0) times = std::stod(t.words.substr(13));
    REQUIRE(times >= 1.0);
    const std::vector<Shape> spikes = lines_in(list, okabe_ito::vermillion);
    REQUIRE(spikes.size() == 3);  // two places, and the legend's
    const auto length = [](const Shape& s) { return (s.path[1].to - s.path[0].to).norm(); };
    // the drawing's own two flats give the scale
    const std::vector<Shape> band = lines_in(list, okabe_ito::sky_blue);
    REQUIRE_FALSE(band.empty());
    const double scale = (band[0].path[1].to - band[0].path[0].to).norm() / 40.0;
    CHECK((band[0].path[2].to - band[0].path[1].to).norm() == doctest::Approx(30.0 * scale));
    CHECK(length(spikes[0]) == doctest::Approx(times * scale * 0.05));
    CHECK(length(spikes[1]) == doctest::Approx(times * scale * 0.025));
}

TEST_CASE("a profile that meets the drawing to the last has no spikes, and nothing is refused but nonsense") {
    ProfileSheet sheet = angle();
    sheet.made = sheet.drawn;
    for (ProfilePlace& p : sheet.places) p.made = p.drawn;
    CHECK_NOTHROW(draw_profile(sheet, 794));
    CHECK_THROWS_AS(draw_profile(sheet, 100), OutOfRange);
    sheet.drawn.clear();
    CHECK_THROWS_AS(draw_profile(sheet, 794), OutOfRange);
}
