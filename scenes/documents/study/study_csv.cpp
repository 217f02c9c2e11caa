#include "scenes/documents/study/study_csv.h"

#include <charconv>

#include "scenes/documents/tables/csv.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

// "A", "B", "thickness_mm of B"; of a grid nothing.
std::string part_words(const job::StudyPlan& plan, std::uint64_t row) {
    if (plan.is_grid()) return "";
    const int part = job::part_of_point(plan, row);
    return part == 0   ? "A"
           : part == 1 ? "B"
                       : plan.factors[static_cast<std::size_t>(part - 2)].name + " of B";
}

bool read_number(const std::string& text, double& value) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size();
}

bool read_truth(const std::string& text, bool& value) {
    value = text == "1";
    return text == "0" || text == "1";
}

}  // namespace

std::string study_csv_head(const job::StudyPlan& plan, const std::vector<job::StudySize>& sizes) {
    std::string text = "row,part";
    for (const job::StudyColumn& column : plan.columns) text += "," + csv_words(column.name);
    text += ",solved,good";
    for (const job::StudySize& size : sizes) text += "," + csv_words(size.key);
    return text + ",why\n";
}

std::string study_csv_row(const job::StudyPlan& plan, const job::StudyRow& row,
                          const std::vector<job::StudySize>& sizes) {
    std::string text = std::to_string(row.number) + "," + csv_words(part_words(plan, row.number));
    for (const double value : row.values) text += "," + csv_number(value);
    text += row.solved ? ",1" : ",0";
    text += row.good ? ",1" : ",0";
    for (std::size_t i = 0; i < sizes.size(); ++i)
        text += "," + (row.solved ? csv_number(row.sizes[i]) : std::string());
    return text + "," + (row.why.empty() ? "" : csv_words(row.why)) + "\n";
}

std::optional<job::StudyRow> read_study_row(const std::string& line, const job::StudyPlan& plan,
                                            const std::vector<job::StudySize>& sizes) {
    std::vector<std::string> fields;
    if (!csv_fields(line, fields) || fields.size() != plan.columns.size() + sizes.size() + 5) return {};
    job::StudyRow row;
    const std::string& number = fields[0];
    if (std::from_chars(number.data(), number.data() + number.size(), row.number).ptr !=
            number.data() + number.size() ||
        row.number >= plan.rows())
        return {};
    std::size_t at = 2;
    row.values.resize(plan.columns.size());
    for (double& value : row.values)
        if (!read_number(fields[at++], value)) return {};
    if (!read_truth(fields[at++], row.solved) || !read_truth(fields[at++], row.good)) return {};
    if (row.solved) {
        row.sizes.resize(sizes.size());
        for (double& value : row.sizes)
            if (!read_number(fields[at++], value)) return {};
    }
    row.why = fields.back();
    return row;
}

std::string study_mark(const job::StudyPlan& plan, const job::HeldStops& held,
                       const std::string& case_bytes) {
    // FNV-1a, 64 bits: G. Fowler, L. C. Noll, K.-P. Vo. It tells files apart, and keeps no secret.
    std::uint64_t hash = 14695981039346656037u;
    const auto take = [&](const std::string& bytes) {
        for (const char c : bytes) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
    };
    take(case_bytes), take(plan.study.bytes);
    for (const auto& stop : held.ram_stop) take(stop ? csv_number(*stop, 12) : "-");
    for (const job::MeasuredSize& m : held.nominal.measures) take(csv_number(m.made, 12));
    return words("%016llx", static_cast<unsigned long long>(hash));
}

}  // namespace overbend::documents
