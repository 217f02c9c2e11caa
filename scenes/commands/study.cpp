// overbend study: how many parts will be good, and what their scatter comes from.

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "render/output/row_file.h"
#include "render/output/whole_file.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/interruption.h"
#include "scenes/commands/job.h"
#include "scenes/commands/options.h"
#include "scenes/documents/study/study_charts.h"
#include "scenes/documents/study/study_json.h"
#include "scenes/documents/study/study_parts.h"
#include "scenes/documents/study/study_tables.h"
#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"
#include "sim/counted.h"
#include "sim/words.h"

namespace overbend::commands {

namespace {

namespace fs = std::filesystem;
using documents::Shard;

struct StudyOptions {
    std::string file;
    std::optional<std::string> study, out, shard;
    std::optional<int> missing;
    bool merge = false;
    Output output;
};

// All that is the same for every part of a study.
struct SetUp {
    job::StudyPlan plan;
    job::HeldStops held;
    std::vector<job::StudySize> sizes;
    std::string mark;
};

Shard read_shard(const std::string& text) {
    Shard shard;
    char more = 0;
    if (std::sscanf(text.c_str(), "%d/%d%c", &shard.part, &shard.of, &more) != 2 || shard.of < 1 ||
        shard.of > documents::most_shards || shard.part < 1 || shard.part > shard.of)
        complain("--shard", "\"" + text + "\" is no part; give K/N, such as 3/100, K from 1 to N");
    return shard;
}

SetUp set_up(const StudyOptions& given, const files::Case& c) {
    SetUp s;
    const files::Study study = given.study ? files::read_study(*given.study, c) : files::usual_study(c);
    if (given.study) output::never_replace({*given.study});
    s.plan = job::plan_study(c, study);
    if (shows_progress(given.output)) std::fprintf(stderr, "\rstops of the nominal strip ");
    s.held = job::hold_stops(s.plan);
    if (shows_progress(given.output)) std::fprintf(stderr, "\r%40s\r", "");
    s.sizes = job::study_sizes(s.held);
    s.mark = documents::study_mark(s.plan, s.held, files::whole_text(given.file, files::most::toml_bytes));
    return s;
}

std::string time_words(double seconds) {
    if (seconds < 90.0) return words("%.0f s", seconds);
    return seconds < 5400.0 ? words("%.0f min", seconds / 60.0) : words("%.1f h", seconds / 3600.0);
}

// Tells how far it is, twice a second at most.
class Progress {
  public:
    Progress(std::size_t rows, std::size_t strokes_a_row, bool shown)
        : rows_(rows), strokes_(strokes_a_row), shown_(shown), begin_(std::chrono::steady_clock::now()) {}
    ~Progress() {
        if (shown_) std::fprintf(stderr, "\r%70s\r", "");
    }
    void row_done() {
        ++done_;
        const double now = seconds();
        if (!shown_ || now - told_ < 0.5) return;
        told_ = now;
        const double rate = static_cast<double>(done_) / now;
        std::fprintf(stderr, "\rrow %zu of %zu, %.0f strokes a minute, %s left   ", done_, rows_,
                     60.0 * rate * static_cast<double>(strokes_),
                     time_words(static_cast<double>(rows_ - done_) / rate).c_str());
    }
    std::size_t done() const { return done_; }
    double seconds() const {
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin_).count();
    }

