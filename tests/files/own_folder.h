// A folder for one check, what lies below a folder, and texts with a part replaced.

#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace overbend::tests {

// An empty folder of its own under the system's temporary one, gone afterwards; no other process has it.
class OwnFolder {
  public:
    OwnFolder();
    ~OwnFolder();
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    // A path in it, for a command line.
    std::string operator/(const std::string& name) const { return (path_ / name).string(); }
    // Writes a file, making its folder, and returns its path.
    std::filesystem::path write(const std::string& name, const std::string& text) const;

  private:
    std::filesystem::path path_;
};

// The working folder until its end: what is written to a path that was typed at random comes to lie there.
class WorkingIn {
  public:
    explicit WorkingIn(const OwnFolder& folder) : before_(std::filesystem::current_path()) {
        std::filesystem::current_path(folder.path());
    }
    ~WorkingIn() { std::filesystem::current_path(before_); }
    WorkingIn(const WorkingIn&) = delete;
    WorkingIn& operator=(const WorkingIn&) = delete;

  private:
    std::filesystem::path before_;
};

// Bytes of every file below a folder, by its path from there; folders by their path with a / behind it.
// Empty when there is no such folder.
using Files = std::map<std::string, std::string>;
Files files_below(const std::filesystem::path& folder);

std::string bytes_of(const std::filesystem::path& file);

// text with one occurrence of `from`, which must be there just once, replaced.
std::string replaced(const std::string& text, const std::string& from, const std::string& to);

// The number of the line on which `part` stands, from 1; it must stand there just once.
int line_of(const std::string& text, const std::string& part);

}  // namespace overbend::tests
