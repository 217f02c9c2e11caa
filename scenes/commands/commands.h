// The commands. Each adds itself to the program; when it was called, it does its work and says how it went.
// What goes wrong is thrown: main turns it into a message and a status.

#pragma once

#include "scenes/commands/command_line.h"

namespace overbend::commands {

void add_check(Program& app);
void add_case(Program& app);
void add_plan(Program& app);
void add_blank(Program& app);
void add_tools(Program& app);
void add_cost(Program& app);
void add_drawings(Program& app);
void add_film(Program& app);
void add_report(Program& app);
void add_show(Program& app);
void add_bend(Program& app);
void add_moment(Program& app);
void add_list(Program& app);
void add_card(Program& app);
void add_bend_table(Program& app);
void add_study(Program& app);

}  // namespace overbend::commands