  private:
    std::size_t rows_, strokes_, done_ = 0;
    bool shown_;
    std::chrono::steady_clock::time_point begin_;
    double told_ = 0.0;
};

// Runs what is missing of the part. False: it was stopped before its end.
bool run_part(const SetUp& s, const Shard& shard, const fs::path& folder, const Output& output) {
    const std::string head = documents::shard_head(s.mark, documents::study_csv_head(s.plan, s.sizes));
    output::RowFile file(documents::shard_file(folder, shard), head);
    const std::vector<job::StudyRow> had = documents::read_parts(folder, s.mark, s.plan, s.sizes);
    const std::vector<std::uint64_t> missing = documents::missing_rows(s.plan, had, shard);
    if (!output.quiet && !had.empty() && !missing.empty())
        std::fprintf(stderr, "%s there already, %s to run\n", counted(had.size(), "row").c_str(),
                     counted(missing.size(), "row").c_str());
    const Interruption interruption;
    Progress progress(missing.size(), s.plan.c.steps.size(), shows_progress(output));
    job::run_rows(s.plan, s.held, missing, [&](const job::StudyRow& row) {
        file.add(documents::study_csv_row(s.plan, row, s.sizes));
        progress.row_done();
        return !Interruption::wanted();
    });
    if (!output.quiet && progress.done() > 0 && !shows_progress(output))
        std::fprintf(
            stderr, "%s in %s, %.0f strokes a minute\n", counted(progress.done(), "row").c_str(),
            time_words(progress.seconds()).c_str(),
            60.0 * static_cast<double>(progress.done() * s.plan.c.steps.size()) / progress.seconds());
    return progress.done() == missing.size();
}

Exit print_study(const documents::StudyReport& r, const StudyOptions& given) {
    if (given.output.json) {
        print_json(documents::study_json(r));
    } else {
        std::printf("%s\n%s\n", r.held->c.title.c_str(), documents::good_words(r).c_str());
        for (const documents::Table& table : documents::study_tables(r))
            std::printf("\n%s", documents::table_text(table).c_str());
        if (!given.output.quiet) print_list("How it was done:", documents::study_notes(r));
    }
    return r.result.not_solved == r.rows.size() ? Exit::not_computed : Exit::done;
}

// Joins all parts in the folder.
Exit merge(const SetUp& s, const fs::path& folder, const StudyOptions& given, int parts) {
    std::vector<job::StudyRow> rows = documents::read_parts(folder, s.mark, s.plan, s.sizes);
    if (rows.size() != s.plan.rows()) {
        const std::string which = documents::missing_parts(s.plan, rows, parts);
        std::fprintf(stderr, "overbend: %s of %llu are missing; run parts %s of %d again, then merge\n",
                     counted(s.plan.rows() - rows.size(), "row").c_str(),
                     static_cast<unsigned long long>(s.plan.rows()), which.c_str(), parts);
        return Exit::not_computed;
    }
    documents::write_rows(folder / "results.csv", s.plan, s.sizes, rows);
    const documents::StudyReport report = documents::study_report(s.plan, s.held, s.sizes, std::move(rows));
    output::write_whole(folder / "study.json", documents::study_json(report).dump(2) + "\n");
    documents::write_study_charts(report, folder);
    return print_study(report, given);
}

// Into how many parts the files in the folder are: that of the first.
int parts_in(const fs::path& folder) {
    int of = 1;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder)) {
        int part = 0, found = 0;
        if (std::sscanf(entry.path().filename().c_str(), "rows-%d-of-%d.csv", &part, &found) == 2 &&
            found >= 1 && found <= documents::most_shards)
            of = std::max(of, found);
    }
    return of;
}

Exit run(const StudyOptions& given) {
    if (given.shard && given.merge) complain("--shard, --merge", "they do not go together; give one of them");
    if (given.missing && (given.shard || given.merge))
        complain("--missing", "--shard or --merge stands beside it; give one of them");
    const Shard shard = given.shard ? read_shard(*given.shard) : Shard{};
    const files::Case c = read_job_case(given.file, given.out);
    const SetUp s = set_up(given, c);
    const fs::path folder = make_folder(*given.out);
    if (given.missing) {
        const auto rows = documents::read_parts(folder, s.mark, s.plan, s.sizes);
        std::printf("%s\n", documents::missing_parts(s.plan, rows, *given.missing).c_str());
        return Exit::done;
    }
    if (given.merge) return merge(s, folder, given, parts_in(folder));
    if (!run_part(s, shard, folder, given.output)) {
        std::fprintf(stderr, "overbend: stopped before its end; the same command goes on with it\n");
        return Exit::not_computed;
    }
    if (given.shard) return Exit::done;
    const Exit done = merge(s, folder, given, 1);
    std::error_code ignored;
    fs::remove(documents::shard_file(folder, shard), ignored);
    return done;
}

}  // namespace

void add_study(Program& app) {
    Command command = app.command("study", "Many parts that vary: scatter, good parts, what it comes from");
    const auto given = std::make_shared<StudyOptions>();
    command.option("case", given->file, "The case file").required();
    command.option("study", given->study, "What varies, as a .toml file; default: what usually varies");
    command
        .option(
            "--out", given->out,
            "Folder for results.csv, study.json and charts; an interrupted run goes on from what is there")
        .required();
    command.option("--shard", given->shard, "K/N: runs part K of N alone, to be merged");
    command.flag("--merge", given->merge, "joins the parts in the folder");
    command.option("--missing", given->missing, "prints which of so many parts lack rows, such as 3,7-9")
        .check(whole_from_to(1, documents::most_shards));
    add_output(command, given->output);
    command.footer(
        "Example: overbend study cases/one-bend-dc01/case.toml --out out/study\n"
        "Example: overbend study case.toml study.toml --shard 3/100 --out out/study\n"
        "Example: overbend study case.toml study.toml --merge --out out/study");
    command.runs([given] { return run(*given); });
}

}  // namespace overbend::commands
