// Each rule of the house on a text that breaks it and on one that keeps it: a rule that never catches
// anything would pass every tree.

#include <doctest/doctest.h>

#include "tests/house/rules.h"

using namespace overbend::tests;

namespace {

std::size_t count_wrong(const std::string& path, const std::string& line) {
    return wrong_includes(path, line + "\n", allowed_folders()).size();
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("includes are read, ours and others', and not from comments") {
        const std::vector<Include> found = includes_in(
            "#include \"sim/errors.h\"\n  #  include <cmath>  // why\n// #include \"sim/tool/die.h\"\n");
        REQUIRE(found.size() == 2);
        CHECK(found[0].name == "sim/errors.h");
        CHECK(found[0].quoted);
        CHECK(found[1].name == "cmath");
        CHECK_FALSE(found[1].quoted);
    }

    TEST_CASE("includes against the direction are caught") {
        CHECK(count_wrong("sim/material/card.h", "#include \"sim/strip/mesh.h\"") == 1);
        CHECK(count_wrong("sim/tool/die.h", "#include \"sim/material/card.h\"") == 1);
        CHECK(count_wrong("sim/strip/mesh.h", "#include \"sim/tool/die.h\"") == 1);
        CHECK(count_wrong("sim/stroke/stroke.h", "#include \"sim/plan/bend_allowance.h\"") == 1);
        CHECK(count_wrong("sim/plan/bend_allowance.h", "#include \"render/picture/view.h\"") == 1);
        CHECK(count_wrong("render/picture/view.h", "#include \"scenes/files/case/case.h\"") == 1);
        CHECK(count_wrong("render/picture/view.h", "#include \"render/film/frames.h\"") == 1);
        CHECK(count_wrong("scenes/files/case/case.h", "#include \"case_error.h\"") == 1);
        CHECK(count_wrong("scenes/files/case/case.h", "#include \"../case/case_error.h\"") == 1);
    }

    TEST_CASE("includes along the direction pass") {
        CHECK(count_wrong("sim/tool/die.h", "#include \"sim/errors.h\"") == 0);
        CHECK(count_wrong("sim/tool/die.h", "#include \"sim/tool/path.h\"") == 0);
        CHECK(count_wrong("sim/stroke/stroke.h", "#include \"sim/tool/die.h\"") == 0);
        CHECK(count_wrong("render/film/frames.h", "#include \"sim/stroke/recording.h\"") == 0);
        CHECK(count_wrong("sim/tool/die.h", "#include <Eigen/Core>") == 0);
    }

    TEST_CASE("output in the mechanics and libraries away from their folders are caught") {
        CHECK(wrong_outside_includes("sim/tool/die.cpp", "#include <iostream>\n").size() == 1);
        CHECK(wrong_outside_includes("sim/errors.h", "#include <fstream>\n").size() == 1);
        CHECK(wrong_outside_includes("scenes/job/run/scene.cpp", "#include <toml++/toml.h>\n").size() == 1);
        CHECK(wrong_outside_includes("render/film/frames.cpp", "#include <cairo.h>\n").size() == 1);
        CHECK(wrong_outside_includes("scenes/files/case/toml_file.cpp", "#include <fstream>\n").empty());
        CHECK(wrong_outside_includes("sim/tool/die.cpp", "#include <cmath>\n").empty());
    }

    TEST_CASE("what a CMakeLists.txt uses is followed from library to library") {
        const std::set<std::string> folders = {"sim/tool", "sim/stroke", "scenes/job/run"};
        const std::string lists =
            "overbend_library(scenes/job/run SOURCES a.cpp  # old.cpp\n"
            "  USES overbend_sim_stroke Threads::Threads)\n";
        CHECK(used_folders(lists, folders) == std::set<std::string>{"sim/stroke"});
        CHECK(listed_sources(lists) == std::set<std::string>{"a.cpp"});
        const AllowedFolders used = {{"scenes/job/run", {"sim/stroke"}}, {"sim/stroke", {"sim/tool"}}};
        CHECK(reachable_folders("scenes/job/run", used).count("sim/tool") == 1);
        CHECK(reachable_folders("sim/tool", used) == std::set<std::string>{"sim/tool"});
    }

    TEST_CASE("links, pictures and paths of a page are found") {
        const std::string page =
            "![a picture](assets/a.png) [there](DEVELOPERS.md#map) [web](https://a.b/c) [up](#top)\n"
            "`tests/run [PRESET]`, `cases/one-bend-...` and `sim/tool`\n";
        CHECK(linked_files(page) == std::vector<std::string>{"assets/a.png", "DEVELOPERS.md"});
        CHECK(named_paths(page) == std::vector<std::string>{"tests/run", "sim/tool"});
    }
}
