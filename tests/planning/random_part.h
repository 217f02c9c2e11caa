// Random parts on V tools, for checks of the search.

#pragma once

#include <string>

#include "scenes/files/case/case.h"
#include "scenes/files/case/read_card.h"
#include "sim/units.h"
#include "tests/sweep/numbers.h"

namespace overbend::tests {

// bends: with a straight punch and one groove for all of them, which is not always enough.
inline files::Case random_part(std::uint64_t seed, int bends) {
    Numbers draw(seed);
    files::Case c;
    c.title = "random part";
    c.material = files::read_card("dc01", "");
    c.thickness = 1.0;
    c.width = 20.0;
    for (int b = 0; b <= bends; ++b) c.part.flats.push_back(draw.between(8.0, 35.0));
    for (int b = 0; b < bends; ++b) {
        const double angle = (draw.coin() ? 90.0 : draw.between(30.0, 90.0)) * degree;
        c.part.bends.push_back({"bend " + std::to_string(b + 1), draw.coin() ? angle : -angle, 1.2});
    }
    c.part.angle_tolerance = degree;
    c.tools.push_back({"punch", tool::VeePunch{50.0 * degree, 1.0, 60.0, 10.0}});
    c.tools.push_back({"die", tool::VeeDie{{{84.0 * degree, 8.0, 1.0, 0.4}}, 24.0, 30.0}});
    return c;
}

}  // namespace overbend::tests
