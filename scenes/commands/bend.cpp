// overbend bend: one strip bent between two tools, from options.

#include <cstdio>
#include <filesystem>

#include "scenes/commands/bend_kinds.h"
#include "scenes/commands/bend_options.h"
#include "scenes/commands/bend_print.h"
#include "scenes/commands/commands.h"
#include "scenes/commands/exit_status.h"
#include "scenes/files/case/read_card.h"
#include "sim/errors.h"

namespace overbend::commands {

namespace {

// A stroke that was not solved is no result.
void require_solved(const stroke::StrokeResult& stroke) {
    if (!stroke.solved())
        throw NotSolved(std::string("the stroke was not solved (") + stroke::outcome_words(stroke.outcome) +
                        "): " + stroke.reason);
}

// Returns whether the stop was reached.
bool run(const BendOptions& given) {
    check_together(given);
    const material::Card material = files::read_card(given.material, std::filesystem::path());
    stroke::StrokeOptions options;
    options.record = false;
    const bool watched = shows_progress(given.output);
    if (watched) {
        options.progress = [](double travel, double force) {
            std::fprintf(stderr, "\rtravel %7.3f mm, force %8.1f N/mm ", travel, force);
            return true;
        };
    }
    const job::StripResult result = bend_of_kind(given, material, options);
    if (watched) std::fprintf(stderr, "\r%48s\r", "");
    require_solved(result.stroke);
    const bool reached = result.stroke.outcome == stroke::Outcome::reached;
    if (!reached && !given.output.quiet)
        std::fprintf(stderr, "overbend: the stop is not reached: %s\n", result.stroke.reason.c_str());
    print_bend(result, given);
    return reached;
}

}  // namespace

void add_bend(Program& app, int& status) {
    static BendOptions given;
    Command command = app.command(
        "bend", "Bend one strip between a punch and a die, without a case file; default: a V die");
    add_bend_options(command, given);
    command.footer(
        "In brackets: the unit, and the kinds of bend that use the option. Give exactly one stop: --travel, --free, "
        "--force-per-mm "
        "or,\n"
        "of a hem, --gap. A bend angle of 0 is flat.\n"
        "Example: overbend bend --material dc01 --thickness 1 --die-opening 8 --shoulder 1 --nose 1 --free "
        "90\n"
        "Example: overbend bend --kind offset --material dc01 --thickness 1 --offset 5 --offset-angle 45 "
        "--nose 1 "
        "--free 42\n"
        "Example: overbend bend --kind channel --material dc01 --thickness 1 --punch-width 20 --corner 2 "
        "--shoulder "
        "2 --depth 12 --pad-preload 20 --pad-rate 1 --travel 11.5\n"
        "Example: overbend bend --kind wiping --material dc01 --thickness 1 --edge 2 --corner 3 --flange 15 "
        "--clamp-force 100 --free 85\n"
        "Example: overbend bend --kind hem --material dc04 --thickness 1 --hem 8 --die-opening 9 --shoulder "
        "1 --nose 1 --force-per-mm 270\n"
        "Example: overbend bend --kind draw --material dc01 --thickness 0.8 --punch-width 50 --corner 5 "
        "--shoulder 5 "
        "--flange 60 --clamp-force 30 --travel 20");
    command.callback([&status] { status = static_cast<int>(run(given) ? Exit::done : Exit::verdict_no); });
}

}  // namespace overbend::commands
