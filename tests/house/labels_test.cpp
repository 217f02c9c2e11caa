// No C++ type's name reaches people: not in what the program says, nor in its pages. A rename of types
// over all of the sources changes words in quotation marks too, and compiles all the same.

#include <doctest/doctest.h>

#include <set>

#include "tests/house/names.h"
#include "tests/house/read_text.h"

using namespace overbend::tests;

namespace {

// Names of two or more capitalised parts: one of a single part, as Die, is a word too.
std::set<std::string> unspoken_types() {
    std::set<std::string> names;
    for (const std::string root : {"sim", "render", "scenes"})
        for (const std::string& path : files_under(root, {".h", ".cpp"}))
            for (const std::string& type : types_defined_in(text_of(path))) {
                const std::string name = type.substr(type.rfind(':') + 1);
                if (capitals_in(name) > 1) names.insert(name);
            }
    return names;
}

void check_none(const std::string& path, const std::string& said, const std::set<std::string>& types) {
    for (const std::string& word : words_in(said))
        if (types.count(word) > 0) FAIL_CHECK(path << ": '" << said.substr(0, 80) << "' names " << word);
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("literals are found, but not in comments, includes and characters") {
        const std::string source =
            "#include \"a/b.h\"\n"
            "// a \"comment\"\n"
            "const char* s = \"Paper\\\" size\";  char c = '\"';\n"
            "const auto r = R\"(raw \"words\")\";\n";
        CHECK(literals_in(source) == std::vector<std::string>{"Paper\\\" size", "raw \"words\""});
        CHECK(words_in("PaperSize: a_b") == std::vector<std::string>{"PaperSize", "a_b"});
        CHECK(capitals_in("PaperSize") == 2);
    }

    TEST_CASE("no type's name stands in what the program says") {
        const std::set<std::string> types = unspoken_types();
        CHECK(types.size() > 250);
        CHECK(types.count("ShownJob") == 1);
        std::size_t literals = 0;
        for (const std::string root : {"sim", "render", "scenes"})
            for (const std::string& path : files_under(root, {".h", ".cpp"}))
                for (const std::string& said : literals_in(text_of(path))) {
                    check_none(path, said, types);
                    ++literals;
                }
        CHECK(literals > 3000);
        for (const std::string& path : files_under("render", {".html"}))
            check_none(path, text_of(path), types);
        for (const std::string& path : files_under("assets/manual", {".md"}))
            for (const std::string& line : lines_of(text_of(path))) check_none(path, line, types);
        for (const std::string& line : lines_of(text_of("README.md"))) check_none("README.md", line, types);
    }
}
