// The record of a tensile test, as plain data, and what makes one unusable.
//
// Units  engineering strain of the gauge length without unit (0.01 is 1 per cent); engineering stress MPa.

#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <vector>

namespace overbend::tensile {

struct Record {
    std::vector<double> strain;        // engineering, along the load
    std::vector<double> stress;        // engineering, MPa
    std::vector<double> width_strain;  // engineering, across; empty, or one a point
    std::vector<int> line;             // of the file that it was read from, for what is said of it

    std::size_t size() const { return strain.size(); }
};

// A record with only the points whose index is named, in that order.
Record only(const Record& record, const std::vector<std::size_t>& kept);

// The place of the greatest stress, the first of several. The record has points.
std::size_t greatest_stress(const Record& record);

// A figure and what it may be off either way, in its own unit: two standard deviations, or the half of a
// range.
struct Figure {
    double value = 0.0;
    double off = 0.0;
};

// The scatter of the stress from point to point, one standard deviation, MPa: from the median of its second
// differences, which a smooth curve leaves alone. 0 with fewer than eight points.
double scatter_of(const std::vector<double>& stress);

// A record that is no tensile test, or one that nothing can be taken from.
struct BadRecord : std::runtime_error {
    BadRecord(int line_, const std::string& wrong_, const std::string& right_)
        : std::runtime_error(wrong_ + "; " + right_), line(line_), wrong(wrong_), right(right_) {}
    int line = 0;  // of the file; 0: the record as a whole
    std::string wrong;
    std::string right;
};

}  // namespace overbend::tensile
