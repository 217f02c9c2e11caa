// The command `film` from outside: the frames that it leaves, and what changes them. Few and quick frames of
// the small case; what is in the pictures is checked in tests/film and tests/picture, films and stills in
// film_files_test.cpp.

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

const std::string frames = " --formats png --cards off ";
const std::string quick = frames + "--rate 1 --seconds 1 ";

// Runs `film` on a case and returns what stands below its --out.
Files film(const OwnFolder& folder, const std::string& options, int status = 0,
           const std::string& text = small_case) {
    static int count = 0;
    const std::string out = folder / ("film_" + std::to_string(++count));
    const std::string file = folder.write("case.toml", text).string();
    const Run run = run_overbend("film '" + file + "' --out '" + out + "' " + options);
    CAPTURE(options);
    CAPTURE(run.error);
    CHECK(run.status == status);
    return files_below(out);
}

// A big-endian number of four bytes, as PNG has them.
int number_at(const std::string& bytes, std::size_t at) {
    int value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value * 256 + static_cast<unsigned char>(bytes[at + i]);
    return value;
}

// From its signature to its end, with the size that its head gives.
void check_picture(const std::string& bytes, int width, int height) {
    REQUIRE(bytes.size() > 1000);
    CHECK(bytes.compare(0, 8, "\x89PNG\r\n\x1a\n") == 0);
    CHECK(bytes.compare(12, 4, "IHDR") == 0);
    CHECK(number_at(bytes, 16) == width);
    CHECK(number_at(bytes, 20) == height);
    CHECK(bytes.compare(bytes.size() - 8, 4, "IEND") == 0);
}

// Frames of one folder, which must be numbered from 1 without a gap.
int frames_in(const Files& files, const std::string& folder) {
    int count = 0;
    const std::string head = folder + "/frame_";
    for (const auto& file : files) count += file.first.compare(0, head.size(), head) == 0 ? 1 : 0;
    for (int i = 1; i <= count; ++i) {
        const std::string name = head + std::to_string(100000 + i).substr(1) + ".png";
        CAPTURE(name);
        CHECK(files.count(name) == 1);
    }
    return count;
}

}  // namespace

TEST_CASE("film: a folder of numbered frames for every stroke and one for the job") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const Run run = run_overbend("film '" + file + "' --out '" + folder / "out" + "'" + quick);
    CHECK(run.status == 0);
    CHECK(run.error.empty());
    const Files files = files_below(folder / "out");
    const int job = frames_in(files, "job");
    const int first = frames_in(files, "stroke_01"), second = frames_in(files, "stroke_02");
    CHECK(first >= 3);
    CHECK(second >= 3);
    CHECK(job > first + second);                                        // the strip is carried between them
    CHECK(static_cast<int>(files.size()) == job + first + second + 3);  // and the three folders
    for (const auto& file_left : files) {
        CAPTURE(file_left.first);
        if (file_left.first.back() != '/') check_picture(file_left.second, 1280, 720);
    }
    // Told with what was painted.
    CHECK(run.out == folder / "out/job: " + std::to_string(job) + " frames, the whole job\n" +
                         folder / "out/stroke_01: " + std::to_string(first) + " frames, first\n" +
                         folder / "out/stroke_02: " + std::to_string(second) + " frames, second\n");
}

TEST_CASE("film: the frames are the same for any number of threads") {
    const OwnFolder folder;
    const Files one = film(folder, quick + "--threads 1");
    CHECK(one.size() > 10);
    CHECK(film(folder, quick + "--threads 2") == one);
    CHECK(film(folder, quick) == one);
}

TEST_CASE("film: rate and seconds give the count of frames") {
    const OwnFolder folder;
    const int few = frames_in(film(folder, frames + "--rate 1 --seconds 8"), "stroke_01");
    const int twice_the_rate = frames_in(film(folder, frames + "--rate 2 --seconds 8"), "stroke_01");
    const int twice_the_seconds = frames_in(film(folder, frames + "--rate 1 --seconds 16"), "stroke_01");
    // Each of a stroke's passages is a whole number of frames.
    CHECK(std::abs(few - 8) <= 2);
    CHECK(std::abs(twice_the_rate - 16) <= 2);
    CHECK(std::abs(twice_the_seconds - 16) <= 2);
}

TEST_CASE("film: size, theme and colours change what is painted") {
    const OwnFolder folder;
    const std::string name = "stroke_01/frame_00004.png";
    const std::string plain = film(folder, quick).at(name);
    const std::string dark = film(folder, quick + "--theme dark").at(name);
    const std::string strain = film(folder, quick + "--colour strain").at(name);
    const std::string large = film(folder, quick + "--size 1920x1080").at(name);
    check_picture(large, 1920, 1080);
    CHECK(dark != plain);
    CHECK(strain != plain);
    CHECK(strain != dark);
}

TEST_CASE("film: a job with a verdict of no has a film all the same") {
    const OwnFolder folder;
    const std::string text = replaced(small_case, "free_deg = 60.0", "free_deg = 50.0");
    CHECK(frames_in(film(folder, quick, 1, text), "job") > 0);
}

