// A table that is worked out in a second or two.

#pragma once

#include "scenes/files/case/read_card.h"
#include "scenes/job/bend_table/bend_table.h"
#include "sim/units.h"

namespace overbend::tests {

inline job::VeeBend small_bend() {
    job::VeeBend bend;
    bend.material = files::read_card("dc01", "");
    bend.die_opening = 8.0, bend.shoulder_radius = 1.0, bend.nose_radius = 1.0;
    bend.layers = 11;
    return bend;
}

inline job::BendTableOrder small_order(const std::vector<double>& degrees) {
    job::BendTableOrder order;
    order.material = files::read_card("dc01", "");
    order.tools = {job::table_tools(small_bend())};
    for (const double d : degrees) order.angles.push_back(d * degree);
    return order;
}

}  // namespace overbend::tests
