// The rules of the house as functions of text, so that each can be seen to catch what it is there for.
//
// Each finding is one line for reading: where, and what is wrong.

#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

namespace overbend::tests {

struct Include {
    std::string name;     // without quotes or angle brackets
    bool quoted = false;  // "..." is ours, <...> is somebody else's
};
std::vector<Include> includes_in(const std::string& text);

// What folders may include; a folder may always include itself. "sim/" stands for every folder in sim.
using AllowedFolders = std::map<std::string, std::set<std::string>>;

// The direction of the program: scenes -> render -> sim, and inside sim and render.
const AllowedFolders& allowed_folders();

// Our includes in a file that its folder may not make, or that are not written from the root.
// Folders that the table does not have are left to the caller.
std::vector<std::string> wrong_includes(const std::string& path, const std::string& text,
                                        const AllowedFolders& allowed);

// Others' headers that only some folders may use, as a CMakeLists.txt cannot tell, and those that the
// mechanics does without: it knows no output, file, clock or random number.
std::vector<std::string> wrong_outside_includes(const std::string& path, const std::string& text);

// The folders that a CMakeLists.txt names as what its library uses: "sim/tool" for overbend_sim_tool.
// folders  all folders with a library
std::set<std::string> used_folders(const std::string& cmake_lists, const std::set<std::string>& folders);

// The same, with what those use, and so on.
std::set<std::string> reachable_folders(const std::string& folder, const AllowedFolders& used);

// Names of .cpp files in a CMakeLists.txt, comments left out.
std::set<std::string> listed_sources(const std::string& cmake_lists);

// Targets of the links and pictures of a page that are files here; anchors and web addresses are left out.
std::vector<std::string> linked_files(const std::string& markdown);

// Words in `code` that name a file or folder of ours, such as sim/tool or cases/demo; words with "..." or "*"
// stand for several and are left out.
std::vector<std::string> named_paths(const std::string& markdown);

}  // namespace overbend::tests
