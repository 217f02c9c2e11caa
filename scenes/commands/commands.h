// The commands. Each adds itself to the program; when it was called, it does its work and sets `status` to
// the value of an Exit. What goes wrong is thrown: main turns it into a message and a status.

#pragma once

#include "scenes/commands/command_line.h"

namespace overbend::commands {

void add_check(Program& app, int& status);
void add_case(Program& app, int& status);
void add_plan(Program& app, int& status);
void add_blank(Program& app, int& status);
void add_tools(Program& app, int& status);
void add_cost(Program& app, int& status);
void add_drawings(Program& app, int& status);
void add_film(Program& app, int& status);
void add_report(Program& app, int& status);
void add_show(Program& app, int& status);
void add_bend(Program& app, int& status);
void add_moment(Program& app, int& status);
void add_list(Program& app, int& status);

}  // namespace overbend::commands
