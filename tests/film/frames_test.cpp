// Frames as files: the same for any number of threads, whole or absent.

#include "render/film/frames.h"

#include <doctest/doctest.h>

#include <fstream>
#include <string>

#include "sim/errors.h"
#include "tests/files/own_folder.h"
#include "tests/film/two_strokes.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;
using overbend::tests::files_below;
using overbend::tests::OwnFolder;
using overbend::tests::TwoStrokes;
namespace fs = std::filesystem;

namespace {

FilmOptions small_film() {
    FilmOptions options;
    options.size = {320, 180};
    options.frames_per_second = 6.0;
    options.seconds_per_stroke = 4.0;
    options.seconds_between = 1.0;
    return options;
}

}  // namespace

TEST_CASE("the frames are the same for 1, 2 and 5 threads") {
    const TwoStrokes two;
    const OwnFolder folder;
    for (const int threads : {1, 2, 5}) {
        const PaintedFilm film = paint_frames(two.job, small_film(), folder.path() / std::to_string(threads),
                                              {threads, Sequences::job_and_strokes});
        CHECK(film.complete());
        REQUIRE(film.sequences.size() == 3);
        CHECK(film.sequences[1].step_name == "lip");
    }
    const auto one = files_below(folder.path() / "1");
    CHECK(one.size() > 100);
    CHECK(one == files_below(folder.path() / "2"));
    CHECK(one == files_below(folder.path() / "5"));
}

TEST_CASE("the whole job's frames hold those of each stroke, in their order") {
    const TwoStrokes two;
    const OwnFolder folder;
    const PaintedFilm film = paint_frames(two.job, small_film(), folder.path());
    const auto files = files_below(folder.path());
    int count = static_cast<int>(film.sequences.size());  // a folder each
    for (const Sequence& s : film.sequences) count += s.frames;
    CHECK(static_cast<int>(files.size()) == count);
    const auto frame = [&](const std::string& sequence, int number) {
        return files.at(sequence + "/frame_" + std::to_string(100000 + number).substr(1) + ".png");
    };
    int at = 1;
    for (std::size_t s = 1; s < film.sequences.size(); ++s) {
        const std::string stroke = film.sequences[s].folder.filename().string();
        while (at <= film.sequences[0].frames && frame("job", at) != frame(stroke, 1)) ++at;
        REQUIRE(at + film.sequences[s].frames - 1 <= film.sequences[0].frames);
        for (int i = 1; i <= film.sequences[s].frames; ++i) CHECK((frame("job", at++) == frame(stroke, i)));
    }
    CHECK(film.painted == film.sequences[0].frames);
}

TEST_CASE("frames of an earlier film are removed, and nothing else is") {
    const TwoStrokes two;
    const OwnFolder folder;
    fs::create_directories(folder.path() / "job");
    std::ofstream(folder.path() / "job" / "frame_99999.png") << "old";
    std::ofstream(folder.path() / "job" / "notes.txt") << "kept";
    paint_frames(two.job, small_film(), folder.path(), {0, Sequences::job});
    CHECK_FALSE(fs::exists(folder.path() / "job" / "frame_99999.png"));
    CHECK(fs::exists(folder.path() / "job" / "notes.txt"));
    CHECK_FALSE(fs::exists(folder.path() / "stroke_01"));
}

TEST_CASE("painting can be watched and stopped") {
    const TwoStrokes two;
    const OwnFolder folder;
    int told = 0;
    const PaintedFilm whole = paint_frames(two.job, small_film(), folder.path(), {2, Sequences::strokes},
                                           [&](int painted, int wanted) {
                                               CHECK(painted >= told);
                                               CHECK(painted <= wanted);
                                               told = painted;
                                               return true;
                                           });
    CHECK(told == whole.wanted);
    const auto earlier = files_below(folder.path());
    const PaintedFilm part = paint_frames(two.job, small_film(), folder.path(), {1, Sequences::strokes},
                                          [](int, int) { return false; });
    CHECK_FALSE(part.complete());
    // Half a film would pass for a whole one, and the earlier one is whole.
    CHECK(files_below(folder.path()) == earlier);
    int asked = 0;
    paint_frames(two.job, small_film(), folder.path(), {1, Sequences::strokes},
                 [&](int, int) { return ++asked < 20; });
    CHECK(asked == 20);
    CHECK(files_below(folder.path()) == earlier);
}

TEST_CASE("a folder that cannot be made and wrong options are errors with a name") {
    TwoStrokes two;
    const OwnFolder folder;
    fs::create_directories(folder.path());
    std::ofstream(folder.path() / "file") << "in the way";
    CHECK_THROWS_WITH_AS(paint_frames(two.job, small_film(), folder.path() / "file"),
                         doctest::Contains("file"), std::runtime_error);
    CHECK_THROWS_AS(paint_frames(two.job, small_film(), folder.path(), {-1, Sequences::job}), OutOfRange);
    FilmOptions options = small_film();
    options.size.width = 0;
    CHECK_THROWS_AS(paint_frames(two.job, options, folder.path()), OutOfRange);
    two.job.strokes[0].recording = nullptr;
    CHECK_THROWS_AS(paint_frames(two.job, small_film(), folder.path()), OutOfRange);
    CHECK_FALSE(fs::exists(folder.path() / "job"));
}
