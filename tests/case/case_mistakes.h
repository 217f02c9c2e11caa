// Texts as files, and what is said of the mistakes in them.

#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "scenes/case/case.h"
#include "scenes/case/case_error.h"

namespace overbend::tests {

// A folder of its own under the system's temporary one, gone afterwards.
class OwnFolder {
  public:
    OwnFolder();
    ~OwnFolder();
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;

    // Writes the text and returns its path.
    std::filesystem::path write(const std::string& name, const std::string& text) const;
    const std::filesystem::path& path() const { return path_; }

  private:
    std::filesystem::path path_;
};

// A reader of a file: read_case, or read_card as it reads a path.
using Reader = std::function<void(const std::filesystem::path&)>;
void as_case(const std::filesystem::path& file);
void as_card(const std::filesystem::path& file);

// What the reader says of a file with this text; nothing when it has no objection. Checks what holds for
// every mistake: the file's name, a remedy, one line of message.
std::optional<scenes::CaseError> mistake_in(const std::string& text, const Reader& read);

// The case that stands in a text.
scenes::Case case_of(const std::string& text);

// text with one occurrence of `from`, which must be there just once, replaced.
std::string replaced(const std::string& text, const std::string& from, const std::string& to);

// The number of the line on which `part` stands, from 1; it must stand there just once.
int line_of(const std::string& text, const std::string& part);

}  // namespace overbend::tests
