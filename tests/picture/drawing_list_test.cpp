// Paths and words as plain data.

#include "render/picture/drawing_list.h"

#include <doctest/doctest.h>

#include <cmath>

#include "render/picture/painter.h"
#include "render/picture/text_width.h"

using namespace overbend::picture;

namespace {

// A point of a cubic.
Point on_curve(const Point& start, const Segment& s, double t) {
    const double u = 1.0 - t;
    return u * u * u * start + 3.0 * u * u * t * s.handle_start + 3.0 * u * t * t * s.handle_end +
           t * t * t * s.to;
}

}  // namespace

TEST_CASE("an arc keeps its radius within 3 in 10 000") {
    const Point centre(40.0, 30.0);
    for (const double to : {1.0, -2.0, 5.5}) {
        const Path path = arc(centre, 10.0, 0.3, to);
        Point start = path.front().to;
        for (size_t i = 1; i < path.size(); ++i) {
            for (double t = 0.0; t <= 1.0; t += 0.1)
                CHECK(std::abs((on_curve(start, path[i], t) - centre).norm() - 10.0) < 0.003);
            start = path[i].to;
        }
        CHECK((start - (centre + 10.0 * Point(std::cos(to), std::sin(to)))).norm() < 1e-9);
    }
}

TEST_CASE("boxes: overlap, holding, growing") {
    const Rect a{0.0, 0.0, 10.0, 10.0};
    CHECK(overlap(a, {9.0, 9.0, 5.0, 5.0}));
    CHECK_FALSE(overlap(a, {10.0, 0.0, 5.0, 5.0}));
    CHECK(holds(a, Rect{0.0, 0.0, 10.0, 10.0}));
    CHECK_FALSE(holds(a, Rect{1.0, 1.0, 10.0, 2.0}));
    CHECK(grown(a, 2.0).right() == 12.0);
}

TEST_CASE("the list in words tells apart what differs") {
    DrawingList a;
    a.width = 320;
    a.height = 180;
    a.items.emplace_back(Text{"travel", {1.0, 2.0}, Across::left, 10.0, {}, Weight::normal, {}});
    DrawingList b = a;
    CHECK(as_text(a) == as_text(b));
    std::get<Text>(b.items[0]).at.x() += 1e-12;
    CHECK(as_text(a) != as_text(b));
}

TEST_CASE("words are as wide as the table says when they are painted") {
    for (const Weight weight : {Weight::normal, Weight::bold})
        for (const std::string words :
             {"Press: the punch presses the strip into the die.", "hoop stress, MPa", "\u221212.34 mm",
              "under load 92.8\u00b0", "B\u00fcgel 7"}) {
            const Text text{words, {0.0, 100.0}, Across::left, 40.0, {}, weight, {}};
            const Rect painted = painted_box(text);
            CAPTURE(words);
            // The table has no letters with accents: they are taken wider than they are.
            const double allowed = words.find("\u00fc") == std::string::npos ? 0.03 : 0.05;
            CHECK(painted.right() == doctest::Approx(text_box(text).right()).epsilon(allowed));
            CHECK(holds(grown(text_box(text), 3.0), painted));
        }
}

TEST_CASE("words that are too wide are cut with an ellipsis") {
    const std::string words = "Under-desk cable hook";
    CHECK(fitted(words, 20.0, 1000.0) == words);
    const std::string cut = fitted(words, 20.0, 120.0);
    CHECK(cut.size() < words.size());
    CHECK(cut.substr(cut.size() - 3) == "\u2026");
    CHECK(text_width(cut, 20.0) <= 120.0);
    // A cut never falls into the middle of a letter.
    CHECK(fitted("\u00e4\u00f6\u00fc\u00e4\u00f6\u00fc", 20.0, 70.0).size() % 2 == 1);
}

TEST_CASE("words are broken at blanks, and the last line is cut") {
    const std::string words = "one two three four five six seven eight nine ten";
    const std::vector<std::string> lines = wrapped(words, 10.0, 80.0, 100.0, 2);
    REQUIRE(lines.size() == 2);
    CHECK(text_width(lines[0], 10.0) <= 80.0);
    CHECK(text_width(lines[1], 10.0) <= 100.0);
    CHECK(lines[1].substr(lines[1].size() - 3) == "\u2026");
    CHECK(wrapped("short", 10.0, 80.0, 100.0, 2).size() == 1);
    CHECK(wrapped("", 10.0, 80.0, 100.0, 2).empty());
}

TEST_CASE("numbers have a true minus, and zero has none") {
    CHECK(fixed(1.25, 1) == "1.2");  // ties to even, as to_chars has it
    CHECK(fixed(-3.14159, 2) == "\u22123.14");
    CHECK(fixed(-0.004, 2) == "0.00");
    CHECK(fixed(std::nan(""), 2) == "\u2013");
}
