// A folder of one check with a small case in it, and what a command left there.

#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace overbend::tests {

// Two bends in two strokes, the strip turned over between them, meshed so coarsely that a run takes a tenth
// of a second: for checks of what is done with numbers, not of the numbers. Feasible.
extern const std::string small_case;

// The same with a stop that no tool bears: the first stroke cannot be computed to its end.
std::string unsolvable_case();

// text with one occurrence of `from`, which must be there just once, replaced.
std::string replaced(const std::string& text, const std::string& from, const std::string& to);

// The number of the line on which `part` stands, from 1; it must stand there just once.
int line_of(const std::string& text, const std::string& part);

// Bytes of every file below a folder, by its path from there; folders by their path with a / behind it.
// Empty when there is no such folder.
using Files = std::map<std::string, std::string>;
Files files_below(const std::filesystem::path& folder);

// A folder of its own under the system's temporary one, gone afterwards.
class CaseFolder {
  public:
    CaseFolder();
    ~CaseFolder();
    CaseFolder(const CaseFolder&) = delete;
    CaseFolder& operator=(const CaseFolder&) = delete;

    // Writes a file, making its folder, and returns its path.
    std::filesystem::path write(const std::string& name, const std::string& text) const;
    // A path in it, for the command line.
    std::string operator/(const std::string& name) const { return (path_ / name).string(); }

  private:
    std::filesystem::path path_;
};

}  // namespace overbend::tests
