// The stage of every stroke of the demo, and of a job with an interference, at several sizes, in all themes,
// with everything on it: words inside the picture, apart from one another, nothing painted over them, at
// least 4.5 to 1 against all that is below them; the magnifier off the strip and off the labels.

#include <doctest/doctest.h>

#include <map>
#include <variant>

#include "render/picture/swept.h"
#include "tests/picture/check_words.h"
#include "tests/stage/stage_job.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::check_grounds;
using overbend::tests::check_uncovered;
using overbend::tests::check_words;
using overbend::tests::info_at;
using overbend::tests::StagedStroke;
using overbend::tests::StageJob;

namespace {

// Everything that can be on the stage, in one of its looks.
struct Look {
    const char* name;
    Theme theme;
    Backdrop backdrop;
    Charts charts;
    Lens lens;
    double springback_scale;
};

const Look looks[] = {
    {"light", Theme::light, Backdrop::page, Charts::shown, Lens::hidden, 1.0},
    {"light with lens", Theme::light, Backdrop::page, Charts::shown, Lens::shown, 5.0},
    {"dark with lens", Theme::dark, Backdrop::page, Charts::shown, Lens::shown, 1.0},
    {"dark without charts", Theme::dark, Backdrop::page, Charts::hidden, Lens::shown, 3.0},
    {"transparent", Theme::light, Backdrop::transparent, Charts::hidden, Lens::hidden, 5.0},
    {"transparent with lens", Theme::dark, Backdrop::transparent, Charts::shown, Lens::shown, 1.0},
};

const PictureSize sizes[] = {{1280, 720}, {1024, 768}, {1080, 1080}, {1080, 1920}};

StageInfo with_look(StageInfo info, const Look& look) {
    info.theme = look.theme;
    info.backdrop = look.backdrop;
    info.charts = look.charts;
    info.lens = look.lens;
    info.springback_scale = look.springback_scale;
    return info;
}

void check_instant(const StagedStroke& stroke, double instant, const Look& look, const PictureSize& size,
                   const View& view, std::optional<double> punch_travel) {
    CAPTURE(instant);
    StageInfo info = with_look(info_at(stroke, instant), look);
    info.caption = "Press: the punch goes down and bends the strip.";
    info.punch_travel = punch_travel;
    const DrawingList list = draw_stage(*stroke.recording, instant, info, size, view);
    check_words(list, 6);
    check_uncovered(list);
    // What lies below words is the same at all sizes but for where there was room for them.
    if (size.height <= 768) check_grounds(list, theme_colours(look.theme).page);
}

void check_lens(const StagedStroke& stroke, const View& view) {
    if (!view.lens) return;
    const Rect& box = view.lens->box;
    const Rect& key = view.lens->key;
    CHECK(holds(view.stage, box));
    CHECK(holds(view.stage, key));
    const Swept swept = swept_by_stroke(*stroke.recording, view);
    CHECK_FALSE(crossed(swept, box, 0.0));
    CHECK_FALSE(crossed(swept, key, 0.0));
    for (const ToolLabel& label : view.labels) {
        CHECK_FALSE(overlap(label.box, box));
        CHECK_FALSE(overlap(label.box, key));
    }
    CHECK(view.lens->magnification >= 1.5);
}

void check_job(const StageJob& job) {
    REQUIRE(job.result.solved);
    for (const Look& look : looks)
        for (const PictureSize& size : sizes)
            for (const StagedStroke& stroke : job.strokes) {
                CAPTURE(look.name);
                CAPTURE(size.width);
                CAPTURE(size.height);
                CAPTURE(stroke.info.step_name);
                const View view = choose_view(*stroke.recording, size, with_look(stroke.info, look));
                check_lens(stroke, view);
                check_instant(stroke, 0.0, look, size, view, -raised_by(*stroke.recording, view));
                for (const double part : {0.45, 1.0})
                    check_instant(stroke, part * stroke.loaded_at, look, size, view, {});
                check_instant(stroke, 0.5 * (stroke.loaded_at + stroke.free_at), look, size, view, {});
                check_instant(stroke, stroke.free_at, look, size, view, {});
            }
}

}  // namespace

