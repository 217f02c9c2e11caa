#include "tests/case/case_mistakes.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>

#include "scenes/case/read_card.h"
#include "scenes/case/read_case.h"

namespace overbend::tests {

namespace fs = std::filesystem;

OwnFolder::OwnFolder() {
    static int count = 0;
    path_ = fs::temp_directory_path() /
            ("overbend-case-" + std::to_string(getpid()) + "-" + std::to_string(++count));
    fs::create_directories(path_);
}

OwnFolder::~OwnFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

fs::path OwnFolder::write(const std::string& name, const std::string& text) const {
    fs::path file = path_ / name;
    std::ofstream(file, std::ios::binary) << text;
    return file;
}

void as_case(const fs::path& file) {
    scenes::read_case(file);
}
void as_card(const fs::path& file) {
    scenes::read_card(file.string(), "");
}

std::optional<scenes::CaseError> mistake_in(const std::string& text, const Reader& read) {
    const OwnFolder folder;
    const fs::path file = folder.write("case.toml", text);
    try {
        read(file);
    } catch (const scenes::CaseError& error) {
        CAPTURE(std::string(error.what()));
        const std::string said = error.what();
        CHECK(error.file == file.string());
        CHECK(error.line > 0);
        CHECK(error.column > 0);
        CHECK_FALSE(error.wrong.empty());
        CHECK_FALSE(error.right.empty());
        CHECK(said.rfind(file.string() + ":" + std::to_string(error.line) + ":", 0) == 0);
        CHECK(said.find('\n') == std::string::npos);
        return error;
    }
    return std::nullopt;
}

scenes::Case case_of(const std::string& text) {
    const OwnFolder folder;
    return scenes::read_case(folder.write("case.toml", text));
}

std::string replaced(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    CAPTURE(from);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(from, at + 1) == std::string::npos);
    return text.substr(0, at) + to + text.substr(at + from.size());
}

int line_of(const std::string& text, const std::string& part) {
    const std::size_t at = text.find(part);
    CAPTURE(part);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(part, at + 1) == std::string::npos);
    return 1 +
           static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

}  // namespace overbend::tests
