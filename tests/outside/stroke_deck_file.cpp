#include "tests/outside/stroke_deck_file.h"

#include <cstdio>
#include <map>

#include "render/output/whole_file.h"
#include "tests/files/own_folder.h"
#include "tests/outside/stroke_decks.h"

namespace overbend::tests {

namespace {

constexpr const char* path = "tests/outside/stroke_decks.csv";
constexpr const char* head =
    "# Whole strokes by finite elements: test_outside --run-stroke-decks works them out and writes this "
    "file.\n"
    "# CalculiX 2.20, decks of stroke_decks.h. The reference is the mesh of 8 rows; 6 rows show what the "
    "mesh does.\n"
    "# name,quantity,unit,reference,with 6 rows\n";
constexpr DeckMesh fine{8}, coarse{6};

const char* unit_of(const std::string& quantity) {
    const auto begins = [&](const char* word) { return quantity.rfind(word, 0) == 0; };
    if (begins("turn") || begins("springback")) return "deg";
    if (begins("curvature")) return "1/mm";
    if (begins("outer strain")) return "";
    if (begins("force") || begins("end force")) return "N/mm";
    return "mm";
}

std::vector<ShapeRow> worked_out(const std::string& name) {
    std::printf("%s, %d rows\n", name.c_str(), coarse.rows), std::fflush(stdout);
    const auto rough = stroke_figures(name, run_stroke_deck(name, coarse));
    std::printf("%s, %d rows\n", name.c_str(), fine.rows), std::fflush(stdout);
    std::vector<ShapeRow> rows;
    for (const auto& [quantity, value] : stroke_figures(name, run_stroke_deck(name, fine)))
        rows.push_back({name, quantity, unit_of(quantity), value, rough.at(quantity)});
    return rows;
}

}  // namespace

const std::vector<ShapeRow>& stored_stroke_decks() {
    static const std::vector<ShapeRow> rows = read_shape_rows(path);
    return rows;
}

void print_stroke_figures(const std::string& name, int rows, const std::string& table_file) {
    for (const auto& [quantity, value] :
         stroke_figures(name, read_stroke_deck(name, {rows}, bytes_of(table_file))))
        std::printf("%s,%s,%s,%.5g\n", name.c_str(), quantity.c_str(), unit_of(quantity), value);
}

void run_and_store_stroke_decks(const std::string& only) {
    std::string text = head;
    for (const std::string& name : stroke_decks()) {
        std::vector<ShapeRow> rows;
        if (only.empty() || name == only)
            rows = worked_out(name);
        else
            for (const ShapeRow& row : stored_stroke_decks())
                if (row.name == name) rows.push_back(row);
        for (const ShapeRow& row : rows) {
            char line[200];
            std::snprintf(line, sizeof line, "%s,%s,%s,%.5g,%.5g\n", row.name.c_str(), row.quantity.c_str(),
                          row.unit.c_str(), row.reference, row.coarse.value_or(row.reference));
            text += line;
            if (only.empty() || name == only) std::fputs(line, stdout);
        }
    }
    output::write_whole(path, text);
}

}  // namespace overbend::tests
