#include "scenes/documents/study/study_tables.h"

#include <algorithm>
#include <cmath>

#include "sim/counted.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using job::StudySize;

constexpr double worth_a_row = 0.05;  // total share of a factor that is listed

std::string spread_words(const job::StudyColumn& column) {
    std::string text;
    if (const auto* n = std::get_if<files::Normal>(&column.spread)) {
        text = words("normal, mean %.6g, deviation %.4g", n->mean, n->deviation);
        if (n->within) text += words(", within %.4g", *n->within);
    } else if (const auto* u = std::get_if<files::Uniform>(&column.spread)) {
        text = words("uniform, %.6g to %.6g", u->from, u->to);
    } else if (const auto* t = std::get_if<files::Triangular>(&column.spread)) {
        text = words("triangular, %.6g to %.6g, peak at %.6g", t->from, t->to, t->peak);
    } else {
        const auto& table = std::get<files::DensityTable>(column.spread);
        text = words("table, %.6g to %.6g", table.value.front(), table.value.back());
    }
    return text + (column.usual ? " (usual)" : "");
}

std::string interval_words(const job::Share& s) {
    return words("%.2f (%.2f to %.2f)", s.value, s.low, s.high);
}

int decimals_of(const StudySize& size) {
    return size.unit == "mm" ? 3 : 2;
}

bool on_the_part(const StudySize& size) {
    return size.what != StudySize::What::springback && size.what != StudySize::What::force;
}

}  // namespace

StudyReport study_report(const job::StudyPlan& plan, const job::HeldStops& held, std::vector<StudySize> sizes,
                         std::vector<job::StudyRow> rows) {
    StudyReport r;
    r.plan = &plan, r.held = &held, r.sizes = std::move(sizes), r.rows = std::move(rows);
    r.result = job::study_result(plan, r.sizes, r.rows);
    if (plan.is_grid()) return r;
    r.stops = job::advise_stops(plan, held, r.sizes, r.rows, job::stop_sensitivity(held));
    r.worth = job::tolerance_worth(plan, r.rows, held.cost_per_part);
    return r;
}

std::string per_cent_words(double share) {
    const double p = 100.0 * share;
    return words(p > 99.0 && p < 100.0 ? "%.2f %%" : "%.1f %%", p);
}

Table inputs_table(const StudyReport& r) {
    Table table{"What varied", {{"Input"}, {"Nominal", "", 4}, {"Distribution"}}, {}};
    for (const job::StudyColumn& column : r.plan->columns) {
        if (r.plan->is_grid()) break;
        table.rows.push_back({column.name, column.nominal, spread_words(column)});
    }
    return table;
}

Table scatter_table(const StudyReport& r) {
    Table table{"Scatter of the samples",
                {{"Size"},
                 {"Drawn"},
                 {"Tolerance +-"},
                 {"Mean"},
                 {"Deviation"},
                 {"95 % from"},
                 {"to"},
                 {"Within", "%", 1},
                 {"Cp", "", 2},
                 {"Cpk", "", 2}},
                {}};
    for (std::size_t i = 0; i < r.sizes.size(); ++i) {
        const StudySize& size = r.sizes[i];
        const job::SizeScatter& s = r.result.sizes[i];
        const int d = decimals_of(size);
        const auto cell = [&](double value) { return Cell(value, d, size.unit); };
        const bool part = on_the_part(size) && size.what != StudySize::What::profile;
        table.rows.push_back({size.name, part ? cell(size.drawn) : Cell(),
                              size.judged() ? cell(size.allowed) : Cell(), cell(s.mean), cell(s.deviation),
                              cell(s.low), cell(s.high), s.within ? Cell(100.0 * *s.within) : Cell(),
                              s.cp ? Cell(*s.cp) : Cell(), s.cpk ? Cell(*s.cpk) : Cell()});
    }
    return table;
}

Table importance_table(const StudyReport& r) {
    Table table{"What the scatter comes from, as shares of the variance",
                {{"Size"}, {"Input"}, {"Alone (95 %)"}, {"With others (95 %)"}},
                {}};
    for (std::size_t i = 0; i < r.sizes.size(); ++i) {
        const StudySize& size = r.sizes[i];
        const auto& of = r.result.sizes[i].importance;
        if (of.empty() || !on_the_part(size)) continue;
        // Legs and radii that are far within their tolerance are in the JSON alone.
        const auto& cpk = r.result.sizes[i].cpk;
        if (size.what != StudySize::What::angle && (!cpk || *cpk > 1.33)) continue;
        std::vector<std::size_t> order(of.size());
        for (std::size_t f = 0; f < order.size(); ++f) order[f] = f;
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return of[a].total.value > of[b].total.value; });
        bool first = true;
        for (const std::size_t f : order) {
            if (of[f].total.value < worth_a_row) continue;
            table.rows.push_back({first ? size.name : "", r.plan->factors[f].name,
                                  interval_words(of[f].first), interval_words(of[f].total)});
            first = false;
        }
    }
    return table;
}

