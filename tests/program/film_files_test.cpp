// The command `film` from outside: films and stills as files, and what is left when it is interrupted or
// cannot write.

#include <doctest/doctest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <cstdlib>
#include <map>
#include <string>
#include <thread>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/film/probe.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

const std::string small = " --rate 5 --size 480x270 ";
const std::string quick = small + "--seconds 2 ";

struct Made {
    Run run;
    Files files;
};

Made film(const OwnFolder& folder, const std::string& options, const std::string& before = "") {
    const std::string file = folder.write("case.toml", small_case).string();
    Made made;
    made.run = run_overbend("film '" + file + "' --out '" + folder / "out" + "' " + options, before);
    made.files = files_below(folder / "out");
    return made;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// Starts the program, and sends it a signal once `ready` says so. Its status as the shell has it.
template <typename Ready>
int interrupted(const std::string& file, const std::string& out, const std::string& options, int signal,
                Ready ready) {
    // Until the child has put its signals as a program has them at its start, none reaches it.
    sigset_t both, before;
    ::sigemptyset(&both);
    ::sigaddset(&both, SIGINT);
    ::sigaddset(&both, SIGTERM);
    ::sigprocmask(SIG_BLOCK, &both, &before);
    const pid_t pid = ::fork();
    if (pid == 0) {
        ::signal(SIGINT, SIG_DFL);
        ::signal(SIGTERM, SIG_DFL);
        ::sigprocmask(SIG_SETMASK, &before, nullptr);
        const std::string line = "exec '" + std::string(OVERBEND_PROGRAM) + "' film '" + file + "' --out '" +
                                 out + "' --quiet " + options + " 2>'" + out + ".stderr'";
        ::execl("/bin/sh", "sh", "-c", line.c_str(), nullptr);
        ::_exit(127);
    }
    ::sigprocmask(SIG_SETMASK, &before, nullptr);
    for (int i = 0; i < 6000 && !ready() && ::waitpid(pid, nullptr, WNOHANG) == 0; ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    ::kill(pid, signal);
    int ended = -1;
    ::waitpid(pid, &ended, 0);
    return WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended);
}

// Processes whose command line has these words in it.
int running_with(const std::string& words) {
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator("/proc")) {
        if (entry.path().filename().string().find_first_not_of("0123456789") != std::string::npos) continue;
        count += has(bytes_of(entry.path() / "cmdline"), words) ? 1 : 0;
    }
    return count;
}

}  // namespace

TEST_CASE("film: an MP4 alone is written, and told") {
    const OwnFolder folder;
    const Made made = film(folder, quick);
    CAPTURE(made.run.error);
    CHECK(made.run.status == 0);
    CHECK(made.run.error.empty());
    REQUIRE(made.files.size() == 1);
    REQUIRE(made.files.count("film.mp4") == 1);
    auto found = probed(folder / "out/film.mp4");
    CHECK(found["codec_name"] == "h264");
    CHECK(found["pix_fmt"] == "yuv420p");
    CHECK(found["width"] == "480");
    CHECK(found["height"] == "270");
    CHECK(found["r_frame_rate"] == "5/1");
    const std::string frames = found["nb_read_frames"];
    CHECK(std::abs(std::stod(found["duration"]) - std::stod(frames) / 5.0) < 0.001);
    CHECK(has(made.run.out, "out/film.mp4: 480x270, " + frames + " frames at 5 per second, "));
    // The index stands before the pictures.
    const std::string& bytes = made.files.at("film.mp4");
    CHECK(bytes.find("moov") < bytes.find("mdat"));
}

TEST_CASE("film: cards, steps and seconds change how long it lasts") {
    const OwnFolder folder;
    const auto frames = [&](const std::string& options) {
        REQUIRE(film(folder, small + options).run.status == 0);
        return std::stoi(probed(folder / "out/film.mp4")["nb_read_frames"]);
    };
    const int all = frames("--seconds 2 --cards off");
    CHECK(frames("--seconds 2") == all + 5 * (4 + 5));
    const int one = frames("--seconds 2 --cards off --steps first");
    CHECK(one < all - 5 * 2);
    CHECK(std::abs(frames("--seconds 6 --cards off --steps first") - (one + 5 * 4)) <= 3);
    CHECK(frames("--seconds 2 --cards off --between 12") > all + 5 * 4);
}

