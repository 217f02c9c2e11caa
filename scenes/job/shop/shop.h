// A job in the shop: is the press sufficient, are the tools strong enough, what does it cost. Calculated from
// a case and its simulated strokes.
//
// Units  mm, kN, MPa, kg, s unless a name says otherwise; forces on sections N per mm of strip width.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenes/job/run/process.h"
#include "scenes/job/run/spread.h"
#include "sim/shop/cost.h"
#include "sim/shop/line_contact.h"
#include "sim/shop/press_check.h"
#include "sim/shop/spring_pad.h"
#include "sim/shop/tool_load.h"

namespace overbend::job {

// A stroke on the press. Without a press in the case there are no checks.
struct StrokeOnPress {
    int step = 0;  // index into the case's steps
    shop::StrokeDemand demand;
    Findings checks;
    double cycle_s = 0.0;  // of the ram; without speeds what the case's handling leaves beside placing
};

// Where a tool is loaded most, over all strokes that use it.
struct WorstSection {
    shop::SectionLoad load;
    int step = 0;
    int face = 1;  // of a die with two grooves, the one that was up
    double travel = 0.0;
};
struct WorstHold {  // where it tilts the tool most
    shop::HolderLoad load;
    int step = 0;
    double travel = 0.0;
};
struct WorstContact {
    shop::LineContact contact;
    double force = 0.0;                  // N per mm
    double radius = 0.0;                 // of the tool's edge
    tool::Vec2 at = tool::Vec2::Zero();  // tool's own coordinates
    int step = 0;
};

// Springs for a pad or clamp whose case gives its force alone; or those that it has, looked at.
struct SpringAdvice {
    shop::ChosenSpring each;
    int count = 1;
    bool given = false;   // the case's own springs
    double travel = 0.0;  // that they are compressed by in the job
    shop::SpringRows rows = {};
    // mm along the bend line that they stand on
    double row_length() const { return rows.rows * (each.spring.coil_diameter + each.spring.wire); }
};

struct ToolInShop {
    int tool = 0;            // index into the case's tools
    std::vector<int> steps;  // that use it
    bool made = true;        // else it is bought
    double length = 0.0;     // along the bend line
    shop::ToolStock stock;
    double peak = 0.0;              // kN per m, the greatest that the strip presses it with in any state
    int peak_step = 0;              // in which stroke
    std::optional<WorstHold> held;  // none: no force, or no face to be held by
    std::optional<WorstSection> section;  // none: no cut that is a beam's section, or no force
    std::optional<WorstContact> contact;  // none: nothing bears on a rounded edge
    std::optional<SpringAdvice> springs;
    Findings checks;  // none without a steel and a rating
    Findings mends;   // the dimensions that are a remedy for a small or negative margin
};

// What is saved by blocks that serve more than once.
struct SharedBlock {
    int tool = 0;
    int uses = 0;           // faces or strokes that would each have had a block of its own
    double saved_kg = 0.0;  // of steel, against blocks of their own
};

// Another way to make the part, to be set beside the job's own.
struct CostAlternative {
    std::string name;
    shop::CostSheet cost;
};

struct ShopReport {
    std::vector<StrokeOnPress> strokes;  // one a solved step
    std::vector<ToolInShop> tools;       // those that the steps use, in the order of the case
    std::vector<SharedBlock> shared;
    shop::JobFigures figures;
    shop::CostSheet cost;
    shop::CostRates rates;    // the case's, or the usual
    bool cost_asked = false;  // the case has a table of costs
    std::optional<CostAlternative> against;
    Findings findings;  // checks that are not within their limits, mends, and what was not checked
};

// Throws OutOfRange: a sheet that no blank goes on.
ShopReport shop_report(const files::Case& c, const JobResult& job);

// The same; what is found goes to the job's own findings, which are the whole verdict then.
ShopReport look_at_shop(const files::Case& c, JobResult& job);

// A job with the verdict on it: of its strokes, its part, the shop rules, press and tools.
// Everything that prints a verdict has it from here.
struct JudgedJob {
    JobResult result;
    ShopReport shop;
};
JudgedJob judge_job(const files::Case& c, const ProcessOptions& options, Spread spread = Spread::left_out);

// From which batch on which of two ways is cheaper, as a sentence.
std::string break_even_words(const std::string& own_name, const shop::CostSheet& own,
                             const CostAlternative& other);

// What the steel may be asked to bear over what it bears, the least of section and contact (mean pressure
// that indents it over the mean pressure): above 1 within.
// nothing: no steel, or negligible stress.
std::optional<double> steel_margin(const files::Case& c, const ToolInShop& tool);

// mm, along the bend line: the case's, or 10 mm more than the strip on either side.
double tool_length(const files::Case& c, const files::Tool& tool);

}  // namespace overbend::job
