// Films as one file, as ffprobe sees them; the frames that go to the encoder; what is left when it fails.

#include "render/film/film_file.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>

#include "render/film/encoder.h"
#include "render/film/paint_in_order.h"
#include "sim/errors.h"
#include "tests/files/full_disk.h"
#include "tests/files/own_folder.h"
#include "tests/film/probe.h"
#include "tests/film/two_strokes.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;
using overbend::tests::files_below;
using overbend::tests::FullDisk;
using overbend::tests::OwnFolder;
using overbend::tests::probed;
using overbend::tests::TwoStrokes;

namespace {

FilmOptions small_film() {
    FilmOptions options;
    options.size = {320, 180};
    options.frames_per_second = 12.0;
    options.seconds_per_stroke = 3.0;
    options.seconds_between = 2.0;
    return options;
}

// A variable of the environment, put back afterwards.
class Named {
  public:
    Named(const char* name, const std::string& value) : name_(name) { ::setenv(name, value.c_str(), 1); }
    ~Named() { ::unsetenv(name_); }
    Named(const Named&) = delete;
    Named& operator=(const Named&) = delete;

  private:
    const char* name_;
};

std::string script(const OwnFolder& folder, const std::string& text) {
    const std::filesystem::path path = folder.write("encoder", "#!/bin/sh\n" + text + "\n");
    std::filesystem::permissions(path, std::filesystem::perms::owner_all);
    return path.string();
}

}  // namespace

TEST_CASE("an MP4 is what presentation programs play") {
    const TwoStrokes two;
    const OwnFolder folder;
    const WrittenFilm film = write_mp4(two.job, small_film(), folder.path() / "film.mp4", 0);
    auto found = probed(film.file);
    CHECK(found["codec_name"] == "h264");
    CHECK(found["profile"] == "High");
    CHECK(found["pix_fmt"] == "yuv420p");
    CHECK(found["width"] == "320");
    CHECK(found["height"] == "180");
    CHECK(found["color_range"] == "tv");
    CHECK(found["color_space"] == "bt709");
    CHECK(found["color_transfer"] == "bt709");
    CHECK(found["color_primaries"] == "bt709");
    CHECK(found["r_frame_rate"] == "12/1");
    CHECK(found["avg_frame_rate"] == "12/1");
    CHECK(found["nb_read_frames"] == std::to_string(film.frames));
    CHECK(film.frames == static_cast<int>(timeline(two.job, small_film()).instants.size()));
    CHECK(std::abs(std::stod(found["duration"]) - film.frames / 12.0) < 0.001);
    CHECK(is_whole_mp4(film.file));
    CHECK(film.bytes == std::filesystem::file_size(film.file));
    CHECK(files_below(folder.path()).size() == 1);  // nothing else is written
}

TEST_CASE("a rate that is not a whole number is kept") {
    const TwoStrokes two;
    const OwnFolder folder;
    FilmOptions options = small_film();
    options.frames_per_second = 12.5;
    auto found = probed(write_mp4(two.job, options, folder.path() / "film.mp4", 0).file);
    CHECK(found["r_frame_rate"] == "25/2");
}

TEST_CASE("a film that does not add up, or has its index behind, is not whole") {
    const TwoStrokes two;
    const OwnFolder folder;
    const auto file = write_mp4(two.job, small_film(), folder.path() / "film.mp4", 0).file;
    const std::string bytes = tests::bytes_of(file);
    CHECK_FALSE(is_whole_mp4(folder.write("short.mp4", bytes.substr(0, bytes.size() - 1))));
    CHECK_FALSE(is_whole_mp4(folder.write("head.mp4", bytes.substr(0, 40))));
    CHECK_FALSE(is_whole_mp4(folder.write("empty.mp4", "")));
    CHECK_FALSE(is_whole_mp4(folder.path() / "nowhere.mp4"));
    // moov and mdat the other way round.
    const auto box = [](const std::string& name) { return std::string("\0\0\0\x0c", 4) + name + "body"; };
    CHECK(is_whole_mp4(folder.write("right.mp4", box("moov") + box("mdat"))));
    CHECK_FALSE(is_whole_mp4(folder.write("behind.mp4", box("mdat") + box("moov"))));
}