TEST_CASE("film: a GIF keeps to its limit and says why it was reduced") {
    const OwnFolder folder;
    const Made free = film(folder, quick + "--formats gif --steps 1");
    CHECK(free.run.status == 0);
    REQUIRE(free.files.size() == 1);
    CHECK(free.files.at("film.gif").substr(0, 6) == "GIF89a");
    CHECK_FALSE(has(free.run.out, "reduced from"));
    const Made bound = film(folder, "--formats gif --steps 1 --seconds 2 --size 640x360 --gif-limit 0.2");
    CHECK(bound.run.status == 0);
    CHECK(bound.files.at("film.gif").size() <= 200000);
    CHECK(has(bound.run.out, "reduced from 640 x 360 px and 25 frames a second, to keep to 0.20 MB"));
    const Made none = film(folder, "--formats gif --gif-limit 0.05");
    CHECK(none.run.status == 2);
    CHECK(has(none.run.error, "limit of the GIF"));
    CHECK(none.files == bound.files);  // the earlier one stays
}

TEST_CASE("film: several formats at once") {
    const OwnFolder folder;
    const Made made = film(folder, quick + "--formats mp4,gif,png --still first:free --still-as svg");
    CHECK(made.run.status == 0);
    for (const char* name : {"film.mp4", "film.gif", "job/frame_00001.png", "stroke_02/frame_00001.png",
                             "still_first_free.svg"}) {
        CAPTURE(name);
        CHECK(made.files.count(name) == 1);
    }
}

TEST_CASE("film: stills of any moment, alone, as SVG, PDF and PNG") {
    const OwnFolder folder;
    const Made made =
        film(folder, "--size 481x271 --still first:free --still 2:dwell --still title --still 7.5");
    CAPTURE(made.run.error);
    CHECK(made.run.status == 0);
    CHECK(made.files.size() == 12);
    for (const char* name : {"still_first_free", "still_2_dwell", "still_title", "still_7.5s"}) {
        CAPTURE(name);
        const std::string stem = name;
        CHECK(has(made.files.at(stem + ".svg"), "<svg"));
        CHECK(made.files.at(stem + ".pdf").substr(0, 5) == "%PDF-");
        CHECK(made.files.at(stem + ".png").substr(1, 3) == "PNG");
        CHECK(has(made.run.out, stem + ".svg\n"));
    }
    CHECK(made.files.at("still_first_free.png") != made.files.at("still_2_dwell.png"));
    // What is not in the film.
    for (const char* wrong : {"--still 9999", "--still title --cards off", "--still 2:free --steps 1"}) {
        CAPTURE(wrong);
        const Made none = film(folder, wrong);
        CHECK(none.run.status == 2);
        CHECK(has(none.run.error, "--still: "));
    }
}

TEST_CASE("film: stills may be transparent") {
    const OwnFolder folder;
    const Made made = film(folder, "--still 1:dwell --still-as png --backdrop transparent");
    CHECK(made.run.status == 0);
    CHECK(made.files.at("still_1_dwell.png")[25] == 6);  // colours with alpha, as the head of a PNG has it
    const Made opaque = film(folder, "--still 1:dwell --still-as png");
    CHECK(opaque.files.at("still_1_dwell.png")[25] == 2);
}

TEST_CASE("film: lens, charts, theme and springback change the picture") {
    const OwnFolder folder;
    std::map<std::string, std::string> seen;
    for (const char* look : {"", "--charts off", "--theme dark", "--springback-scale 8", "--colour strain"}) {
        CAPTURE(look);
        const std::string picture =
            film(folder, "--still 1:free --still-as svg " + std::string(look)).files.at("still_1_free.svg");
        CHECK(seen.emplace(picture, look).second);
    }
}

