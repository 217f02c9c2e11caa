#include <algorithm>
#include <cmath>

#include "scenes/files/case/key_list.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/table_reader.h"
#include "scenes/files/case/tool_sizes.h"
#include "scenes/files/reading/most.h"
#include "scenes/files/reading/whole_text.h"
#include "scenes/files/study/describe_study.h"

namespace overbend::files {

namespace {

const Words& vary_words() {
    static const Words words = {"thickness_mm", "strength",    "modulus",  "r_value",        "friction",
                                "ram_mm",       "ram_zero_mm", "gauge_mm", "blank_length_mm"};
    return words;
}

bool of_each_step(Vary what) {
    return what == Vary::ram || what == Vary::gauge;
}

// Where a value may lie, whatever the case.
Range range_of(Vary what, const Case& c) {
    switch (what) {
        case Vary::thickness:
            return from_to(0.5 * c.thickness, 1.5 * c.thickness);
        case Vary::strength:
            return from_to(0.3, 3.0);
        case Vary::modulus:
            return from_to(0.5, 1.5);
        case Vary::r_value:
            return from_to(0.1, 10.0);
        case Vary::friction:
            return from_to(0.0, 0.3);
        case Vary::ram:
        case Vary::ram_zero:
        case Vary::gauge:
            return from_to(-2.0, 2.0);
        case Vary::blank:
            return from_to(-5.0, 5.0);
        case Vary::tool_size:
            break;
    }
    return from_to(0.0, 1e4);
}

// The ends of what can be drawn; of a normal one four deviations.
std::pair<double, double> ends_of(const Distribution& d) {
    if (const auto* n = std::get_if<Normal>(&d)) {
        const double either_way = std::min(4.0 * n->deviation, n->within.value_or(1e300));
        return {n->mean - either_way, n->mean + either_way};
    }
    if (const auto* u = std::get_if<Uniform>(&d)) return {u->from, u->to};
    if (const auto* t = std::get_if<Triangular>(&d)) return {t->from, t->to};
    const auto& table = std::get<DensityTable>(d);
    return {table.value.front(), table.value.back()};
}

int step_of(const StrictTable& table, const char* key, const std::string& name, const Case& c) {
    Words names;
    for (std::size_t i = 0; i < c.steps.size(); ++i) {
        if (c.steps[i].name == name) return static_cast<int>(i);
        names.push_back(c.steps[i].name);
    }
    table.complain(key, in_quotes(name) + " is no step of the case",
                   "give one of its steps: " + listed(names));
}

void find_tool_size(const StrictTable& table, const VaryEntry& entry, const Case& c, Input& input) {
    Words names;
    for (std::size_t i = 0; i < c.tools.size(); ++i) {
        if (c.tools[i].name == entry.tool) input.tool = static_cast<int>(i);
        names.push_back(c.tools[i].name);
    }
    if (input.tool < 0)
        table.complain("tool", in_quotes(entry.tool) + " is no tool of the case",
                       "give one of its tools: " + listed(names));
    const std::vector<ToolSize> sizes = sizes_of(c.tools[static_cast<std::size_t>(input.tool)]);
    Words known;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const auto same = std::count_if(sizes.begin(), sizes.end(),
                                        [&](const ToolSize& s) { return s.key == sizes[i].key; });
        const std::string& called = same > 1 ? sizes[i].words : sizes[i].key;
        if (entry.of == called) input.size = static_cast<int>(i);
        known.push_back(called);
    }
    if (input.size < 0)
        table.complain("of", in_quotes(entry.of) + " is no size of " + in_quotes(entry.tool),
                       known.empty() ? "this tool has none that can vary" : "give one of " + listed(known));
    input.what = Vary::tool_size;
    input.name = entry.of + " of '" + entry.tool + "'";
}

Input read_what(const StrictTable& table, const VaryEntry& entry, const Case& c) {
    Input input;
    if (!entry.tool.empty()) {
        find_tool_size(table, entry, c, input);
    } else {
        const Words& words = vary_words();
        const auto found = std::find(words.begin(), words.end(), entry.of);
        if (found == words.end())
            table.complain("of", in_quotes(entry.of) + " is not known here",
                           "give one of " + listed(words) + ", or tool beside it for a tool's size");
        input.what = static_cast<Vary>(found - words.begin());
        input.name = entry.of;
    }
    if (entry.step.empty()) return input;
    if (!of_each_step(input.what))
        table.complain("step", input.name + " is the same for all strokes",
                       "remove step, or give ram_mm or gauge_mm");
    input.step = step_of(table, "step", entry.step, c);
    input.name += " of '" + entry.step + "'";
    return input;
}

void check_order(const StrictTable& table, const char* key, bool right, const char* wrong,
                 const char* remedy) {
    if (!right) table.complain(key, wrong, remedy);
}

std::optional<Distribution> read_spread(const StrictTable& table, const InputEntry& entry) {
    std::optional<Distribution> spread;
    const char* given = nullptr;
    const auto take = [&](const char* key, const auto& one) {
        if (!one) return;
        if (spread)
            table.complain(key, std::string("stands beside ") + given, "give one distribution, not two");
        spread = *one, given = key;
    };
    take("normal", entry.normal), take("uniform", entry.uniform), take("triangular", entry.triangular),
        take("table", entry.table);
    if (entry.uniform)
        check_order(table, "uniform", entry.uniform->to > entry.uniform->from, "to is not above from",
                    "give the lesser value as from");
    if (entry.triangular) {
        const Triangular& t = *entry.triangular;
        check_order(table, "triangular", t.from <= t.peak && t.peak <= t.to && t.from < t.to,
                    "from, peak and to do not rise", "give them in this order, to above from");
    }
    if (entry.table) {
        const std::vector<double>&v = entry.table->value, &d = entry.table->density;
        check_order(table, "table", v.size() >= 2 && v.size() == d.size(),
                    "value and density are not as long as one another", "give two at least of each");
        check_order(table, "table", std::is_sorted(v.begin(), v.end(), std::less_equal<>()),
                    "the values do not rise", "give each value once, in rising order");
        check_order(table, "table", std::any_of(d.begin(), d.end(), [](double x) { return x > 0.0; }),
                    "no density is above 0", "give the density of at least one value");
    }
    return spread;
}

const char* key_of_spread(const InputEntry& entry) {
    return entry.normal ? "normal" : entry.uniform ? "uniform" : entry.triangular ? "triangular" : "table";
}

void check_values(const StrictTable& table, const char* key, const Input& input, const Case& c, double low,
                  double high) {
    const Range range = range_of(input.what, c);
    if (range.holds(low) && range.holds(high)) return;
    table.complain(key, input.name + " would be " + worked_out(range.holds(low) ? high : low) + " somewhere",
                   "keep all of it " + range_words(range) +
                       "; a normal one counts to four deviations, or to "
                       "within");
}

std::vector<Input> read_inputs(const StrictTable& top, const Case& c) {
    std::vector<Input> inputs;
    if (!top.has("input")) return inputs;
    const std::vector<StrictTable> entries = top.tables("input", {});
    top.check_count("input", entries.size(), most::study_inputs);
    for (const StrictTable& table : entries) {
        const InputEntry entry = read_as<InputEntry>(table);
        Input input = read_what(table, entry, c);
        input.spread = read_spread(table, entry);
        if (input.spread) {
            const auto [low, high] = ends_of(*input.spread);
            check_values(table, key_of_spread(entry), input, c, low, high);
        }
        for (const Input& other : inputs) {
            const bool same_steps =
                input.what == other.what && of_each_step(input.what) && (!input.step || !other.step);
            if (other.name == input.name || same_steps)
                table.complain("of", input.name + " is given twice", "remove one of them");
        }
        inputs.push_back(std::move(input));
    }
    return inputs;
}

std::vector<Grid> read_grids(const StrictTable& top, const Case& c) {
    std::vector<Grid> grids;
    if (!top.has("grid")) return grids;
    const std::vector<StrictTable> entries = top.tables("grid", {});
    top.check_count("grid", entries.size(), 3);
    for (const StrictTable& table : entries) {
        const GridEntry entry = read_as<GridEntry>(table);
        Grid grid{read_what(table, entry, c), entry.values};
        if (grid.values.empty()) table.complain("values", "there are none", "give one value at least");
        for (const double value : grid.values) check_values(table, "values", grid.of, c, value, value);
        for (const Grid& other : grids)
            if (other.of.name == grid.of.name)
                table.complain("of", grid.of.name + " is given twice", "remove one of them");
        grids.push_back(std::move(grid));
    }
    return grids;
}

std::vector<Correlation> read_correlations(const StrictTable& top, const std::vector<Input>& inputs) {
    std::vector<Correlation> correlations;
    if (!top.has("correlation")) return correlations;
    const std::vector<StrictTable> entries = top.tables("correlation", {});
    top.check_count("correlation", entries.size(), most::study_inputs);
    for (const StrictTable& table : entries) {
        const CorrelationEntry entry = read_as<CorrelationEntry>(table);
        if (entry.of.size() != 2)
            table.complain("of", std::to_string(entry.of.size()) + " inputs are given",
                           "give two, such as [\"thickness_mm\", \"strength\"]");
        const auto place = [&](const std::string& name) {
            Words known;
            for (std::size_t i = 0; i < inputs.size(); ++i) {
                if (inputs[i].name == name) {
                    if (of_each_step(inputs[i].what) && !inputs[i].step)
                        table.complain("of", name + " is different for every stroke",
                                       "give inputs that have one value");
                    return static_cast<int>(i);
                }
                known.push_back(inputs[i].name);
            }
            table.complain("of", in_quotes(name) + " is no input of this study",
                           known.empty() ? "give both as an [[input]]" : "give two of " + listed(known));
        };
        Correlation c{place(entry.of[0]), place(entry.of[1]), entry.coefficient};
        if (c.a == c.b) table.complain("of", "both are the same", "give two inputs");
        correlations.push_back(c);
    }
    return correlations;
}

void read_set(const StrictTable& top, const Case& c, Study& study) {
    study.deeper.assign(c.steps.size(), 0.0);
    if (!top.has("set")) return;
    const std::vector<StrictTable> entries = top.tables("set", {});
    top.check_count("set", entries.size(), most::steps);
    std::vector<bool> given(c.steps.size(), false);
    for (const StrictTable& table : entries) {
        const SetEntry entry = read_as<SetEntry>(table);
        const auto step = static_cast<std::size_t>(step_of(table, "step", entry.step, c));
        if (given[step])
            table.complain("step", in_quotes(entry.step) + " is set twice", "remove one of them");
        if (c.steps[step].stop == StopKind::force)
            table.complain("step", in_quotes(entry.step) + " stops at a force, wherever the ram is",
                           "remove this table, or give the step of the case another stop");
        given[step] = true, study.deeper[step] = entry.deeper;
    }
}

}  // namespace

