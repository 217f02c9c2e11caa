#include "scenes/files/case/toml_file.h"

#include <toml++/toml.h>
#include <algorithm>
#include <fstream>
#include <system_error>

#include "scenes/files/case/case_error.h"

namespace overbend::files {

namespace {

// Far more than a case with every point of its tools' outlines needs.
constexpr std::size_t longest_file = 4u << 20;  // bytes

std::string read_whole(const std::filesystem::path& file) {
    const std::string name = file.string();
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored)) {
        throw CaseError(name, 0, 0, "", "this is a folder", "give the path of a .toml file");
    }
    if (!std::filesystem::exists(file, ignored)) {
        throw CaseError(name, 0, 0, "", "there is no such file", "check the path");
    }
    std::ifstream stream(file, std::ios::binary);
    std::string content(longest_file + 1, '\0');
    stream.read(content.data(), static_cast<std::streamsize>(content.size()));
    if (stream.bad() || !(stream.eof() || stream.good())) {
        throw CaseError(name, 0, 0, "", "the file cannot be read", "check its permissions");
    }
    content.resize(static_cast<std::size_t>(stream.gcount()));
    if (content.size() > longest_file) {
        throw CaseError(name, 0, 0, "", "the file is larger than 4 MB", "give the path of a .toml file");
    }
    return content;
}

}  // namespace

void TomlFile::Delete::operator()(const toml::table* table) const {
    delete table;
}

TomlFile read_toml(const std::filesystem::path& file) {
    return parse_toml(read_whole(file), file.string());
}

TomlFile parse_toml(const std::string& text, const std::string& as) {
    try {
        return {as, std::unique_ptr<const toml::table, TomlFile::Delete>(new toml::table(toml::parse(text)))};
    } catch (const toml::parse_error& error) {
        const toml::source_position place = error.source().begin;
        throw CaseError(as, std::max(1, static_cast<int>(place.line)), static_cast<int>(place.column), "",
                        "not valid TOML: " + std::string(error.description()), "correct this line");
    }
}

}  // namespace overbend::files
