// Notices that files on disk are no longer what they were when they were read.

#pragma once

#include <chrono>
#include <cstdint>
#include <exception>
#include <filesystem>
#include <string>
#include <vector>

#include "scenes/case/case.h"
#include "scenes/window/background.h"

namespace overbend::scenes {

// The files that a case was read from: its own, and those that it names, of the program's assets too.
std::vector<std::filesystem::path> files_of(const Case& c);

// What is wrong with a file, in words; of a CaseError with the line it speaks of quoted behind it.
std::string trouble_words(const std::exception& error);

class WatchedFiles {
  public:
    // As they are now; those that are not there may come.
    void watch(const std::vector<std::filesystem::path>& files);

    // To be asked all the time. The files are looked at twice a second, on a thread of its own. True when
    // what `changed` says has changed.
    bool take();

    // Those whose size or time is another than it was. Files that are just being written are not told of
    // until two looks have found them alike.
    const std::vector<std::filesystem::path>& changed() const { return changed_; }
    // What is there now is known: only what changes after it is told.
    void accept();

  private:
    struct Stamp {
        std::uintmax_t size = 0;
        std::filesystem::file_time_type time{};
        bool there = false;
        bool operator==(const Stamp& o) const { return size == o.size && time == o.time && there == o.there; }
    };
    using Stamps = std::vector<Stamp>;
    static Stamps look(const std::vector<std::filesystem::path>& files);
    std::vector<std::filesystem::path> files_;
    Stamps known_, last_;
    std::vector<std::filesystem::path> changed_;
    std::chrono::steady_clock::time_point looked_{};
    Background<Stamps> background_;
};

}  // namespace overbend::scenes
