#include "scenes/files/tensile/columns.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/nearest_key.h"

namespace overbend::files {

namespace {

bool has(const std::string& text, std::initializer_list<const char*> parts) {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const char* part) { return text.find(part) != std::string::npos; });
}

// Words of a heading without its unit: " engineering strain ".
std::string words_of(const std::string& heading) {
    std::string words = " ";
    for (const char c : lower(heading.substr(0, heading.find_first_of("([")))) {
        const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80 || c == '%';
        words += letter ? c : ' ';
    }
    return words + " ";
}

// How sure a heading is of what it says: among two elongations that of an extensometer counts.
struct Meaning {
    RecordColumn column;
    int rank = 0;  // greater counts
};

Meaning meaning_of(const std::string& heading, const std::string& unit) {
    const std::string w = words_of(heading);
    Meaning m;
    RecordColumn& c = m.column;
    c.unit = unit;
    if (has(w, {"time", "zeit", "temp", " point", " index", " nr", " cycle", "rate ", "thickness", "dicke",
                " energy"}))
        return m;
    if (has(w, {" true", " wahre", " log"})) c.measured = Measured::true_;
    const bool across = has(w, {"width", "breite", "transverse", "lateral", " quer"});
    const bool strain = has(w, {"strain", "dehnung", "epsilon", " eps ", "\u03b5", " e "});
    if (across)
        c.quantity = strain ? Quantity::width_strain : Quantity::width, m.rank = 1;
    else if (has(w, {"stress", "spannung", "sigma", "\u03c3"}) || w == " s ")
        c.quantity = Quantity::stress, m.rank = 2;
    else if (strain)
        c.quantity = Quantity::strain, m.rank = has(w, {"crosshead", "traverse"}) ? 1 : 4;
    else if (has(w, {"force", " load", "kraft", " last ", " f "}))
        c.quantity = Quantity::force, m.rank = 1;
    else if (has(w, {"extension", "extensometer", "elongation", "verl", " dl ", " delta l "}))
        c.quantity = Quantity::elongation, m.rank = 3;
    else if (has(w, {"displacement", "stroke", "position", "crosshead", "traverse", " weg "}))
        c.quantity = Quantity::elongation, m.rank = 1;
    // "elongation, %" is a strain.
    if (c.quantity == Quantity::elongation && !unit.empty() && !unit_factor(c.quantity, unit) &&
        unit_factor(Quantity::strain, unit))
        c.quantity = Quantity::strain;
    // "load" in MPa is a stress.
    if (c.quantity == Quantity::force && !unit.empty() && !unit_factor(c.quantity, unit) &&
        unit_factor(Quantity::stress, unit))
        c.quantity = Quantity::stress;
    return m;
}

std::vector<double> figures_of(const TextTable& table, int column) {
    std::vector<double> figures;
    for (const TextRow& row : table.rows)
        if (column < static_cast<int>(row.cells.size()))
            if (const auto value = figure_of(row.cells[column], table.decimal)) figures.push_back(*value);
    return figures;
}

double largest_of(const TextTable& table, int column) {
    double largest = 0.0;
    for (const double v : figures_of(table, column)) largest = std::max(largest, std::abs(v));
    return largest;
}

// Without a unit: the one that makes the figures those of a strip.
void assume_unit(const TextTable& table, RecordColumn& c, std::vector<std::string>& said) {
    const double largest = largest_of(table, c.column);
    std::string unit;
    switch (c.quantity) {
        case Quantity::strain:
        case Quantity::width_strain:
            unit = largest > 1.5 ? "%" : "1";
            break;
        case Quantity::elongation:
        case Quantity::width:
            unit = "mm";
            break;
        case Quantity::force:
            unit = largest > 200.0 ? "N" : "kN";
            break;
        case Quantity::stress:
            unit = largest > 1e5 ? "Pa" : largest < 5.0 ? "GPa" : "MPa";
            break;
        case Quantity::ignored:
            return;
    }
    c.factor = *unit_factor(c.quantity, unit);
    said.push_back("The " + std::string(quantity_word(c.quantity)) + " in column " +
                   std::to_string(c.column + 1) + " has no unit; " + unit + " is assumed.");
}

