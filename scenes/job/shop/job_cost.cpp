// What of a job costs: its strip, its strokes, its tools.

#include <algorithm>
#include <cmath>

#include "scenes/files/case/tool_outline.h"
#include "scenes/job/shop/shop_parts.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double same_gauge = 0.01;        // mm
constexpr double beyond_the_strip = 10.0;  // mm of tool on either side of it

// Round ends joined by straight sides.
double perimeter(const files::Cutout& cutout) {
    return pi * cutout.narrow() + 2.0 * cutout.straight();
}

bool slides(const StepResult& step) {
    using clearance::Way;
    return step.way_in == Way::along_the_bend_line || step.way_off == Way::along_the_bend_line;
}

// A batch goes through stroke by stroke: tools are set up once for each.
double set_up(const files::Case& c, const JobResult& job) {
    double seconds = 0.0;
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        const bool first = i == 0;
        if (first || c.steps[i].set_up() != c.steps[i - 1].set_up()) seconds += c.handling.tool_change;
        const double gauge = job.steps[i].gauge;
        if (gauge > 0.0 && (first || std::abs(gauge - job.steps[i - 1].gauge) > same_gauge))
            seconds += c.handling.gauge_change;
    }
    return seconds;
}

double handling(const files::Case& c, const JobResult& job) {
    double seconds = 0.0;
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
        if (slides(job.steps[i])) seconds += c.handling.slide;
        if (i == 0) continue;
        if (c.steps[i].face != c.steps[i - 1].face) seconds += c.handling.flip;
        if (c.steps[i].first != c.steps[i - 1].first) seconds += c.handling.turn;
    }
    return seconds;
}

// Blocks of their own for each groove of a die with two.
double separate_blocks(const files::Case& c, const files::Tool& tool, const tool::VeeDie& die,
                       const ToolInShop& t, const shop::MakingRates& rates) {
    const double density = tool.make.card ? tool.make.card->density : 7850.0;
    double mass = 0.0;
    for (std::size_t f = 0; f < die.faces.size(); ++f) {
        tool::VeeDie own;
        own.faces = {die.faces[f]};
        own.width = die.width;
        // what lies below its groove in the shared block, from the middle between both
        const double depth = tool::groove_depth(die.faces[f]);
        const double other = tool::groove_depth(die.faces[die.faces.size() - 1 - f]);
        own.height = die.height - other;
        if (own.height <= depth) own.height = 1.5 * depth + 10.0;
        mass += shop::stock_of(make_outline(own, 1), tool_length(c, tool), density, rates).block_mass;
    }
    return mass - t.stock.block_mass;
}

}  // namespace

double tool_length(const files::Case& c, const files::Tool& tool) {
    return tool.make.length.value_or(c.width + 2.0 * beyond_the_strip);
}

std::vector<SharedBlock> shared_blocks(const files::Case& c, const std::vector<ToolInShop>& tools,
                                       const shop::MakingRates& rates) {
    std::vector<SharedBlock> shared;
    for (const ToolInShop& t : tools) {
        const files::Tool& tool = c.tools[t.tool];
        const auto* vee = std::get_if<tool::VeeDie>(&tool.shape);
        std::vector<int> faces;
        for (const int step : t.steps) {
            const int face = face_up(c, c.steps[step], t.tool);
            if (std::find(faces.begin(), faces.end(), face) == faces.end()) faces.push_back(face);
        }
        SharedBlock block{t.tool, static_cast<int>(t.steps.size()), 0.0};
        if (vee && faces.size() == 2) {
            block.saved_kg += separate_blocks(c, tool, *vee, t, rates);
            // and the strokes beyond the first of either face
            block.saved_kg += (block.uses - 2) * 0.5 * (t.stock.block_mass + block.saved_kg);
        } else {
            block.saved_kg += (block.uses - 1) * t.stock.block_mass;
        }
        if (block.uses > 1) shared.push_back(block);
    }
    return shared;
}

shop::JobFigures job_figures(const files::Case& c, const JobResult& job,
                             const std::vector<StrokeOnPress>& strokes, const std::vector<ToolInShop>& tools,
                             const shop::CostRates& rates) {
    shop::JobFigures f;
    f.thickness = c.thickness, f.width = c.width, f.blank_length = job.blank.length;
    f.length_along_rolling = c.rolling == files::Rolling::lengthwise;
    f.density = c.material.density;
    if (c.material.price > 0.0) f.strip_per_kg = c.material.price;
    if (c.material.cutting_rate > 0.0) f.cutting_rate = c.material.cutting_rate;
    f.part_mass = job.mass_g / 1000.0;
    for (const files::Cutout& cutout : c.cutouts) f.cutout_perimeters += perimeter(cutout);
    f.cutouts = static_cast<int>(c.cutouts.size());
    f.strokes = static_cast<int>(strokes.size());
    const bool timed = c.press && c.press->speeds;
    const double lay_in = c.cost ? c.cost->lay_in : shop::CostRates{}.lay_in;
    for (const StrokeOnPress& s : strokes) {
        f.press_cycles += timed ? s.cycle_s : std::max(0.0, c.handling.stroke - lay_in);
        f.work += s.demand.work;
    }
    f.handling = handling(c, job);
    f.set_up = set_up(c, job);
    for (const ToolInShop& t : tools) {
        const files::Tool& tool = c.tools[t.tool];
        shop::ToolFigures figures;
        figures.name = tool.name;
        figures.bought = tool.make.price;
        figures.stock = t.stock;
        if (tool.make.card && tool.make.card->price > 0.0) figures.steel_per_kg = tool.make.card->price;
        figures.hardened = tool.make.card && tool.make.card->hardening == shop::Hardening::through;
        figures.strokes = static_cast<int>(t.steps.size());
        f.tools.push_back(figures);
        if (!t.springs || tool.make.price) continue;  // a tool that is bought has them
        shop::ToolFigures springs;
        springs.name = tool.name + ", springs";
        springs.bought =
            t.springs->count * (rates.spring + rates.spring_per_kg * t.springs->each.mass / 1000.0);
        f.tools.push_back(springs);
    }
    return f;
}

std::string break_even_words(const std::string& own_name, const shop::CostSheet& own,
                             const CostAlternative& other) {
    const std::optional<shop::BreakEven> at = shop::break_even(own, other.cost);
    const auto name = [&](bool first) { return (first ? own_name : other.name).c_str(); };
    if (at)
        return words("From a batch of %.0f parts, %s is cheaper; below it, the other.",
                     std::floor(at->batch) + 1.0, name(at->cheaper_above == shop::BreakEven::Above::first));
    return words("%s is never more expensive, at any batch size.",
                 name(own.per_part(2.0) <= other.cost.per_part(2.0)));
}

}  // namespace overbend::job
