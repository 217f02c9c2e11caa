// The report as one page that needs nothing else: drawings, players with their data, tables, words.
//
// Plain data in, HTML out; the page's style, script and frame are files of this folder that are built in.

#pragma once

#include <string>
#include <vector>

#include "render/chart/force_travel.h"
#include "render/report/html.h"
#include "render/report/player.h"

namespace overbend::report {

struct PageFigure {
    std::string svg;      // an element; empty: no figure
    std::string caption;  // words
};

// A sheet of the workshop's, folded away until it is asked for.
struct PageDrawing {
    std::string name;  // "wedge: V punch, section"
    PageFigure sheet;
};

struct PageStroke {
    PassageWords told;        // by the player
    std::string lead;         // what is done, in a sentence or two
    std::vector<Term> facts;  // what the shop sets and may expect
    chart::ForceTravel curve;
    std::vector<std::string> remarks;
};

// Of a job with a press, tools of known steel, or costs; what there is not is empty, and left out.
struct PageShop {
    std::vector<std::string> press_words, tool_words, cost_words;
    std::vector<Table> press_tables, tool_tables, cost_tables;
    PageFigure cost;                       // over the batch
    std::vector<Term> traces;              // each figure of the cost: its formula and what went in
    std::vector<std::string> cautions;     // where a margin is thin
    std::vector<std::string> not_checked;  // sentences
};

enum class Verdict { feasible, not_feasible };

struct Page {
    std::string title, subtitle, generator;
    Verdict verdict = Verdict::feasible;
    std::string verdict_head;   // "Feasible: no problems found."
    std::string verdict_words;  // what else is to be said; may be empty
    std::vector<std::string> findings;
    std::vector<Term> facts;

    PageFigure part, blank;
    std::vector<Table> part_tables, blank_tables, order_tables;
    std::vector<std::string> part_words, blank_words, order_words;
    picture::ShownJob job;
    std::vector<PageStroke> strokes;  // of each that is shown
    std::vector<Table> result_tables, rule_tables;
    std::vector<std::string> rule_words;  // above the tables: what was asked, what could not be
    PageShop shop;
    std::vector<PageDrawing> drawings;  // for the workshop
    std::vector<std::string> drawing_words;
    std::vector<std::string> method_words;
    std::vector<Table> method_tables;
    std::vector<Term> material;
    std::vector<std::string> cautions;
    std::vector<Term> glossary;
};

// Throws OutOfRange: a recording that cannot be shown. std::invalid_argument: a table or curve that is none.
std::string page_html(const Page& page);

}  // namespace overbend::report
