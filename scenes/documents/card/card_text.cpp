#include "scenes/documents/card/card_text.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "scenes/files/case/toml_text.h"
#include "sim/counted.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using tensile::Figure;

// In five figures: more say nothing of a test.
std::string figure(double value) {
    return files::number_text(std::stod(words("%.5g", value)));
}

std::string list_of(const std::vector<double>& values) {
    std::string text = "[";
    for (std::size_t i = 0; i < values.size(); ++i)
        text += (i == 0 ? "" : i % 10 == 0 ? ",\n  " : ", ") + figure(values[i]);
    return text + "]";
}

std::string hardening_text(const material::Hardening& h) {
    if (const auto* law = std::get_if<material::Swift>(&h))
        return "hardening = { law = \"swift\", K_MPa = " + figure(law->K) + ", e0 = " + figure(law->e0) +
               ", n = " + figure(law->n) + " }\n";
    if (const auto* law = std::get_if<material::Hollomon>(&h))
        return "hardening = { law = \"hollomon\", K_MPa = " + figure(law->K) + ", n = " + figure(law->n) +
               " }\n";
    if (const auto* law = std::get_if<material::Voce>(&h))
        return "hardening = { law = \"voce\", Y_MPa = " + figure(law->Y) + ", Q_MPa = " + figure(law->Q) +
               ", b = " + figure(law->b) + " }\n";
    if (const auto* law = std::get_if<material::Linear>(&h))
        return "hardening = { law = \"linear\", Y_MPa = " + figure(law->Y) + ", H_MPa = " + figure(law->H) +
               " }\n";
    const auto& table = std::get<material::Table>(h);
    return "\n[hardening]\nlaw = \"table\"\nplastic_strain = " + list_of(table.p) +
           "\nstress_MPa = " + list_of(table.stress) + "\n";
}

std::string law_title(tensile::Law law) {
    return law == tensile::Law::swift_voce ? "Swift and Voce in parts" : tensile::law_word(law);
}

std::string hardening_source(const CoilReport& r) {
    const tensile::LawFit& fit = chosen_fit(r);
    std::string text = "fitted: " + law_title(fit.law);
    if (!fit.numbers.empty()) text += ", " + law_numbers(fit);
    text += words("; residual %.3g MPa, at most %.3g MPa, plastic strain %.4g to %.4g", fit.residual,
                  fit.greatest, r.coil.tests.front().curve.from, r.coil.tests.front().curve.to);
    text += "; beyond: " + fit.beyond;
    if (fit.law == tensile::Law::swift_voce) {
        text += "; of";
        for (const tensile::Law part : {tensile::Law::swift, tensile::Law::voce}) {
            const tensile::LawFit& own = r.coil.fits[static_cast<std::size_t>(part)];
            text += std::string(part == tensile::Law::swift ? " swift " : "; voce ") + law_numbers(own);
        }
    }
    return text;
}

std::string measured_words(const CoilReport& r, const Figure& f, double times, const std::string& unit) {
    return "measured, " + with_off(f, times) + (unit.empty() ? "" : " " + unit) + ", " +
           counted(r.coil.tests.size(), "test");
}

std::string nominal_words(const CoilReport& r) {
    return r.like.empty() ? "nominal for the family of metals, from memory" : "of the card " + r.like;
}

// The source of one figure on the lines of the file.
void add(std::string& card, std::string& sources, const std::string& key, const std::string& value,
         const std::string& source) {
    card += key + " = " + value + "\n";
    if (!source.empty()) sources += key + " = " + files::quoted(source) + "\n";
}

std::string comment_of(const CoilReport& r) {
    const tensile::Coil& c = r.coil;
    std::string text = "Written from " + counted(r.records.size(), "tensile test") +
                       " by overbend card. Ranges are two standard deviations either way.\n";
    for (std::size_t i = 0; i < r.records.size(); ++i)
        text += "  " + std::filesystem::path(r.records[i].file).filename().string() + ": " +
                r.records[i].columns + "\n";
    text += "Rp0.2 " + with_off(c.proof) + " MPa, Rm " + with_off(c.strength) + " MPa, Ag " +
            with_off(c.uniform, 100.0) + " %";
    if (c.elongation) text += ", A " + with_off(*c.elongation, 100.0) + " %";
    if (c.upper_yield)
        text += ", ReH " + with_off(*c.upper_yield) + " MPa, ReL " + with_off(*c.lower_yield) + " MPa, Ae " +
                with_off(*c.yield_elongation, 100.0) + " %";
    if (c.r_value) text += ", r " + with_off(*c.r_value);
    text += " (ISO 6892-1, definitions from memory).\n";
    text += "Laws, the residual of each in MPa, and what a bend of 90 degrees springs back with it:\n";
    for (std::size_t i = 0; i < c.fits.size(); ++i) {
        const tensile::LawFit& f = c.fits[i];
        if (f.residual >= 1e300) continue;
        text += words("  %-10s %8.3g", tensile::law_word(f.law), f.residual);
        if (i < r.bends.size() && r.bends[i].solved)
            text += words("  %.2f deg", r.bends[i].springback / degree);
        if (!f.numbers.empty()) text += "  " + law_numbers(f);
        text += "\n";
    }
    for (const std::string& sentence : r.said) text += sentence + "\n";
    return text;
}

}  // namespace

