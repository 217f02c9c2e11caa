// Study files with one mistake each: refused with file, line and key, what is wrong and what would be right.

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/tool_sizes.h"
#include "scenes/files/study/describe_study.h"
#include "tests/files/own_folder.h"
#include "tests/study/small_study.h"

using namespace overbend;

namespace {

const char* const whole = R"(format = 1
samples = 64
series = 2
[run]
layers = 9
[[input]]
of = "thickness_mm"
normal = { mean = 1.0, deviation = 0.01, within = 0.03 }
[[input]]
of = "strength"
uniform = { from = 0.9, to = 1.1 }
[[input]]
of = "friction"
triangular = { from = 0.05, peak = 0.1, to = 0.2 }
[[input]]
of = "ram_mm"
step = "bend"
[[input]]
of = "nose_radius_mm"
tool = "punch"
table = { value = [1.9, 2.0, 2.1], density = [0.0, 1.0, 0.0] }
[[correlation]]
of = ["thickness_mm", "strength"]
coefficient = 0.3
[[set]]
step = "bend"
deeper_mm = 0.01
)";

struct Mistake {
    const char* from;  // of the whole file
    const char* to;
    const char* says;  // ":line: key: wrong"
};

const std::vector<Mistake>& mistakes() {
    static const std::vector<Mistake> list = {
        {"format = 1\n", "", ":1: format: "},
        {"format = 1", "format = 2", ":1: format: "},
        {"samples = 64", "sample = 64", ":2: sample: unknown key"},
        {"samples = 64", "samples = 1", ":2: samples: 1 is out of range"},
        {"samples = 64", "samples = 1.5", ":2: samples: "},
        {"series = 2", "series = 0", ":3: series: 0 is out of range"},
        {"series = 2", "stops = \"solved\"", ":3: stops: "},
        {"series = 2", "stops = \"kept\"", ":3: stops: "},
        {"layers = 9", "layers = 3", ":5: run.layers: 3 is out of range"},
        {"layers = 9", "layer = 9", ":5: run.layer: unknown key"},
        {"of = \"thickness_mm\"\n", "of = \"thickness\"\n", ":7: input[1].of: "},
        {"of = \"thickness_mm\"\nnormal", "normal", ": input[1].of: "},
        {"deviation = 0.01", "deviation = 0.0", ":8: input[1].normal.deviation: 0 is out of range"},
        {"mean = 1.0", "mean = 9.0", ":8: input[1].normal: thickness_mm would be"},
        {"mean = 1.0, ", "", ":8: input[1].normal.mean: "},
        {"from = 0.9, to = 1.1", "from = 1.1, to = 0.9", ":11: input[2].uniform: to is not above from"},
        {"uniform = {", "normal = { mean = 1.0, deviation = 0.1 }\nuniform = {",
         ":12: input[2].uniform: stands beside normal"},
        {"uniform = {", "step = \"bend\"\nuniform = {", ":11: input[2].step: strength is the same"},
        {"peak = 0.1", "peak = 0.3", ":14: input[3].triangular: from, peak and to do not rise"},
        {"from = 0.05", "from = -0.05", ":14: input[3].triangular: friction would be -0.05"},
        {"step = \"bend\"\n[[input]]", "step = \"band\"\n[[input]]",
         ":17: input[4].step: \"band\" is no step"},
        {"of = \"ram_mm\"", "of = \"friction\"", ": input[4]."},
        {"tool = \"punch\"", "tool = \"hammer\"", ":20: input[5].tool: \"hammer\" is no tool"},
        {"of = \"nose_radius_mm\"", "of = \"nose_mm\"", ":19: input[5].of: \"nose_mm\" is no size"},
        {"value = [1.9, 2.0, 2.1]", "value = [1.9, 2.1, 2.0]", ":21: input[5].table: the values do not rise"},
        {"value = [1.9, 2.0, 2.1]", "value = [1.9, 2.0]", ":21: input[5].table: value and density"},
        {"density = [0.0, 1.0, 0.0]", "density = [0.0, 0.0, 0.0]", ":21: input[5].table: no density"},
        {"density = [0.0, 1.0, 0.0]", "density = [0.0, -1.0, 0.0]", ": input[5].table.density"},
        {"[\"thickness_mm\", \"strength\"]", "[\"thickness_mm\"]", ":23: correlation[1].of: 1 inputs"},
        {"[\"thickness_mm\", \"strength\"]", "[\"thickness_mm\", \"gauge_mm\"]",
         ":23: correlation[1].of: \"gauge_mm\" is no input"},
        {"[\"thickness_mm\", \"strength\"]", "[\"strength\", \"strength\"]", ":23: correlation[1].of: both"},
        {"coefficient = 0.3", "coefficient = 1.0", ":24: correlation[1].coefficient: 1 is out of range"},
        {"deeper_mm = 0.01", "deeper_mm = 20.0", ":27: set[1].deeper_mm: 20 is out of range"},
        {"deeper_mm = 0.01", "depth_mm = 0.01", ":27: set[1].depth_mm: unknown key"},
        {"[[set]]\nstep = \"bend\"", "[[set]]\nstep = \"fold\"", ":26: set[1].step: \"fold\" is no step"},
        {"[[set]]", "[[grid]]\nof = \"friction\"\nvalues = [0.1]\n[[set]]", ": grid"},
        {"[[set]]", "[set", ":25: "},
        {"of = \"strength\"\n", "of = \"thickness_mm\"\n", ":10: input[2].of: thickness_mm is given twice"},
    };
    return list;
}

