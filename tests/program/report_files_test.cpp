// overbend report: what it writes beside its page.

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/files/output_of.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using overbend::tests::bytes_of;
using overbend::tests::Files;
using overbend::tests::files_below;
using overbend::tests::output_of;
using overbend::tests::OwnFolder;
using overbend::tests::Run;
using overbend::tests::run_overbend;

TEST_CASE("report writes sheets, storyboard and the charts of every stroke, the same each time") {
    const OwnFolder folder;
    const std::filesystem::path job = folder.write("case.toml", overbend::tests::small_case);
    const auto report = [&](const std::string& out, const std::string& more) {
        return run_overbend("report '" + job.string() + "' --out '" + (folder / out) + "' " + more);
    };
    const Run run = report("a", "");
    CHECK(run.status == 0);
    CHECK(run.out.find("sheets.pdf") != std::string::npos);
    const Files files = files_below(folder / "a");
    for (const char* name :
         {"sheets.pdf", "figures/storyboard.svg", "figures/storyboard.png", "figures/storyboard.pdf"})
        CHECK_MESSAGE(files.count(name) == 1, name);
    for (const std::string stroke : {"stroke_01", "stroke_02"})
        for (const std::string chart : {"force", "moment", "stress"})
            for (const std::string kind : {"svg", "pdf", "png"}) {
                const std::string name = "figures/" + stroke + "_" + chart + "." + kind;
                CHECK_MESSAGE(files.count(name) == 1, name);
            }
    for (const char* name :
         {"blank.svg", "blank.pdf", "blank.dxf", "part.svg", "part.pdf", "part.dxf", "drawings.pdf"})
        CHECK_MESSAGE(files.count(std::string("figures/drawings/") + name) == 1, name);
    const auto tools = std::count_if(files.begin(), files.end(), [](const auto& file) {
        return file.first.find("figures/drawings/tool-") == 0 && file.first.find(".dxf") != std::string::npos;
    });
    CHECK(tools >= 2);
    CHECK(files.count("figures/cost.svg") == 0);  // the case has no costs
    folder.write("costed.toml", overbend::tests::small_case + "[cost]\nmoney = \"EUR\"\n");
    CHECK(run_overbend("report '" + (folder / "costed.toml") + "' --quiet --only figures --out '" +
                       (folder / "d") + "'")
              .status == 0);
    const Files costed = files_below(folder / "d");
    for (const char* name : {"figures/cost.svg", "figures/cost.pdf", "figures/cost.png"})
        CHECK_MESSAGE(costed.count(name) == 1, name);
    for (const auto& [name, bytes] : files) CHECK_MESSAGE(name.find(".overbend-") == std::string::npos, name);

    const std::string words = output_of("pdftotext -layout '" + (folder / "a") + "/sheets.pdf' -");
    CHECK(words.find("Small step") != std::string::npos);
    CHECK(words.find("Stroke 2 of 2: second") != std::string::npos);
    const std::string chart = output_of("pdftotext '" + (folder / "a") + "/figures/stroke_01_force.pdf' -");
    CHECK(chart.find("force, kN") != std::string::npos);
    const std::string story = output_of("pdftotext '" + (folder / "a") + "/figures/storyboard.pdf' -");
    CHECK(story.find("roll over") != std::string::npos);

    CHECK(report("b", "--quiet").out.empty());
    CHECK(files_below(folder / "b") == files);
    CHECK(report("c", "--quiet --theme dark").status == 0);
    const Files dark = files_below(folder / "c");
    CHECK(dark.at("sheets.pdf") == files.at("sheets.pdf"));  // for paper, whatever the figures are for
    CHECK(dark.at("figures/stroke_01_force.svg") != files.at("figures/stroke_01_force.svg"));
    CHECK(dark.at("figures/storyboard.png") != files.at("figures/storyboard.png"));
}

TEST_CASE("report sets another way to make the part beside it") {
    const OwnFolder folder;
    const std::string small = overbend::tests::small_case;
    const std::string own = folder.write("own.toml", small + "[cost]\nmoney = \"EUR\"\n").string();
    const std::string dear =
        folder.write("dear.toml", small + "[cost]\nmoney = \"EUR\"\nworker_price_per_h = 90\n").string();
    const std::string francs = folder.write("francs.toml", small + "[cost]\nmoney = \"CHF\"\n").string();
    const auto report = [&](const std::string& against) {
        return run_overbend("report '" + own + "' --quiet --only page --against '" + against + "' --out '" +
                            (folder / "out") + "'");
    };
    CHECK(report(dear).status == 0);
    const std::string page = bytes_of(folder / "out/report.html");
    CHECK(page.find("Alternative: Small step. This job is never more expensive, at any batch size.") !=
          std::string::npos);
    CHECK(page.find("Small step, the alternative") != std::string::npos);  // its curve
    const Run other_money = report(francs);
    CHECK(other_money.status == 2);
    CHECK(other_money.error.find("--against") != std::string::npos);
    CHECK(other_money.error.find("CHF") != std::string::npos);
}

TEST_CASE("report of a job that cannot be computed, or to nowhere, leaves nothing behind") {
    const OwnFolder folder;
    const std::filesystem::path unsolvable = folder.write("case.toml", overbend::tests::unsolvable_case());
    const Run run = run_overbend("report '" + unsolvable.string() + "' --out '" + (folder / "out") + "'");
    CHECK(run.status == 3);
    CHECK(files_below(folder / "out").empty());
    folder.write("taken", "a file");
    const std::filesystem::path job = folder.write("small.toml", overbend::tests::small_case);
    const Run nowhere = run_overbend("report '" + job.string() + "' --out '" + (folder / "taken") + "'");
    CHECK(nowhere.status == 2);
    CHECK(nowhere.error.find("taken") != std::string::npos);
    CHECK(
        run_overbend("report '" + job.string() + "' --theme pink --out '" + (folder / "out") + "'").status ==
        2);
}
