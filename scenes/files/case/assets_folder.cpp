#include "scenes/files/case/assets_folder.h"

#include <cstdlib>
#include <vector>

#include "scenes/files/case/case_error.h"

namespace overbend::files {

std::filesystem::path assets_folder() {
    namespace fs = std::filesystem;
    std::error_code none;  // a link that cannot be read is taken as not there

    if (const char* named = std::getenv("OVERBEND_ASSETS"); named && *named) {
        if (fs::is_directory(named, none)) return named;
        throw CaseError(named, 0, 0, "", "OVERBEND_ASSETS does not name a folder",
                        "set it to the folder that contains materials, or unset it");
    }
    const fs::path beside = fs::read_symlink("/proc/self/exe", none).parent_path();
    const std::vector<fs::path> places = {beside / "../../assets", beside / "../share/overbend",
                                          OVERBEND_SOURCE_DIR "/assets"};
    for (const fs::path& place : places) {
        if (fs::is_directory(place / "materials", none)) return place.lexically_normal();
    }
    throw CaseError(places.front().string(), 0, 0, "", "the assets folder does not exist",
                    "set the environment variable OVERBEND_ASSETS to its path");
}

}  // namespace overbend::files
