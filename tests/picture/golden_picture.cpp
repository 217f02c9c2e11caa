#include "tests/picture/golden_picture.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>

#include "render/output/whole_file.h"
#include "tests/picture/perceptual.h"

namespace overbend::tests {

void check_against_golden(const std::string& file, const picture::Pixels& found) {
    CAPTURE(file);
    if (std::getenv("OVERBEND_RENEW_PICTURES") != nullptr) {
        output::write_whole(file, picture::png_bytes(found));
        return;
    }
    const Difference d = difference(read_png(file), found);
    CAPTURE(d.greatest);
    CAPTURE(d.mean);
    const bool alike = look_alike(d);
    CHECK(alike);
    if (alike) return;
    const std::filesystem::path there = std::filesystem::temp_directory_path() /
                                        ("overbend_" + std::filesystem::path(file).filename().string());
    output::write_whole(there, picture::png_bytes(found));
    MESSAGE("what was painted lies in " << there.string());
}

}  // namespace overbend::tests
