#include "render/report/page.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "render/report/force_chart.h"
#include "render/report/page_sources.h"
#include "render/report/page_style.h"
#include "render/report/still.h"
#include "render/report/stroke_json.h"
#include "sim/words.h"

namespace overbend::report {

using namespace picture;

namespace {

// A tick in a ring, a bar in a ring: told apart without colour.
const char* const good_sign =
    "<svg viewBox=\"0 0 40 40\" aria-hidden=\"true\"><circle cx=\"20\" cy=\"20\" r=\"17\" fill=\"none\" "
    "stroke=\"currentColor\" stroke-width=\"3\"/><path d=\"M12 21l6 6 11-13\" fill=\"none\" "
    "stroke=\"currentColor\" stroke-width=\"3.5\"/></svg>";
const char* const bad_sign =
    "<svg viewBox=\"0 0 40 40\" aria-hidden=\"true\"><circle cx=\"20\" cy=\"20\" r=\"17\" fill=\"none\" "
    "stroke=\"currentColor\" stroke-width=\"3\"/><path d=\"M10 20h20\" fill=\"none\" stroke=\"currentColor\" "
    "stroke-width=\"4\"/></svg>";

std::string stroke_id(const ShownStroke& s) {
    return words("stroke-%d", s.number);
}

std::string stroke_head(const ShownStroke& s) {
    return words("Stroke %d: ", s.number) + escaped(s.name);
}

std::string begin_section(const std::string& id, const std::string& head, const std::string& kind = "block") {
    return "<section class=\"" + kind + "\" id=\"" + id + "\" aria-labelledby=\"" + id +
           "-head\">\n<h2 id=\"" + id + "-head\">" + head + "</h2>\n";
}

std::string tables_html(const std::vector<Table>& tables, const std::string& id) {
    std::string html;
    for (std::size_t i = 0; i < tables.size(); ++i)
        html += table_html(tables[i], id + "-table-" + std::to_string(i + 1));
    return html;
}

std::string figure_html(const PageFigure& figure, const std::string& label) {
    if (figure.svg.empty()) return "";
    return "<figure><div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" + label + "\">" +
           figure.svg + "</div><figcaption>" + escaped(figure.caption) + "</figcaption></figure>\n";
}

std::string verdict_section(const Page& page) {
    const bool good = page.verdict == Verdict::feasible;
    std::string html = "<section id=\"verdict\" aria-labelledby=\"verdict-head\">\n<div class=\"verdict " +
                       std::string(good ? "good" : "bad") + "\">" + (good ? good_sign : bad_sign) +
                       "<div><h2 id=\"verdict-head\">" + escaped(page.verdict_head) + "</h2>" +
                       (page.verdict_words.empty() ? "" : "<p>" + escaped(page.verdict_words) + "</p>") +
                       "</div></div>\n";
    if (!page.findings.empty()) html += "<div class=\"findings\">" + list_html(page.findings) + "</div>\n";
    return html + terms_html(page.facts, "facts") + "</section>\n";
}

// Under load, for readers without a script.
std::string still_of(const ShownStroke& stroke, const PassageWords& told, const TrackOptions& colours) {
    const std::string label = words("Stroke %d, ", stroke.number) + stroke.name + ", under load";
    return "<noscript><figure>" +
           still_svg(*stroke.recording, stroke::loaded_state(*stroke.recording), colours, label) +
           "<figcaption>" + escaped("Under load: " + told.dwell) + "</figcaption></figure></noscript>\n";
}

std::string stroke_section(const ShownStroke& stroke, const PageStroke& s, const TrackOptions& colours) {
    const std::string id = stroke_id(stroke);
    std::string html =
        begin_section(id, stroke_head(stroke), "block stroke") + "<p>" + escaped(s.lead) + "</p>\n";
    std::string above;
    for (const std::string& sentence : chart::limits_above(s.curve)) above += " " + escaped(sentence);
    html += "<div class=\"player\" data-stroke=\"" + id +
            "-data\">\n<div class=\"stage\"></div>\n<div class=\"beside\">" + "<figure class=\"chart\">" +
            force_chart(s.curve) +
            "<figcaption>Force over travel; dashed: ram returning. Click to jump to that point." + above +
            "</figcaption></figure></div>\n</div>\n";
    html += "<div class=\"stills\"></div>\n" + still_of(stroke, s.told, colours);
    html += terms_html(s.facts, "terms");
    if (!s.remarks.empty()) html += list_html(s.remarks);
    return html + "</section>\n";
}

std::string shop_html(const PageShop& shop) {
    const auto part = [](const std::string& head, const std::string& html) {
        return html.empty() ? "" : "<h3>" + head + "</h3>\n" + html;
    };
    std::string cost = paragraphs_html(shop.cost_words) +
                       figure_html(shop.cost, "Cost of a part over the batch") +
                       tables_html(shop.cost_tables, "cost");
    if (!shop.traces.empty())
        cost += "<details><summary>How each cost figure is calculated</summary>\n" +
                terms_html(shop.traces, "terms") + "</details>\n";
    const std::string html =
        part("Press", paragraphs_html(shop.press_words) + tables_html(shop.press_tables, "press")) +
        part("Tool strength", paragraphs_html(shop.tool_words) + tables_html(shop.tool_tables, "tools")) +
        part("Cost", cost);
    if (html.empty()) return "";
    return html + part("Small margins", shop.cautions.empty() ? "" : list_html(shop.cautions)) +
           part("Not checked", shop.not_checked.empty() ? "" : list_html(shop.not_checked));
}

std::string drawings_html(const std::vector<PageDrawing>& drawings) {
    std::string html;
    for (const PageDrawing& d : drawings)
        html += "<details class=\"sheet\"><summary>" + escaped(d.name) + "</summary>\n" +
                figure_html(d.sheet, escaped(d.name)) + "</details>\n";
    return html;
}

struct Part {
    std::string id, head, html;
};

// The sections between the verdict and the end, those without content left out.
std::vector<Part> parts_of(const Page& page, const TrackOptions& colours) {
    std::vector<Part> parts;
    const auto add = [&](const char* id, const char* head, const std::string& html) {
        if (!html.empty()) parts.push_back({id, head, begin_section(id, head) + html + "</section>\n"});
    };
    add("part", "The part",
        paragraphs_html(page.part_words) + figure_html(page.part, "Finished profile over the drawing") +
            tables_html(page.part_tables, "part"));
    add("blank", "The blank",
        paragraphs_html(page.blank_words) + figure_html(page.blank, "Flat pattern") +
            tables_html(page.blank_tables, "blank"));
    add("order", "Order and tools",
        paragraphs_html(page.order_words) + tables_html(page.order_tables, "order"));
    for (std::size_t i = 0; i < page.strokes.size(); ++i) {
        const ShownStroke& stroke = page.job.strokes.at(i);
        parts.push_back(
            {stroke_id(stroke), stroke_head(stroke), stroke_section(stroke, page.strokes[i], colours)});
    }
    add("results", "Angles, forces, clearances", tables_html(page.result_tables, "results"));
    add("shop", "Press, tools and cost", shop_html(page.shop));
    if (!page.drawings.empty())
        add("drawings", "Workshop drawings",
            paragraphs_html(page.drawing_words) + drawings_html(page.drawings));
    add("rules", "Shop rules", paragraphs_html(page.rule_words) + tables_html(page.rule_tables, "rules"));
    add("method", "How the figures are calculated",
        paragraphs_html(page.method_words) + tables_html(page.method_tables, "method") +
            (page.material.empty() ? ""
                                   : "<h3>The material card</h3>\n" + terms_html(page.material, "terms")));
    if (!page.cautions.empty())
        add("cautions", "Cautions", "<div class=\"cautions\">" + list_html(page.cautions) + "</div>\n");
    if (!page.glossary.empty()) add("words", "Glossary", terms_html(page.glossary, "terms"));
    return parts;
}

std::string contents_html(const std::vector<Part>& parts) {
    std::string html = "<ul>\n<li><a href=\"#verdict\">Verdict</a></li>\n";
    for (const Part& part : parts) html += "<li><a href=\"#" + part.id + "\">" + part.head + "</a></li>\n";
    return html + "</ul>";
}

std::string data_html(const std::string& id, const nlohmann::ordered_json& json) {
    return "<script type=\"application/json\" id=\"" + id + "\">" + in_script(json) + "</script>\n";
}

std::string data_of(const Page& page, const TrackOptions& how) {
    if (page.strokes.empty()) return "";
    std::string html = data_html("page-data", {{"palette", step_colours(colour_steps)},
                                               {"stress", how.stress_limit},
                                               {"strain", how.strain_limit}});
    for (std::size_t i = 0; i < page.strokes.size(); ++i) {
        const ShownStroke& stroke = page.job.strokes.at(i);
        html +=
            data_html(stroke_id(stroke) + "-data", stroke_json(page.job, stroke, page.strokes[i].told, how));
    }
    return html;
}

// The frame with each {{name}} replaced. What is put in is not looked at again.
std::string filled(const std::string& frame, const std::vector<Term>& values) {
    std::string text;
    for (std::size_t at = 0;;) {
        const std::size_t open = frame.find("{{", at), close = frame.find("}}", open);
        text += frame.substr(at, open - at);
        if (open == std::string::npos) return text;
        const std::string name = frame.substr(open + 2, close - open - 2);
        bool known = false;
        for (const Term& value : values)
            if (value.word == name) text += value.meaning, known = true;
        if (!known) throw std::invalid_argument("the page template has an unknown field '" + name + "'");
        at = close + 2;
    }
}

}  // namespace

std::string page_html(const Page& page) {
    const TrackOptions how = track_options(page.job);
    const std::vector<Part> parts = parts_of(page, how);
    std::string sections = verdict_section(page);
    for (const Part& part : parts) sections += part.html;
    return filled(
        page_frame,
        {{"generator", escaped(page.generator)},
         {"title", escaped(page.title)},
         {"subtitle", escaped(page.subtitle)},
         {"css", colour_variables() + page_style},
         {"contents", contents_html(parts)},
         {"sections", sections},
         {"foot", "Estimates: check them with a trial bend. Made by " + escaped(page.generator) + "."},
         {"data", data_of(page, how)},
         {"script", "(function () {\n\"use strict\";\n" + std::string(page_script) + "})();"}});
}

}  // namespace overbend::report
