// A case that is being changed: what it is now, what it was before, what differs from its file.

#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::window {

// Why a case cannot be; as CaseError has it.
struct CaseMistake {
    std::string key;  // with its tables, places in lists counted from 1: "step[2].stop.free_deg"
    std::string wrong;
    std::string right;
    std::string words() const;  // in one line
};

class CaseEdits {
  public:
    // As it was read.
    explicit CaseEdits(const files::Case& file);

    // As it stands in the file.
    const files::Case& file() const { return file_; }
    // As it was asked for last, even if it cannot be.
    const files::Case& draft() const { return history_[at_].draft; }
    // The last draft that can be: what is run.
    const files::Case& now() const { return now_; }
    // Why the draft cannot be. Checked as a case that is read from a file.
    const std::optional<CaseMistake>& mistake() const { return mistake_; }

    // what: in words, for undo: "stop of step 2". A change that changes nothing is none.
    // True when the draft can be run and is another case than before.
    bool change(const std::string& what, const std::function<void(files::Case&)>& edit);
    // The same result.
    bool undo();
    bool redo();
    bool can_undo() const { return at_ > 0; }
    bool can_redo() const { return at_ + 1 < history_.size(); }
    std::string undo_words() const;  // what would be undone; empty: nothing
    std::string redo_words() const;

    // A line for each thing that differs from the file.
    std::vector<std::string> changes() const;
    bool changed() const;

    // The file was read again, and is another: changes made here before can be had back by undo. True when it
    // is another case than `now`.
    bool read_again(const files::Case& file);

    // Writes the draft as a case file, whole or not at all, and goes on from there: it is the file now.
    // Throws std::runtime_error: a draft that cannot be, a place that cannot be written.
    void save(const std::filesystem::path& file);

  private:
    bool look();  // at the draft
    struct State {
        files::Case draft;
        std::string text;  // as a file
        std::string what;  // the change that led to it
    };
    files::Case file_;
    files::Case now_;
    std::string now_text_;
    std::vector<State> history_;
    std::size_t at_ = 0;
    std::optional<CaseMistake> mistake_;
};

// A name for a changed case beside its file that no file has yet: "hook-changed.toml", "hook-changed-2.toml".
std::filesystem::path name_for_changed(const std::filesystem::path& file);

}  // namespace overbend::window
