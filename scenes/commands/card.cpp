// overbend card: a material card from tensile tests.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>
#include <system_error>

#include "render/output/whole_file.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/job.h"
#include "scenes/commands/options.h"
#include "scenes/documents/card/card_text.h"
#include "scenes/documents/card/coil_chart.h"
#include "scenes/documents/card/coil_json.h"
#include "scenes/documents/card/coil_tables.h"
#include "scenes/documents/report/report_files.h"
#include "scenes/files/case/case_error.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/toml_file.h"

namespace overbend::commands {

namespace {

namespace fs = std::filesystem;

struct CardOptions {
    std::vector<std::string> files;
    std::optional<std::string> out, like, title, separator, decimal;
    std::optional<double> modulus;
    std::vector<std::string> columns;
    files::Specimen specimen;
    std::string law = "best";
    bool no_bend = false;
    Output output;
};

const std::vector<std::string> law_words = {"best",   "swift",      "hollomon", "voce",
                                            "linear", "swift-voce", "table"};
const std::vector<std::string> separator_words = {"tab", "semicolon", "comma", "spaces"};

std::size_t place_of(const std::vector<std::string>& words, const std::string& word) {
    return static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
}

files::RecordOptions record_options(const CardOptions& given) {
    files::RecordOptions options;
    if (given.separator)
        options.format.separator = static_cast<files::Separator>(place_of(separator_words, *given.separator));
    if (given.decimal)
        options.format.decimal = *given.decimal == "comma" ? files::Decimal::comma : files::Decimal::point;
    options.columns = given.columns;
    options.specimen = given.specimen;
    return options;
}

[[noreturn]] void refuse(const std::string& file, const tensile::BadRecord& bad) {
    throw files::CaseError(file, bad.line, 1, "", bad.wrong, bad.right);
}

std::string name_of(const files::TensileRecord& record) {
    return fs::path(record.file).filename().string();
}

// What is said of each test, once where it is said of all.
void add_said(documents::CoilReport& r, const std::vector<std::vector<std::string>>& of_tests) {
    for (std::size_t t = 0; t < of_tests.size(); ++t)
        for (const std::string& sentence : of_tests[t]) {
            std::size_t last = t, times = 0;
            for (std::size_t i = 0; i < of_tests.size(); ++i)
                if (std::count(of_tests[i].begin(), of_tests[i].end(), sentence) > 0) ++times, last = i;
            if (times == of_tests.size() && last != t) continue;  // said with the last of them
            const bool one = of_tests.size() > 1 && times < of_tests.size();
            r.said.push_back((one ? name_of(r.records[t]) + ": " : "") + sentence);
        }
}

// Reads the records, and all that can be said of them without a sample bend.
documents::CoilReport read_coil(const CardOptions& given, const std::optional<material::Card>& like) {
    std::optional<tensile::Nominal> nominal;
    if (like) nominal = tensile::Nominal{like->youngs_modulus, *given.like, ""};
    if (given.modulus) nominal = tensile::Nominal{*given.modulus, "--modulus", ""};
    documents::CoilReport r;
    std::vector<tensile::Prepared> prepared;
    std::vector<std::vector<std::string>> said;
    for (const std::string& file : given.files) {
        r.records.push_back(files::read_record(file, record_options(given)));
        const files::TensileRecord& record = r.records.back();
        try {
            prepared.push_back(tensile::prepare(record.record));
        } catch (const tensile::BadRecord& bad) {
            refuse(file, bad);
        }
        said.push_back(record.said);
        const auto& mended = prepared.back().mended.said;
        said.back().insert(said.back().end(), mended.begin(), mended.end());
    }
    add_said(r, said);
    try {
        r.coil = tensile::read_coil(std::move(prepared), nominal);
    } catch (const tensile::BadTest& bad) {
        refuse(given.files[bad.test], bad);
    } catch (const tensile::BadRecord& bad) {
        refuse(given.files.front(), bad);
    }
    return r;
}

void say_of_tests(documents::CoilReport& r) {
    if (!r.coil.nominal.said.empty()) r.said.push_back(r.coil.nominal.said);
    std::vector<std::vector<std::string>> said;
    for (const tensile::TestResult& t : r.coil.tests) {
        std::vector<std::string> of_test = t.modulus.said;
        if (!t.figures.neck_seen)
            of_test.push_back(
                "The load is still rising where the record ends: Rm and Ag are what it reached, and the "
                "metal's own are "
                "greater.");
        if (!t.figures.elongation)
            of_test.push_back("The record does not show the fracture: A is not known.");
        if (t.figures.yield_point)
            of_test.push_back(
                "The metal has a yield point. The laws are fitted from the end of yield on and smooth it; "
                "the table keeps "
                "it. Kinks in a bend are not simulated.");
        said.push_back(std::move(of_test));
    }
    add_said(r, said);
}

// A law that is even over the record may begin far from the yield, where it springs back from.
void say_of_law(documents::CoilReport& r) {
    const tensile::LawFit& fit = documents::chosen_fit(r);
    const double measured = r.coil.lower_yield ? r.coil.lower_yield->value : r.coil.proof.value;
    const double law = tensile::stress_of(fit, r.coil.modulus.value, 0.002);
    if (std::abs(law / measured - 1.0) < 0.05 || fit.law == tensile::Law::table) return;
    r.said.push_back("The law in the card has " + fixed(law, 0) + " MPa at 0.2 % plastic strain, the metal " +
                     fixed(measured, 0) + " MPa: --law table follows the record there.");
}

void fill_card(documents::CoilReport& r, const CardOptions& given,
               const std::optional<material::Card>& like) {
    material::Card& c = r.card;
    if (like) {
        c = *like;
        c.backstress.clear(), c.modulus_drop.reset();
        r.like = *given.like;
        if (!like->backstress.empty() || like->modulus_drop)
            r.said.push_back("Back stresses and a falling modulus of " + r.like +
                             " are left out: a pull alone does not show them.");
    } else if (const tensile::Family* family = tensile::family_of(r.coil.modulus.value)) {
        c.poisson = family->poisson, c.density = family->density;
        c.metal = family->name == "steel" ? "steel" : "";
        r.said.push_back("Poisson's ratio and density are those of " + family->name +
                         "; give --like CARD for another metal.");
    } else {
        c.density = 7850.0;
        r.said.push_back(
            "Poisson's ratio 0.3 and the density of steel are assumed; give --like CARD for another metal.");
    }
    c.youngs_modulus = r.coil.modulus.value;
    c.tensile_strength = r.coil.strength.value;
    c.strength_range = documents::coil_strength_range(r.coil);
    if (r.coil.elongation) c.elongation = r.coil.elongation->value;
    if (r.coil.r_value) c.r_value = std::clamp(r.coil.r_value->value, 0.1, 10.0);
    r.chosen = given.law == "best" ? tensile::best_of(r.coil.fits).law
                                   : static_cast<tensile::Law>(place_of(law_words, given.law) - 1);
    r.chosen_by_option = given.law != "best";
    if (documents::chosen_fit(r).residual >= 1e300)
        complain("--law", given.law + " cannot be fitted to these records; choose another law");
    c.hardening = documents::chosen_fit(r).hardening;
    say_of_law(r);
    r.title = given.title.value_or(c.title.empty() ? "Coil of " + name_of(r.records.front())
                                                   : c.title + ", coil of " + name_of(r.records.front()));
    c.title = r.title;
}

void print_report(const documents::CoilReport& r, const Output& output) {
    std::printf("%s\n\n%s", r.title.c_str(), documents::table_text(documents::tests_table(r)).c_str());
    documents::Table laws = documents::laws_table(r);
    std::printf("\n%s", documents::table_text(laws).c_str());
    if (const std::string spread = documents::spread_words(r); !spread.empty())
        std::printf("\n%s\n", spread.c_str());
    if (!output.quiet) print_list("Assumed, mended and not known:", r.said);
}

// The card as text, seen to be one that the program reads.
std::string checked_text(const documents::CoilReport& r, const std::string& as) {
    const std::string text = documents::card_text(r);
    const files::TomlFile file = files::parse_toml(text, as);
    files::read_card_table(files::StrictTable(file), as);
    return text;
}

Exit run(const CardOptions& given) {
    std::optional<material::Card> like;
    if (given.like) like = files::read_card(*given.like, fs::path());
    if (given.out && fs::path(*given.out).extension() != ".toml")
        complain("--out", "\"" + *given.out + "\" is no card; give a file whose name ends in .toml");
    std::error_code not_there;
    if (given.out && given.like && fs::equivalent(*given.out, *given.like, not_there))
        complain("--out", "\"" + *given.out + "\" is the card of --like; give another file");
    documents::CoilReport r = read_coil(given, like);
    say_of_tests(r);
    fill_card(r, given, like);
    r.thickness = given.specimen.thickness.value_or(r.records.front().specimen.thickness.value_or(1.0));
    if (r.thickness < 0.05 || r.thickness > 20.0)
        complain("--thickness",
                 fixed(r.thickness, 3) + " mm is out of range; give a number from 0.05 to 20 (mm)");
    if (!given.no_bend) {
        if (shows_progress(given.output)) std::fprintf(stderr, "\rbending a sample with each law ");
        r.bends = job::bend_samples(r.card, r.coil.fits, r.thickness);
        if (shows_progress(given.output)) std::fprintf(stderr, "\r%40s\r", "");
        for (const job::SampleBend& b : r.bends)
            if (!b.solved && b.why != "the law is not fitted")
                r.said.push_back(std::string("The sample bend with the law ") + tensile::law_word(b.law) +
                                 " is not made: " + b.why + ".");
    }
    if (given.out) {
        const fs::path card = *given.out;
        const std::string text = checked_text(r, card.string());
        const fs::path folder = make_folder(card.has_parent_path() ? card.parent_path().string() : ".");
        output::write_whole(card, text);
        const chart::TensileFit chart = documents::coil_chart(r);
        const auto draw = [&](int height) {
            return chart::draw_tensile_fit(chart, {height * 1123 / 794, height}, picture::Theme::light);
        };
        documents::write_picture(draw(794), draw(1588), folder, card.stem().string());
    }
    if (given.output.json)
        print_json(documents::coil_json(r));
    else
        print_report(r, given.output);
    return Exit::done;
}

}  // namespace

void add_card(Program& app) {
    Command command = app.command("card", "Material card from tensile tests of a coil, with a chart");
    const auto given = std::make_shared<CardOptions>();
    command.option("tests", given->files, "Records as text with columns, one or more of one coil").required();
    command.option("--out", given->out,
                   "The card, such as my-coil.toml; my-coil.svg, .pdf and .png beside it");
    command.option(
        "--like", given->like,
        "material card that has what a tensile test does not show, and the nominal modulus: a name such "
        "as dc01, or a file");
    command.option("--modulus", given->modulus, "nominal Young's modulus, MPa")
        .check(from_to(1e3, 1e6, "MPa"));
    command.option("--law", given->law, "hardening law of the card: best, or one of the laws")
        .check(one_of(law_words))
        .shows_default();
    command
        .option("--columns", given->columns,
                "what the columns are, in turn: strain, true-strain, elongation, stress, true-stress, force, "
                "width, width-strain or -, each with :unit; default: found by the headings")
        .with_commas();
    command.option("--separator", given->separator, "tab, semicolon, comma or spaces; default: found")
        .check(one_of(separator_words));
    command.option("--decimal", given->decimal, "point or comma; default: found")
        .check(one_of({"point", "comma"}));
    command.option("--gauge-length", given->specimen.gauge_length, "of the specimen, mm")
        .check(from_to(1.0, 1000.0, "mm"));
    command.option("--width", given->specimen.width, "of the specimen, mm").check(from_to(0.5, 200.0, "mm"));
    command
        .option("--thickness", given->specimen.thickness,
                "of specimen and sample bend, mm; default of the bend: 1")
        .check(from_to(0.05, 20.0, "mm"));
    command.option("--area", given->specimen.area, "section of the specimen, mm2")
        .check(from_to(0.01, 5000.0, "mm2"));
    command.option("--title", given->title, "of the card");
    command.flag("--no-bend", given->no_bend, "no sample bend with each law");
    add_output(command, given->output);
    command.footer(
        "Example: overbend card test-1.csv test-2.csv --like dc01 --out my-coil.toml\n"
        "Example: overbend card test.txt --columns elongation:mm,force:kN,- --gauge-length 80 --width 20 "
        "--thickness 1 --out my-coil.toml");
    command.runs([given] { return run(*given); });
}

}  // namespace overbend::commands
