// overbend COMMAND ...: finds the command, and reports an error in one line with an exit status.

#include <exception>
#include <iostream>
#include <new>
#include <string>

#include "scenes/commands/commands.h"
#include "scenes/commands/interruption.h"
#include "scenes/commands/standard_streams.h"
#include "scenes/files/case/case_error.h"
#include "sim/errors.h"

namespace {

using overbend::commands::Exit;

// A path may hold anything; the message is one line.
int complain(std::string what, Exit status) {
    for (char& c : what)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '.';
    std::cerr << "overbend: " << what << "\n";
    return static_cast<int>(status);
}

int run(int argc, char** argv) {
    using namespace overbend::commands;
    Program app(
        "Simulates the bending of flat strip on a press, before you bend it.",
        std::string("overbend ") + OVERBEND_VERSION,
        "overbend COMMAND --help explains a command, with an example.\n"
        "Exit status: 0 done; 1 done, and the verdict is no; 2 bad input or usage; 3 could not be computed.");
    for (const auto add :
         {add_check, add_case, add_plan, add_blank, add_tools, add_cost, add_drawings, add_film, add_report,
          add_show, add_bend, add_moment, add_card, add_bend_table, add_study, add_list})
        add(app);
    const Exit status = app.run(argc, argv);
    if (!output_was_taken())
        return complain("the results could not be written to the output", Exit::not_computed);
    return static_cast<int>(status);
}

}  // namespace

int main(int argc, char** argv) {
    overbend::commands::keep_standard_streams();
    overbend::commands::leave_nothing_at_signals();
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
    } catch (const std::bad_alloc&) {
        std::cerr << "overbend: there is not enough memory\n";  // and none for a string
        return static_cast<int>(Exit::not_computed);
    } catch (const std::exception& error) {
        return complain(error.what(), Exit::not_computed);
    } catch (...) {
        return complain("unknown error", Exit::not_computed);
    }
}