const char* vary_word(Vary what) {
    return what == Vary::tool_size ? "tool" : vary_words()[static_cast<std::size_t>(what)].c_str();
}

Study usual_study(const Case& c) {
    Study study;
    for (const Vary what : {Vary::thickness, Vary::strength, Vary::friction, Vary::ram, Vary::gauge}) {
        Input input;
        input.what = what, input.name = vary_word(what);
        study.inputs.push_back(input);
    }
    study.deeper.assign(c.steps.size(), 0.0);
    return study;
}

Study read_study(const std::string& file, const Case& c) {
    const TomlFile toml = read_toml(file);
    const StrictTable top(toml);
    if (!top.has("format")) top.complain_missing("format", "give format = 1, the only one supported");
    StrictTable(top).expect(key_names(keys_of<StudyTop>()));
    const StudyTop given = read_as<StudyTop>(top);
    Study study;
    study.file = toml.file;
    study.bytes = whole_text(file, most::toml_bytes);
    study.samples = given.samples, study.series = given.series;
    study.importance = !given.no_importance;
    study.stops = given.stops;
    if (top.has("run")) {
        const StudyRun run = read_as<StudyRun>(top.table("run", {}));
        study.layers = run.layers, study.elements_per_thickness = run.elements_per_thickness;
    }
    study.inputs = read_inputs(top, c);
    study.grids = read_grids(top, c);
    study.correlations = read_correlations(top, study.inputs);
    read_set(top, c, study);
    if (!study.grids.empty() && !study.inputs.empty())
        top.complain("grid", "stands beside inputs that vary by chance", "give a study of its own to either");
    if (study.grids.empty() && study.stops == Stops::solved)
        top.complain("stops", "stops that are solved for every part would hide its scatter",
                     "leave it out, or give a [[grid]]");
    if (study.grids.empty() && study.inputs.empty()) study.inputs = usual_study(c).inputs;
    std::size_t rows = 1;
    for (const Grid& grid : study.grids) rows *= grid.values.size();
    if (rows > most::study_grid_rows)
        top.complain("grid", std::to_string(rows) + " rows together are too many",
                     "give at most " + std::to_string(most::study_grid_rows));
    return study;
}

}  // namespace overbend::files
