// The painter: sizes, bytes, files that are whole or absent.

#include "render/picture/painter.h"

#include <doctest/doctest.h>

#include <string>
#include <thread>

#include "render/picture/stage.h"
#include "sim/errors.h"
#include "tests/files/output_of.h"
#include "tests/files/own_folder.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::bytes_of;
using overbend::tests::output_of;
using overbend::tests::OwnFolder;
namespace fs = std::filesystem;

namespace {

DrawingList some_list(PictureSize size) {
    StageInfo info;
    info.step_name = "lip";
    info.strip_width = 20.0;
    info.caption = "Press: the punch presses the strip into the die.";
    info.bends = {{"lip", 18.0, 0.0, {}, {}}};
    return draw_stage(tests::synthetic_recording(), 16.4, info, size);
}

// Big-endian number at a place of a PNG file's head.
int number_at(const std::string& bytes, size_t at) {
    int value = 0;
    for (size_t i = 0; i < 4; ++i) value = 256 * value + static_cast<unsigned char>(bytes[at + i]);
    return value;
}

}  // namespace

TEST_CASE("a PNG has the size that was asked for") {
    for (const PictureSize size : {PictureSize{320, 180}, PictureSize{1280, 720}, PictureSize{1081, 1079}}) {
        const std::string png = png_bytes(paint(some_list(size)));
        REQUIRE(png.size() > 33);
        CHECK(png.substr(1, 3) == "PNG");
        CHECK(number_at(png, 16) == size.width);
        CHECK(number_at(png, 20) == size.height);
    }
}

TEST_CASE("pixels are blue, green, red, and not blank") {
    DrawingList list;
    list.width = 4;
    list.height = 2;
    list.background = {1.0, 0.5, 0.0, 1.0};
    const Pixels pixels = paint(list);
    REQUIRE(pixels.bgra.size() == 32);
    CHECK(pixels.bgra[0] == 0);
    CHECK(pixels.bgra[1] == 128);
    CHECK(pixels.bgra[2] == 255);
}

TEST_CASE("a clip is kept to, after a shape that was filled as well") {
    DrawingList list;
    list.width = 20;
    list.height = 10;
    list.background = {1.0, 1.0, 1.0, 1.0};
    Shape first;
    first.path = rectangle({0.0, 0.0, 3.0, 3.0});
    first.fill = Colour{};
    Shape second;
    second.path = rectangle({0.0, 0.0, 20.0, 10.0});
    second.fill = Colour{};
    second.clip = Rect{10.0, 0.0, 10.0, 10.0};
    list.items = {first, second};
    const Pixels pixels = paint(list);
    const auto at = [&](int x, int y) { return pixels.bgra[4 * (20 * y + x)]; };
    CHECK(at(1, 1) == 0);
    CHECK(at(6, 6) == 255);
    CHECK(at(15, 5) == 0);
}

TEST_CASE("the same list gives the same bytes, in any thread") {
    const DrawingList list = some_list({640, 360});
    const std::string here = png_bytes(paint(list));
    std::string there[2];
    std::thread a([&] { there[0] = png_bytes(paint(list)); });
    std::thread b([&] { there[1] = png_bytes(paint(list)); });
    a.join();
    b.join();
    CHECK(here == there[0]);
    CHECK(here == there[1]);
}

TEST_CASE("SVG and PDF files are written, the same each time") {
    const OwnFolder folder;
    const DrawingList list = some_list({640, 360});
    write_svg(list, folder.path() / "a.svg");
    write_svg(list, folder.path() / "b.svg");
    write_pdf(list, folder.path() / "a.pdf");
    write_pdf(list, folder.path() / "b.pdf");
    const std::string svg = bytes_of(folder.path() / "a.svg");
    CHECK(svg.find("width=\"640\"") != std::string::npos);
    CHECK(svg == bytes_of(folder.path() / "b.svg"));
    const std::string pdf = bytes_of(folder.path() / "a.pdf");
    CHECK(pdf.substr(0, 5) == "%PDF-");
    CHECK(pdf == bytes_of(folder.path() / "b.pdf"));
}

