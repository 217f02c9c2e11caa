#include "tests/house/rules.h"

#include <algorithm>
#include <regex>

#include "tests/house/read_text.h"

namespace overbend::tests {

namespace {

bool begins_with(const std::string& text, const std::string& beginning) {
    return text.compare(0, beginning.size(), beginning) == 0;
}

bool allows(const std::set<std::string>& folders, const std::string& folder) {
    return std::any_of(folders.begin(), folders.end(), [&](const std::string& allowed) {
        const bool whole_tree = !allowed.empty() && allowed.back() == '/';
        return allowed == folder || (whole_tree && begins_with(folder, allowed));
    });
}

std::string without_comments(const std::string& cmake_lists) {
    return std::regex_replace(cmake_lists, std::regex("#[^\n]*"), "");
}

// The first group of every match.
std::vector<std::string> matches(const std::string& text, const std::string& pattern) {
    const std::regex regex(pattern);
    std::vector<std::string> found;
    for (std::sregex_iterator it(text.begin(), text.end(), regex), end; it != end; ++it)
        found.push_back((*it)[1]);
    return found;
}

}  // namespace

std::vector<Include> includes_in(const std::string& text) {
    static const std::regex include(R"(^\s*#\s*include\s*(["<])([^">]+)[">].*)");
    std::vector<Include> found;
    for (const std::string& line : lines_of(text)) {
        std::smatch match;
        if (std::regex_match(line, match, include)) found.push_back({match[2], match[1] == "\""});
    }
    return found;
}

const AllowedFolders& allowed_folders() {
    static const AllowedFolders table = {
        {"sim", {}},
        {"sim/material", {}},
        {"sim/tensile", {"sim/material"}},
        {"sim/tool", {}},
        {"sim/strip", {"sim/material"}},
        {"sim/stroke", {"sim/material", "sim/strip", "sim/tool"}},
        {"sim/clearance", {"sim/strip", "sim/tool", "sim/stroke"}},
        {"sim/plan", {"sim/"}},
        {"sim/shop", {"sim/tool"}},
        {"render/output", {}},
        {"render/picture", {"render/output", "sim/"}},
        {"render/chart", {"render/picture", "sim/"}},
        {"render/drawing", {"render/picture", "sim/plan", "sim/tool"}},
        {"render/film", {"render/output", "render/picture", "sim/"}},
        {"render/report", {"render/picture", "render/chart", "sim/"}},
        {"render/ui", {"render/picture"}},
    };
    return table;
}

std::vector<std::string> wrong_includes(const std::string& path, const std::string& text,
                                        const AllowedFolders& allowed) {
    static const std::set<std::string> for_everybody = {"sim/errors.h", "sim/tolerances.h", "sim/units.h",
                                                        "sim/words.h",  "sim/finding.h",    "sim/counted.h"};
    std::vector<std::string> wrong;
    const std::string folder = folder_of(path);
    const auto rule = allowed.find(folder);
    for (const Include& include : includes_in(text)) {
        if (!include.quoted) continue;
        const std::string included = folder_of(include.name);
        if (included.empty() || begins_with(include.name, "."))
            wrong.push_back(path + ": \"" + include.name + "\" is not written from the root");
        else if (rule != allowed.end() && included != folder && for_everybody.count(include.name) == 0 &&
                 !allows(rule->second, included))
            wrong.push_back(path + ": " + folder + " may not include \"" + include.name + "\"");
    }
    return wrong;
}

std::vector<std::string> wrong_outside_includes(const std::string& path, const std::string& text) {
    static const std::set<std::string> not_in_sim = {"iostream",   "fstream", "ostream", "istream",
                                                     "filesystem", "chrono",  "ctime",   "random"};
    static const std::map<std::string, std::set<std::string>> only_in = {
        {"toml++", {"scenes/files/case"}},
        {"box2d/", {"sim/clearance"}},
        {"unsupported/Eigen", {"sim/tensile"}},
        {"dxflib/", {"scenes/files/dxf"}},
        {"boost/", {"scenes/job/study"}},
        {"cairo", {"render/picture"}},
        {"pango", {"render/picture"}},
        {"png.h", {"render/picture"}},
        {"SFML/", {"render/ui"}},
        {"X11/", {"render/ui"}},
        {"GL/", {"render/ui"}},
        {"imgui",
         {"render/ui", "scenes/window", "scenes/window/bench", "scenes/window/panels",
          "scenes/window/process", "scenes/window/shared"}},
        {"CLI/", {"scenes/commands"}},
        {"nlohmann/",
         {"render/report", "scenes/documents/results", "scenes/documents/card", "scenes/documents/bend_table",
          "scenes/documents/study", "scenes/commands", "scenes/window/shared"}},
    };
    std::vector<std::string> wrong;
    const std::string folder = folder_of(path);
    for (const Include& include : includes_in(text)) {
        if (include.quoted) continue;
        if ((folder == "sim" || begins_with(folder, "sim/")) && not_in_sim.count(include.name) > 0)
            wrong.push_back(path + ": the mechanics does without <" + include.name + ">");
        for (const auto& [library, folders] : only_in)
            if (begins_with(include.name, library) && folders.count(folder) == 0)
                wrong.push_back(path + ": " + folder + " may not use <" + include.name + ">");
    }
    return wrong;
}

std::set<std::string> used_folders(const std::string& cmake_lists, const std::set<std::string>& folders) {
    std::set<std::string> used;
    for (const std::string& target : matches(without_comments(cmake_lists), R"(\boverbend_(\w+))")) {
        for (const std::string& folder : folders) {
            std::string name = folder;
            std::replace(name.begin(), name.end(), '/', '_');
            if (name == target) used.insert(folder);
        }
    }
    return used;
}

std::set<std::string> reachable_folders(const std::string& folder, const AllowedFolders& used) {
    std::set<std::string> reached = {folder};
    std::vector<std::string> ahead = {folder};
    while (!ahead.empty()) {
        const auto next = used.find(ahead.back());
        ahead.pop_back();
        if (next == used.end()) continue;
        for (const std::string& other : next->second)
            if (reached.insert(other).second) ahead.push_back(other);
    }
    return reached;
}

std::set<std::string> listed_sources(const std::string& cmake_lists) {
    const std::vector<std::string> names = matches(without_comments(cmake_lists), R"(([\w./-]+\.cpp)\b)");
    return {names.begin(), names.end()};
}

std::vector<std::string> linked_files(const std::string& markdown) {
    std::vector<std::string> files;
    for (std::string target : matches(markdown, R"(\]\(([^)\s]+)[^)]*\))")) {
        target = target.substr(0, target.find('#'));
        const bool elsewhere = target.find("://") != std::string::npos || begins_with(target, "mailto:");
        if (!target.empty() && !elsewhere) files.push_back(target);
    }
    return files;
}

std::vector<std::string> named_paths(const std::string& markdown) {
    const std::string prose = std::regex_replace(markdown, std::regex("```[^`]*```"), "");
    std::vector<std::string> paths;
    for (const std::string& code : matches(prose, "`([^`\n]+)`")) {
        for (const std::string& path :
             matches(" " + code, R"(\s((?:sim|render|scenes|tests|assets|cases|\.ci)/[^\s,;:]*))")) {
            const bool several =
                path.find("...") != std::string::npos || path.find_first_of("*<>") != std::string::npos;
            if (!several) paths.push_back(path);
        }
    }
    return paths;
}

}  // namespace overbend::tests
