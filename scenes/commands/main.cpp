// overbend COMMAND ...: finds the command, and reports an error in one line with an exit status.

#include <exception>
#include <iostream>
#include <string>

#include "scenes/commands/commands.h"
#include "scenes/commands/exit_status.h"
#include "scenes/files/case/case_error.h"
#include "sim/errors.h"

namespace {

using overbend::commands::Exit;

int complain(const std::string& what, Exit status) {
    std::cerr << "overbend: " << what << "\n";
    return static_cast<int>(status);
}

int run(int argc, char** argv) {
    int status = static_cast<int>(Exit::done);
    overbend::commands::Program app(
        "Simulates the bending of flat strip on a press, before you bend it.",
        std::string("overbend ") + OVERBEND_VERSION,
        "overbend COMMAND --help explains a command, with an example.\n"
        "Exit status: 0 done; 1 done, and the verdict is no; 2 bad input or usage; 3 could not be computed.");
    overbend::commands::add_check(app, status);
    overbend::commands::add_case(app, status);
    overbend::commands::add_plan(app, status);
    overbend::commands::add_blank(app, status);
    overbend::commands::add_tools(app, status);
    overbend::commands::add_cost(app, status);
    overbend::commands::add_drawings(app, status);
    overbend::commands::add_film(app, status);
    overbend::commands::add_report(app, status);
    overbend::commands::add_show(app, status);
    overbend::commands::add_bend(app, status);
    overbend::commands::add_moment(app, status);
    overbend::commands::add_list(app, status);
    if (!app.run(argc, argv)) return static_cast<int>(Exit::done);
    std::cout.flush();
    if (!std::cout) return complain("the results could not be written to the output", Exit::not_computed);
    return status;
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const overbend::commands::WrongUsage& error) {
        return complain(error.what(), Exit::bad_input);
    } catch (const overbend::files::CaseError& error) {
        return complain(error.what(), Exit::bad_input);
    } catch (const overbend::OutOfRange& error) {
        return complain(error.what(), Exit::bad_input);
    } catch (const overbend::NotSolved& error) {
        return complain(error.what(), Exit::not_computed);
    } catch (const std::exception& error) {
        return complain(error.what(), Exit::not_computed);
    } catch (...) {
        return complain("unknown error", Exit::not_computed);
    }
}
