// What is seen between two strokes: tools go out and come in, the part goes along, nothing jumps.

#include "render/film/frame_parts.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/units.h"
#include "tests/film/two_strokes.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;
using overbend::tests::TwoStrokes;

namespace {

bool has_words(const DrawingList& list, const std::string& words) {
    const std::vector<Text> found = tests::words_of(list);
    return std::any_of(found.begin(), found.end(), [&](const Text& text) { return text.words == words; });
}

std::vector<int> frames_of(const FrameList& list, Passage passage, int from, int to) {
    std::vector<int> frames;
    for (int i = 0; i < static_cast<int>(list.instants.size()); ++i) {
        const Instant& m = list.instants[i];
        if (m.passage == passage && m.from == from && m.to == to) frames.push_back(i);
    }
    return frames;
}

// The second stroke has another punch, or its die turned over, or both.
tool::ToolSet with_other_punch(const stroke::Recording& recording) {
    tool::ToolSet tools = recording.tools;
    tool::VeePunch punch;
    punch.angle = 0.8;
    punch.nose_radius = 1.0;
    punch.height = 60.0;
    punch.shank_width = 9.0;
    tools[0].name = "narrow";
    tools[0].outline = make_outline(punch);
    return tools;
}

}  // namespace

TEST_CASE("only a side that gets another tool is changed") {
    TwoStrokes two;
    CHECK(tool_change(nullptr, two.job.strokes[0]).upper);
    CHECK(tool_change(nullptr, two.job.strokes[0]).lower);
    CHECK_FALSE(tool_change(&two.job.strokes[0], two.job.strokes[1]).any());
    two.root.tools = with_other_punch(two.root);
    CHECK(tool_change(&two.job.strokes[0], two.job.strokes[1]).upper);
    CHECK_FALSE(tool_change(&two.job.strokes[0], two.job.strokes[1]).lower);
    // A block turned to its other groove: the same name, the same box, another outline.
    tool::VeeDie die;
    die.faces = {{80.0 * degree, 8.0, 1.0, 0.6}, {60.0 * degree, 10.0, 1.0, 0.6}};
    die.width = 30.0;
    die.height = 40.0;
    two.lip.tools[1].outline = make_outline(die, 1);
    two.root.tools[1].outline = make_outline(die, 2);
    CHECK(tool_change(&two.job.strokes[0], two.job.strokes[1]).lower);
}

TEST_CASE("the old tools go out of the picture, and the new ones come in with their names") {
    TwoStrokes two;
    two.root.tools = with_other_punch(two.root);
    const FilmOptions options;
    const FrameList list = timeline(two.job, options);
    const std::vector<int> change = frames_of(list, Passage::change, 0, 1);
    REQUIRE(change.size() == 54);
    CHECK(list.instants[change.front()].caption == "Remove: the punch vee-60.");
    CHECK(list.instants[change.back()].caption == "Fit: the punch narrow.");
    CHECK_FALSE(has_words(draw_frame(two.job, options, list, change.front()), "punch: narrow"));
    CHECK(has_words(draw_frame(two.job, options, list, change.back()), "punch: narrow"));
    CHECK(has_words(draw_frame(two.job, options, list, change.back()), "die: two-way"));  // it has stayed
    for (const int frame : change) {
        CAPTURE(frame);
        tests::check_words(draw_frame(two.job, options, list, frame));
    }
}

TEST_CASE("words can be read in all that is between two strokes") {
    TwoStrokes two;
    two.root.tools = with_other_punch(two.root);
    two.job.strokes[0].way_off = clearance::Way::along_the_bend_line;
    two.job.strokes[1].way_in = clearance::Way::along_the_bend_line;
    FilmOptions options;
    options.frames_per_second = 6.0;
    const FrameList list = timeline(two.job, options);
    bool slid_off = false, slid_in = false;
    for (int i = 0; i < static_cast<int>(list.instants.size()); ++i) {
        if (!between_strokes(list.instants[i].passage)) continue;
        CAPTURE(i);
        tests::check_words(draw_frame(two.job, options, list, i));
        slid_off = slid_off || list.instants[i].caption.find("slide the part off along the bend line") !=
                                   std::string::npos;
        slid_in = slid_in || list.instants[i].caption.find("slide the strip in along") != std::string::npos;
    }
    CHECK(slid_off);
    CHECK(slid_in);
}

TEST_CASE("the whole part is seen while it is turned") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    const View& view = list.looks[0].turning_view;
    CHECK(view.scale <= list.looks[0].view.scale);
    CHECK(view.scale <= list.looks[1].view.scale);
    // The strip is 42 mm long; turned end for end it stays within its length, and is lifted and shifted
    // besides.
    CHECK(view.width_mm() > 42.0);
    CHECK(view.labels.empty());
}
