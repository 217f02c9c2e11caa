#include "tests/outside/table.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <sstream>

#include "tests/files/own_folder.h"

namespace overbend::tests {

namespace {

std::vector<Row>& rows() {
    static std::vector<Row> all;
    return all;
}

std::string short_number(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.5g", value);
    return text;
}

Row row_of(const About& about, std::optional<double> reference, std::optional<double> ours) {
    Row row;
    row.about = about;
    row.reference = reference;
    row.ours = ours;
    return row;
}

std::string name_of(const About& about) {
    return about.name + " " + about.quantity;
}

const std::string* reason_of_miss(const About& about) {
    static const std::map<std::string, std::string> reasons = [] {
        std::map<std::string, std::string> all;
        for (const KnownMiss& miss : known_misses())
            for (const std::string& row : miss.rows) all[row] = miss.reason;
        return all;
    }();
    const auto found = reasons.find(name_of(about));
    return found == reasons.end() ? nullptr : &found->second;
}

// Says which rows it is, fails unless a row agrees, or is known to miss and does.
void add_checked(Row row) {
    const std::string* reason = reason_of_miss(row.about);
    INFO(row.about.group, ": ", name_of(row.about), ": ours ", row.ours.value_or(0.0), ", reference ",
         row.reference.value_or(0.0), ", allowed ", row.tolerance);
    if (reason) {
        row.verdict = Verdict::misses;
        row.reason = *reason;
        CHECK_MESSAGE(!row.within, "listed in tests/outside/misses.txt, but no longer misses");
    } else {
        CHECK_MESSAGE(row.within, "outside its tolerance, and not listed in tests/outside/misses.txt");
    }
    rows().push_back(std::move(row));
}

}  // namespace

const char* words(Verdict verdict) {
    switch (verdict) {
        case Verdict::agrees:
            return "agrees";
        case Verdict::misses:
            return "misses";
        case Verdict::prediction:
            return "prediction";
        case Verdict::no_counterpart:
            return "no counterpart";
    }
    return "";
}

double Tolerance::allowed(double reference) const {
    return std::max(absolute, relative * std::abs(reference));
}

std::string Tolerance::text(const std::string& unit) const {
    std::string amount = short_number(absolute) + (unit.empty() ? "" : " " + unit);
    const std::string share = short_number(100.0 * relative) + " %";
    if (relative == 0.0) return amount;
    return absolute == 0.0 ? share : amount + " or " + share;
}

void compare(const About& about, double reference, double ours, const Tolerance& tolerance,
             const std::optional<Tolerance>& aim) {
    Row row = row_of(about, reference, ours);
    row.in_percent = tolerance.absolute == 0.0;
    const double difference = ours - reference;
    row.difference = row.in_percent ? 100.0 * difference / std::abs(reference) : difference;
    row.allowed = row.in_percent ? 100.0 * tolerance.relative : tolerance.allowed(reference);
    row.tolerance = tolerance.text(about.unit);
    // Last digits of printed figures are halves of a step: these must not fail by rounding.
    row.within = std::abs(difference) <= tolerance.allowed(reference) * (1.0 + 1e-9) + 1e-12;
    if (aim) {
        row.aim = aim->text(about.unit);
        row.within_aim = std::abs(difference) <= aim->allowed(reference);
    }
    add_checked(std::move(row));
}

void compare_band(const About& about, double low, double high, double ours) {
    Row row = row_of(about, 0.5 * (low + high), ours);
    row.difference = ours < low ? ours - low : ours > high ? ours - high : 0.0;  // from the nearer end
    row.allowed = 0.5 * (high - low);
    row.tolerance =
        short_number(low) + " to " + short_number(high) + (about.unit.empty() ? "" : " " + about.unit);
    row.within = ours >= low && ours <= high;
    add_checked(std::move(row));
}

void predict(const About& about, double ours, bool ordered, const std::string& order) {
    Row row = row_of(about, std::nullopt, ours);
    row.verdict = Verdict::prediction;
    row.reason = order;
    row.within = ordered;
    CHECK_MESSAGE(ordered, name_of(about) << ": " << order);
    rows().push_back(std::move(row));
}

void no_counterpart(const About& about, const std::string& reason) {
    Row row = row_of(about, std::nullopt, std::nullopt);
    row.verdict = Verdict::no_counterpart;
    row.reason = reason;
    CHECK_FALSE(reason.empty());
    rows().push_back(std::move(row));
}

const std::vector<Row>& all_rows() {
    return rows();
}

const std::vector<KnownMiss>& known_misses() {
    static const std::vector<KnownMiss> misses = [] {
        std::vector<KnownMiss> all;
        std::istringstream lines(bytes_of("tests/outside/misses.txt"));
        bool in_reason = false;
        for (std::string line; std::getline(lines, line);) {
            if (line.empty() || line[0] == '#') {
                in_reason = false;
            } else if (line.compare(0, 2, "- ") == 0) {
                REQUIRE_FALSE(all.empty());
                all.back().rows.push_back(line.substr(2));
                in_reason = false;
            } else {
                if (!in_reason) all.push_back({});
                all.back().reason += (in_reason ? " " : "") + line;
                in_reason = true;
            }
        }
        return all;
    }();
    return misses;
}

std::string table_text() {
    std::ostringstream out;
    char line[400];
    std::snprintf(line, sizeof line, "%-30s %-24s %-38s %-26s %11s %11s %-6s %11s %-22s %s\n", "group",
                  "source", "case", "quantity", "reference", "ours", "unit", "difference", "allowed",
                  "verdict");
    out << line;
    for (const Row& row : rows()) {
        const std::string reference = row.reference ? short_number(*row.reference) : "-";
        const std::string ours = row.ours ? short_number(*row.ours) : "-";
        std::string difference = "-";
        if (row.reference) {
            char text[40];
            std::snprintf(text, sizeof text, row.in_percent ? "%+.3f %%" : "%+.3g", row.difference);
            difference = text;
        }
        std::snprintf(line, sizeof line, "%-30s %-24s %-38s %-26s %11s %11s %-6s %11s %-22s %s%s\n",
                      row.about.group.c_str(), row.about.source.c_str(), row.about.name.c_str(),
                      row.about.quantity.c_str(), reference.c_str(), ours.c_str(), row.about.unit.c_str(),
                      difference.c_str(), row.tolerance.c_str(), words(row.verdict),
                      row.within_aim ? "" : ", beyond the aim");
        out << line;
    }
    return out.str();
}

}  // namespace overbend::tests
