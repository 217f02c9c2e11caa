#include "tests/outside/accuracy_page.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace overbend::tests {

namespace {

const std::string begin_marker = "<!-- written by test_outside: begin -->\n";
const std::string end_marker = "<!-- written by test_outside: end -->\n";

// In the order of the page: what is nearest to a whole stroke first; groups not named here follow.
const std::vector<std::string> order_of_groups = {
    "V bend",
    "V bend, deck of ours",
    "shape of a V bend",
    "shape of a wiped bend",
    "shape of a channel",
    "strokes, decks of ours",
    "pure bending",
    "pure bending, live",
    "pure bending, live, coarse",
    "closed forms, pure bending",
    "cyclic bending",
    "power law",
    "springback, worked examples",
    "springback factor",
    "springback tables",
    "force of V bends",
    "inside radius of V bends",
    "developed length",
    "k-factor of the mechanics",
    "least radius, formula",
    "least radii",
    "elastica",
    "springs",
    "material cards",
    "trends",
    "benchmarks",
};

std::vector<Row> in_order(std::vector<Row> rows) {
    const auto place = [](const Row& row) {
        return std::find(order_of_groups.begin(), order_of_groups.end(), row.about.group);
    };
    std::stable_sort(rows.begin(), rows.end(),
                     [&](const Row& a, const Row& b) { return place(a) < place(b); });
    return rows;
}

// Rows of one group and source that are summed up in one line.
struct Sum {
    std::string quantity;  // empty: several, and differences count by what is allowed
    std::vector<const Row*> rows;
};

// Two digits that count, and one behind the point: whole numbers are kept for counts. Differences far below
// what is read in practice are none.
std::string rounded(double value, const Row& row) {
    const double size = std::abs(value);
    char number[40];
    std::snprintf(number, sizeof number, size < 10.0 ? "%.2g" : "%.1f", size);
    if (size < 1e-3 * row.allowed || size < 1e-9) return "0";
    if (row.in_percent) return std::string(number) + " %";
    return number + (row.about.unit.empty() ? "" : " " + row.about.unit);
}

std::string full_number(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.4g", value);
    return text;
}

// The first sum that is like it, or a new one.
template <class IsLike>
Sum& sum_like(std::vector<Sum>& sums, const IsLike& is_like) {
    const auto found = std::find_if(sums.begin(), sums.end(), is_like);
    return found == sums.end() ? sums.emplace_back() : *found;
}

// A line for each quantity; single rows share one, by group and source.
std::vector<Sum> sums_of(const std::vector<Row>& rows) {
    const auto same_source = [](const Row& a, const Row& b) {
        return a.about.group == b.about.group && a.about.source == b.about.source;
    };
    std::vector<Sum> by_quantity, all;
    for (const Row& row : rows) {
        if (!row.reference || !row.ours) continue;
        Sum& sum = sum_like(by_quantity, [&](const Sum& s) {
            return same_source(*s.rows.front(), row) && s.quantity == row.about.quantity;
        });
        sum.quantity = row.about.quantity;
        sum.rows.push_back(&row);
    }
    for (const Sum& sum : by_quantity) {
        const Row& first = *sum.rows.front();
        const auto single_of_source = std::count_if(
            by_quantity.begin(), by_quantity.end(),
            [&](const Sum& s) { return same_source(*s.rows.front(), first) && s.rows.size() == 1; });
        if (sum.rows.size() > 1 || single_of_source == 1) {
            all.push_back(sum);
            continue;
        }
        Sum& shared = sum_like(
            all, [&](const Sum& s) { return s.quantity.empty() && same_source(*s.rows.front(), first); });
        shared.rows.insert(shared.rows.end(), sum.rows.begin(), sum.rows.end());
    }
    return all;
}

std::string tolerance_of(const Sum& sum) {
    const Row& first = *sum.rows.front();
    const bool one = std::all_of(sum.rows.begin(), sum.rows.end(),
                                 [&](const Row* row) { return row->tolerance == first.tolerance; });
    return (one ? first.tolerance : "row by row") + (first.aim.empty() ? "" : "; aim " + first.aim);
}

std::string differences_of(const Sum& sum) {
    const auto size = [&](const Row* row) {
        const double d = std::abs(row->difference);
        return sum.quantity.empty() ? (d == 0.0 ? 0.0 : 100.0 * d / row->allowed) : d;
    };
    double total = 0.0, greatest = -1.0;
    const Row* worst = nullptr;
    for (const Row* row : sum.rows) {
        total += size(row);
        if (size(row) > greatest) greatest = size(row), worst = row;
    }
    const double mean = total / static_cast<double>(sum.rows.size());
    if (!sum.quantity.empty()) return rounded(greatest, *worst) + " | " + rounded(mean, *worst);
    char text[80];
    std::snprintf(text, sizeof text, "%.1f %% of allowed | %.1f %% of allowed", greatest, mean);
    return text;
}

void write_sums(std::string& out, const std::vector<Row>& rows) {
    out += "| group | source | quantity | rows | greatest difference | mean | allowed | verdict |\n";
    out += "| --- | --- | --- | --- | --- | --- | --- | --- |\n";
    for (const Sum& sum : sums_of(rows)) {
        const Row& first = *sum.rows.front();
        const std::string count = std::to_string(sum.rows.size());
        const auto agree =
            std::count_if(sum.rows.begin(), sum.rows.end(), [](auto* row) { return row->within; });
        const auto aimed =
            std::count_if(sum.rows.begin(), sum.rows.end(), [](auto* row) { return row->within_aim; });
        out += "| " + first.about.group + " | " + first.about.source + " | " +
               (sum.quantity.empty() ? "several" : sum.quantity) + " | " + count + " | " +
               differences_of(sum) + " | " + tolerance_of(sum) + " | " + std::to_string(agree) + " of " +
               count + (first.aim.empty() ? "" : "; aim " + std::to_string(aimed)) + " |\n";
    }
}

// Rows of one verdict without a figure to compare with, by their group and reason.
void write_by_reason(std::string& out, const std::vector<Row>& rows, Verdict verdict) {
    std::vector<std::pair<std::string, int>> counts;
    for (const Row& row : rows) {
        if (row.verdict != verdict) continue;
        const std::string key = row.about.group + " | REASON" + row.reason;
        auto found =
            std::find_if(counts.begin(), counts.end(), [&](const auto& c) { return c.first == key; });
        if (found == counts.end()) found = counts.insert(counts.end(), {key, 0});
        ++found->second;
    }
    for (const auto& [key, count] : counts) {
        const std::size_t cut = key.find(" | REASON");
        out += "- " + key.substr(0, cut) + ", " + std::to_string(count) +
               (count == 1 ? " row: " : " rows: ") + key.substr(cut + 9) + "\n";
    }
}

std::string figures(const Row& row) {
    const std::string unit = row.about.unit.empty() ? "" : " " + row.about.unit;
    return row.about.name + ", " + row.about.quantity + ": " + full_number(*row.ours) + unit + " against " +
           full_number(*row.reference) + unit + " (allowed " + row.tolerance + ")";
}

void write_misses(std::string& out, const std::vector<Row>& rows) {
    for (const KnownMiss& miss : known_misses()) {
        out += "\n" + miss.reason + "\n\n";
        for (const Row& row : rows)
            if (row.verdict == Verdict::misses && row.reason == miss.reason)
                out += "- " + figures(row) + "\n";
    }
    bool any = false;
    for (const Row& row : rows) {
        if (row.within_aim || row.verdict != Verdict::agrees) continue;
        if (!any) out += "\nWithin the tolerance, but beyond what we aim at:\n\n";
        any = true;
        out += "- " + figures(row) + ", aim " + row.aim + "\n";
    }
}

}  // namespace

