// A case that is changed: undone and redone, refused in words, told line by line, saved.

#include <doctest/doctest.h>

#include "scenes/files/case/case_changes.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_sizes.h"
#include "scenes/files/case/write_case.h"
#include "scenes/window/panels/case_edits.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using files::Case;
using window::CaseEdits;

namespace {

using Lines = std::vector<std::string>;

Case hook() {
    return files::read_case("cases/cable-hook/case.toml");
}

std::string joined(const Lines& lines) {
    std::string all;
    for (const std::string& line : lines) all += line + "\n";
    return all;
}

int size_named(const files::Tool& tool, const std::string& words) {
    const std::vector<files::ToolSize> sizes = files::sizes_of(tool);
    for (std::size_t i = 0; i < sizes.size(); ++i)
        if (sizes[i].words == words) return static_cast<int>(i);
    FAIL("no size " << words);
    return -1;
}

}  // namespace

TEST_CASE("a change is undone and redone, and a new one ends what could be redone") {
    CaseEdits edits(hook());
    CHECK_FALSE(edits.can_undo());
    CHECK_FALSE(edits.changed());
    CHECK(edits.change("thickness", [](Case& c) { c.thickness = 0.8; }));
    CHECK(edits.change("friction", [](Case& c) { c.run.friction = 0.12; }));
    CHECK(edits.undo_words() == "friction");
    CHECK(edits.undo());
    CHECK(edits.now().run.friction == 0.1);
    CHECK(edits.now().thickness == 0.8);
    CHECK(edits.redo());
    CHECK(edits.now().run.friction == 0.12);
    CHECK(edits.undo());
    CHECK(edits.undo());
    CHECK_FALSE(edits.changed());
    CHECK_FALSE(edits.undo());
    CHECK(edits.change("friction", [](Case& c) { c.run.friction = 0.05; }));
    CHECK_FALSE(edits.can_redo());
}

TEST_CASE("a change to what is there already is none") {
    CaseEdits edits(hook());
    CHECK_FALSE(edits.change("thickness", [](Case& c) { c.thickness = 1.0; }));
    CHECK_FALSE(edits.can_undo());
}

TEST_CASE("what differs from the file is told, a line each") {
    CaseEdits edits(hook());
    edits.change("stop", [](Case& c) {
        c.steps[1].stop = files::StopKind::free_angle;
        c.steps[1].stop_value = 88.0 * pi / 180.0;
    });
    edits.change("order", [](Case& c) { std::swap(c.steps[0], c.steps[1]); });
    edits.change("nose",
                 [](Case& c) { files::set_size(c.tools[0], size_named(c.tools[0], "nose radius"), 1.5); });
    edits.change("opening", [](Case& c) {
        files::set_size(c.tools[1], size_named(c.tools[1], "opening of face 2"), 9.6);
    });
    edits.change("thickness", [](Case& c) { c.thickness = 0.9; });
    CHECK(joined(edits.changes()) ==
          "thickness: 1 mm -> 0.9 mm\n"
          "tool 'wedge', nose radius: 1.2 mm -> 1.5 mm\n"
          "tool 'two-way block', opening of face 2: 9 mm -> 9.6 mm\n"
          "tool 'two-way block', height: 42.613 mm -> 43.4593 mm\n"
          "order of steps: lip, tip, hook, offset, shelf, channel -> tip, lip, hook, offset, shelf, channel\n"
          "stop of step 'tip': the drawing's angle -> 88 deg free\n");
    for (int i = 0; i < 5; ++i) edits.undo();
    CHECK(edits.changes().empty());
}

TEST_CASE(
    "sizes that follow from others in a file follow when these are changed, and no longer once they were "
    "given") {
    Case c = hook();
    files::Tool& die = c.tools[1];
    const auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    REQUIRE(vee != nullptr);
    CHECK(vee->width == 30.0);
    files::set_size(die, size_named(die, "opening of face 1"), 16.0);
    CHECK(vee->width == 36.0);
    files::set_size(die, size_named(die, "width"), 50.0);
    files::set_size(die, size_named(die, "opening of face 1"), 12.0);
    CHECK(vee->width == 50.0);
    // As if it had been written so.
    const Case read = files::read_case_text(files::write_case(c), c.file);
    CHECK(files::write_case(read) == files::write_case(c));
}

