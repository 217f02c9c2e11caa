// The rows of a study in a folder, as its runs wrote them: a file for each part that was run, rows in any
// order; put together in the order of their numbers.

#pragma once

#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "scenes/documents/study/study_csv.h"

namespace overbend::documents {

// Part k of n: rows whose number leaves k - 1 when it is divided by n.
struct Shard {
    int part = 1, of = 1;
};
constexpr int most_shards = 100'000;

std::filesystem::path shard_file(const std::filesystem::path& folder, const Shard& shard);
// The first line of a part's file.
std::string shard_head(const std::string& mark, const std::string& csv_head);

// All rows of all parts in the folder, in their order, each once.
// Throws CaseError naming file and line: a file of another study, a row that cannot be read, a row that two
// files have differently.
std::vector<job::StudyRow> read_parts(const std::filesystem::path& folder, const std::string& mark,
                                      const job::StudyPlan& plan, const std::vector<job::StudySize>& sizes);

std::vector<std::uint64_t> missing_rows(const job::StudyPlan& plan, const std::vector<job::StudyRow>& rows,
                                        const Shard& shard);
// "1,3-5": the parts of n that lack rows, as job arrays take them; empty: none.
std::string missing_parts(const job::StudyPlan& plan, const std::vector<job::StudyRow>& rows, int of);

// results.csv: written whole.
void write_rows(const std::filesystem::path& file, const job::StudyPlan& plan,
                const std::vector<job::StudySize>& sizes, const std::vector<job::StudyRow>& rows);

}  // namespace overbend::documents
