#include "scenes/window/panels/watched_file.h"

#include <algorithm>

#include "scenes/files/case/named_files.h"

namespace overbend::window {

namespace {

namespace fs = std::filesystem;
constexpr std::chrono::milliseconds between_looks{500};

FileStamp stamp_of(const fs::path& file) {
    std::error_code error;
    FileStamp stamp;
    stamp.written = fs::last_write_time(file, error);
    if (error) return {};
    stamp.bytes = fs::file_size(file, error);
    return error ? FileStamp{} : stamp;
}

FileStamps stamps_of(const std::vector<fs::path>& files) {
    FileStamps stamps;
    for (const fs::path& file : files) stamps[file] = stamp_of(file);
    return stamps;
}

std::vector<fs::path> changed_between(const FileStamps& before, const FileStamps& after) {
    std::vector<fs::path> changed;
    for (const auto& [file, stamp] : after) {
        const auto then = before.find(file);
        if (then != before.end() && !(then->second == stamp)) changed.push_back(file);
    }
    return changed;
}

}  // namespace

void WatchedFile::watch(const files::Case& c) {
    std::vector<fs::path> files = files::files_of(c);
    fs::path file = c.file;
    forget();  // the news too, of which c may be a part
    file_ = std::move(file);
    files_ = std::move(files);
    since_ = fs::file_time_type::clock::now();
}

void WatchedFile::forget() {
    ++watch_;
    file_.clear();
    files_.clear();
    seen_.reset();
    news_.reset();
    looked_ = {};
}

WatchedFile::Look WatchedFile::look_at(const fs::path& file, const std::vector<fs::path>& files,
                                       const std::optional<Seen>& seen) {
    Look look;
    look.stamps = stamps_of(files);
    // The first look has nothing to compare with; a change is left to settle until the next one.
    if (!seen || look.stamps == seen->told || !(look.stamps == seen->last)) return look;
    FileNews news;
    news.changed = changed_between(seen->at_first, look.stamps);
    news.now = read_for_window(file);
    // What it names now is watched too, and what is wrong with it.
    std::vector<fs::path> named;
    if (news.now.c) named = files::files_of(*news.now.c);
    if (news.now.trouble) named.push_back(news.now.trouble->file);
    for (const fs::path& other : named) look.stamps.emplace(other, stamp_of(other));
    look.news = std::move(news);
    return look;
}

void WatchedFile::start() {
    looked_ = std::chrono::steady_clock::now();
    background_.start([watch = watch_, file = file_, files = files_, seen = seen_](const Wanted&) {
        Look look = look_at(file, files, seen);
        look.watch = watch;
        return look;
    });
}

bool WatchedFile::look() {
    if (file_.empty()) return false;
    std::optional<Look> look = background_.take();
    if (!background_.busy() && !look && std::chrono::steady_clock::now() - looked_ >= between_looks) start();
    if (!look || look->watch != watch_) return false;
    if (!seen_) {
        // What was written between being read and this look is a change.
        FileStamps as_read = look->stamps;
        const fs::file_time_type now = fs::file_time_type::clock::now();
        for (auto& [file, stamp] : as_read)
            if (stamp.written > since_ && stamp.written <= now) stamp = {};
        seen_ = Seen{as_read, look->stamps, as_read};
        return false;
    }
    seen_->last = look->stamps;
    if (!look->news) return false;
    for (const auto& [file, stamp] : look->stamps) {
        seen_->at_first.emplace(file, stamp);
        if (std::find(files_.begin(), files_.end(), file) == files_.end()) files_.push_back(file);
    }
    seen_->told = look->stamps;
    // Back as it was at first: no news any more.
    if (look->news->changed.empty())
        news_.reset();
    else
        news_ = std::move(look->news);
    return true;
}

}  // namespace overbend::window