std::string with_off(const Figure& f, double times) {
    const double value = f.value * times, off = f.off * times;
    if (!(off > 0.0)) return words("%.4g", value);
    // The off in two figures at most, the value to the same place.
    const int decimals = std::clamp(static_cast<int>(std::ceil(1.0 - std::log10(off))), 0, 6);
    return words("%.*f +- %.*f", decimals > 0 && off >= 2.0 ? decimals - 1 : decimals, value,
                 decimals > 0 && off >= 2.0 ? decimals - 1 : decimals, off);
}

std::string law_numbers(const tensile::LawFit& fit) {
    std::string text;
    for (const tensile::FittedNumber& n : fit.numbers)
        text += (text.empty() ? "" : ", ") + n.name + words(" %.4g", n.value) +
                (n.unit.empty() ? "" : " " + n.unit) + words(" (%.4g to %.4g)", n.low, n.high);
    return text;
}

double coil_strength_range(const tensile::Coil& coil) {
    return std::min(0.5, std::max(0.03, coil.strength_differs));
}

std::string card_text(const CoilReport& r) {
    const material::Card& c = r.card;
    std::string head = files::comment_text(comment_of(r)), card, sources;
    std::string files_read;
    for (const files::TensileRecord& record : r.records)
        files_read +=
            (files_read.empty() ? "" : ", ") + std::filesystem::path(record.file).filename().string();
    card += "title = " + files::quoted(r.title) + "\n";
    card += "source = " + files::quoted("Tensile tests of the coil: " + files_read) + "\n\n";
    const double to_GPa = 1e-3;
    add(card, sources, "youngs_modulus_MPa", figure(c.youngs_modulus),
        r.coil.modulus_measured ? measured_words(r, r.coil.modulus, to_GPa, "GPa")
                                : "nominal: " + nominal_words(r));
    add(card, sources, "poisson", figure(c.poisson), nominal_words(r));
    add(card, sources, "density_kg_m3", figure(c.density), nominal_words(r));
    add(card, sources, "tensile_strength_MPa", figure(c.tensile_strength),
        measured_words(r, r.coil.strength, 1.0, "MPa"));
    add(card, sources, "strength_range_percent", figure(100.0 * c.strength_range),
        r.coil.strength_differs > 0.03 ? "between the tests, two standard deviations"
                                       : "common practice, no source: one coil along its length");
    if (r.coil.elongation)
        add(card, sources, "elongation_percent", figure(100.0 * c.elongation),
            measured_words(r, *r.coil.elongation, 100.0, "%"));
    else if (c.elongation > 0.0)
        add(card, sources, "elongation_percent", figure(100.0 * c.elongation), nominal_words(r));
    if (c.reduction_of_area > 0.0)
        add(card, sources, "reduction_of_area_percent", figure(100.0 * c.reduction_of_area),
            nominal_words(r));
    if (r.coil.r_value)
        add(card, sources, "r_value", figure(c.r_value), measured_words(r, *r.coil.r_value, 1.0, ""));
    else if (c.r_value != 1.0)
        add(card, sources, "r_value", figure(c.r_value), nominal_words(r));
    if (!c.metal.empty()) add(card, sources, "metal", files::quoted(c.metal), "");
    if (!r.like.empty()) {
        static const char* const hardness[] = {"soft", "medium", "hard"};
        add(card, sources, "hardness", files::quoted(hardness[static_cast<int>(c.hardness)]),
            nominal_words(r));
        if (c.price > 0.0) add(card, sources, "price_per_kg", figure(c.price), nominal_words(r));
        if (c.cutting_rate > 0.0)
            add(card, sources, "cutting_mm2_per_s", figure(c.cutting_rate), nominal_words(r));
    }
    sources += "hardening = " + files::quoted(hardening_source(r)) + "\n";
    const std::string law = hardening_text(c.hardening);
    const bool own_table = law.front() == '\n';
    return head + "\n" + card + (own_table ? law : "\n" + law) + "\n[sources]\n" + sources;
}

}  // namespace overbend::documents
