// The whole page: small enough, the same every time, whole as XML, with nothing of a case that could do
// something in it, and nothing that asks for another file.

#include <doctest/doctest.h>

#include <cstdlib>
#include <regex>

#include "scenes/documents/report/job_page.h"
#include "sim/errors.h"
#include "sim/words.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/report/ran_job.h"
#include "tests/report/unpacked.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

// What a hostile or careless hand could write.
const std::string nasty = "</script><script>alert(1)</script><!-- & '\\\" {{title}} ]]>";

std::string nasty_case() {
    std::string text = replaced(small_case, "title = \"Small step\"", "title = \"" + nasty + "\"");
    text = replaced(text, "name = \"first\"", "name = \"" + nasty + "\"");
    text = replaced(text, "name = \"wedge\"", "name = \"" + nasty + "\"");
    for (std::size_t at = 0; (at = text.find("punch = \"wedge\"", at)) != std::string::npos;)
        text.replace(at, 15, "punch = \"" + nasty + "\"");
    return text;
}

// Without what XML has other rules for: the insides of scripts and styles.
std::string without_insides(const std::string& page) {
    std::string text;
    for (std::size_t at = 0;;) {
        std::size_t open = std::string::npos;
        std::string close;
        for (const std::string tag : {"script", "style"}) {
            const std::size_t found =
                std::min(page.find("<" + tag + ">", at), page.find("<" + tag + " ", at));
            if (found < open) open = found, close = "</" + tag + ">";
        }
        if (open == std::string::npos) return text + page.substr(at);
        const std::size_t inside = page.find('>', open) + 1;
        text += page.substr(at, inside - at);
        at = page.find(close, inside);
        REQUIRE(at != std::string::npos);
    }
}

// As libxml2 reads it.
bool is_whole_xml(const std::string& page) {
    const OwnFolder folder;
    const std::string file = folder.write("page.xml", without_insides(page)).string();
    return std::system(("xmllint --noout --nonet '" + file + "' 2>/dev/null").c_str()) == 0;
}

int count_of(const std::string& text, const std::string& part) {
    int count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

}  // namespace

TEST_CASE("page: whole as XML, with a head of each level under the one above") {
    const RanJob ran = ran_job(small_case);
    CHECK(is_whole_xml(ran.html));
    CHECK_FALSE(is_whole_xml(replaced(ran.html, "</main>", "")));
    CHECK(count_of(ran.html, "<h1>") == 1);
    CHECK(ran.html.find("<html lang=\"en\">") != std::string::npos);
    int level = 0;
    const std::regex head("<h([1-6])[ >]");
    for (std::sregex_iterator it(ran.html.begin(), ran.html.end(), head), end; it != end; ++it) {
        const int next = std::stoi((*it)[1]);
        CHECK(next <= level + 1);
        level = next;
    }
    CHECK(count_of(ran.html, "<h2") >= 10);
    // Ids are each one's own, and every link within the page leads to one.
    const std::regex id(" id=\"([^\"]+)\""), link("href=\"#([^\"]+)\"");
    std::map<std::string, int> ids;
    for (std::sregex_iterator it(ran.html.begin(), ran.html.end(), id), end; it != end; ++it) ++ids[(*it)[1]];
    for (const auto& one : ids) {
        CAPTURE(one.first);
        CHECK(one.second == 1);
    }
    for (std::sregex_iterator it(ran.html.begin(), ran.html.end(), link), end; it != end; ++it)
        CHECK(ids.count((*it)[1]) == 1);
}

TEST_CASE("page: words of a case stay words") {
    const RanJob ran = ran_job(nasty_case());
    CHECK(is_whole_xml(ran.html));
    CHECK(ran.html.find("<script>alert") == std::string::npos);
    CHECK(ran.html.find("alert(1)&lt;/script&gt;") != std::string::npos);
    // The title's {{title}} was not filled in a second time.
    CHECK(ran.html.find("{{title}}") != std::string::npos);
    const nlohmann::json data = data_in(ran.html, "stroke-1-data");
    CHECK(data["name"] == ran.c.steps.front().name);
    CHECK(data["tools"][0]["name"].get<std::string>().find("</script>") != std::string::npos);
}

TEST_CASE("page: the same case gives the same bytes") {
    CHECK(ran_job(small_case).html == ran_job(small_case).html);
}

TEST_CASE("page: a job with findings says so first, and one without that nothing was found") {
    const RanJob good = ran_job(small_case);
    CHECK(good.html.find("id=\"verdict-head\">Feasible: no problems found.<") != std::string::npos);
    const RanJob bad = ran_job(replaced(small_case, "free_deg = 60.0", "free_deg = 50.0"));
    CHECK(bad.html.find("id=\"verdict-head\">Not feasible: ") != std::string::npos);
    REQUIRE(job::stops(bad.job().findings));
    const std::size_t finding = bad.html.find(report::escaped(job::why_not(bad.c, bad.job().findings)));
    CHECK(finding != std::string::npos);
    CHECK(finding < bad.html.find("id=\"part\""));
}

