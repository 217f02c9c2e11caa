#include "scenes/files/case/write_card.h"

#include "scenes/files/case/toml_text.h"

namespace overbend::files {

namespace {

struct HardeningWriter {
    Entries& entries;
    void operator()(const material::Swift& law) const {
        entries.text("law", "swift").number("K_MPa", law.K).number("e0", law.e0).number("n", law.n);
    }
    void operator()(const material::Hollomon& law) const {
        entries.text("law", "hollomon").number("K_MPa", law.K).number("n", law.n);
    }
    void operator()(const material::Voce& law) const {
        entries.text("law", "voce").number("Y_MPa", law.Y).number("Q_MPa", law.Q).number("b", law.b);
    }
    void operator()(const material::Linear& law) const {
        entries.text("law", "linear").number("Y_MPa", law.Y).number("H_MPa", law.H);
    }
    void operator()(const material::Table& law) const {
        entries.text("law", "table")
            .as_is("plastic_strain", numbers_text(law.p))
            .as_is("stress_MPa", numbers_text(law.stress));
    }
};

std::string backstress_text(const std::vector<material::Backstress>& backstress) {
    std::vector<std::string> tables;
    for (const material::Backstress& one : backstress)
        tables.push_back(Entries().number("C_MPa", one.C).number("gamma", one.gamma).inline_table());
    return list_text(tables);
}

const char* word_of(material::Hardness hardness) {
    return hardness == material::Hardness::soft   ? "soft"
           : hardness == material::Hardness::hard ? "hard"
                                                  : "medium";
}

}  // namespace

std::string write_card_entries(const material::Card& card, const std::string& table,
                               const std::vector<std::pair<std::string, std::string>>& sources) {
    Entries entries;
    entries.text("title", card.title).text("source", card.source);
    entries.number("youngs_modulus_MPa", card.youngs_modulus).number("poisson", card.poisson);
    entries.number("density_kg_m3", card.density);
    Entries law;
    std::visit(HardeningWriter{law}, card.hardening);
    entries.as_is("hardening", law.inline_table());
    if (!card.backstress.empty()) entries.as_is("backstress", backstress_text(card.backstress));
    if (card.modulus_drop)
        entries.as_is("modulus_drop", Entries()
                                          .number("to_MPa", card.modulus_drop->to)
                                          .number("rate", card.modulus_drop->rate)
                                          .inline_table());
    entries.number_unless(1.0, "r_value", card.r_value);
    entries.number_unless(0.0, "tensile_strength_MPa", card.tensile_strength);
    const auto reads_back = [&](double percent) { return percent / 100.0 == card.elongation; };
    if (card.elongation > 0.0)
        entries.number("elongation_percent", roundest(100.0 * card.elongation, reads_back));
    if (!card.metal.empty()) entries.text("metal", card.metal);
    if (card.hardness != material::Hardness::medium) entries.text("hardness", word_of(card.hardness));
    if (sources.empty()) return entries.lines();

    Entries from;
    for (const auto& [key, source] : sources) from.text(key, source);
    return entries.lines() + "\n[" + (table.empty() ? "" : table + ".") + "sources]\n" + from.lines();
}

}  // namespace overbend::files
