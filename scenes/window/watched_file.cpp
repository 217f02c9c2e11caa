#include "scenes/window/watched_file.h"

#include <algorithm>
#include <fstream>
#include <system_error>

#include "scenes/case/case_error.h"
#include "scenes/case/named_asset.h"
#include "sim/words.h"

namespace overbend::scenes {

namespace fs = std::filesystem;

namespace {

constexpr auto between_looks = std::chrono::milliseconds(500);
constexpr std::size_t longest_quote = 120;

std::string line_of(const std::string& file, int line) {
    std::ifstream stream(file);
    std::string text;
    for (int i = 0; i < line && std::getline(stream, text); ++i) continue;
    if (!stream) return "";
    const std::size_t from = text.find_first_not_of(" \t");
    if (from == std::string::npos) return "";
    text = text.substr(from, text.find_last_not_of(" \t\r") - from + 1);
    return text.size() > longest_quote ? text.substr(0, longest_quote) + " ..." : text;
}

}  // namespace

std::vector<fs::path> files_of(const Case& c) {
    std::vector<fs::path> files = {c.file};
    const fs::path beside = fs::path(c.file).parent_path();
    const auto add = [&](const std::string& name, const AssetKind& kind) {
        if (name.empty()) return;
        try {
            const fs::path file = file_of(name, beside, kind);
            if (std::find(files.begin(), files.end(), file) == files.end()) files.push_back(file);
        } catch (const CaseError&) {  // a name whose file is gone
        }
    };
    if (c.card_origin.from == CardOrigin::From::assets) add(c.material.name, material_cards);
    if (c.card_origin.from == CardOrigin::From::file) add(c.card_origin.file, material_cards);
    add(c.rack, tool_racks);
    add(c.press_name, presses);
    for (const Tool& tool : c.tools) {
        add(tool.make.steel, tool_steels);
        const auto* outline = std::get_if<OutlineTool>(&tool.shape);
        if (outline && outline->file) files.emplace_back(outline->file->path);
    }
    return files;
}

std::string trouble_words(const std::exception& error) {
    const auto* wrong = dynamic_cast<const CaseError*>(&error);
    if (wrong == nullptr || wrong->line == 0) return error.what();
    const std::string quoted = line_of(wrong->file, wrong->line);
    return error.what() + (quoted.empty() ? "" : words("\nline %d:  ", wrong->line) + quoted);
}

WatchedFiles::Stamps WatchedFiles::look(const std::vector<fs::path>& files) {
    Stamps stamps;
    for (const fs::path& file : files) {
        std::error_code none;
        Stamp stamp;
        stamp.size = fs::file_size(file, none);
        stamp.there = !none;
        if (stamp.there) stamp.time = fs::last_write_time(file, none);
        if (!stamp.there) stamp.size = 0;
        stamps.push_back(stamp);
    }
    return stamps;
}

void WatchedFiles::watch(const std::vector<fs::path>& files) {
    background_.cancel();
    background_.start([](const Wanted&) -> Stamps { throw Cancelled(); });  // what was seen of others
    files_ = files;
    known_ = last_ = look(files_);
    changed_.clear();
}

void WatchedFiles::accept() {
    known_ = last_;
    changed_.clear();
}

bool WatchedFiles::take() {
    if (files_.empty()) return false;
    bool news = false;
    if (const std::optional<Stamps> now = background_.take(); now && now->size() == files_.size()) {
        std::vector<fs::path> changed;
        for (std::size_t i = 0; i < files_.size(); ++i)
            if ((*now)[i] == last_[i] && !((*now)[i] == known_[i])) changed.push_back(files_[i]);
        // What is told stays told while it is written once more.
        if (*now == last_ && changed != changed_) changed_ = changed, news = true;
        last_ = *now;
    }
    const auto time = std::chrono::steady_clock::now();
    if (time - looked_ < between_looks || background_.busy()) return news;
    looked_ = time;
    background_.start([files = files_](const Wanted&) { return look(files); });
    return news;
}

}  // namespace overbend::scenes
