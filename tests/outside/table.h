// The one table of what overbend works out beside what others do: every row is a check too.
//
// A check calls one of the functions below for each figure. What was collected is printed as one table when
// the checks have run, and the manual's page is made of it (accuracy_page.h).
//
// Rows that are known to miss stand in tests/outside/misses.txt under their reason. Such a row must miss:
// when it is mended, its check fails until it is taken off that list.

#pragma once

#include <optional>
#include <string>
#include <vector>

namespace overbend::tests {

enum class Verdict {
    agrees,          // within the tolerance
    misses,          // known to lie outside, for a reason that is given
    prediction,      // nothing was measured to compare with: only its place in an order is checked
    no_counterpart,  // the program works nothing of the kind out
};
const char* words(Verdict verdict);

// How much a figure may differ: the larger of a share of the reference and an amount in its unit.
struct Tolerance {
    double relative = 0.0;
    double absolute = 0.0;
    double allowed(double reference) const;
    std::string text(const std::string& unit) const;
};
inline Tolerance relative(double share) {
    return {share, 0.0};
}
inline Tolerance absolute(double amount) {
    return {0.0, amount};
}
inline Tolerance larger_of(double amount, double share) {
    return {share, amount};
}

// What a row is about. Rows of one group and one quantity are summed up together.
struct About {
    std::string group;   // "pure bending, finite elements"
    std::string source;  // short: who says so
    std::string name;    // of the case; with the quantity it is the row's own
    std::string quantity;
    std::string unit;  // "" for none
};

struct Row {
    About about;
    std::optional<double> reference, ours;
    double difference =
        0.0;  // in per cent of the reference when the tolerance is a share alone, else in the unit
    bool in_percent = false;
    double allowed = 0.0;        // in the measure of the difference
    std::string tolerance, aim;  // in words; aim empty: none
    bool within = true, within_aim = true;
    Verdict verdict = Verdict::agrees;
    std::string reason;  // of a miss, of a missing counterpart; of a prediction: what was checked
};

// A figure against a reference.
void compare(const About& about, double reference, double ours, const Tolerance& tolerance,
             const std::optional<Tolerance>& aim = std::nullopt);
// A figure against a range.
void compare_band(const About& about, double low, double high, double ours);
// A figure that nothing was measured for; `ordered` is what is checked, `order` says it in words.
void predict(const About& about, double ours, bool ordered, const std::string& order);
void no_counterpart(const About& about, const std::string& reason);

const std::vector<Row>& all_rows();
// Reasons of tests/outside/misses.txt and whose rows they are: "NAME QUANTITY".
struct KnownMiss {
    std::string reason;
    std::vector<std::string> rows;
};
const std::vector<KnownMiss>& known_misses();

std::string table_text();

}  // namespace overbend::tests