TEST_CASE(
    "a case that cannot be is told in words with what would be right, and the last one that can be stays") {
    CaseEdits edits(hook());
    REQUIRE(edits.change("thickness", [](Case& c) { c.thickness = 0.9; }));
    CHECK_FALSE(edits.change(
        "angle", [](Case& c) { files::set_size(c.tools[0], size_named(c.tools[0], "angle"), 1.5); }));
    REQUIRE(edits.mistake());
    CHECK(edits.mistake()->words() ==
          "step[1]: punch angle: 85.9437 deg is wider than the groove, which has 84 deg; use a punch of at "
          "most 84 deg");
    CHECK(edits.mistake()->right != "");
    CHECK(edits.now().thickness == 0.9);
    CHECK(files::sizes_of(edits.now().tools[0])[0].value != 1.5);
    CHECK(files::sizes_of(edits.draft().tools[0])[0].value == 1.5);
    const tests::OwnFolder folder;
    CHECK_THROWS_AS(edits.save(folder / "a.toml"), std::runtime_error);
    CHECK(tests::files_below(folder.path()).empty());
    CHECK_FALSE(edits.undo());  // what is run is the same
    CHECK_FALSE(edits.mistake());
}

TEST_CASE("what is saved reads back as what was changed, and is the file from then on") {
    const tests::OwnFolder folder;
    CaseEdits edits(hook());
    edits.change("material", [](Case& c) { c.run.friction = 0.15; });
    const std::filesystem::path file = folder / "mine.toml";
    edits.save(file);
    CHECK(edits.changes().empty());
    CHECK(edits.now().file == file.string());
    const Case read = files::read_case(file);
    CHECK(read.run.friction == 0.15);
    CHECK(files::write_case(read) == files::write_case(edits.now()));
    // It can still be undone, and differs from the new file then.
    CHECK(edits.undo());
    CHECK(edits.changes() == Lines{"friction: 0.15 -> 0.1"});
    CHECK_THROWS_AS(edits.save(folder / "none/there.toml"), std::runtime_error);
    CHECK(window::name_for_changed(file) == folder / "mine-changed.toml");
    folder.write("mine-changed.toml", "");
    CHECK(window::name_for_changed(file) == folder / "mine-changed-2.toml");
}

TEST_CASE("a tool of a rack is changed as a copy that is the case's own") {
    const tests::OwnFolder folder;
    std::string text = tests::small_case;
    text.insert(text.find("\n[strip]"), "rack = \"small-press\"\n");
    text = tests::replaced(text, "punch = \"wedge\"\ndie = \"block\"\nstop",
                           "punch = \"straight punch r0.8\"\ndie = \"block\"\nstop");
    CaseEdits edits(files::read_case(folder.write("case.toml", text)));
    const auto sharper = [](Case& c) {
        const int own = files::own_tool(c, c.steps[0].punch);
        files::set_size(c.tools[own], size_named(c.tools[own], "nose radius"), 1.1);
    };
    const std::size_t before = edits.now().tools.size();
    REQUIRE(edits.change("nose radius", sharper));
    CHECK(edits.now().tools.size() == before + 1);
    CHECK(joined(edits.changes()) == "tool 'straight punch r0.8', nose radius: 0.8 mm -> 1.1 mm\n");
    edits.save(folder / "changed.toml");
    const Case read = files::read_case(folder / "changed.toml");
    CHECK(read.tools[read.steps[0].punch].name == "straight punch r0.8, changed");
    CHECK(read.rack == "small-press");
    // Changed once more it is the same copy.
    REQUIRE(edits.change("nose radius", [&](Case& c) {
        const int own = files::own_tool(c, c.steps[0].punch);
        files::set_size(c.tools[own], size_named(c.tools[own], "nose radius"), 1.2);
    }));
    CHECK(edits.now().tools.size() == before + 1);
}
