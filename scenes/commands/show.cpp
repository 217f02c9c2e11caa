// overbend show: the window.

#include <memory>

#include "render/ui/display.h"
#include "render/ui/window.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/options.h"
#include "scenes/files/case/read_case.h"
#include "scenes/window/main_show.h"

namespace overbend::commands {

namespace {

struct ShowCommand {
    std::string file;
    bool bench = false;
    std::string theme;
};

Exit show(const ShowCommand& given) {
    if (given.file.empty() && !given.bench) complain("CASE", "nothing to show; give a case file, or --bench");
    // Mistakes in the case are reported before the window opens.
    if (!given.file.empty()) files::read_case(given.file);
    const ui::Screen screen;
    if (const std::optional<std::string> why = screen.why_not())
        throw std::runtime_error(
            "no window: " + *why +
            "; \"overbend film\" and \"overbend report\" show the same without a window");
    const std::filesystem::path memory = window::remembered_file();
    window::Remembered remembered = window::read_remembered(memory);
    remembered.scene = given.bench ? window::SceneKind::bench : window::SceneKind::process;
    if (!given.theme.empty()) remembered.dark = given.theme == "dark";
    window::MainShow main(
        remembered, given.file.empty() ? std::nullopt : std::optional<std::filesystem::path>(given.file));
    ui::WindowOptions options;
    options.width = remembered.width, options.height = remembered.height;
    options.scale = screen.scale();
    {
        ui::Window window(options);
        window.run(main);
    }
    window::write_remembered(memory, main.remembered());
    return Exit::done;
}

}  // namespace

void add_show(Program& app) {
    Command command = app.command("show", "Window: step through a case, or bend by hand on the bench");
    const auto given = std::make_shared<ShowCommand>();
    command.option("CASE", given->file, "case file (TOML)");
    command.flag("--bench", given->bench, "start with the springback bench");
    command.option("--theme", given->theme, "light or dark; default: as last time")
        .check(one_of({"light", "dark"}));
    command.footer(
        "Example: overbend show cases/cable-hook/case.toml\n"
        "         overbend show --bench --theme dark");
    command.runs([given] { return show(*given); });
}

}  // namespace overbend::commands
