// A study: what varies from part to part, as its file states it, checked against its case. Plain data.
//
// Units  as the keys have them: mm, shares of one, rad where a tool's size is an angle.

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

struct Normal {
    double mean = 0.0, deviation = 0.0;           // standard deviation, > 0
    std::optional<double> within = std::nullopt;  // either way of the mean, > 0: cut off there
};
struct Uniform {
    double from = 0.0, to = 0.0;  // to > from
};
struct Triangular {
    double from = 0.0, peak = 0.0, to = 0.0;  // from <= peak <= to, to > from
};
// A density of straight lines between points; its scale does not matter.
struct DensityTable {
    std::vector<double> value, density;  // value rises; density >= 0 and somewhere above
};
using Distribution = std::variant<Normal, Uniform, Triangular, DensityTable>;

// What can vary. Values: as the thing itself, or what is added to it.
enum class Vary {
    thickness,  // mm
    strength,   // flow stress, over the card's
    modulus,    // Young's modulus, over the card's
    r_value,    // itself
    friction,   // itself
    ram,        // mm, that the ram stops deeper than set; each stroke on its own
    ram_zero,   // mm, the same for all strokes
    gauge,      // mm, that the strip lies to the right of where it should; each stroke on its own
    blank,      // mm, added to the blank's length at its right end
    tool_size,  // itself
};
const char* vary_word(Vary what);  // as a file has it: "thickness_mm"

// One thing that varies. Of what varies for each stroke on its own: all strokes, or one.
struct Input {
    Vary what = Vary::thickness;
    std::optional<int> step = std::nullopt;             // index into the case's steps
    int tool = -1, size = -1;                           // of a tool's size: index, and into sizes_of(tool)
    std::optional<Distribution> spread = std::nullopt;  // none: the usual one
    std::string name;                                   // unique: "thickness_mm", "ram_mm of 'lip'"
};

struct Grid {
    Input of;
    std::vector<double> values;  // at least one
};

struct Correlation {
    int a = 0, b = 0;  // indices into the inputs
    double coefficient = 0.0;
};

// How a study takes its stops.
enum class Stops {
    held,    // once, for the nominal strip; then the ram's position is held
    solved,  // again for every row of a grid: each part has the case's angles
};

struct Study {
    std::string file;        // as it was read, for messages
    std::string bytes;       // all of it
    int samples = 512;       // points that are drawn; of grids not used
    bool importance = true;  // one more row for each thing that varies, of each point
    int series = 1;          // another one draws other points
    int layers = 7;
    double elements_per_thickness = 4.0;
    Stops stops = Stops::held;
    std::vector<Input> inputs;
    std::vector<Grid> grids;
    std::vector<Correlation> correlations;
    std::vector<double> deeper;  // mm, one a step of the case: what is set beyond the nominal stop
};

// Throws CaseError naming file, line and key. c: the case of the study, with steps.
Study read_study(const std::string& file, const Case& c);

// What holds without a file: all of what usually varies.
Study usual_study(const Case& c);

}  // namespace overbend::files
