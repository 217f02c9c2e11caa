#include "scenes/documents/study/study_parts.h"

#include <algorithm>
#include <string_view>

#include "render/output/whole_file.h"
#include "scenes/files/case/case_error.h"
#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"

namespace overbend::documents {

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> part_files(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code error;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, error)) {
        const std::string name = entry.path().filename().string();
        if (name.rfind("rows-", 0) == 0 && entry.path().extension() == ".csv") files.push_back(entry.path());
    }
    if (error)
        throw files::CaseError(folder.string(), 0, 0, "", error.message(), "give the folder of the parts");
    std::sort(files.begin(), files.end());
    return files;
}

std::string text_of(const fs::path& file) {
    try {
        return files::whole_text(file, files::most::study_rows_bytes);
    } catch (const files::Unreadable& error) {
        throw files::CaseError(file.string(), 0, 0, "", error.wrong, error.right);
    }
}

void read_part(const fs::path& file, const std::string& head, const job::StudyPlan& plan,
               const std::vector<job::StudySize>& sizes, std::vector<job::StudyRow>& rows) {
    const std::string text = text_of(file);
    if (text.compare(0, head.size(), head) != 0)
        throw files::CaseError(file.string(), 1, 1, "", "these are rows of another case, study or version",
                               "remove the file, or give another folder");
    int line = 3;
    // A last row without its end is still being written, or was cut off: it is not there.
    for (std::size_t at = head.size(), end; (end = text.find('\n', at)) != std::string::npos; at = end + 1) {
        std::optional<job::StudyRow> row = read_study_row(text.substr(at, end - at), plan, sizes);
        if (!row)
            throw files::CaseError(file.string(), line, 1, "", "this is no row of the study",
                                   "remove the line, and run the part again");
        rows.push_back(std::move(*row));
        ++line;
    }
}

}  // namespace

fs::path shard_file(const fs::path& folder, const Shard& shard) {
    return folder / ("rows-" + std::to_string(shard.part) + "-of-" + std::to_string(shard.of) + ".csv");
}

std::string shard_head(const std::string& mark, const std::string& csv_head) {
    return "# rows of a study, format 1, mark " + mark + "\n" + csv_head;
}

std::vector<job::StudyRow> read_parts(const fs::path& folder, const std::string& mark,
                                      const job::StudyPlan& plan, const std::vector<job::StudySize>& sizes) {
    const std::string head = shard_head(mark, study_csv_head(plan, sizes));
    std::vector<job::StudyRow> rows;
    for (const fs::path& file : part_files(folder)) read_part(file, head, plan, sizes, rows);
    std::stable_sort(rows.begin(), rows.end(),
                     [](const job::StudyRow& a, const job::StudyRow& b) { return a.number < b.number; });
    std::vector<job::StudyRow> once;
    for (job::StudyRow& row : rows) {
        if (once.empty() || once.back().number != row.number) {
            once.push_back(std::move(row));
            continue;
        }
        if (study_csv_row(plan, once.back(), sizes) != study_csv_row(plan, row, sizes))
            throw files::CaseError(folder.string(), 0, 0, "",
                                   "two files have row " + std::to_string(row.number) + " differently",
                                   "remove the file that does not belong there");
    }
    return once;
}

std::vector<std::uint64_t> missing_rows(const job::StudyPlan& plan, const std::vector<job::StudyRow>& rows,
                                        const Shard& shard) {
    std::vector<std::uint64_t> missing;
    const auto step = static_cast<std::uint64_t>(shard.of);
    auto had = rows.begin();
    for (std::uint64_t k = static_cast<std::uint64_t>(shard.part - 1); k < plan.rows(); k += step) {
        while (had != rows.end() && had->number < k) ++had;
        if (had == rows.end() || had->number != k) missing.push_back(k);
    }
    return missing;
}

std::string missing_parts(const job::StudyPlan& plan, const std::vector<job::StudyRow>& rows, int of) {
    std::set<int> parts;
    for (const std::uint64_t k : missing_rows(plan, rows, {1, 1}))
        parts.insert(static_cast<int>(k % static_cast<std::uint64_t>(of)) + 1);
    std::string text;
    for (auto at = parts.begin(); at != parts.end();) {
        const int first = *at;
        int last = first;
        while (++at != parts.end() && *at == last + 1) last = *at;
        text += (text.empty() ? "" : ",") + std::to_string(first) +
                (last > first ? "-" + std::to_string(last) : "");
    }
    return text;
}

void write_rows(const fs::path& file, const job::StudyPlan& plan, const std::vector<job::StudySize>& sizes,
                const std::vector<job::StudyRow>& rows) {
    output::PartFile out(file);
    std::string text = study_csv_head(plan, sizes);
    for (const job::StudyRow& row : rows) {
        text += study_csv_row(plan, row, sizes);
        if (text.size() < (1u << 20)) continue;
        out.write(text);
        text.clear();
    }
    out.write(text);
    out.give_name();
}

}  // namespace overbend::documents