std::string accuracy_part(const std::vector<Row>& collected) {
    const std::vector<Row> rows = in_order(collected);
    int count[4] = {};
    for (const Row& row : rows) ++count[static_cast<int>(row.verdict)];
    std::string out;
    out += std::to_string(rows.size()) + " rows: " + std::to_string(count[0]) + " agree, " +
           std::to_string(count[1]) + " miss, " + std::to_string(count[2]) + " are predictions, " +
           std::to_string(count[3]) + " have no counterpart.\n\n";
    write_sums(out, rows);
    out += "\nRows that miss, under the reason why:\n";
    write_misses(out, rows);
    out += "\nPredictions, of which only the order is checked:\n\n";
    write_by_reason(out, rows, Verdict::prediction);
    out += "\nWithout a counterpart in the program:\n\n";
    write_by_reason(out, rows, Verdict::no_counterpart);
    return out;
}

std::string marked_part(const std::string& page) {
    const std::size_t begin = page.find(begin_marker), end = page.find(end_marker);
    if (begin == std::string::npos || end == std::string::npos || end < begin)
        throw std::runtime_error("the page has not both markers, " + begin_marker + " and " + end_marker);
    return page.substr(begin + begin_marker.size(), end - begin - begin_marker.size());
}

std::string with_marked_part(const std::string& page, const std::string& part) {
    const std::string old = marked_part(page);
    const std::size_t at = page.find(begin_marker) + begin_marker.size();
    return page.substr(0, at) + part + page.substr(at + old.size());
}

}  // namespace overbend::tests
