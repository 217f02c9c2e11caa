// Comments keep to the width of the page, as .clang-format keeps code to it.

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/house/read_text.h"

using namespace overbend::tests;

namespace {

constexpr std::ptrdiff_t widest = 110;  // columns, as ColumnLimit in .clang-format

std::ptrdiff_t columns_of(const std::string& line) {
    return std::count_if(line.begin(), line.end(),
                         [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; });
}

// A "//" behind a quotation mark may stand in words.
bool has_wide_comment(const std::string& line) {
    const std::size_t comment = line.find("//");
    return comment != std::string::npos && line.find('"') > comment && columns_of(line) > widest;
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("comments are no wider than code may be") {
        for (const std::string root : {"sim", "render", "scenes", "tests"})
            for (const std::string& path : files_under(root, {".h", ".cpp"})) {
                const std::vector<std::string> lines = lines_of(text_of(path));
                for (std::size_t i = 0; i < lines.size(); ++i)
                    if (has_wide_comment(lines[i])) FAIL_CHECK(path << ":" << i + 1 << ": " << lines[i]);
            }
    }

    TEST_CASE("a wide comment is found, by its columns") {
        CHECK(has_wide_comment("int x;  // " + std::string(110, 'a')));
        CHECK_FALSE(has_wide_comment("// " + std::string(107, 'a')));
        std::string degrees = "// ";
        for (int i = 0; i < 107; ++i) degrees += "\u00b0";
        CHECK_FALSE(has_wide_comment(degrees));
        CHECK_FALSE(has_wide_comment("say(\"http://" + std::string(110, 'a') + "\");"));
    }
}
