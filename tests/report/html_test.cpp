// Pieces of the page: what is escaped, what tables look like, drawings and charts as elements.

#include <doctest/doctest.h>

#include <cstdlib>
#include <stdexcept>

#include "render/picture/text_width.h"
#include "render/report/force_chart.h"
#include "render/report/html.h"
#include "render/report/inline_svg.h"

using namespace overbend;
using namespace overbend::chart;
using namespace overbend::report;
using namespace overbend::picture;

namespace {

double number_of(const std::string& html, const std::string& attribute) {
    const std::size_t at = html.find(attribute + "=\"");
    REQUIRE(at != std::string::npos);
    return std::strtod(html.c_str() + at + attribute.size() + 2, nullptr);
}

int count_of(const std::string& html, const std::string& part) {
    int count = 0;
    for (std::size_t at = html.find(part); at != std::string::npos; at = html.find(part, at + 1)) ++count;
    return count;
}

}  // namespace

TEST_CASE("what could be taken for a tag is not, and what is no text is told as such") {
    CHECK(escaped("<b a=\"1\" c='2'>&") == "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;");
    CHECK(escaped("Stück 90° \U0001F600") == "Stück 90° \U0001F600");
    CHECK(escaped("a\xff b") == "a\xef\xbf\xbd b");
    CHECK(escaped("\xc0\xaf") == "\xef\xbf\xbd\xef\xbf\xbd");          // a / written too long
    CHECK(escaped("\xed\xa0\x80").find('\xed') == std::string::npos);  // half of a pair
    CHECK(escaped(std::string("x\0y", 3)) == "x\xef\xbf\xbdy");
    CHECK(escaped("\xef\xbf\xbe\xef\xbf\xbf") == "\xef\xbf\xbd\xef\xbf\xbd");  // no XML may have them
    CHECK(escaped("cut \xe2\x82") == "cut \xef\xbf\xbd\xef\xbf\xbd");
}

TEST_CASE("a table has heads with scope, a caption that names its box, and rows as long as its head") {
    const Table table{"Angles", {{"Bend", "", false}, {"Free", "deg"}}, {{"<lip>", "90.0"}}, "A note."};
    const std::string html = table_html(table, "t1");
    CHECK(html.find("<caption id=\"t1\">Angles</caption>") != std::string::npos);
    CHECK(html.find("aria-labelledby=\"t1\"") != std::string::npos);
    CHECK(count_of(html, "scope=\"col\"") == 2);
    CHECK(html.find("<th scope=\"row\">&lt;lip&gt;</th><td class=\"number\">90.0</td>") != std::string::npos);
    CHECK(html.find("A note.") != std::string::npos);
    CHECK_THROWS_AS(table_html({"Angles", {{"Bend"}}, {{"a", "b"}}}, "t2"), std::invalid_argument);
}

TEST_CASE("a drawing's words stay words, as wide as they were laid out for") {
    DrawingList list;
    list.width = 200, list.height = 100, list.background = {1.0, 1.0, 1.0, 1.0};
    Shape line;
    line.path = polyline({Point(1.0, 2.0), Point(3.55, -0.04)});
    line.stroke = Colour{1.0, 0.0, 0.0, 0.5};
    line.dash = {2.0, 1.0};
    line.clip = Rect{0.0, 0.0, 50.0, 50.0};
    Text text;
    text.words = "a < b", text.at = Point(10.0, 20.0), text.size = 12.0, text.across = Across::right;
    list.items = {line, text};
    const std::string svg = inline_svg(list, "It's \"so\"");
    CHECK(svg.find("aria-label=\"It&#39;s &quot;so&quot;\"") != std::string::npos);
    CHECK(svg.find("d=\"M1 2L3.6 0\"") != std::string::npos);
    CHECK(svg.find("stroke=\"#ff0000\" stroke-opacity=\"0.5\"") != std::string::npos);
    CHECK(svg.find("fill=\"none\"") != std::string::npos);
    CHECK(svg.find("stroke-dasharray=\"2 1\"") != std::string::npos);
    CHECK(svg.find("<svg x=\"0\" y=\"0\" width=\"50\" height=\"50\"") != std::string::npos);
    CHECK(svg.find(">a &lt; b</text>") != std::string::npos);
    CHECK(svg.find("text-anchor=\"end\"") != std::string::npos);
    CHECK(std::abs(number_of(svg, "textLength") - text_width("a < b", 12.0)) < 0.06);
    CHECK(svg.find("id=") == std::string::npos);  // no names that another drawing could have too
}

TEST_CASE("a force chart says where its axes lie, and its curve lies there") {
    ForceTravel curve;
    curve.loading = {{0.0, 0.0}, {1.0, 0.9}, {3.4, 1.47}};
    curve.going_back = {{3.4, 1.47}, {3.3, 0.0}};
    curve.title = "lip";
    const std::string svg = force_chart(curve);
    const double left = number_of(svg, "data-left"), per_mm = number_of(svg, "data-per-mm");
    const double bottom = number_of(svg, "data-bottom"), per_n = number_of(svg, "data-per-n");
    const std::size_t at = svg.find("class=\"down\" d=\"M");
    REQUIRE(at != std::string::npos);
    const std::size_t second = svg.find('L', at);
    char* end = nullptr;
    const double x = std::strtod(svg.c_str() + second + 1, &end), y = std::strtod(end, nullptr);
    CHECK(x == doctest::Approx(left + per_mm).epsilon(0.001));
    CHECK(y == doctest::Approx(bottom - 900.0 * per_n).epsilon(0.001));
    CHECK(svg.find("class=\"back\"") != std::string::npos);
    CHECK(svg.find(">Force, kN<") != std::string::npos);
    CHECK(svg.find(">Travel, mm<") != std::string::npos);
    CHECK(svg.find(">1.5<") != std::string::npos);
    CHECK_THROWS_AS(force_chart({"lip", {{0.0, 0.0}}, {}, {}, {}}), std::invalid_argument);
}
