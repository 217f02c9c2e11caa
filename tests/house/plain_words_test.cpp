// Words that a shop does not use: in what the program says, in its pages, cases and cards, and in comments.

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include "sim/counted.h"
#include "tests/house/read_text.h"

using namespace overbend::tests;

namespace {

struct NotPlain {
    const char* pattern;
    const char* say;
};

const NotPlain not_plain[] = {
    {"noughts?\\b", "zero"},
    {"\\bwhoever\\b", "the person who, anybody who"},
    {"\\b(let|lets|letting|let-go)( |-)?go(es)?\\b", "release, springback, unloading"},
    {"\\bspeaks? against\\b", "problem"},
    {"\\b(find|finds|found) no (room|place|rest)\\b", "does not fit; does not settle"},
    {"\\bcomes? out as\\b", "is"},
    {"\\b(laid|lay|lays|laying) in\\b", "placed, loaded"},
    {"\\banew\\b", "again; per part"},
    {"\\b(put|take) (this|it) away\\b", "Dismiss; Remove"},
    {"\\bas in the file\\b", "Revert"},
    {"\"(stroke|frame) (on|back)\"", "Next, Previous"},
    {"\"(nearer|farther)\"", "Zoom in, Zoom out"},
    {"\\bso far\\.", "up to now, this far"},
    {"\\b(would|will|to) mend\\b|\\bmends it\\b", "remedy"},
    {"\\bwould do\\b", "is sufficient"},
    {"\\brules? of the trade\\b", "shop rules"},
    {"\\bis asked for, of each\\b|\\brules were asked\\b", "required; checked"},
    {"\\bbars every\\b", "blocks every"},
    {"\\bfaces? looks? (up|down)\\b", "points up"},
    {"\\bstands? over the\\b", "overhangs"},
    {"\\b(softly|stiffly)\\b", "with low stiffness, with high stiffness"},
    {"\\bgoes down on the root\\b", "converges"},
    {"\\bnot told\\b", "not given"},
    {"\\btakes of the blank\\b", "bend allowance"},
    {"\\boff the drawing\"", "deviation from drawing"},
    {"\\bonlookers?\\b", "viewer"},
    {"\\b(hitherto|thereby|lest|albeit|withal)\\b", "a word of today"},
    {"(all |[\"(])1 (bends|strokes|runs|steps|findings|problems|springs|frames)\\b", "1 bend"},
    {"\\? \"\" : \"s\"", "counted() of sim/counted.h"},
};

// "sim/x.h:12: let go (say: release)", one a place.
std::vector<std::string> found_in(const std::string& path, std::string text) {
    static const std::vector<std::regex> patterns = [] {
        std::vector<std::regex> all;
        for (const NotPlain& word : not_plain) all.emplace_back(word.pattern, std::regex::optimize);
        return all;
    }();
    for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    std::vector<std::string> found;
    for (std::size_t w = 0; w < patterns.size(); ++w)
        for (std::sregex_iterator it(text.begin(), text.end(), patterns[w]), end; it != end; ++it)
            found.push_back(
                path + ":" +
                std::to_string(std::count(text.begin(), text.begin() + it->position(), '\n') + 1) + ": " +
                it->str() + " (say: " + not_plain[w].say + ")");
    return found;
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("sources, pages, cases and cards use plain words") {
        std::vector<std::string> paths = {"DEVELOPERS.md"};
        const auto add = [&](const std::string& folder, const std::vector<std::string>& endings) {
            for (const std::string& path : files_under(folder, endings)) paths.push_back(path);
        };
        for (const std::string root : {"sim", "render", "scenes", "tests"}) add(root, {".h", ".cpp"});
        add("render", {".js", ".html"});
        for (const std::string root : {"cases", "assets"}) add(root, {".toml"});
        if (std::filesystem::exists("assets/manual")) add("assets/manual", {".md"});
        for (const std::string& path : paths) {
            if (path == "tests/house/plain_words_test.cpp") continue;  // the list itself
            for (const std::string& what : found_in(path, text_of(path))) FAIL_CHECK(what);
        }
    }

    TEST_CASE("each of the words is found") {
        CHECK(found_in("x", "The strip is let go.").size() == 1);
        CHECK(found_in("x", "nothing speaks against it").size() == 1);
        CHECK(found_in("x", "All 1 bends, or 0 strokes").size() == 1);
        CHECK(found_in("x", "double let_go(const StrokePath& path); // release the strip").empty());
    }

    TEST_CASE("a number and its noun agree") {
        using overbend::counted;
        CHECK(counted(1, "bend") == "1 bend");
        CHECK(counted(0, "bend") == "0 bends");
        CHECK(counted(2, "guess", "guesses") == "2 guesses");
        CHECK(counted(1, "guess", "guesses") == "1 guess");
    }
}