std::string refusal(const std::string& text) {
    const tests::OwnFolder folder;
    const std::string file = (folder.path() / "study.toml").string();
    std::ofstream(file) << text;
    try {
        files::read_study(file, tests::vee_case_of_study());
    } catch (const files::CaseError& error) {
        CHECK(error.file == file);
        CHECK(!error.right.empty());
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("study files: each mistake is told by line and key") {
    REQUIRE(refusal(whole).empty());
    for (const Mistake& m : mistakes()) {
        std::string text = whole;
        const std::size_t at = text.find(m.from);
        CAPTURE(m.from);
        CAPTURE(m.to);
        REQUIRE(at != std::string::npos);
        text.replace(at, std::string(m.from).size(), m.to);
        const std::string said = refusal(text);
        CAPTURE(said);
        CHECK(said.find(m.says) != std::string::npos);
    }
}

TEST_CASE("study files: a file is read as it stands") {
    const tests::OwnFolder folder;
    const std::string file = (folder.path() / "study.toml").string();
    std::ofstream(file) << whole;
    const files::Study study = files::read_study(file, tests::vee_case_of_study());
    CHECK(study.samples == 64);
    CHECK(study.series == 2);
    CHECK(study.layers == 9);
    CHECK(study.elements_per_thickness == 4.0);
    REQUIRE(study.inputs.size() == 5);
    CHECK(study.inputs[3].name == "ram_mm of 'bend'");
    CHECK_FALSE(study.inputs[3].spread);
    CHECK(study.inputs[4].what == files::Vary::tool_size);
    CHECK(study.correlations.size() == 1);
    CHECK(study.deeper == std::vector<double>{0.01});
}

TEST_CASE("study files: without inputs and grids, what usually varies varies") {
    const tests::OwnFolder folder;
    const std::string file = (folder.path() / "study.toml").string();
    std::ofstream(file) << "format = 1\n";
    CHECK(files::read_study(file, tests::vee_case_of_study()).inputs.size() == 5);
    std::ofstream(file)
        << "format = 1\n[[grid]]\nof = \"opening_mm\"\ntool = \"die\"\nvalues = [10.0, 12.0]\n";
    const files::Study grid = files::read_study(file, tests::vee_case_of_study());
    CHECK(grid.inputs.empty());
    CHECK(grid.grids.size() == 1);
}

TEST_CASE("study files: every key stands in the manual") {
    const std::string page = tests::bytes_of("assets/manual/study.md");
    const auto check = [&](const files::Keys& keys) {
        for (const files::KeyEntry& key : keys) {
            CAPTURE(key.name);
            CHECK(page.find("`" + key.name + "`") != std::string::npos);
        }
    };
    check(files::keys_of<files::StudyTop>()), check(files::keys_of<files::StudyRun>());
    check(files::keys_of<files::InputEntry>()), check(files::keys_of<files::GridEntry>());
    check(files::keys_of<files::CorrelationEntry>()), check(files::keys_of<files::SetEntry>());
    for (int what = 0; what < static_cast<int>(files::Vary::tool_size); ++what)
        CHECK(page.find(std::string("`") + files::vary_word(static_cast<files::Vary>(what)) + "`") !=
              std::string::npos);
}