Table stops_table(const StudyReport& r) {
    Table table{"Stops: height of the punch over the die",
                {{"Step"}, {"Set", "mm", 3}, {"Better by", "mm", 3}, {"Then", "mm", 3}},
                {}};
    if (!r.stops) return table;
    for (std::size_t s = 0; s < r.held->c.steps.size(); ++s) {
        const auto& stop = r.held->ram_stop[s];
        if (!stop) continue;
        const double set = *stop - r.plan->study.deeper[s], deeper = r.stops->deeper[s];
        table.rows.push_back({r.held->c.steps[s].name, set, -deeper, set - deeper});
    }
    table.notes.push_back(
        words("With these stops %s of the parts would be good (%s to %s), as foreseen by "
              "straight lines; now %s.",
              per_cent_words(r.stops->then.value).c_str(), per_cent_words(r.stops->then.low).c_str(),
              per_cent_words(r.stops->then.high).c_str(), per_cent_words(r.stops->now.value).c_str()));
    return table;
}

Table worth_table(const StudyReport& r) {
    const bool costs = r.held->cost_per_part > 0.0;
    Table table{
        "Tolerances: an input that varies half as far",
        {{"Input"}, {"Good", "%", 2}, {"95 % from", "%", 2}, {"to", "%", 2}, {"Stands on samples", "", 0}},
        {}};
    if (costs)
        table.columns.push_back({"Good part", r.held->money, 3}),
            table.columns.push_back({"Worth a part", r.held->money, 3});
    for (const job::ToleranceWorth& w : r.worth) {
        table.rows.push_back({r.plan->factors[static_cast<std::size_t>(w.factor)].name, 100.0 * w.good.value,
                              100.0 * w.good.low, 100.0 * w.good.high, w.samples});
        if (!costs) continue;
        table.rows.back().push_back(w.good.value > 0.0 ? Cell(r.held->cost_per_part / w.good.value) : Cell());
        table.rows.back().push_back(w.per_part);
    }
    if (costs && r.result.good.value > 0.0)
        table.notes.push_back(
            words("A part costs %.3f %s, a good one %.3f now. A tighter tolerance is worth buying "
                  "where it costs less for each part than its last column.",
                  r.held->cost_per_part, r.held->money.c_str(), r.held->cost_per_part / r.result.good.value));
    else if (!r.worth.empty())
        table.notes.push_back("What a good part costs is not known: the case has no table [cost].");
    return table;
}

std::vector<Table> study_tables(const StudyReport& r) {
    std::vector<Table> tables;
    for (Table& table : std::vector<Table>{inputs_table(r), scatter_table(r), importance_table(r),
                                           stops_table(r), worth_table(r)})
        if (!table.rows.empty()) tables.push_back(std::move(table));
    return tables;
}

std::string good_words(const StudyReport& r) {
    const job::Share& good = r.result.good;
    const std::string of =
        r.plan->is_grid() ? counted(r.result.samples, "row") : counted(r.result.samples, "sample");
    std::string text = words("Good parts: %s of ", per_cent_words(good.value).c_str()) + of;
    if (!r.plan->is_grid())
        text += words(" (95 %% interval %s to %s)", per_cent_words(good.low).c_str(),
                      per_cent_words(good.high).c_str());
    text += ".";
    const std::size_t most = std::min<std::size_t>(r.result.why.size(), 4);
    for (std::size_t i = 0; i < most; ++i)
        text += words("\n  %5zu  ", r.result.why[i].second) + r.result.why[i].first;
    return text;
}

std::vector<std::string> study_notes(const StudyReport& r) {
    std::vector<std::string> notes = {
        "Good: all strokes solved, all sizes within tolerance, no rule, press or tool against it, as `check` "
        "judges it."};
    if (r.plan->study.stops == files::Stops::held)
        notes.push_back(
            "Stops are set once, for the nominal strip, and held as the height of the punch over the die.");
    notes.push_back(words("Computed with %d layers and %g elements for each thickness.", r.plan->study.layers,
                          r.plan->study.elements_per_thickness));
    if (r.result.not_solved > 0)
        notes.push_back(counted(r.result.not_solved, "row") +
                        " not solved: counted as not good, and left out of scatter and importance.");
    if (!r.plan->is_grid())
        notes.push_back("Cp and Cpk say most of sizes that are distributed normally: see the histograms.");
    return notes;
}

}  // namespace overbend::documents
