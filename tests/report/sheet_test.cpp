// The sheets for the shop, read back from their PDF by other programs: pages, size, words.

#include "render/report/sheet.h"

#include <doctest/doctest.h>

#include <cmath>

#include "render/picture/painter.h"
#include "render/picture/turning.h"
#include "render/report/paper.h"
#include "scenes/documents/report/shown_job.h"
#include "scenes/files/case/read_case.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"
#include "tests/chart/legible.h"
#include "tests/files/output_of.h"
#include "tests/files/own_folder.h"

using namespace overbend;
using overbend::tests::bytes_of;
using overbend::tests::output_of;
using overbend::tests::OwnFolder;

namespace {

struct Made {
    files::Case c;
    job::JobResult job;
    picture::ShownJob data;
};

// Run once for all checks.
const Made& demo() {
    static const Made made = [] {
        Made m;
        m.c = files::read_case("cases/cable-hook/case.toml");
        m.job = job::run_process(m.c, {});
        m.data = documents::shown_job(m.c, m.job);
        return m;
    }();
    return made;
}

// The words of each page, blanks and line ends made one blank.
std::vector<std::string> pages_of(const std::filesystem::path& pdf) {
    const std::string text = output_of("pdftotext -layout '" + pdf.string() + "' -");
    std::vector<std::string> pages(1);
    for (const char c : text) {
        if (c == '\f')
            pages.emplace_back();
        else if (c != ' ' && c != '\n')
            pages.back() += c;
        else if (!pages.back().empty() && pages.back().back() != ' ')
            pages.back() += ' ';
    }
    if (pages.back().empty()) pages.pop_back();
    return pages;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string without_blanks(std::string text) {
    text.erase(std::remove(text.begin(), text.end(), ' '), text.end());
    return text;
}

}  // namespace

TEST_CASE("one page for the job and one for each stroke, all of A4, with a title and fonts that go along") {
    const OwnFolder folder;
    const std::filesystem::path file = folder.path() / "sheets.pdf";
    picture::write_pdf(report::draw_sheets(demo().data), file);
    const std::string about = output_of("pdfinfo -f 1 -l 99 '" + file.string() + "'");
    CHECK(has(without_blanks(about), "Pages:7"));
    CHECK(has(about, "Under-desk cable hook: sheets for the shop"));
    int a4 = 0;
    for (std::size_t at = about.find("(A4)"); at != std::string::npos; at = about.find("(A4)", at + 1)) ++a4;
    CHECK(a4 == 7);
    CHECK_FALSE(has(output_of("pdffonts '" + file.string() + "'"), " no "));
    const std::string once = bytes_of(file);
    picture::write_pdf(report::draw_sheets(demo().data), file);
    CHECK(once == bytes_of(file));
}

TEST_CASE("each stroke's page has its tools, place, gauge, stop, force, angles, and boxes to write in") {
    const OwnFolder folder;
    const std::filesystem::path file = folder.path() / "sheets.pdf";
    picture::write_pdf(report::draw_sheets(demo().data), file);
    const std::vector<std::string> pages = pages_of(file);
    REQUIRE(pages.size() == 7);
    const Made& m = demo();
    for (std::size_t i = 0; i < m.job.steps.size(); ++i) {
        const std::string& page = pages[i + 1];
        const job::StepResult& step = m.job.steps[i];
        CAPTURE(step.name);
        CHECK(has(page, words("Stroke %zu of 6: ", i + 1) + step.name));
        CHECK(has(page, m.c.tools[m.c.steps[i].punch].name));
        CHECK(has(page, m.c.tools[m.c.steps[i].die].name));
        CHECK(has(page, m.c.steps[i].face == files::Face::up ? "Upper face up" : "Lower face up"));
        CHECK(has(page, words("%.2f mm of travel", step.stroke.stop_travel)));
        CHECK(has(page, words("%.2f kN", step.stroke.peak_force * m.c.width / 1000.0)));
        CHECK(has(page, words("%.1f kN per m", step.stroke.peak_force)));
        if (step.gauge > 0.0) CHECK(has(page, words("%.2f mm from the punch's axis", step.gauge)));
        for (const job::BendResult& b : step.bends) {
            CHECK(has(page, words("%.1f\u00b0", std::abs(b.loaded) / degree)));
            CHECK(has(page, words("%.1f\u00b0", std::abs(b.free) / degree)));
        }
        for (const char* words : {"measured 1", "measured 2", "measured 3", "name", "date", "travel set"})
            CHECK(has(page, words));
        for (const Finding& f : job::of_step(m.job.findings, static_cast<int>(i)))
            if (f.rule != Rule::not_compared) CHECK(has(page, job::finding_words(m.c, f).substr(1, 30)));
    }
    CHECK(has(pages[3], "roll it over"));              // hook: the other face up
    CHECK(has(pages[3], "two-way block, face 2 up"));  // the other groove
    CHECK(has(pages[0], "30.6 g"));
    CHECK(has(pages[0], "Order of the strokes"));
    for (const files::Bend& bend : m.c.part.bends) CHECK(has(pages[0], bend.name));
}

TEST_CASE("every page carries the cautions") {
    const OwnFolder folder;
    const std::filesystem::path file = folder.path() / "sheets.pdf";
    picture::write_pdf(report::draw_sheets(demo().data), file);
    for (const std::string& page : pages_of(file))
        for (const char* part : {"trial bend", "guards", "gloves", "eye protection",
                                 "overloaded tool can burst", "qualified people"})
            CHECK(has(page, part));
}

TEST_CASE("words are 9 pt or larger, apart from one another, on the page") {
    for (const picture::DrawingList& page : report::draw_sheets(demo().data))
        tests::check_legible(page, 12.0, 40);
}

TEST_CASE("what was found against a stroke stands on its page and on the first") {
    const files::Case c = files::read_case("cases/wrong-order/case.toml");
    const job::JobResult job = job::run_process(c, {});
    const picture::ShownJob data = documents::shown_job(c, job);
    const std::vector<picture::DrawingList> pages = report::draw_sheets(data);
    REQUIRE(pages.size() == 4);
    CHECK(tests::says(pages[0], "Problems"));
    CHECK(tests::says(pages[2], "mm deep in the punch"));
    CHECK(tests::says(pages[2], "interference"));  // in the picture
    CHECK_FALSE(tests::says(pages[1], "interference"));
    for (const picture::DrawingList& page : pages) tests::check_legible(page, 12.0, 30);
}

TEST_CASE("a part of sixteen bends takes as many pages as it needs") {
    picture::ShownJob data = demo().data;
    while (data.bends.size() < 16) {
        data.bends.push_back(data.bends[data.bends.size() % 8]);
        data.part.bend_middle.push_back(data.part.bend_middle[data.part.bend_middle.size() % 8]);
        data.part.flats.push_back(12.0);
        data.part.flat_middle.push_back(data.part.flat_middle[data.part.flat_middle.size() % 9]);
    }
    for (int i = 0; i < 10; ++i) data.strokes.push_back(data.strokes[i % 6]);
    data.strokes[2].remarks.assign(
        25,
        "A remark that is long enough to be broken into more than one line of the page, "
        "as a remark on the way in and out may be.");
    const std::vector<picture::DrawingList> pages = report::draw_sheets(data);
    CHECK(pages.size() >= 19);
    for (const picture::DrawingList& page : pages) {
        CHECK(page.width == report::paper_width);
        CHECK(page.height == report::paper_height);
        tests::check_legible(page, 12.0, 10);
    }
}

TEST_CASE("how a strip is turned between two strokes, in words") {
    files::Step before, step;
    picture::ShownStroke stroke;
    const auto to_do = [&] {
        return std::string(picture::turning_words(documents::turning_between(before, step)).to_do);
    };
    CHECK(to_do() == "As in the previous stroke.");
    step.face = files::Face::down;
    CHECK(has(to_do(), "roll it over"));
    stroke.upper_face_up = false;
    CHECK(picture::lying_words(stroke) == "lower face up, left end to the left");
    step.first = files::First::right;
    CHECK(has(to_do(), "end for end, so that its other face"));
    step.face = files::Face::up;
    CHECK(has(to_do(), "turn it end for end"));
    stroke.upper_face_up = true, stroke.left_end_left = false;
    CHECK(picture::lying_words(stroke) == "upper face up, right end to the left");
    CHECK(tests::says(report::draw_sheets(demo().data)[1], "Place the blank like this."));
}

TEST_CASE("sheets without strokes or without a recording are refused by name") {
    picture::ShownJob data = demo().data;
    data.strokes[1].recording = nullptr;
    CHECK_THROWS_WITH_AS(report::draw_sheets(data), doctest::Contains("tip"), OutOfRange);
    data.strokes.clear();
    CHECK_THROWS_AS(report::draw_sheets(data), OutOfRange);
    data = demo().data;
    data.part.flats.pop_back();
    CHECK_THROWS_AS(report::draw_sheets(data), OutOfRange);
}
