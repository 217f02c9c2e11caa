// Any text as the record of a tensile test: it is read, mended and evaluated, or refused with a CaseError or
// a BadRecord.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "scenes/files/case/case_error.h"
#include "scenes/files/tensile/read_record.h"
#include "sim/tensile/coil.h"

using namespace overbend;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    try {
        files::RecordOptions options;
        options.specimen.gauge_length = 50.0;
        options.specimen.area = 12.5;
        const tensile::Coil coil = tensile::read_coil(
            {tensile::prepare(files::parse_record(text, "fuzzed.csv", options).record)}, std::nullopt);
        if (!std::isfinite(coil.proof.value) || !std::isfinite(coil.strength.value)) std::abort();
    } catch (const files::CaseError&) {
    } catch (const tensile::BadRecord&) {
    }
    return 0;
}
