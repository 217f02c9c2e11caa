// The commands. Each adds itself to the program; when it was called, it does its work and sets `status` to
// the value of an Exit. What goes wrong is thrown: main turns it into a message and a status.

#pragma once

#include <CLI/CLI.hpp>

namespace overbend::commands {

void add_check(CLI::App& app, int& status);
void add_plan(CLI::App& app, int& status);
void add_blank(CLI::App& app, int& status);
void add_tools(CLI::App& app, int& status);
void add_cost(CLI::App& app, int& status);
void add_drawings(CLI::App& app, int& status);
void add_film(CLI::App& app, int& status);
void add_report(CLI::App& app, int& status);
void add_show(CLI::App& app, int& status);
void add_bend(CLI::App& app, int& status);
void add_moment(CLI::App& app, int& status);

}  // namespace overbend::commands