TEST_CASE("film: a job that cannot be computed leaves no frames and no folder") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", unsolvable_case()).string();
    const Files before = files_below(folder / "");
    const Run run = run_overbend("film '" + file + "' --out '" + folder / "out" + "'" + quick);
    CHECK(run.status == 3);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: step 'first': ", 0) == 0);
    CHECK(files_below(folder / "") == before);
}

TEST_CASE("film: an --out that can be no folder is refused, and all stays as it was") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    folder.write("file", "kept");
    const Files before = files_below(folder / "");
    for (const std::string& out :
         {folder / "file", folder / "file/below", std::string("/proc/new"), std::string()}) {
        CAPTURE(out);
        const Run run = run_overbend("film '" + file + "' --out '" + out + "'" + quick);
        CAPTURE(run.error);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK(run.error.rfind("overbend: --out: ", 0) == 0);
        CHECK(files_below(folder / "") == before);
    }
}

TEST_CASE("film: an --out that is there but takes no files is refused like one that cannot be made") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    CHECK(run_overbend("film '" + file + "' --out /proc" + quick).status == 2);
}

TEST_CASE("film: on a full disk no half of a frame is left") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    // A disk that takes no more than 20 kB a file; the frames are larger.
    const Run run = run_overbend("film '" + file + "' --out '" + folder / "out" + "'" + quick,
                                 "trap '' XFSZ; ulimit -f 40; ");
    CAPTURE(run.error);
    CHECK(run.status == 3);
    CHECK(run.out.empty());
    CHECK(run.error.find(folder / "out/") != std::string::npos);
    CHECK(run.error.find('\n') == run.error.size() - 1);
    CHECK(files_below(folder / "out").empty());
}

TEST_CASE("film: steps may be chosen, by name and number") {
    const OwnFolder folder;
    for (const char* second : {"second", "2", "2-2", " second , 2"}) {
        CAPTURE(second);
        const Files files = film(folder, quick + "--steps '" + second + "'");
        CHECK(frames_in(files, "stroke_02") >= 3);
        CHECK(files.count("stroke_01/") == 0);
    }
    const Files all = film(folder, quick);
    CHECK(film(folder, quick + "--steps 1,2") == all);
    CHECK(film(folder, quick + "--steps 1-2") == all);
    // A stroke looks the same whichever others are shown with it.
    CHECK(film(folder, quick + "--steps 2").at("stroke_02/frame_00004.png") ==
          all.at("stroke_02/frame_00004.png"));
}

TEST_CASE("film: what cannot be asked for is refused before the job is run") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const Files before = files_below(folder / "");
    struct Wrong {
        std::string options, told;
    };
    const Wrong wrong[] = {
        {"--size 1281x720",
         "--size: 1281x720 cannot be an MP4, whose width and height are even; give 1280x720"},
        {"--size 1280", "--size: \"1280\" is not a size; give WIDTHxHEIGHT in pixels, such as 1920x1080"},
        {"--size 1280x720x3", "is not a size"},
        {"--size -1280x720", "is not a size"},
        {"--size 300x200", "it must be 320 to 3840 px wide"},
        {"--size 4096x2160", "it must be 320 to 3840 px wide"},
        {"--size 400x2000", "the width must be at least 9/16 of the height"},
        {"--formats avi", "--formats: \"avi\" is not known; give one of mp4, gif, png"},
        {"--backdrop transparent", "--backdrop: a film as mp4 has no transparency"},
        {"--backdrop transparent --formats png,gif", "--backdrop: a film as gif has no transparency"},
        {"--theme blue", "--theme: \"blue\" is not known; give one of light, dark"},
        {"--lens yes", "--lens: \"yes\" is not known; give one of on, off"},
        {"--charts yes", "--charts: "},
        {"--cards yes", "--cards: "},
        {"--colour red", "--colour: "},
        {"--steps third", "--steps: there is no step \"third\"; give a name or number of: 1 first, 2 second"},
        {"--steps 3", "--steps: there is no step \"3\""},
        {"--steps 1-3", "--steps: there is no step \"3\""},
        {"--steps 2-1", "--steps: \"2-1\" runs backwards"},
        {"--steps ,", "--steps: "},
        {"--still 1:jump", "--still: \"1:jump\" is not a time in the film"},
        {"--still 3:free", "--still: there is no step \"3\""},
        {"--still later", "--still: \"later\" is not a time in the film"},
        {"--still 1:free --still-as bmp", "--still-as: \"bmp\" is not known"},
        {"--still-as svg", "--still-as: no still is asked for"},
        {"--gif-limit 0", "--gif-limit: 0 is out of range"},
        {"--springback-scale 0.5", "--springback-scale: 0.5 is out of range"},
        {"--between 0", "--between: 0 is out of range"},
        {"--rate 0", "--rate: 0 is out of range"},
        {"--seconds 0", "--seconds: 0 is out of range"},
    };
    for (const Wrong& w : wrong) {
        CAPTURE(w.options);
        const Run run = run_overbend("film '" + file + "' --out '" + folder / "out" + "' " + w.options);
        CAPTURE(run.error);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK(run.error.find(w.told) != std::string::npos);
        CHECK(files_below(folder / "") == before);
    }
}