void take_unit(const TextTable& table, int line, RecordColumn& c, std::vector<std::string>& said) {
    if (c.unit.empty()) return assume_unit(table, c, said);
    const auto factor = unit_factor(c.quantity, c.unit);
    if (!factor)
        throw CaseError(table.file, line, 1, "column " + std::to_string(c.column + 1),
                        "\"" + c.unit + "\" is no unit of " + quantity_word(c.quantity),
                        "give one of " + listed(known_units(c.quantity)));
    c.factor = *factor;
}

void place(RecordColumns& found, const RecordColumn& c) {
    if (c.quantity == Quantity::strain || c.quantity == Quantity::elongation) found.strain = c;
    if (c.quantity == Quantity::stress || c.quantity == Quantity::force) found.stress = c;
    if (c.quantity == Quantity::width || c.quantity == Quantity::width_strain) found.width = c;
}

// ---- by the option

RecordColumn column_of_word(const TextTable& table, const std::string& word, int column) {
    RecordColumn c;
    c.column = column;
    std::string name = lower(word.substr(0, word.find(':')));
    if (word.find(':') != std::string::npos) c.unit = word.substr(word.find(':') + 1);
    if (name == "-") return c;
    if (name.compare(0, 5, "true-") == 0) c.measured = Measured::true_, name = name.substr(5);
    std::vector<std::string> known;
    for (const Quantity q : {Quantity::strain, Quantity::elongation, Quantity::force, Quantity::stress,
                             Quantity::width, Quantity::width_strain}) {
        known.push_back(quantity_word(q));
        if (name == quantity_word(q)) c.quantity = q;
    }
    if (c.quantity == Quantity::ignored)
        throw CaseError(table.file, 0, 0, "--columns", "\"" + word + "\" is no column",
                        "give one of " + listed(known) +
                            ", true-strain, true-stress or - for each column, with :unit behind it");
    return c;
}

RecordColumns by_option(const TextTable& table, const std::vector<std::string>& spec) {
    RecordColumns found;
    const std::size_t cells = table.rows.front().cells.size();
    if (spec.size() > cells)
        throw CaseError(
            table.file, table.rows.front().line, 1, "--columns",
            std::to_string(spec.size()) + " columns are named, " + std::to_string(cells) + " are here",
            "name as many or fewer");
    for (std::size_t i = 0; i < spec.size(); ++i) {
        RecordColumn c = column_of_word(table, spec[i], static_cast<int>(i));
        if (c.quantity == Quantity::ignored) continue;
        take_unit(table, 0, c, found.said);
        RecordColumns before = found;
        place(found, c);
        const bool twice = (before.strain && found.strain->column != before.strain->column) ||
                           (before.stress && found.stress->column != before.stress->column) ||
                           (before.width && found.width->column != before.width->column);
        if (twice)
            throw CaseError(table.file, 0, 0, "--columns", "\"" + spec[i] + "\" is the second of its kind",
                            "name one strain or elongation, one stress or force, and - for the others");
    }
    return found;
}

// ---- by the headings

// The row of headings: as many cells as the figures have, most of them known; and the row of units below it.
struct Headings {
    const TextRow* names = nullptr;
    const TextRow* units = nullptr;
};

