// The tables of a study's file: see scenes/files/case/fields.h.

#pragma once

#include "scenes/files/case/fields.h"
#include "scenes/files/study/study.h"

namespace overbend::files {

struct StudyTop {
    int format = 1, samples = 512, series = 1;
    bool no_importance = false;
    Stops stops = Stops::held;
};
struct StudyRun {
    int layers = 7;
    double elements_per_thickness = 4.0;
};
struct VaryEntry {
    std::string of, tool, step;
};
struct InputEntry : VaryEntry {
    std::optional<Normal> normal;
    std::optional<Uniform> uniform;
    std::optional<Triangular> triangular;
    std::optional<DensityTable> table;
};
struct GridEntry : VaryEntry {
    std::vector<double> values;
};
struct CorrelationEntry {
    Words of;
    double coefficient = 0.0;
};
struct SetEntry {
    std::string step;
    double deeper = 0.0;
};
void describe(Fields& f, StudyTop& t);
void describe(Fields& f, StudyRun& t);
void describe(Fields& f, Normal& t);
void describe(Fields& f, Uniform& t);
void describe(Fields& f, Triangular& t);
void describe(Fields& f, DensityTable& t);
void describe(Fields& f, InputEntry& t);
void describe(Fields& f, GridEntry& t);
void describe(Fields& f, CorrelationEntry& t);
void describe(Fields& f, SetEntry& t);

}  // namespace overbend::files
