// The shape of a bend by finite elements, as stored in tests/outside/shape_rows.csv, and the same bends here.
//
// Units  as each row says; mm, degrees, 1/mm, N per mm of width.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace overbend::tests {

struct ShapeRow {
    std::string name;      // of the case: "V1"
    std::string quantity;  // "radius over 30 deg loaded"
    std::string unit;      // "" for none
    double reference = 0.0;
    std::optional<double> coarse;  // on a coarser mesh
};
// Lines of four fields or five, in the order above; # begins a comment.
std::vector<ShapeRow> read_shape_rows(const std::string& path);
const std::vector<ShapeRow>& shape_rows();

// Works a case out here: figures by the names that the quantities have in the file.
struct ShapeHere {
    std::string failed;  // why the stroke did not reach its stop; empty: it did
    std::map<std::string, double> figures;
    double audit_percent = 0.0;  // of the stroke's balance of work
};
// Throws std::invalid_argument for no such case.
ShapeHere shape_here(const std::string& name);

}  // namespace overbend::tests
