#include "scenes/case/write_card.h"

namespace overbend::scenes {

namespace {

std::string list_text(const std::vector<double>& values) {
    std::string text;
    for (const double v : values) text += (text.empty() ? "[" : ", ") + number_text(v);
    return text + "]";
}

// Hollomon's law is kept as it was given.
struct HardeningText {
    std::string operator()(const material::Swift& law) const {
        return Inline()
            .text("law", "swift")
            .number("K_MPa", law.K)
            .number("e0", law.e0)
            .number("n", law.n)
            .str();
    }
    std::string operator()(const material::Hollomon& law) const {
        return Inline().text("law", "hollomon").number("K_MPa", law.K).number("n", law.n).str();
    }
    std::string operator()(const material::Voce& law) const {
        return Inline()
            .text("law", "voce")
            .number("Y_MPa", law.Y)
            .number("Q_MPa", law.Q)
            .number("b", law.b)
            .str();
    }
    std::string operator()(const material::Linear& law) const {
        return Inline().text("law", "linear").number("Y_MPa", law.Y).number("H_MPa", law.H).str();
    }
    std::string operator()(const material::Table& law) const {
        return Inline()
            .text("law", "table")
            .put("plastic_strain", list_text(law.p))
            .put("stress_MPa", list_text(law.stress))
            .str();
    }
};

const char* hardness_word(material::Hardness hardness) {
    switch (hardness) {
        case material::Hardness::soft:
            return "soft";
        case material::Hardness::medium:
            break;
        case material::Hardness::hard:
            return "hard";
    }
    return "medium";
}

}  // namespace

void write_card(const material::Card& card, Lines& lines) {
    lines.header("[material]").text("title", card.title).text("source", card.source);
    lines.number("youngs_modulus_MPa", card.youngs_modulus).number("poisson", card.poisson);
    lines.number("density_kg_m3", card.density);
    lines.put("hardening", std::visit(HardeningText{}, card.hardening));
    std::string stresses;
    for (const material::Backstress& b : card.backstress)
        stresses +=
            (stresses.empty() ? "" : ", ") + Inline().number("C_MPa", b.C).number("gamma", b.gamma).str();
    if (!stresses.empty()) lines.put("backstress", "[ " + stresses + " ]");
    if (card.modulus_drop)
        lines.put(
            "modulus_drop",
            Inline().number("to_MPa", card.modulus_drop->to).number("rate", card.modulus_drop->rate).str());
    lines.number("r_value", card.r_value);
    if (card.tensile_strength > 0.0) lines.number("tensile_strength_MPa", card.tensile_strength);
    if (card.elongation > 0.0) lines.number("elongation_percent", 100.0 * card.elongation);
    if (!card.metal.empty()) lines.text("metal", card.metal);
    lines.text("hardness", hardness_word(card.hardness));
}

}  // namespace overbend::scenes