TEST_CASE("the words of a PDF are text, on each of its pages, in a font that goes along") {
    const OwnFolder folder;
    DrawingList first = some_list({640, 360}), second;
    second.width = 1280, second.height = 720;
    first.title = "Sheets: \u00e4 < b";
    second.items.push_back(Text{"second page, 12.5\u00b0",
                                {40.0, 40.0},
                                Across::left,
                                20.0,
                                Colour{},
                                Weight::bold,
                                Colour{1.0, 1.0, 1.0, 1.0}});
    const fs::path file = folder.path() / "two.pdf";
    write_pdf({first, second}, file);
    const std::string bytes = bytes_of(file);
    write_pdf({first, second}, file);
    CHECK(bytes == bytes_of(file));

    const std::string text = output_of("pdftotext -layout '" + file.string() + "' -");
    const size_t page = text.find('\f');
    REQUIRE(page != std::string::npos);
    CHECK(text.find("the punch presses the strip into the die") < page);
    CHECK(text.find("second page, 12.5\u00b0") > page);
    CHECK(text.find("second page, 12.5\u00b0") != std::string::npos);
    const std::string about = output_of("pdfinfo -f 1 -l 2 '" + file.string() + "'");
    CHECK(about.find(first.title) != std::string::npos);
    CHECK(about.find("480 x 270 pts") != std::string::npos);
    CHECK(about.find("960 x 540 pts") != std::string::npos);
    const std::string fonts = output_of("pdffonts '" + file.string() + "'");
    CHECK(fonts.find("DejaVuSans") != std::string::npos);
    CHECK(fonts.find(" no ") == std::string::npos);  // embedded, a subset, with its letters' meaning
    CHECK_THROWS_AS(write_pdf(std::vector<DrawingList>{}, file), OutOfRange);
}

TEST_CASE("an SVG has a title, and names that no other has") {
    DrawingList a = some_list({640, 360});
    a.title = "Bend <lip> & root";
    DrawingList b = a;
    b.items.pop_back();
    const std::string svg = svg_bytes(a), other = svg_bytes(b);
    CHECK(svg.find("<title>Bend &lt;lip&gt; &amp; root</title>") != std::string::npos);
    CHECK(svg == svg_bytes(a));
    int names = 0;
    for (size_t at = svg.find(" id=\""); at != std::string::npos; at = svg.find(" id=\"", at + 1)) {
        const size_t end = svg.find('"', at + 5);
        CHECK(other.find(svg.substr(at, end + 1 - at)) == std::string::npos);
        ++names;
    }
    CHECK(names > 0);
    for (size_t at = svg.find("url(#"); at != std::string::npos; at = svg.find("url(#", at + 1)) {
        const std::string name = svg.substr(at + 5, svg.find(')', at) - at - 5);
        CHECK(svg.find(" id=\"" + name + "\"") != std::string::npos);
    }
}

TEST_CASE("a file that cannot be written is an error and leaves nothing behind") {
    const OwnFolder folder;
    CHECK_THROWS_WITH_AS(write_png(some_list({320, 180}), folder.path() / "nowhere" / "a.png"),
                         doctest::Contains("nowhere"), std::runtime_error);
    fs::create_directories(folder.path() / "taken" /
                           "full");  // a folder that is not empty cannot be replaced
    CHECK_THROWS_AS(write_png(some_list({320, 180}), folder.path() / "taken"), std::runtime_error);
    int files = 0;
    for (const auto& entry : fs::directory_iterator(folder.path())) files += entry.is_regular_file() ? 1 : 0;
    CHECK(files == 0);
}

TEST_CASE("a picture without width is an error with a name") {
    DrawingList list;
    list.height = 10;
    CHECK_THROWS_AS(paint(list), OutOfRange);
}

TEST_CASE("an SVG is well-formed whatever its title, which stays as it is") {
    const OwnFolder folder;
    DrawingList list = some_list({640, 360});
    list.title = "a id=\"b url(#c href=\"#d <&> ]]> --> \xef\xbf\xbe \xff \x01";
    const std::string svg = svg_bytes(list);
    const std::string file = folder.write("a.svg", svg).string();
    CHECK(std::system(("xmllint --noout --nonet '" + file + "'").c_str()) == 0);
    CHECK(svg.find("<title>a id=&quot;b url(#c href=&quot;#d &lt;&amp;&gt; ]]&gt;") != std::string::npos);
}
