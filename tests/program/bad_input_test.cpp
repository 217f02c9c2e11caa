// Cases that are none, and options that cannot be: both commands that read a case refuse them with status 2
// and one line that tells where, before anything is written.

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

// What a command says and does when it refuses, with a folder that is not there and with one that holds
// the results of an earlier run.
void check_refused(const OwnFolder& folder, const std::string& options, const std::string& blamed) {
    CAPTURE(options);
    folder.write("old/results.json", "old");
    folder.write("old/job/frame_00001.png", "old");
    const Files before = files_below(folder / "");
    for (const std::string out : {"new", "old"}) {
        CAPTURE(out);
        const Run run = run_overbend(options + " --out '" + folder / out + "'");
        CAPTURE(run.error);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK(run.error.rfind("overbend: ", 0) == 0);
        CHECK(run.error.find('\n') == run.error.size() - 1);
        CHECK(run.error.find(blamed) != std::string::npos);
        CHECK(files_below(folder / "") == before);
    }
}

struct Mistake {
    std::string right, wrong;  // replaces one by the other in the small case
    std::string key;           // that is blamed, with its tables
};

const std::vector<Mistake> mistakes = {
    {"thickness_mm = 1.0", "thicknes_mm = 1.0", "strip.thicknes_mm"},
    {"width_mm = 20.0", "width_mm = \"20\"", "strip.width_mm"},
    {"width_mm = 20.0", "width_mm = 0.4", "strip.width_mm"},
    {"bend_deg = -60.0", "bend_deg = -180.5", "part.path[4].bend_deg"},
    {"free_deg = 60.0", "free_deg = nan", "step[1].stop.free_deg"},
    {"\"dc01\"", "\"dc0\"", "strip.material"},
    {"\"dc01\"", "\"missing.toml\"", "strip.material"},
    {"layers = 5", "layers = 5.5", "run.layers"},
    {"bends = [\"toe\"]", "bends = [\"to\"]", "step[2].bends[1]"},
    {"face = \"down\"", "face = \"under\"", "step[2].place.face"},
    {"[run]", "[run", "not valid TOML"},
};

}  // namespace

TEST_CASE("a mistake in the case: its file, line and key are named, and nothing is written") {
    const OwnFolder folder;
    for (const Mistake& m : mistakes) {
        const std::string text = replaced(small_case, m.right, m.wrong);
        const std::string file = folder.write("case.toml", text).string();
        const std::string blamed = file + ":" + std::to_string(line_of(text, m.wrong)) + ": " + m.key + ":";
        for (const std::string command : {"check", "film"})
            check_refused(folder, command + " '" + file + "'", blamed);
    }
}

TEST_CASE("a mistake in the card that the case names is the card's") {
    const OwnFolder folder;
    const std::string card =
        "title = \"Invented steel\"\nsource = \"invented\"\nyoungs_modulus_MPa = 206000\npoisson = 0.7\n"
        "density_kg_m3 = 7850\nhardening = { law = \"linear\", Y_MPa = 250, H_MPa = 500 }\n";
    const std::string blamed = folder.write("card.toml", card).string() + ":4: poisson:";
    const std::string file =
        folder.write("case.toml", replaced(small_case, "\"dc01\"", "\"card.toml\"")).string();
    for (const std::string command : {"check", "film"})
        check_refused(folder, command + " '" + file + "'", blamed);
}

TEST_CASE("a case that is not there, or is a folder, is named") {
    const OwnFolder folder;
    for (const std::string command : {"check", "film"}) {
        check_refused(folder, command + " '" + folder / "nowhere.toml" + "'", folder / "nowhere.toml:");
        check_refused(folder, command + " '" + folder / "old" + "'", folder / "old:");
    }
}

TEST_CASE("options that cannot be are refused by name") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    for (const std::string command : {"check ", "film "}) {
        check_refused(folder, command, "case is required");
        check_refused(folder, command + file + " second.toml", "second.toml");
        check_refused(folder, command + file + " --ot x", "--ot");
    }
    check_refused(folder, "check " + file + " --threads 2", "--threads");
    for (const std::string command : {"check ", "film "}) {
        const Run run = run_overbend(command + file + " --out");
        CHECK(run.status == 2);
        CHECK(run.error.rfind("overbend: --out: ", 0) == 0);
    }
    for (const char* wrong :
         {"--size 800x60", "--theme pink", "--colour heat", "--rate 0.5", "--rate 121", "--rate nan",
          "--seconds 0", "--seconds 1e9", "--seconds x", "--threads -1", "--threads 257", "--threads 1.5"}) {
        const std::string option = std::string(wrong).substr(0, std::string(wrong).find(' '));
        check_refused(folder, "film " + file + " " + wrong, option);
    }
}