TEST_CASE("page: every stroke has a player with data, a chart, and a still for readers without a script") {
    const RanJob ran = ran_job(small_case);
    for (std::size_t i = 1; i <= ran.job().steps.size(); ++i) {
        const std::string id = "stroke-" + std::to_string(i);
        CHECK(ran.html.find("data-stroke=\"" + id + "-data\"") != std::string::npos);
        CHECK_NOTHROW(data_in(ran.html, id + "-data"));
    }
    CHECK(count_of(ran.html, "class=\"player\"") == 2);
    CHECK(count_of(ran.html, "data-per-mm=") == 2);
    CHECK(count_of(ran.html, "<noscript><figure><svg") == 2);
}

TEST_CASE("page: a job that was not solved has none") {
    const files::Case c = ran_job(small_case).c;
    CHECK_THROWS_AS(documents::job_page(c, job::FlatPattern{}, job::ShopReport{}, {}, ""), OutOfRange);
}

TEST_CASE("page: the demo's asks for nothing outside, tells its cautions, and is far below 3 MB") {
    const RanJob ran = ran_file("cases/cable-hook/case.toml");
    MESSAGE("bytes of the demo's page: ", ran.html.size());
    CHECK(ran.html.size() < 1500000);
    CHECK(ran.html.size() > 300000);  // it has its six strokes in it
    CHECK(count_of(ran.html, "class=\"player\"") == 6);
    const std::regex elsewhere(
        "(src|href|action|data|poster)=\"(?!#|data:)|url\\((?!#|[\"']?#)|@import|<(iframe|object|embed|img)");
    const std::string outside = without_insides(ran.html);
    CHECK_FALSE(std::regex_search(outside, elsewhere));
    for (const std::string name : {"http://", "https://", "fetch(", "XMLHttpRequest", "import("}) {
        CAPTURE(name);
        // The name of SVG's vocabulary is no address that anybody asks for.
        CHECK(count_of(ran.html, name) ==
              (name == "http://" ? count_of(ran.html, "http://www.w3.org/2000/svg") : 0));
    }
    CHECK(ran.html.find("Prove every job with a trial bend") != std::string::npos);
    CHECK(ran.html.find("EN 10088-2") != std::string::npos);  // where the card's numbers come from
}

TEST_CASE("page: press, tools and cost of a case that has them, with the figures of the shop") {
    const RanJob ran = ran_file("cases/cable-hook/case.toml");
    REQUIRE(ran.html.find("<a href=\"#shop\">") != std::string::npos);
    const std::size_t from = ran.html.find("id=\"shop\"");
    const std::string section = ran.html.substr(from, ran.html.find("</section>", from) - from);
    const auto says = [&](const std::string& text) {
        CAPTURE(text);
        CHECK(section.find(report::escaped(text)) != std::string::npos);
    };
    says(ran.c.press->title);
    REQUIRE(ran.shop.tools.size() == 7);
    for (const job::ToolInShop& t : ran.shop.tools) {
        const auto margin = job::steel_margin(ran.c, t);
        REQUIRE(margin);
        says("'" + ran.c.tools[t.tool].name + "'");
        CHECK(section.find(words("%.2f</td>", *margin)) != std::string::npos);
    }
    says(words("%.4f", ran.shop.cost.per_part(ran.shop.rates.batch)));
    says(words("%.2f", ran.shop.cost.fixed));
    for (const shop::CostLine& line : ran.shop.cost.lines)
        if (!line.per_part.formula.empty()) says(line.per_part.formula);
    CHECK(section.find("<svg") != std::string::npos);
    const job::ToolInShop& pad = ran.shop.tools.back();
    REQUIRE(pad.springs);
    says(words("%d, chosen", pad.springs->count));
    says(words("%.0f to %.0f", pad.springs->each.force_start, pad.springs->each.force_end));
    // and the limits of the press on the strokes' charts
    CHECK(ran.html.find("Rated force of the press: 60 kN") != std::string::npos);
}

TEST_CASE("page: the drawings of every tool, the blank and the part, with what each is made of") {
    const RanJob ran = ran_file("cases/cable-hook/case.toml");
    const std::size_t from = ran.html.find("id=\"drawings\"");
    REQUIRE(from != std::string::npos);
    const std::string section = ran.html.substr(from, ran.html.find("</section>", from) - from);
    CHECK(count_of(section, "<details") == 9);  // seven tools, blank, part
    CHECK(count_of(section, "<svg class=") == 9);
    for (const job::ToolInShop& t : ran.shop.tools) {
        const files::Tool& tool = ran.c.tools[t.tool];
        CAPTURE(tool.name);
        const std::size_t at = section.find("<summary>" + report::escaped(tool.name) + ": ");
        REQUIRE(at != std::string::npos);
        const std::string sheet = section.substr(at, section.find("</details>", at) - at);
        // once in the sheet's title block, once below it
        CHECK(count_of(sheet, report::escaped(tool.make.card->title)) == 2);
    }
    for (const char* name : {"<summary>blank, from above", "<summary>finished part"}) {
        CAPTURE(std::string(name));
        const std::size_t at = section.find(name);
        REQUIRE(at != std::string::npos);
        CHECK(section.find(report::escaped(ran.c.material.title), at) != std::string::npos);
    }
    CHECK(ran_job(small_case).html.find("Material: not stated") != std::string::npos);
}

TEST_CASE("page: no press, no steel, no cost: no section on them") {
    const RanJob ran = ran_job(small_case);
    CHECK(ran.html.find("id=\"shop\"") == std::string::npos);
    CHECK(ran.html.find("Rated force of the press") == std::string::npos);
}
