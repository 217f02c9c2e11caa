// Material cards: found by name or path, and their laws.

#include "scenes/files/case/read_card.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <limits>

#include "scenes/files/case/case_error.h"
#include "sim/errors.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;

namespace {

material::Card card_of(const std::string& text) {
    const OwnFolder folder;
    folder.write("card.toml", text);
    return read_card("card.toml", folder.path());
}

CaseError mistake_of(const std::string& name, const std::filesystem::path& beside) {
    try {
        read_card(name, beside);
    } catch (const CaseError& error) {
        return error;
    }
    FAIL("taken: " << name);
    return CaseError("", 0, 0, "", "", "");
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

material::Card whole_card() {
    material::Card card;
    card.youngs_modulus = 206000.0;
    card.hardening = material::Swift{520.0, 0.006, 0.22};
    return card;
}

}  // namespace

TEST_CASE("every law is read as it stands") {
    const material::Card swift = card_of(swift_card);
    CHECK(swift.name == "card.toml");
    CHECK(swift.title == "Invented metal");
    CHECK(swift.source == "invented");
    CHECK(swift.youngs_modulus == 206000.0);
    CHECK(swift.poisson == 0.3);
    CHECK(swift.density == 7850.0);
    CHECK(swift.tensile_strength == 350.0);
    CHECK(swift.elongation == 0.3);
    CHECK(swift.reduction_of_area == doctest::Approx(0.625));
    CHECK(swift.price == 2.5);
    CHECK(swift.cutting_rate == 90.0);
    CHECK(card_of(linear_card).reduction_of_area == 0.0);
    CHECK(swift.metal == "steel");
    CHECK(swift.hardness == material::Hardness::hard);
    CHECK(card_of(linear_card).metal.empty());
    CHECK(card_of(linear_card).hardness == material::Hardness::medium);
    REQUIRE(swift.backstress.size() == 2);
    CHECK(swift.backstress[0].C == 3000.0);
    CHECK(swift.backstress[0].gamma == 30.0);
    CHECK(swift.backstress[1].C == 200.0);
    REQUIRE(swift.modulus_drop);
    CHECK(swift.modulus_drop->to == 160000.0);
    CHECK(swift.modulus_drop->rate == 60.0);
    CHECK(swift.r_value == 1.4);
    CHECK(std::get<material::Swift>(swift.hardening).K == 520.0);
    CHECK(std::get<material::Swift>(swift.hardening).e0 == 0.006);
    CHECK(std::get<material::Swift>(swift.hardening).n == 0.22);
    CHECK(std::get<material::Hollomon>(card_of(hollomon_card).hardening).K == 520.0);
    CHECK(std::get<material::Voce>(card_of(voce_card).hardening).b == 12.5);
    CHECK(std::get<material::Linear>(card_of(linear_card).hardening).Y == 250.0);
    const auto table = std::get<material::Table>(card_of(table_card).hardening);
    CHECK(table.p == std::vector<double>{0.0, 0.1, 0.3});
    CHECK(table.stress == std::vector<double>{200.0, 300.0, 330.5});
    CHECK(card_of(voce_card).tensile_strength == 0.0);
    CHECK(card_of(voce_card).backstress.empty());
    CHECK_FALSE(card_of(voce_card).modulus_drop);
}

TEST_CASE("mistakes that concern several numbers of a card") {
    const auto check_mistake = [](const std::string& text, const std::string& key, const std::string& wrong) {
        const std::optional<CaseError> error = mistake_in(text, as_card);
        CAPTURE(wrong);
        REQUIRE(error);
        CAPTURE(std::string(error->what()));
        CHECK(error->key == key);
        CHECK(has(error->wrong, wrong));
    };
    check_mistake(replaced(table_card, "[0, 0.1, 0.3]", "[0, 0.1]"), "hardening", "2 plastic strains");
    check_mistake(replaced(table_card, "[0, 0.1, 0.3]", "[0.01, 0.1, 0.3]"), "hardening",
                  "first plastic strain");
    check_mistake(replaced(table_card, "[0, 0.1, 0.3]", "[0, 0.3, 0.3]"), "hardening", "plastic strain");
    check_mistake(replaced(table_card, "330.5", "299"), "hardening", "stress");
    check_mistake(replaced(table_card, "0.1,", "-0.1,"), "hardening.plastic_strain[2]", "-0.1");
    check_mistake(replaced(table_card, "330.5", "\"x\""), "hardening.stress_MPa[3]", "text");
    check_mistake(replaced(swift_card, "gamma = 30\n", "gamma = 30\n[[backstress]]\nC_MPa = 1\ngamma = 1\n"),
                  "backstress", "3 back stresses");
    check_mistake(replaced(swift_card, "160000", "260000"), "modulus_drop.to_MPa", "260000");
    check_mistake(replaced(swift_card, "hardening = \"this", "poison = \"this"), "sources.poison",
                  "unknown key");
    check_mistake(replaced(voce_card, "206000", "1500"), "hardening", "first yield stress");
}

TEST_CASE("a card that is not there") {
    const CaseError unknown = mistake_of("dc1", ".");
    CHECK(unknown.line == 0);
    CHECK(has(unknown.right, "the nearest is dc01;"));
    for (const std::string& name : known_cards()) CHECK(has(unknown.right, name));
    CHECK(has(mistake_of("nowhere/card.toml", ".").wrong, "no such file"));
    CHECK(has(mistake_of("/", ".").wrong, "folder"));
    CHECK(mistake_of("", ".").line == 0);
}

TEST_CASE("the folder of cards can be named") {
    const OwnFolder folder;
    std::filesystem::create_directory(folder.path() / "materials");
    folder.write("materials/mine.toml", voce_card);
    setenv("OVERBEND_ASSETS", folder.path().c_str(), 1);
    CHECK(known_cards() == std::vector<std::string>{"mine"});
    CHECK(read_card("mine", "").name == "mine");
    setenv("OVERBEND_ASSETS", (folder.path() / "nowhere").c_str(), 1);
    CHECK(has(mistake_of("mine", "").wrong, "OVERBEND_ASSETS"));
    unsetenv("OVERBEND_ASSETS");
    CHECK(known_cards().size() > 1);
}

TEST_CASE("a card made by hand is checked") {
    CHECK_NOTHROW(material::check(whole_card()));
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    const auto refused = [](const material::Card& card) {
        CHECK_THROWS_AS(material::check(card), OutOfRange);
    };
    for (const double bad : {nan, inf, -1.0}) {
        CAPTURE(bad);
        for (double material::Card::*number :
             {&material::Card::youngs_modulus, &material::Card::poisson, &material::Card::density,
              &material::Card::tensile_strength, &material::Card::elongation}) {
            material::Card card = whole_card();
            card.*number = bad;
            refused(card);
        }
        material::Card card = whole_card();
        card.backstress = {{bad, 0.0}};
        refused(card);
        card.backstress = {{1000.0, 10.0}, {1000.0, bad}};
        refused(card);
        card = whole_card();
        card.modulus_drop = material::ModulusDrop{bad, 60.0};
        refused(card);
        card.modulus_drop = material::ModulusDrop{160e3, bad};
        refused(card);
        for (const material::Hardening& law : std::vector<material::Hardening>{
                 material::Swift{bad, 0.006, 0.2}, material::Swift{520, bad, 0.2},
                 material::Swift{520, 0.006, bad}, material::Hollomon{bad, 0.2}, material::Hollomon{520, bad},
                 material::Voce{bad, 100, 10}, material::Voce{200, bad, 10}, material::Voce{200, 100, bad},
                 material::Linear{bad, 10}, material::Linear{200, bad}, material::Table{{0, bad}, {200, 300}},
                 material::Table{{0}, {bad}}}) {
            card = whole_card();
            card.hardening = law;
            refused(card);
        }
    }
}