TEST_CASE("film: without an encoder it says what to install, before anything is done") {
    const OwnFolder folder;
    for (const char* format : {"mp4", "gif"}) {
        const Made made = film(folder, quick + "--formats " + format,
                               "OVERBEND_FFMPEG=/nowhere/ffmpeg; "
                               "export OVERBEND_FFMPEG; ");
        CHECK(made.run.status == 3);
        CHECK(has(made.run.error, "install ffmpeg"));
        CHECK(made.run.out.empty());
        CHECK(made.files.empty());
    }
    CHECK(film(folder, "--rate 1 --seconds 1 --size 480x270 --formats png", "PATH=/nowhere; ").run.status ==
          0);
}

TEST_CASE("film: on a full disk no film is left, and an earlier one stays") {
    const OwnFolder folder;
    folder.write("out/film.mp4", "earlier");
    for (const char* format : {"mp4", "gif"}) {
        CAPTURE(format);
        // A disk that takes no more than 10 kB a file; with and without the signal that comes with that.
        for (const char* full : {"trap '' XFSZ; ulimit -f 20; ", "ulimit -f 20; "}) {
            const Made made = film(folder, quick + "--formats " + format, full);
            CAPTURE(made.run.error);
            CHECK(made.run.status == 3);
            CHECK(made.run.out.empty());
            CHECK(has(made.run.error, std::string("out/film.") + format + ": cannot be written: "));
            CHECK(made.run.error.find('\n') == made.run.error.size() - 1);
            CHECK(made.files == Files{{"film.mp4", "earlier"}});
        }
    }
}

TEST_CASE("film: interrupted at any time it leaves no film, no part of one, and no encoder") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const std::string out = folder / "out";
    folder.write("out/film.mp4", "earlier");
    const Files before{{"film.mp4", "earlier"}};
    const auto at_once = [] { return true; };
    // The encoder has begun.
    const auto painting = [&] {
        for (const auto& left : files_below(out))
            if (has(left.first, ".overbend-")) return true;
        return false;
    };
    const std::string long_film = "--seconds 60 --rate 60";
    for (const int signal : {SIGINT, SIGTERM}) {
        CAPTURE(signal);
        const int early = interrupted(file, out, long_film, signal, at_once);
        // Before the program has come to listen, the signal simply ends it.
        CHECK((early == 3 || early == 128 + signal));
        CHECK(files_below(out) == before);
        for (const char* format : {"mp4", "gif"}) {
            CAPTURE(format);
            CHECK(interrupted(file, out, long_film + " --formats " + format, signal, painting) == 3);
            CHECK(bytes_of(out + ".stderr") == "overbend: interrupted; unfinished files were removed\n");
            CHECK(files_below(out) == before);
        }
        const auto frames = [&] {
            for (const auto& left : files_below(out))
                if (has(left.first, ".overbend-") && has(left.first, "/frame_00001.png")) return true;
            return false;
        };
        CHECK(interrupted(file, out, long_film + " --formats png", signal, frames) == 3);
        CHECK(files_below(out) == before);
    }
    CHECK(running_with(out) == 0);
}

TEST_CASE("an encoder that does not answer is given up after a while, or at once by Ctrl-C") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const std::string encoder = folder.write("silent", "#!/bin/sh\nsleep 1000 & wait\n").string();
    const std::string before = "chmod +x '" + encoder + "'; export OVERBEND_FFMPEG='" + encoder + "'; ";
    const std::string film = "film '" + file + "' --quiet --out '" + folder / "out" + "'";
    const Run waited = run_overbend(film, before);
    CHECK(waited.status == 3);
    CHECK(waited.error.find("no answer within 10 seconds") != std::string::npos);
    const Run stopped = run_overbend(film, before + "timeout --preserve-status -s INT 1 ");
    CHECK(stopped.status == 3);
    CHECK(stopped.error.find("interrupted") != std::string::npos);
    CHECK(files_below(folder.path()).size() == 2);
}
