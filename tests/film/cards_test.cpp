// The cards at either end of a film: legible in every size, and they tell what they should.

#include "render/film/frame_parts.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/film/two_strokes.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;
using overbend::tests::TwoStrokes;

namespace {

struct WithPart : TwoStrokes {
    WithPart() {
        job.material = "Stainless steel 1.4301 (X5CrNi18-10), annealed";
        job.bends = {{"lip", 14.0, 1.571, 0.0, 1.575}, {"root", 28.0, 1.2, 0.0, 1.155}};
        job.finished = &root;
    }
};

std::string all_words(const DrawingList& list) {
    std::string all;
    for (const Text& text : tests::words_of(list)) all += text.words + " ";
    return all;
}

}  // namespace

TEST_CASE("the title card tells what is bent of what, and to prove it by a trial bend") {
    const WithPart film;
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1920, 1080}, PictureSize{1080, 1080},
                                   PictureSize{720, 1280}, PictureSize{640, 360}}) {
        CAPTURE(size.width);
        FilmOptions options;
        options.size = size;
        const DrawingList card = draw_title_card(film.job, options);
        tests::check_words(card, 5);
        const std::string words = all_words(card);
        for (const char* told :
             {"Under-desk cable", "1.4301", "1 mm thick", "20 mm wide", "2 bends in 2 strokes", "trial"}) {
            CAPTURE(told);
            CAPTURE(words);
            CHECK(words.find(told) != std::string::npos);
        }
    }
}

TEST_CASE("the last card has every bend's angle, as drawn and as made") {
    const WithPart film;
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1080, 1080}, PictureSize{720, 1280}}) {
        CAPTURE(size.width);
        FilmOptions options;
        options.size = size;
        const DrawingList card = draw_finished_card(film.job, options);
        tests::check_words(card, 12);
        const std::string words = all_words(card);
        for (const char* told : {"lip 90.0\u00b0 90.2\u00b0", "root 68.8\u00b0 66.2\u00b0"}) {
            CAPTURE(words);
            CHECK(words.find(told) != std::string::npos);
        }
    }
}

TEST_CASE("the last card has the findings, the gravest first, and counts those without room") {
    WithPart film;
    film.job.verdict = "Feasible: no problems found.";
    for (const DrawingList& card : {draw_title_card(film.job, {}), draw_finished_card(film.job, {})})
        CHECK(all_words(card).find(film.job.verdict) != std::string::npos);
    film.job.verdict = "Not feasible: 1 problem.", film.job.feasible = false;
    CHECK(all_words(draw_title_card(film.job, {})).find(film.job.verdict) != std::string::npos);
    film.job.findings = {{Severity::stops, "Problems", "Bend 'root': finished 66.2, drawn 68.8 degrees."},
                         {Severity::caution, "Cautions", "Bend 'lip': the die opening is wide."},
                         {Severity::caution, "Cautions", "Bend 'root': the die opening is wide."}};
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1080, 1080}, PictureSize{640, 360}}) {
        CAPTURE(size.width);
        FilmOptions options;
        options.size = size;
        const DrawingList card = draw_finished_card(film.job, options);
        tests::check_words(card, 17);
        const std::string words = all_words(card);
        CAPTURE(words);
        const std::size_t problems = words.find("Problems Bend 'root': finished 66.2");
        REQUIRE(problems != std::string::npos);
        CHECK(words.find("Cautions Bend 'lip'") > problems);
        CHECK(words.find("Cautions", words.find("Cautions") + 1) == std::string::npos);
        CHECK(words.find("Feasible") == std::string::npos);
        CHECK(words.find(" more") == std::string::npos);
    }
    film.job.findings.resize(40, film.job.findings.back());
    const DrawingList card = draw_finished_card(film.job, {});
    tests::check_words(card, 17);
    const std::string words = all_words(card);
    int shown = 0;
    for (std::size_t at = 0; (at = words.find("Bend '", at)) != std::string::npos; ++at) ++shown;
    CHECK(shown > 3);
    CHECK(words.find("and " + std::to_string(40 - shown) + " more") != std::string::npos);
}

TEST_CASE("more bends than there is room for are counted") {
    WithPart film;
    for (int i = 0; i < 40; ++i) film.job.bends.push_back({"further", 20.0, 0.0, 0.0, 0.0});
    const DrawingList card = draw_finished_card(film.job, {});
    CHECK(all_words(card).find("more ") != std::string::npos);
    for (const Text& text : tests::words_of(card)) CHECK(painted_box(text).bottom() <= card.height);
}

TEST_CASE("a transparent film has transparent cards, and a dark one dark cards") {
    const WithPart film;
    FilmOptions options;
    CHECK(draw_title_card(film.job, options).background.opacity == 1.0);
    options.theme = Theme::dark;
    CHECK(luminance(draw_title_card(film.job, options).background) < 0.1);
    options.backdrop = Backdrop::transparent;
    CHECK(draw_title_card(film.job, options).background.opacity == 0.0);
    CHECK(draw_finished_card(film.job, options).background.opacity == 0.0);
}
