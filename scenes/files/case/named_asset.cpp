#include "scenes/files/case/named_asset.h"

#include <algorithm>

#include "scenes/files/case/assets_folder.h"
#include "scenes/files/case/case_error.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

bool is_path(const std::string& name_or_path) {
    const std::string ending = ".toml";
    const bool ends = name_or_path.size() > ending.size() &&
                      name_or_path.compare(name_or_path.size() - ending.size(), ending.size(), ending) == 0;
    return ends || name_or_path.find('/') != std::string::npos;
}

std::vector<std::string> known_names(const AssetKind& kind) {
    Words names;
    std::error_code none;
    for (const auto& entry : std::filesystem::directory_iterator(assets_folder() / kind.folder, none)) {
        if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::filesystem::path file_of(const std::string& name_or_path, const std::filesystem::path& beside,
                              const AssetKind& kind) {
    if (is_path(name_or_path)) return beside / name_or_path;
    const Words known = known_names(kind);
    if (std::find(known.begin(), known.end(), name_or_path) == known.end()) {
        const std::string right = known.empty() ? "there are none; give the path of a .toml file"
                                                : "the nearest is " + nearest_key(name_or_path, known) +
                                                      "; known " + kind.many + ": " + listed(known);
        throw CaseError(name_or_path, 0, 0, "",
                        std::string("there is no ") + kind.one + " " + in_quotes(name_or_path), right);
    }
    return assets_folder() / kind.folder / (name_or_path + ".toml");
}

std::string path_from_anywhere(const std::filesystem::path& file) {
    std::error_code error;
    const std::filesystem::path whole = std::filesystem::weakly_canonical(file, error);
    return (error ? file : whole).string();
}

}  // namespace overbend::files
