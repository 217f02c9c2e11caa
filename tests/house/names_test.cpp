// One type, one qualified name: two types of one name in two sources link without a word and are undefined
// behaviour.

#include <doctest/doctest.h>

#include <map>
#include <regex>

#include "tests/house/names.h"
#include "tests/house/read_text.h"

using namespace overbend::tests;

namespace {

// The namespace of a folder: its own below sim and render, that of the room below scenes.
std::string namespace_of(const std::string& path) {
    const std::size_t first = path.find('/'), second = path.find('/', first + 1);
    if (second == std::string::npos) return "overbend";
    return "overbend::" + path.substr(first + 1, second - first - 1);
}

bool begins_with(const std::string& text, const std::string& beginning) {
    return text.compare(0, beginning.size(), beginning) == 0;
}

// The same without namespaces that hold nothing but the names of types: to name another folder's type is no
// definition.
std::string without_declarations(const std::string& source) {
    static const std::regex declarations(R"(namespace [\w:]+ \{\s*(?:(?:class|struct) \w+;\s*)+\})");
    return std::regex_replace(source, declarations, "");
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("types are found by their qualified names") {
        const std::string source =
            "// struct Comment {};\n"
            "#define X struct Macro {\n"
            "namespace overbend::a {\n"
            "struct Ahead;\n"
            "struct One { struct Inside {}; int x = f({1}); };\n"
            "enum class Two : int { left };\n"
            "template <class T> class Three : public One {};\n"
            "struct One::Inside {};\n"
            "using std::vector;\n"
            "namespace { struct Hidden {}; }\n"
            "void f(struct One& o) { struct Local {}; const char* s = \"struct Text {\"; }\n"
            "}  // namespace overbend::a\n"
            "namespace overbend { namespace b { class One {}; } }\n";
        const std::vector<std::string> expected = {"overbend::a::One", "overbend::a::Two",
                                                   "overbend::a::Three", "overbend::b::One"};
        CHECK(types_defined_in(source) == expected);
        CHECK(namespaces_in(source) == std::vector<std::string>{"overbend::a", "overbend", "overbend::b"});
    }

    TEST_CASE("no two types have one qualified name") {
        std::map<std::string, std::string> where;
        for (const std::string root : {"sim", "render", "scenes", "tests"})
            for (const std::string& path : files_under(root, {".h", ".cpp"}))
                for (const std::string& type : types_defined_in(text_of(path))) {
                    const auto [other, is_new] = where.emplace(type, path);
                    if (!is_new) FAIL_CHECK(type << " is defined in " << other->second << " and in " << path);
                }
        CHECK(where.size() > 400);
    }

    TEST_CASE("a source opens the namespace of its folder alone") {
        for (const std::string root : {"sim", "render", "scenes"})
            for (const std::string& path : files_under(root, {".h", ".cpp"}))
                for (const std::string& name : namespaces_in(without_declarations(text_of(path))))
                    if (!begins_with(name, namespace_of(path)))
                        FAIL_CHECK(path << " opens " << name << ", not " << namespace_of(path));
    }
}
