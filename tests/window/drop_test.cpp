// Files dropped on the window, by another program's messages.

#include <doctest/doctest.h>

#include "render/ui/drop_target.h"
#include "render/ui/window.h"
#include "scenes/window/main_show.h"
#include "tests/files/own_folder.h"
#include "tests/window/drag_source.h"
#include "tests/window/script.h"

using namespace overbend;

namespace {

class Catcher : public ui::Show {
  public:
    ui::Motion motion() override { return ui::Motion::still; }
    void draw(ui::Ui&, int, int, double) override {}
    void dropped(const std::vector<std::filesystem::path>& files) override { caught = files; }
    picture::Theme theme() const override { return picture::Theme::light; }
    std::string title() const override { return "catcher"; }
    std::vector<std::filesystem::path> caught;
};

}  // namespace

TEST_CASE("files dragged on to the window and dropped arrive") {
    Catcher show;
    ui::Window window({});
    const auto turn = [&] { window.turn(show); };
    const tests::DropOutcome outcome =
        tests::drop_on(window.handle_on_screen(), "text/uri-list",
                       "# two\r\nfile:///tmp/one%20case.toml\r\nfile://host/tmp/two.toml\r\n", turn);
    CHECK(outcome.aware);
    CHECK(outcome.accepted);
    CHECK(outcome.finished);
    REQUIRE(show.caught.size() == 2);
    CHECK(show.caught[0] == "/tmp/one case.toml");
    CHECK(show.caught[1] == "/tmp/two.toml");
}

TEST_CASE("what is no file is refused") {
    Catcher show;
    ui::Window window({});
    const tests::DropOutcome outcome =
        tests::drop_on(window.handle_on_screen(), "image/png", "bytes", [&] { window.turn(show); });
    CHECK(outcome.aware);
    CHECK_FALSE(outcome.accepted);
    CHECK_FALSE(outcome.finished);
    CHECK(show.caught.empty());
}

TEST_CASE("a malformed case that is dropped on the window leaves what is shown, a good one takes its place") {
    const tests::OwnFolder folder;
    window::MainShow show({}, std::filesystem::path("cases/one-bend-dc01/case.toml"));
    ui::Window window({});
    tests::Script user(window, show);
    REQUIRE(user.wait());
    REQUIRE(show.process().job());
    const std::string before = show.process().job()->c.file;
    const auto drop = [&](const std::filesystem::path& file) {
        const auto turn = [&] { window.turn(show); };
        CHECK(tests::drop_on(window.handle_on_screen(), "text/uri-list", "file://" + file.string() + "\r\n",
                             turn)
                  .finished);
        REQUIRE(user.wait());
    };
    for (const char* text : {"", "format = 1\ntitel = \"x\"\n", "format = [[[", "\x01\xff\xfe"}) {
        drop(folder.write("bad.toml", text));
        CHECK(show.process().job()->c.file == before);
    }
    drop(folder.path() / "missing.toml");
    CHECK(show.process().job()->c.file == before);
    const std::filesystem::path good =
        folder.write("good.toml", tests::bytes_of("cases/one-bend-stainless-1.4301/case.toml"));
    drop(good);
    CHECK(show.process().job()->c.file == good.string());
}

TEST_CASE("a list of URIs, as programs write it") {
    using Files = std::vector<std::filesystem::path>;
    CHECK(ui::files_of_uris("file:///a/b.toml") == Files{"/a/b.toml"});
    CHECK(ui::files_of_uris("file://localhost/a%C3%A4\r\n") == Files{"/a\xC3\xA4"});
    CHECK(ui::files_of_uris("http://a/b\r\n#file:///c\r\n\r\nfile:///50%\r\n") == Files{"/50%"});
    CHECK(ui::files_of_uris("").empty());
    CHECK(ui::files_of_uris("file://").empty());
}
