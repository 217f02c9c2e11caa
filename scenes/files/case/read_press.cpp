#include "scenes/files/case/read_press.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

namespace {

Press read_card_file(const TomlFile& file) {
    return read_as<PressCard>(StrictTable(file)).press;
}

}  // namespace

Press read_press_card(const std::string& name_or_path, const std::filesystem::path& beside) {
    return read_card_file(read_toml(file_of(name_or_path, beside, presses)));
}

void read_press(const StrictTable& top, const std::filesystem::path& beside, Case& job) {
    if (!top.has("press")) return;
    if (!top.is_text("press")) {
        job.press = read_as<Press>(top.table("press", {}));
        return;
    }
    const TomlFile file = open_asset(top, "press", beside, presses);
    const std::string name = top.text("press");
    job.press = read_card_file(file);
    job.press_name = is_path(name) ? path_from_anywhere(file.file) : name;
}

}  // namespace overbend::files
