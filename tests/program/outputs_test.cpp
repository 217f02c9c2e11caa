// What is written and printed, when writing and printing fail: each is told, and nothing half is left.

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using namespace std::string_literals;

namespace {

bool any_unfinished(const OwnFolder& folder) {
    for (const auto& [name, bytes] : files_below(folder.path()))
        if (name.find(".overbend-") != std::string::npos) return true;
    return false;
}

}  // namespace

TEST_CASE("a limit of file size is an error with a reason, and leaves nothing") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    for (const std::string command : {"check", "drawings", "report"}) {
        CAPTURE(command);
        const Run run = run_overbend(command + " '" + file + "' --quiet --out '" + folder / command + "'",
                                     "ulimit -f 1; ");
        CHECK(run.status == 3);
        CHECK(run.error.find("cannot be written: File too large") != std::string::npos);
        CHECK_FALSE(any_unfinished(folder));
    }
}

TEST_CASE("a signal at any time leaves whole files and no others") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    for (const std::string signal : {"INT", "TERM", "HUP"})
        for (int hundredths = 5; hundredths < 60; hundredths += 5) {
            CAPTURE(signal);
            CAPTURE(hundredths);
            const Run run = run_overbend("report '" + file + "' --quiet --out '" + folder / "out" + "'",
                                         "timeout --preserve-status -s " + signal + " 0." +
                                             std::to_string(100 + hundredths).substr(1) + " ");
            CHECK_FALSE(any_unfinished(folder));
        }
}

TEST_CASE("two runs into one folder leave whole files of one or the other") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    const std::string program = "'" + std::string(OVERBEND_PROGRAM) + "' ";
    const auto into = [&](const std::string& name) {
        const std::string out = file + " --quiet --out '" + folder / name + "'";
        return program + "report " + out + " & " + program + "film " + out +
               " --formats png --rate 2 --size 320x180 & ";
    };
    run_overbend("--version", into("one") + "wait; ");
    run_overbend("--version", into("both") + into("both") + "wait; ");
    CHECK_FALSE(any_unfinished(folder));
    CHECK(files_below(folder / "one").size() > 40);
    CHECK(files_below(folder / "both") == files_below(folder / "one"));
}

TEST_CASE("what cannot be printed is an error of every command, and goes into no file") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    const std::string out = " --out '" + folder / "out" + "'";
    for (const std::string& command :
         {"check " + file + out, "check " + file + " --json", "case --keys"s, "case --new"s,
          "plan " + file + out, "blank " + file + out, "tools " + file + out, "cost " + file + out,
          "drawings " + file + out, "film " + file + " --still 1:free --formats png --rate 1" + out,
          "report " + file + out,
          "bend --material dc01 --thickness 1 --die-opening 8 --shoulder 1 --nose 1 --travel 2"s,
          "moment --material dc01 --thickness 1 --curvatures 0.1"s, "list materials"s, "--help"s,
          "check --help"s, "--version"s}) {
        CAPTURE(command);
        const Run whole = run_overbend(command);
        CHECK(whole.status <= 1);
        const Files before = files_below(folder.path());
        for (const std::string where : {" >/dev/full", " >&-"}) {
            CAPTURE(where);
            const Run run = run_overbend(command + where);
            CHECK(run.status == 3);
            CHECK(run.error.find("could not be written to the output") != std::string::npos);
            CHECK(files_below(folder.path()) == before);
        }
    }
    CHECK(run_overbend("check " + file + out + " --quiet 2>&- <&-").status == 0);
    CHECK(files_below(folder.path()).count("out/results.json") == 1);
}

TEST_CASE("status 3 has its reason on standard error, and a stroke without a solution gives no files") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", unsolvable_case()).string() + "'";
    const Files before = files_below(folder.path());
    for (const std::string command : {"tools", "drawings", "blank", "cost", "film", "report"}) {
        CAPTURE(command);
        const Run run = run_overbend(command + " " + file + " --out '" + folder / "out" + "'");
        CHECK(run.status == 3);
        CHECK(run.out.empty());
        CHECK(run.error.rfind("overbend: ", 0) == 0);
        CHECK(run.error.find("step 'first': ") != std::string::npos);
        CHECK(files_below(folder.path()) == before);
    }
    for (const std::string command : {"check", "blank"}) {  // these show what there is
        CAPTURE(command);
        const Run run = run_overbend(command + " " + file + " --quiet");
        CHECK(run.status == 3);
        CHECK_FALSE(run.out.empty());
        CHECK(run.error.rfind("overbend: step 'first': ", 0) == 0);
    }
}

