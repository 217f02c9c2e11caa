// Reads the record of a tensile test.
//
// Forces and elongations become stress and strain by the specimen's section and gauge length, which are given
// by option or stand above the figures ("width;12.5;mm", "# gauge length = 50 mm"). True stress and strain
// become engineering ones: e = exp(epsilon) - 1, S = sigma / (1 + e), which holds up to the greatest load.

#pragma once

#include "scenes/files/tensile/columns.h"
#include "sim/tensile/record.h"

namespace overbend::files {

// Sizes of the specimen, mm and mm2; absent: they are looked for in the file.
struct Specimen {
    std::optional<double> gauge_length, width, thickness, area;
};

struct RecordOptions {
    TextFormat format;
    std::vector<std::string> columns;  // see find_columns
    Specimen specimen;
};

struct TensileRecord {
    std::string file;
    tensile::Record record;
    Specimen specimen;
    std::string columns;            // in words: "strain, column 1 (1); stress, column 2 (MPa)"
    std::vector<std::string> said;  // what was assumed
};

// Throws CaseError: as read_text_table and find_columns; a figure that is missing; a section or gauge length
// that is not known.
TensileRecord read_record(const std::filesystem::path& file, const RecordOptions& options);
TensileRecord parse_record(const std::string& text, const std::string& as, const RecordOptions& options);

}  // namespace overbend::files
