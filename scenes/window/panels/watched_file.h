// Notices that a case, or a file that it names, was changed on disk by somebody else, and reads it again to
// see whether it can be taken in.
//
// Size and time of the files are looked at twice a second, on a thread of its own: a disk that is slow to
// answer holds nobody up. A change is reported when two checks in a row see the same: no half file is read.

#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/window/panels/file_trouble.h"
#include "scenes/window/shared/background.h"

namespace overbend::window {

// What a look at a file sees; zeros for a missing file.
struct FileStamp {
    std::uintmax_t bytes = 0;
    std::filesystem::file_time_type written = {};
    bool operator==(const FileStamp& o) const { return bytes == o.bytes && written == o.written; }
};
using FileStamps = std::map<std::filesystem::path, FileStamp>;

struct FileNews {
    std::vector<std::filesystem::path> changed;  // one at least
    ReadForWindow now;
};

class WatchedFile {
  public:
    // From now on, and instead of what was watched. c: as it was read just now.
    void watch(const files::Case& c);
    // Nothing.
    void forget();

    // To be called all the time, never waits. True when the news are others than before.
    bool look();
    // What has changed since it was watched; kept until then, or until it is dismissed.
    const std::optional<FileNews>& news() const { return news_; }
    // It is known, and not wanted; the next change will be told again.
    void dismiss() { news_.reset(); }

  private:
    struct Look {
        int watch = 0;  // which call of watch it was for
        FileStamps stamps;
        std::optional<FileNews> news;
    };
    struct Seen {
        FileStamps at_first, last, told;  // when it was watched; at the last look; of the last news
    };
    void start();
    static Look look_at(const std::filesystem::path& file, const std::vector<std::filesystem::path>& files,
                        const std::optional<Seen>& seen);

    int watch_ = 0;
    std::filesystem::path file_;  // empty: nothing is watched
    std::vector<std::filesystem::path> files_;
    std::filesystem::file_time_type since_ = {};
    std::optional<Seen> seen_;  // none: not looked at yet
    std::optional<FileNews> news_;
    std::chrono::steady_clock::time_point looked_ = {};
    Background<Look> background_;
};

}  // namespace overbend::window