TEST_CASE("a case that was read, or that a person wrote, is not replaced") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", "# My words.\n" + small_case).string();
    const std::string mine = bytes_of(file);
    for (const std::string command : {"plan", "blank"}) {
        CAPTURE(command);
        const std::string another = command == "plan" ? "case-planned" : "case-blank";
        const std::string line = command + " '" + file + "' --quiet --overwrite --out '" + folder / "" + "'";
        const Run run = run_overbend(line);
        CHECK(run.status == 0);
        CHECK(bytes_of(file) == mine);
        CHECK(run.error == "overbend: " + folder / "case.toml" +
                               " stays as it is: this run has read it; the case is "
                               "written as " +
                               folder / (another + ".toml") + "\n");
        CHECK(bytes_of(folder / (another + ".toml")).rfind("# Written by overbend " + command, 0) == 0);
        CHECK(run_overbend("check '" + folder / (another + ".toml") + "' --quiet").status == 0);
        // Again: its own is replaced, also by another name of the folder, but not what lost its mark.
        CHECK(run_overbend(line).status == 0);
        CHECK_FALSE(std::filesystem::exists(folder / (another + "-2.toml")));
        folder.write(another + ".toml", mine);
        CHECK(run_overbend(command + " '" + file + "' --quiet --out '" + folder / "." + "'").status == 0);
        CHECK(bytes_of(folder / (another + ".toml")) == mine);
        CHECK(std::filesystem::exists(folder / (another + "-2.toml")));
        // Another person's case, in another folder.
        folder.write("out/case.toml", "# Theirs.\n");
        const std::string out = " --quiet --out '" + folder / "out" + "'";
        CHECK(run_overbend(command + " '" + file + "'" + out).error.find("--overwrite replaces it") !=
              std::string::npos);
        CHECK(bytes_of(folder / "out/case.toml") == "# Theirs.\n");
        CHECK(run_overbend(command + " '" + file + "'" + out + " --overwrite").error.empty());
        CHECK(bytes_of(folder / "out/case.toml").rfind("# Written by overbend " + command, 0) == 0);
    }
}

TEST_CASE("no output replaces a file that was read, whatever its name") {
    const OwnFolder folder;
    std::filesystem::copy("assets/materials/dc01.toml", folder.path() / "results.json");
    const std::string card = bytes_of(folder.path() / "results.json");
    const std::string file =
        folder.write("case.toml", replaced(small_case, "\"dc01\"", "\"./results.json\"")).string();
    const Run run = run_overbend("check '" + file + "' --quiet --out '" + folder / "" + "'");
    CHECK(run.status == 3);
    CHECK(run.error.find("results.json: cannot be written: it was read for this") != std::string::npos);
    CHECK(bytes_of(folder.path() / "results.json") == card);
    CHECK(files_below(folder.path()).size() == 2);
}

TEST_CASE("odd folders: what is written can be read again, and what cannot be is told in one sentence") {
    const OwnFolder folder;
    const std::string odd = "line\nbreak \xff 'quoted'";
    const std::filesystem::path beside = folder.path() / "odd" / odd;
    std::filesystem::create_directories(beside);
    folder.write("odd/" + odd + "/case.toml", small_case);
    folder.write("out/case.toml", small_case);
    // The shell is handed the odd name by a pattern.
    const auto in_odd = [&](const std::string& options) {
        return run_overbend(options, "cd '" + folder / "odd" + "'/* && ");
    };
    for (const std::string command : {"check", "plan", "blank", "tools", "drawings", "report --only page"}) {
        CAPTURE(command);
        const Run run = in_odd(command + " \"$PWD/case.toml\" --quiet --out \"$PWD/out\"");
        CAPTURE(run.error);
        CHECK(run.status == 0);
    }
    CHECK(in_odd("check out/case.toml --quiet").status == 0);
    CHECK(in_odd("cost case.toml --json --against \"$PWD/case.toml\"").status == 0);
    // A card in that folder has no path that TOML can name.
    folder.write("odd/" + odd + "/card.toml", bytes_of("assets/materials/dc01.toml"));
    folder.write("odd/" + odd + "/own.toml", replaced(small_case, "\"dc01\"", "\"card.toml\""));
    CHECK(in_odd("check own.toml --quiet").status == 0);
    const Run own = in_odd("blank own.toml --quiet --out there");
    CHECK(own.status == 3);
    CHECK(own.error.find("not written, as it could not be read again: ") != std::string::npos);
    CHECK(own.error.find('\n') == own.error.size() - 1);
}

TEST_CASE("folders that are too long, or gone, are told in one sentence") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    const std::string long_name(300, 'n');
    const Run out = run_overbend("check " + file + " --out '" + folder / long_name + "'");
    CHECK(out.status == 2);
    CHECK(out.error.find("cannot be created: File name too long") != std::string::npos);
    const Run in = run_overbend("check '" + folder / long_name + "'");
    CHECK(in.status == 2);
    CHECK(in.error.find("the file cannot be read: File name too long; ") != std::string::npos);
    const std::string gone = "mkdir '" + folder / "gone" + "' && cd '" + folder / "gone" + "' && rmdir '" +
                             folder / "gone" + "' && ";
    CHECK(run_overbend("check " + file + " --quiet", gone).status == 0);
    const Run nowhere = run_overbend("check " + file + " --quiet --out out", gone);
    CHECK(nowhere.status == 2);
    CHECK(nowhere.error.find("the folder 'out' cannot be ") != std::string::npos);
    CHECK(run_overbend("check case.toml", gone).status == 2);
}