TEST_CASE("the frames that go to the encoder are the same for 1, 2 and 5 painters, in their order") {
    const TwoStrokes two;
    FilmOptions options = small_film();
    options.cards = Cards::shown;
    const FrameList list = timeline(two.job, options);
    const std::vector<Shot> shots = shots_of(list);
    CHECK(frames_in(shots) == static_cast<int>(list.instants.size()));
    CHECK(shots.size() < list.instants.size());  // what looks the same is painted once
    for (const FrameBytes form : {FrameBytes::bgrx, FrameBytes::yuv420p}) {
        std::vector<std::vector<std::uint8_t>> one;
        paint_in_order(two.job, options, list, shots, form, 1,
                       [&](const std::vector<std::uint8_t>& bytes, const Shot& shot) {
                           CHECK(shot.instant == shots[one.size()].instant);
                           one.push_back(bytes);
                       });
        REQUIRE(one.size() == shots.size());
        CHECK(one.front().size() == (form == FrameBytes::bgrx ? 320 * 180 * 4 : 320 * 180 * 3 / 2));
        CHECK(one.front() != one.back());
        for (const int threads : {2, 5}) {
            std::size_t at = 0;
            bool same = true;
            paint_in_order(two.job, options, list, shots, form, threads,
                           [&](const std::vector<std::uint8_t>& bytes, const Shot&) {
                               same = same && bytes == one[at++];
                           });
            CHECK(same);
            CHECK(at == one.size());
        }
    }
}

TEST_CASE("a shot that stands for many frames looks as each of them would") {
    const TwoStrokes two;
    const FilmOptions options = small_film();
    const FrameList list = timeline(two.job, options);
    for (const Shot& shot : shots_of(list))
        CHECK(as_text(draw_frame(two.job, options, list, shot.instant)) ==
              as_text(draw_frame(two.job, options, list, shot.instant + shot.frames - 1)));
}

TEST_CASE("what is thrown while frames are taken ends the painting") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, small_film());
    int taken = 0;
    CHECK_THROWS_WITH_AS(paint_in_order(two.job, small_film(), list, shots_of(list), FrameBytes::yuv420p, 3,
                                        [&](const std::vector<std::uint8_t>&, const Shot&) {
                                            if (++taken == 5) throw std::runtime_error("enough");
                                        }),
                         "enough", std::runtime_error);
    CHECK(taken == 5);
    FilmOptions odd = small_film();
    odd.size = {321, 181};
    const FrameList odd_list = timeline(two.job, odd);
    CHECK_THROWS_AS(paint_in_order(two.job, odd, odd_list, shots_of(odd_list), FrameBytes::yuv420p, 2,
                                   [](const std::vector<std::uint8_t>&, const Shot&) {}),
                    OutOfRange);
}

TEST_CASE("a GIF keeps its size and rate where it may, and is lowered where it must") {
    const TwoStrokes two;
    const OwnFolder folder;
    FilmOptions options = small_film();
    options.size = {640, 360};
    options.frames_per_second = 30.0;
    const WrittenFilm free = write_gif(two.job, options, folder.path() / "free.gif", 100000000, 0);
    CHECK(free.made_smaller.empty());
    auto found = probed(free.file);
    CHECK(found["codec_name"] == "gif");
    CHECK(found["width"] == "640");
    CHECK(found["r_frame_rate"] == "25/1");
    CHECK(std::abs(std::stod(found["duration"]) - free.frames / 25.0) < 0.05);

    const std::uintmax_t limit = free.bytes / 2;
    const WrittenFilm bound = write_gif(two.job, options, folder.path() / "bound.gif", limit, 0);
    CHECK(bound.bytes <= limit);
    CHECK(std::filesystem::file_size(bound.file) <= limit);
    CHECK(bound.frames_per_second < 25.0);
    CHECK(bound.made_smaller.find("reduced from") == 0);

    CHECK_THROWS_WITH_AS(write_gif(two.job, options, folder.path() / "tiny.gif", 3000, 0),
                         doctest::Contains("480 x 270 px and 5 frames a second"), OutOfRange);
    CHECK(files_below(folder.path()).size() == 2);
}

TEST_CASE("an odd size is refused with an even one that is allowed, and nothing is written") {
    const TwoStrokes two;
    const OwnFolder folder;
    FilmOptions options = small_film();
    options.size = {321, 181};
    CHECK_THROWS_WITH_AS(write_mp4(two.job, options, folder.path() / "film.mp4", 0),
                         doctest::Contains("322 x 182 px"), OutOfRange);
    CHECK(files_below(folder.path()).empty());
}

