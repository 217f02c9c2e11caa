#include "tests/program/case_folder.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace overbend::tests {

namespace fs = std::filesystem;

const std::string small_case = R"(format = 1
title = "Small step"

[strip]
material = "dc01"
thickness_mm = 1.0
width_mm = 20.0

[part]
path = [
  { flat_mm = 12.0 },
  { bend_deg = 60.0, inside_radius_mm = 1.4, name = "heel" },
  { flat_mm = 20.0 },
  { bend_deg = -60.0, inside_radius_mm = 1.4, name = "toe" },
  { flat_mm = 12.0 },
]

[[tool]]
name = "wedge"
kind = "vee-punch"
angle_deg = 60.0
nose_radius_mm = 1.0

[[tool]]
name = "block"
kind = "vee-die"
faces = [ { angle_deg = 84.0, opening_mm = 8.0 } ]

[[step]]
name = "first"
bends = ["heel"]
punch = "wedge"
die = "block"
stop = { free_deg = 60.0 }

[[step]]
name = "second"
bends = ["toe"]
punch = "wedge"
die = "block"
place = { face = "down" }

[run]
layers = 5
elements_per_thickness = 1
)";

std::string unsolvable_case() {
    return replaced(small_case, "stop = { free_deg = 60.0 }", "stop = { force_kN = 10000 }");
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

Files files_below(const fs::path& folder) {
    Files files;
    if (!fs::exists(folder)) return files;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
        const std::string name = fs::relative(entry.path(), folder).string();
        if (entry.is_directory()) {
            files[name + "/"] = "";
            continue;
        }
        std::ifstream in(entry.path(), std::ios::binary);
        files[name].assign(std::istreambuf_iterator<char>(in), {});
    }
    return files;
}

CaseFolder::CaseFolder() {
    static int count = 0;
    path_ = fs::temp_directory_path() /
            ("overbend_program_" + std::to_string(::getpid()) + "_" + std::to_string(++count));
    fs::remove_all(path_);
    fs::create_directories(path_);
}

CaseFolder::~CaseFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

fs::path CaseFolder::write(const std::string& name, const std::string& text) const {
    fs::path file = path_ / name;
    fs::create_directories(file.parent_path());
    std::ofstream(file, std::ios::binary) << text;
    return file;
}

}  // namespace overbend::tests