TEST_CASE("the demo's strokes can be read in every look, and each has its magnifier on a wide picture") {
    const StageJob job("cases/cable-hook/case.toml");
    check_job(job);
    for (const Charts charts : {Charts::shown, Charts::hidden})
        for (const StagedStroke& stroke : job.strokes) {
            CAPTURE(stroke.info.step_name);
            StageInfo info = stroke.info;
            info.lens = Lens::shown;
            info.charts = charts;
            CHECK(choose_view(*stroke.recording, {1920, 1080}, info).lens);
        }
}

// Frame after frame the words of an angle stand in one place: one end of their first line does not move.
TEST_CASE("the words of the demo's angles stand still while the strip moves") {
    const StageJob job("cases/cable-hook/case.toml");
    for (const StagedStroke& stroke : job.strokes)
        for (const PictureSize size :
             {PictureSize{1280, 720}, PictureSize{1920, 1080}, PictureSize{1024, 768}}) {
            CAPTURE(stroke.info.step_name);
            CAPTURE(size.width);
            StageInfo info = stroke.info;
            info.lens = Lens::shown;
            const View view = choose_view(*stroke.recording, size, info);
            REQUIRE(view.angles.size() == info.bends.size());
            std::map<std::string, std::vector<Rect>> lines;  // by the bend's name
            for (double instant = 0.0; instant <= stroke.free_at; instant += 0.5)
                for (const Item& item :
                     draw_stage(*stroke.recording, instant, info_at(stroke, instant), size, view).items) {
                    const Text* text = std::get_if<Text>(&item);
                    if (text == nullptr || !holds(view.stage, painted_box(*text))) continue;
                    if (text->words.find("\u00b0") == std::string::npos) continue;
                    for (const BendMark& bend : info.bends)
                        if (text->words.rfind(bend.name + " ", 0) == 0)
                            lines[bend.name].push_back(painted_box(*text));
                }
            // A narrow picture may have no room for the second of two angles.
            CHECK(lines.size() >= 1);
            if (size.width >= 1280) CHECK(lines.size() == info.bends.size());
            for (const auto& [name, boxes] : lines) {
                CAPTURE(name);
                CHECK(boxes.size() > 10);
                Rect moved{0.0, 0.0, 0.0, 0.0};  // the most, of left end and top; right end and bottom
                for (const Rect& box : boxes) {
                    moved.x = std::max(moved.x, std::abs(box.x - boxes.front().x));
                    moved.y = std::max(moved.y, std::abs(box.y - boxes.front().y));
                    moved.width = std::max(moved.width, std::abs(box.right() - boxes.front().right()));
                }
                CHECK(std::min(moved.x, moved.width) < 2.0);  // an ink box begins with its first letter
                CHECK(moved.y < 2.0);
            }
        }
}

// A name in the middle of another tool would seem to be that one's.
TEST_CASE("no tool of the demo has its name on another one") {
    const StageJob job("cases/cable-hook/case.toml");
    for (const StagedStroke& stroke : job.strokes)
        for (const PictureSize size :
             {PictureSize{640, 360}, PictureSize{1280, 720}, PictureSize{720, 720}}) {
            CAPTURE(stroke.info.step_name);
            CAPTURE(size.width);
            StageInfo info = stroke.info;
            info.lens = Lens::shown;
            const View view = choose_view(*stroke.recording, size, info);
            const stroke::State& at_stop = deepest_state(*stroke.recording);
            for (const ToolLabel& label : view.labels) {
                CAPTURE(label.words);
                for (int k = 0; k < static_cast<int>(stroke.recording->tools.size()); ++k) {
                    if (k == label.tool || stroke.recording->tools[k].role == tool::Role::gauge) continue;
                    const std::vector<Point> outline =
                        tool_points(stroke.recording->tools[k],
                                    stroke::tool_position(stroke.recording->tools, k, at_stop), view);
                    CHECK_FALSE(inside(outline, label.box.centre()));
                }
            }
        }
}

TEST_CASE("a job with interferences can be read in every look") {
    check_job(StageJob("cases/wrong-order/case.toml"));
}
