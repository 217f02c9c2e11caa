// Files are written whole or not at all: no reader ever sees half of one.

#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "render/output/unfinished.h"

namespace overbend::output {

// A new file beside `path` that takes its name once it is whole. Its own name is random, so that nobody can
// lay a link there first, and short, so that it fits where the file's own name does; it is opened
// exclusively, and removed whatever goes wrong.
//
// All of these throw std::runtime_error with the path and the reason.
class PartFile {
  public:
    // The folder must exist.
    explicit PartFile(const std::filesystem::path& path);
    ~PartFile();
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;

    // Where it stands until it has its name; another program may write to it there.
    const std::filesystem::path& place() const { return place_; }
    std::uintmax_t size() const;  // bytes by now; 0 when it cannot be told

    void write(const std::string& bytes);
    // Sees that all of it is on the disk, then renames it: what stood at the path is replaced.
    void give_name();

  private:
    std::filesystem::path path_, place_;
    std::optional<Unfinished> unfinished_;
    int file_ = -1;
};

// From now on no file that is one of these is replaced, whatever its path: to write over it is an error. For
// what a command reads. Not to be called while files are written.
void never_replace(const std::vector<std::filesystem::path>& files);

// What files and folders under way are called beside `path`: hidden, and not to be guessed.
std::filesystem::path place_beside(const std::filesystem::path& path);

// Writes `bytes` to `path`: whatever goes wrong, `path` holds all of them or what it held before. The folder
// must exist. Throws as PartFile.
void write_whole(const std::filesystem::path& path, const std::string& bytes);

}  // namespace overbend::output