TEST_CASE("a film that is interrupted leaves nothing, and what was there stays") {
    const TwoStrokes two;
    const OwnFolder folder;
    folder.write("film.mp4", "an earlier film");
    folder.write("film.gif", "an earlier GIF");
    const auto before = files_below(folder.path());
    for (const int enough : {0, 1, 20, 60}) {
        const FilmProgress stop = [&](const std::string&, int done, int) { return done < enough; };
        CHECK_THROWS_AS(write_mp4(two.job, small_film(), folder.path() / "film.mp4", 2, stop), Interrupted);
        CHECK_THROWS_AS(write_gif(two.job, small_film(), folder.path() / "film.gif", 1000000, 2, stop),
                        Interrupted);
        CHECK(files_below(folder.path()) == before);
    }
    // When all frames are taken and the encoder is waited for.
    int wanted = -1;
    const FilmProgress last = [&](const std::string&, int done, int all) {
        wanted = all;
        return done < all;
    };
    CHECK_THROWS_AS(write_mp4(two.job, small_film(), folder.path() / "film.mp4", 2, last), Interrupted);
    CHECK(wanted > 0);
    CHECK(files_below(folder.path()) == before);
}

TEST_CASE("a full disk is told, and nothing is left") {
    const TwoStrokes two;
    const OwnFolder folder;
    folder.write("film.mp4", "an earlier film");
    const auto before = files_below(folder.path());
    {
        const FullDisk full(8000);
        CHECK_THROWS_WITH_AS(write_mp4(two.job, small_film(), folder.path() / "film.mp4", 0),
                             doctest::Contains("film.mp4: cannot be written: File too large"),
                             std::runtime_error);
        CHECK_THROWS_WITH_AS(write_gif(two.job, small_film(), folder.path() / "film.gif", 1000000, 0),
                             doctest::Contains("film.gif: cannot be written"), std::runtime_error);
    }
    CHECK(files_below(folder.path()) == before);
    CHECK_THROWS_WITH_AS(write_mp4(two.job, small_film(), folder.path() / "no" / "folder.mp4", 0),
                         doctest::Contains("No such file"), std::runtime_error);
}

TEST_CASE("an encoder that is missing, dies or lies is told") {
    const TwoStrokes two;
    const OwnFolder folder;
    const auto write = [&] { write_mp4(two.job, small_film(), folder.path() / "film.mp4", 0); };
    {
        const Named encoder("OVERBEND_FFMPEG", folder / "nowhere");
        CHECK_THROWS_WITH_AS(require_encoder({}), doctest::Contains("install ffmpeg"), NoEncoder);
        CHECK_THROWS_WITH_AS(write(), doctest::Contains("install ffmpeg"), NoEncoder);
    }
    {
        const Named encoder("OVERBEND_FFMPEG", script(folder, "echo 'no room in here' >&2; exit 1"));
        CHECK_THROWS_AS(require_encoder({}), NoEncoder);
        CHECK_THROWS_WITH_AS(write(), doctest::Contains("film.mp4: cannot be written: no room in here"),
                             std::runtime_error);
    }
    {
        const Named encoder("OVERBEND_FFMPEG", script(folder, "head -c 100000 >/dev/null; kill -KILL $$"));
        CHECK_THROWS_WITH_AS(write(), doctest::Contains("the encoder was stopped: Killed"),
                             std::runtime_error);
    }
    {
        // It takes all frames and says that all is well.
        const Named encoder("OVERBEND_FFMPEG", script(folder, "cat >/dev/null"));
        CHECK_THROWS_WITH_AS(write(), doctest::Contains("incomplete"), std::runtime_error);
    }
    for (const std::string lie : {"", "GIF89a", "GIF89a0000000000000000;"}) {
        CAPTURE(lie);
        // Palettes as they should be, and then a file that is no GIF of that size.
        const Named encoder("OVERBEND_FFMPEG",
                            script(folder,
                                   "cat >/dev/null; for last; do :; done; case $last in pipe:1) "
                                   "head -c 1024 /dev/zero;; *) printf '" +
                                       lie + "' >${last#file:};; esac"));
        CHECK_THROWS_WITH_AS(write_gif(two.job, small_film(), folder.path() / "film.gif", 1000000, 0),
                             doctest::Contains("the GIF is incomplete"), std::runtime_error);
    }
    {
        // It does not answer, and waiting can be given up.
        const Named encoder("OVERBEND_FFMPEG", script(folder, "sleep 100"));
        int asked = 0;
        CHECK_THROWS_AS(require_encoder([&] { return ++asked < 3; }), Interrupted);
    }
    CHECK(files_below(folder.path()).size() == 1);  // the script alone
}
