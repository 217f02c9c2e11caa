#include "scenes/commands/case_place.h"

#include <algorithm>
#include <iostream>
#include <stdexcept>
#include <system_error>

#include "render/output/whole_file.h"
#include "scenes/files/case/named_files.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"

namespace overbend::commands {

namespace {

namespace fs = std::filesystem;

// Why the file has to stay; empty where it may be replaced, or is not there.
std::string reason_to_stay(const fs::path& file, const files::Case& read, Overwrite overwrite) {
    std::error_code error;
    if (!fs::exists(fs::symlink_status(file, error))) return "";
    const std::vector<fs::path> inputs = files::files_of(read);
    const bool is_input = std::any_of(inputs.begin(), inputs.end(), [&](const fs::path& input) {
        std::error_code ignored;
        return fs::equivalent(file, input, ignored);
    });
    if (is_input) return "this run has read it";
    if (overwrite == Overwrite::any || files::is_written_case(file)) return "";
    return "overbend did not write it (--overwrite replaces it)";
}

}  // namespace

void add_overwrite(Command& command, bool& overwrite) {
    command.flag("--overwrite", overwrite, "replace a case in the folder that overbend did not write");
}

std::string head_line(const std::string& command) {
    return std::string(files::written_mark) + " " + command +
           ". A later run replaces this file unless this line is removed.\n";
}

fs::path place_for_case(const files::Case& read, const fs::path& folder, const std::string& name,
                        const std::string& another, Overwrite overwrite) {
    const fs::path usual = folder / (name + ".toml");
    const std::string why = reason_to_stay(usual, read, overwrite);
    if (why.empty()) return usual;
    fs::path place = folder / (name + "-" + another + ".toml");
    for (int i = 2; !reason_to_stay(place, read, overwrite).empty(); ++i)
        place = folder / (name + "-" + another + "-" + std::to_string(i) + ".toml");
    std::cerr << "overbend: " << usual.string() << " stays as it is: " << why << "; the case is written as "
              << place.string() << "\n";
    return place;
}

void write_case_file(const fs::path& file, const files::Case& c, const std::string& comment) {
    const std::string text = files::write_case(c, comment);
    try {
        files::read_case_text(text, file, files::Needs::drawing_alone);
    } catch (const files::CaseError& error) {
        throw std::runtime_error(file.string() + ": not written, as it could not be read again: " +
                                 (error.key.empty() ? "" : error.key + ": ") + error.wrong +
                                 "; rename the folders of the files that the case names");
    }
    output::write_whole(file, text);
}

}  // namespace overbend::commands
