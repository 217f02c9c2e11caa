#include "scenes/files/case/toml_file.h"

#include <toml++/toml.h>
#include <algorithm>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/toml_depth.h"
#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"

namespace overbend::files {

namespace {

std::string read_whole(const std::filesystem::path& file) {
    try {
        return whole_text(file, most::toml_bytes);
    } catch (const Unreadable& error) {
        throw CaseError(file.string(), 0, 0, "", error.wrong, error.right);
    }
}

}  // namespace

void TomlFile::Delete::operator()(const toml::table* table) const {
    delete table;
}

TomlFile read_toml(const std::filesystem::path& file) {
    return parse_toml(read_whole(file), file.string());
}

TomlFile parse_toml(const std::string& text, const std::string& as) {
    if (const std::optional<TooDeep> deep = too_deep(text))
        throw CaseError(as, deep->line, deep->column, "", deep->wrong, deep->right);
    try {
        return {as, std::unique_ptr<const toml::table, TomlFile::Delete>(new toml::table(toml::parse(text)))};
    } catch (const toml::parse_error& error) {
        const toml::source_position place = error.source().begin;
        throw CaseError(as, std::max(1, static_cast<int>(place.line)), static_cast<int>(place.column), "",
                        "not valid TOML: " + std::string(error.description()), "correct this line");
    }
}

}  // namespace overbend::files
