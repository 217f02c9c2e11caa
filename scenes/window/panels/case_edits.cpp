#include "scenes/window/panels/case_edits.h"

#include <stdexcept>
#include <system_error>

#include "render/output/whole_file.h"
#include "scenes/files/case/case_changes.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"

namespace overbend::window {

namespace {

constexpr std::size_t most_states = 200;

}  // namespace

std::string CaseMistake::words() const {
    return (key.empty() ? "" : key + ": ") + wrong + (right.empty() ? "" : "; " + right);
}

CaseEdits::CaseEdits(const files::Case& file) : file_(file), now_(file), now_text_(files::write_case(file)) {
    history_.push_back({file, now_text_, ""});
}

bool CaseEdits::change(const std::string& what, const std::function<void(files::Case&)>& edit) {
    files::Case next = draft();
    edit(next);
    std::string text = files::write_case(next);
    if (text == history_[at_].text) return false;
    history_.resize(at_ + 1);
    history_.push_back({std::move(next), std::move(text), what});
    if (history_.size() > most_states) history_.erase(history_.begin());
    at_ = history_.size() - 1;
    return look();
}

bool CaseEdits::undo() {
    if (!can_undo()) return false;
    --at_;
    return look();
}

bool CaseEdits::redo() {
    if (!can_redo()) return false;
    ++at_;
    return look();
}

bool CaseEdits::look() {
    const State& state = history_[at_];
    mistake_.reset();
    try {
        files::read_case_text(state.text, state.draft.file);
    } catch (const files::CaseError& error) {
        mistake_ = {error.key, error.wrong, error.right};
    } catch (const std::exception& error) {
        mistake_ = {"", error.what(), ""};
    }
    if (mistake_ || state.text == now_text_) return false;
    now_ = state.draft;
    now_text_ = state.text;
    return true;
}

std::string CaseEdits::undo_words() const {
    return can_undo() ? history_[at_].what : "";
}

std::string CaseEdits::redo_words() const {
    return can_redo() ? history_[at_ + 1].what : "";
}

std::vector<std::string> CaseEdits::changes() const {
    return files::case_changes(file_, draft());
}

bool CaseEdits::changed() const {
    return history_[at_].text != files::write_case(file_);
}

bool CaseEdits::read_again(const files::Case& file) {
    file_ = file;
    return change("file reloaded", [&](files::Case& c) { c = file; });
}

void CaseEdits::save(const std::filesystem::path& file) {
    if (mistake_) throw std::runtime_error("not saved: " + mistake_->words());
    const std::string& text = history_[at_].text;
    files::read_case_text(text, file);  // what is written can be read
    output::write_whole(file, text);
    for (State& state : history_) state.draft.file = file.string();
    now_.file = file.string();
    file_ = history_[at_].draft;
}

std::filesystem::path name_for_changed(const std::filesystem::path& file) {
    const std::string stem = file.stem().string() + "-changed";
    std::error_code ignored;
    for (int i = 1;; ++i) {
        const std::string number = i > 1 ? "-" + std::to_string(i) : "";
        std::filesystem::path name = file.parent_path() / (stem + number + ".toml");
        if (!std::filesystem::exists(name, ignored)) return name;
    }
}

}  // namespace overbend::window
