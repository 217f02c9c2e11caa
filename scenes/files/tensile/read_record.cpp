#include "scenes/files/tensile/read_record.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numeric>

#include "scenes/files/case/case_error.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

// The first figure behind a label in the lines above, in mm or mm2.
std::optional<double> size_above(const TextTable& table, std::initializer_list<const char*> labels,
                                 bool area) {
    for (const TextRow& row : table.above) {
        std::string line;
        for (const std::string& cell : row.cells) line += cell + " ";
        const std::string text = lower(line);
        for (const char* label : labels) {
            const std::size_t at = text.find(label);
            if (at == std::string::npos) continue;
            std::size_t from = text.find_first_of("0123456789", at + std::string(label).size());
            if (from == std::string::npos || from - at > 40) continue;
            std::size_t to = from;
            while (to < text.size() && std::string("0123456789.,e-").find(text[to]) != std::string::npos)
                ++to;
            // A column's heading such as "width 2" has no unit beside its figure; these are taken as mm.
            std::string figure = text.substr(from, to - from);
            while (!figure.empty() && !std::isdigit(static_cast<unsigned char>(figure.back())))
                figure.pop_back();
            std::optional<double> value = figure_of(figure, Decimal::point);
            if (!value) value = figure_of(figure, Decimal::comma);
            if (!value || *value <= 0.0) continue;
            const bool inches =
                text.find("inch", at) != std::string::npos || text.find("(in)", at) != std::string::npos ||
                text.find("[in]", at) != std::string::npos || text.compare(to, 4, " in ") == 0;
            return *value * (inches ? (area ? 25.4 * 25.4 : 25.4) : 1.0);
        }
    }
    return std::nullopt;
}

Specimen specimen_of(const TextTable& table, const Specimen& given, std::vector<std::string>& said) {
    Specimen s = given;
    const auto look = [&](std::optional<double>& size, const char* name,
                          std::initializer_list<const char*> labels, bool area = false) {
        if (size) return;
        size = size_above(table, labels, area);
        if (size)
            said.push_back(std::string(name) +
                           words(" %.5g %s stands in the file.", *size, area ? "mm2" : "mm"));
    };
    look(s.gauge_length, "Gauge length",
         {"gauge length", "gage length", "gauge_length", "gage_length", "messl", "l0"});
    look(s.thickness, "Thickness", {"thickness", "dicke", "a0"});
    look(s.area, "Section", {"area", "querschnitt", "s0"}, true);
    look(s.width, "Width", {"specimen width", "width =", "width:", "width ", "width_mm", "breite", "b0"});
    return s;
}

double area_of(const TextTable& table, const Specimen& s) {
    if (s.area) return *s.area;
    if (s.width && s.thickness) return *s.width * *s.thickness;
    throw CaseError(table.file, 0, 0, "", "the force is given, and the specimen's section is not known",
                    "give --width and --thickness, or --area (mm, mm2)");
}

std::string column_words(const RecordColumn& c) {
    return std::string(c.measured == Measured::true_ ? "true " : "") + quantity_word(c.quantity) +
           ", column " + std::to_string(c.column + 1) + " (" + (c.unit.empty() ? "unit assumed" : c.unit) +
           ")";
}

double cell_of(const TextTable& table, const TextRow& row, const RecordColumn& c) {
    const bool there = c.column < static_cast<int>(row.cells.size());
    const auto value = there ? figure_of(row.cells[c.column], table.decimal) : std::nullopt;
    if (!value)
        throw CaseError(table.file, row.line, there ? row.columns[c.column] : 1,
                        "column " + std::to_string(c.column + 1),
                        std::string("the ") + quantity_word(c.quantity) + " is missing", "remove this line");
    return *value * c.factor;
}

}  // namespace

TensileRecord parse_record(const std::string& text, const std::string& as, const RecordOptions& options) {
    const TextTable table = parse_text_table(text, as, options.format);
    const RecordColumns columns = find_columns(table, options.columns);
    TensileRecord r;
    r.file = as;
    r.said = table.said;
    r.said.insert(r.said.end(), columns.said.begin(), columns.said.end());
    r.specimen = specimen_of(table, options.specimen, r.said);
    r.columns = column_words(*columns.strain) + "; " + column_words(*columns.stress);
    if (columns.width) r.columns += "; " + column_words(*columns.width);

    double per_strain = 1.0, per_stress = 1.0;
    if (columns.strain->quantity == Quantity::elongation) {
        if (!r.specimen.gauge_length)
            throw CaseError(as, 0, 0, "", "the elongation is given, and the gauge length is not known",
                            "give --gauge-length (mm)");
        per_strain = 1.0 / *r.specimen.gauge_length;
    }
    if (columns.stress->quantity == Quantity::force) per_stress = 1.0 / area_of(table, r.specimen);

    double first_width = 0.0;
    for (const TextRow& row : table.rows) {
        double strain = cell_of(table, row, *columns.strain) * per_strain;
        double stress = cell_of(table, row, *columns.stress) * per_stress;
        if (columns.strain->measured == Measured::true_) strain = std::expm1(std::min(strain, 5.0));
        if (columns.stress->measured == Measured::true_) stress /= std::max(0.1, 1.0 + strain);
        r.record.strain.push_back(strain), r.record.stress.push_back(stress);
        r.record.line.push_back(row.line);
        if (!columns.width) continue;
        double width = cell_of(table, row, *columns.width);
        if (columns.width->quantity == Quantity::width) {
            if (first_width == 0.0) first_width = width;
            if (!(first_width > 0.0))
                throw CaseError(as, row.line, row.columns[columns.width->column],
                                "column " + std::to_string(columns.width->column + 1),
                                words("the width begins with %.4g mm", first_width),
                                "give the width itself, not its change");
            width = width / first_width - 1.0;
        }
        // Some machines count a narrowing as positive.
        r.record.width_strain.push_back(width);
    }
    if (columns.width) {
        std::vector<double>& w = r.record.width_strain;
        if (columns.width->quantity == Quantity::width_strain &&
            std::accumulate(w.begin(), w.end(), 0.0) > 0.0)
            for (double& v : w) v = -v;
        if (columns.width->measured == Measured::true_)
            for (double& v : w) v = std::expm1(v);
        if (*std::min_element(w.begin(), w.end()) <= -0.9)
            throw CaseError(as, 0, 0, "", "the width falls to a tenth of what it was",
                            "check the width's column; see --columns");
    }
    return r;
}

TensileRecord read_record(const std::filesystem::path& file, const RecordOptions& options) {
    return parse_record(read_text(file), file.string(), options);
}

}  // namespace overbend::files