Headings headings_of(const TextTable& table) {
    Headings h;
    const std::size_t cells = table.rows.front().cells.size();
    int most = 0;
    for (const TextRow& row : table.above) {
        if (row.cells.size() < 2 || row.cells.size() > cells + 1) continue;
        int known = 0;
        for (const std::string& cell : row.cells)
            if (meaning_of(cell, unit_in(cell)).column.quantity != Quantity::ignored) ++known;
        if (known >= std::max(most, 1)) most = known, h.names = &row;
    }
    if (!h.names) return h;
    for (const TextRow& row : table.above) {
        if (&row <= h.names || row.cells.size() > cells) continue;
        bool units = true;
        for (std::string cell : row.cells) {
            cell.erase(std::remove_if(cell.begin(), cell.end(),
                                      [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; }),
                       cell.end());
            const bool known = cell.empty() || cell == "s" || cell == "sec" ||
                               unit_factor(Quantity::strain, cell) || unit_factor(Quantity::force, cell) ||
                               unit_factor(Quantity::stress, cell) || unit_factor(Quantity::elongation, cell);
            units = units && known;
        }
        if (units) h.units = &row;
    }
    return h;
}

std::string unit_below(const Headings& h, std::size_t i) {
    if (!h.units || i >= h.units->cells.size()) return "";
    std::string unit = h.units->cells[i];
    unit.erase(std::remove_if(unit.begin(), unit.end(),
                              [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; }),
               unit.end());
    return unit;
}

RecordColumns by_headings(const TextTable& table, const Headings& h) {
    RecordColumns found;
    int strain_rank = 0, stress_rank = 0, width_rank = 0;
    for (std::size_t i = 0; i < h.names->cells.size() && i < table.rows.front().cells.size(); ++i) {
        const std::string& heading = h.names->cells[i];
        const std::string below = unit_below(h, i);
        Meaning m = meaning_of(heading, below.empty() ? unit_in(heading) : below);
        m.column.column = static_cast<int>(i);
        // A column that is empty, or all 0, was not connected.
        if (m.column.quantity == Quantity::ignored || largest_of(table, m.column.column) == 0.0) continue;
        RecordColumns alone;
        place(alone, m.column);
        if (alone.strain && m.rank > strain_rank) found.strain = m.column, strain_rank = m.rank;
        if (alone.stress && m.rank > stress_rank) found.stress = m.column, stress_rank = m.rank;
        if (alone.width && m.rank > width_rank) found.width = m.column, width_rank = m.rank;
    }
    for (auto* c : {&found.strain, &found.stress, &found.width})
        if (*c) take_unit(table, h.names->line, **c, found.said);
    if (found.strain && strain_rank == 1)
        found.said.push_back("The elongation is the machine's, not an extensometer's.");
    return found;
}

// Two columns without headings: the greater figures are the stress.
RecordColumns by_size(const TextTable& table) {
    RecordColumns found;
    const bool first_is_stress = largest_of(table, 0) > largest_of(table, 1);
    RecordColumn strain, stress;
    strain.column = first_is_stress ? 1 : 0, strain.quantity = Quantity::strain;
    stress.column = first_is_stress ? 0 : 1, stress.quantity = Quantity::stress;
    found.said.push_back("There are no headings: column " + std::to_string(strain.column + 1) +
                         " is taken for engineering strain, column " + std::to_string(stress.column + 1) +
                         " for engineering stress.");
    take_unit(table, 0, strain, found.said);
    take_unit(table, 0, stress, found.said);
    found.strain = strain, found.stress = stress;
    return found;
}

}  // namespace

RecordColumns find_columns(const TextTable& table, const std::vector<std::string>& spec) {
    const Headings headings = headings_of(table);
    RecordColumns found;
    if (!spec.empty())
        found = by_option(table, spec);
    else if (headings.names)
        found = by_headings(table, headings);
    else if (table.rows.front().cells.size() == 2)
        found = by_size(table);
    if (!found.strain || !found.stress) {
        const std::string missing = !found.strain && !found.stress
                                        ? "strain and stress (elongation and force)"
                                    : !found.strain ? "strain or elongation"
                                                    : "stress or force";
        throw CaseError(table.file, headings.names ? headings.names->line : 0, 1, "",
                        "no column is known as " + missing,
                        "name the columns in turn, such as --columns elongation:mm,force:kN,-");
    }
    return found;
}

}  // namespace overbend::files
