// The README's part on safety and what pages carry are the same words.

#include "render/picture/cautions.h"

#include <doctest/doctest.h>

#include "tests/files/own_folder.h"

using namespace overbend;

namespace {

// Without emphasis and bullets, one space between words.
std::string plain_words(const std::string& text) {
    std::string plain;
    for (const char c : text) {
        if (c == '*') continue;
        const bool space = c == ' ' || c == '\n';
        if (space && (plain.empty() || plain.back() == ' ')) continue;
        plain += space ? ' ' : c;
    }
    return plain;
}

}  // namespace

TEST_CASE("the README has every caution, word for word, under Safety") {
    const std::string readme = tests::bytes_of("README.md");
    const std::size_t from = readme.find("\n## Safety\n");
    REQUIRE(from != std::string::npos);
    const std::string safety = plain_words(readme.substr(from, readme.find("\n## ", from + 4) - from));
    CHECK(picture::cautions().size() == 7);
    for (const std::string& paragraph : picture::cautions()) {
        CAPTURE(paragraph);
        CHECK(safety.find(paragraph) != std::string::npos);
    }
}
