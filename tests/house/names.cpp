#include "tests/house/names.h"

#include <algorithm>
#include <regex>

namespace overbend::tests {

namespace {

// Words, "::" and single characters; comments, strings and directives are left out.
std::vector<std::string> tokens_of(const std::string& source) {
    static const std::regex token(
        R"(//[^\n]*|/\*[^*]*\*+(?:[^/*][^*]*\*+)*/|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])'|#[^\n]*|(\w+|::|[^\s\w]))");
    std::vector<std::string> tokens;
    for (std::sregex_iterator it(source.begin(), source.end(), token), end; it != end; ++it)
        if ((*it)[1].matched) tokens.push_back((*it)[1]);
    return tokens;
}

struct Scope {
    bool is_namespace = false;
    std::string name;  // empty: nameless
};

bool in_named_namespaces(const std::vector<Scope>& scopes) {
    return std::all_of(scopes.begin(), scopes.end(),
                       [](const Scope& s) { return s.is_namespace && !s.name.empty(); });
}

std::string qualified(const std::vector<Scope>& scopes, const std::string& name) {
    std::string all;
    for (const Scope& s : scopes) all += s.name + "::";
    return all + name;
}

// What the words before a brace open: a namespace with its name, or anything else.
Scope opened_by(const std::vector<std::string>& words) {
    if (words.empty() || words.front() != "namespace") return {};
    Scope scope{true, ""};
    for (std::size_t i = 1; i < words.size(); ++i) scope.name += words[i];
    return scope;
}

// The name of the type that these words declare, empty for anything else: "struct A", "enum class B : int";
// "struct A::B" lies in another type.
std::string type_declared_by(const std::vector<std::string>& words) {
    std::size_t at = 0;
    if (!words.empty() && words[0] == "template")
        at = std::find(words.begin(), words.end(), ">") - words.begin() + 1;
    static const std::vector<std::string> kinds = {"struct", "class", "union", "enum"};
    if (at >= words.size() || std::find(kinds.begin(), kinds.end(), words[at]) == kinds.end()) return "";
    ++at;
    if (at < words.size() && words[at] == "class") ++at;
    return at < words.size() && (at + 1 == words.size() || words[at + 1] != "::") ? words[at] : "";
}

struct Found {
    std::vector<std::string> types, namespaces;
};

Found walk(const std::string& source) {
    Found found;
    std::vector<Scope> scopes;
    std::vector<std::string> words;  // since the last brace or semicolon
    for (const std::string& token : tokens_of(source)) {
        if (token == "{") {
            const std::string type = type_declared_by(words);
            if (!type.empty() && in_named_namespaces(scopes)) found.types.push_back(qualified(scopes, type));
            scopes.push_back(opened_by(words));
            if (in_named_namespaces(scopes)) found.namespaces.push_back(qualified(scopes, ""));
        } else if (token == "}") {
            if (!scopes.empty()) scopes.pop_back();
        } else if (token != ";") {
            words.push_back(token);
            continue;
        }
        words.clear();
    }
    return found;
}

}  // namespace

std::vector<std::string> types_defined_in(const std::string& source) {
    return walk(source).types;
}

std::vector<std::string> namespaces_in(const std::string& source) {
    std::vector<std::string> names;
    for (std::string name : walk(source).namespaces) {
        name.resize(name.size() - 2);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return names;
}

std::vector<std::string> literals_in(const std::string& source) {
    static const std::regex literal(
        R"re(//[^\n]*|/\*[^*]*\*+(?:[^/*][^*]*\*+)*/|#\s*include[^\n]*|'(?:\\.|[^'\\\n])')re"
        R"re(|R"(\w*)\(([\s\S]*?)\)\1"|"((?:\\.|[^"\\\n])*)")re");
    std::vector<std::string> literals;
    for (std::sregex_iterator it(source.begin(), source.end(), literal), end; it != end; ++it)
        for (const int group : {2, 3})
            if ((*it)[group].matched) literals.push_back((*it)[group]);
    return literals;
}

std::vector<std::string> words_in(const std::string& text) {
    static const std::regex word(R"(\w+)");
    return {std::sregex_token_iterator(text.begin(), text.end(), word), {}};
}

int capitals_in(const std::string& name) {
    return static_cast<int>(
        std::count_if(name.begin(), name.end(), [](char c) { return c >= 'A' && c <= 'Z'; }));
}

}  // namespace overbend::tests
