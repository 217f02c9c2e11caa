// overbend card: from a record to a card that the program bends with, and what it refuses.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string records = "tests/tensile/records/", aluminium = records + "al6061-t6_nm-rd-01.csv";

void check_refused(const std::string& options, const std::string& said) {
    CAPTURE(options);
    const Run run = run_overbend("card " + options);
    CAPTURE(run.error);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: ", 0) == 0);
    CHECK(run.error.find('\n') == run.error.size() - 1);
    CHECK(run.error.find(said) != std::string::npos);
}

std::string text_of_card() {
    std::ifstream card("assets/materials/aluminium-6061-t6.toml");
    return {std::istreambuf_iterator<char>(card), std::istreambuf_iterator<char>()};
}

}  // namespace

TEST_CASE("card: from a record to a bend") {
    const OwnFolder folder;
    const std::string card = folder / "my-coil.toml";
    const Run run =
        run_overbend("card " + aluminium + " --like aluminium-6061-t6 --out '" + card + "' --json --quiet");
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    CHECK(run.error.empty());
    for (const char* ending : {".toml", ".svg", ".pdf", ".png"})
        CHECK(fs::exists(folder.path() / ("my-coil" + std::string(ending))));
    const json r = json::parse(run.out);
    CHECK(std::abs(r["proof_stress_MPa"]["value"].get<double>() / 298.5 - 1.0) < 0.01);
    CHECK(std::abs(r["tensile_strength_MPa"]["value"].get<double>() / 315.3 - 1.0) < 0.01);
    CHECK(r["law"] == "voce");
    CHECK(r["laws"].size() == 6);
    const double least = r["springback_between_laws"]["least_deg"],
                 most = r["springback_between_laws"]["most_deg"];
    CHECK(least > 1.0);
    CHECK(most > least);

    // The sample bend is the command's own.
    const Run bend = run_overbend("bend --material '" + card +
                                  "' --thickness 1 --die-opening 8 --shoulder 1 --nose 1 --free 90 --json");
    REQUIRE(bend.status == 0);
    const json b = json::parse(bend.out);
    double of_law = 0.0;
    for (const json& law : r["laws"])
        if (law["law"] == "voce") of_law = law["sample_bend"]["springback_deg"];
    CHECK(std::abs(b["springback_deg"].get<double>() - of_law) < 0.02);
}

TEST_CASE("card: several tests, the law by option, nothing written") {
    const Run run =
        run_overbend("card " + aluminium + " " + records + "al6061-t6_nm-rd-02.csv --law table --no-bend");
    CHECK(run.status == 0);
    for (const char* words : {"al6061-t6_nm-rd-02", "table *", "coil", "Assumed, mended and not known:"}) {
        CAPTURE(words);
        CHECK(run.out.find(words) != std::string::npos);
    }
    CHECK(run_overbend("card " + aluminium + " --no-bend").out ==
          run_overbend("card " + aluminium + " --no-bend").out);
}

TEST_CASE("card: a modulus that is too coarse, or not a metal's, is said") {
    const Run coarse = run_overbend("card " + records + "304l_01.csv --like stainless-1.4301 --no-bend");
    CHECK(coarse.status == 0);
    CHECK(coarse.out.find("too coarse for a modulus") != std::string::npos);
    const OwnFolder folder;
    std::string text = "strain,stress (MPa)\n";
    for (int i = 0; i < 200; ++i) {
        const double stress = i < 100 ? 3.0 * i : 300.0 + 60.0 * (1.0 - std::exp(-0.03 * (i - 100)));
        const double strain = stress / 60e3 + (i < 100 ? 0.0 : 0.0015 * (i - 100));
        text += std::to_string(strain) + "," + std::to_string(stress) + "\n";
    }
    const std::string soft = "'" + folder.write("soft.csv", text).string() + "'";
    const Run run = run_overbend("card " + soft + " --like dc01 --no-bend");
    CHECK(run.status == 0);
    CHECK(run.out.find("the machine's own stretch is in the elongation") != std::string::npos);
    CHECK(run.out.find("The load is still rising where the record ends") != std::string::npos);
    check_refused(soft, "give --like CARD or --modulus");
}

TEST_CASE("card: what is refused, with file, line and what would be right") {
    const OwnFolder folder;
    const auto file = [&](const std::string& name, const std::string& text) {
        return "'" + folder.write(name, text).string() + "'";
    };
    check_refused("no/such.csv", "no/such.csv: there is no such file; check the path");
    check_refused(file("empty.csv", ""), "empty.csv: the file is empty");
    check_refused(file("words.csv", "a,b\nc,d\n"), "words.csv: two columns of figures are not found");
    check_refused(file("few.csv", "strain,stress\n0,0\n0.001,200\n0.1,300\n"),
                  "few.csv:4: the record has 3 points; give");
    check_refused(file("cell.csv", "strain,stress\n0,0\n0.001,200\n0.002,3o0\n0.1,300\n"),
                  "cell.csv:4: column 2: \"3o0\" is no figure; correct or remove this line");
    check_refused(aluminium + " --columns strain,force:N",
                  "the specimen's section is not known; give --width");
    check_refused(aluminium + " --out card.txt",
                  "--out: \"card.txt\" is no card; give a file whose name ends in .toml");
    const std::string own = file("own.toml", text_of_card());
    check_refused(aluminium + " --like " + own + " --out " + own, "is the card of --like; give another file");
    check_refused(aluminium + " --like dc0", "the nearest is dc01");
    check_refused(aluminium + " --law cubic", "--law");
    check_refused(aluminium + " --modulus 0", "--modulus");
    check_refused("", "tests");
}
