// The block of a tool by hand: a block 30 x 40 mm and 50 long with a slot 6 wide and 20 deep.
//
//   area 1200 - 120 = 1080 mm2; 54000 mm3; at 7850 kg/m3 0.4239 kg
//   block with 2.5 mm more on every side 35 x 45 x 55 = 86625 mm3, 0.6800 kg; milled off 86625 - 60000
//   = 26.625 cm3, at 15 cm3 a minute 0.02958 h; the wire cuts along 20 + 6 + 20 = 46 mm, 2300 mm2, at 100 mm2
//   a minute 0.3833 h

#include <doctest/doctest.h>

#include "sim/shop/tool_making.h"

using namespace overbend;
using doctest::Approx;

TEST_CASE("block, milling and erosion of a slotted tool") {
    const tool::ArcOutline outline = tool::round_corners({{{0.0, 0.0}, 0.0},
                                                          {{30.0, 0.0}, 0.0},
                                                          {{30.0, 40.0}, 0.0},
                                                          {{18.0, 40.0}, 0.0},
                                                          {{18.0, 20.0}, 0.0},
                                                          {{12.0, 20.0}, 0.0},
                                                          {{12.0, 40.0}, 0.0},
                                                          {{0.0, 40.0}, 0.0}});
    const shop::ToolStock stock = shop::stock_of(outline, 50.0, 7850.0, {});
    CHECK(stock.mass == Approx(0.4239));
    CHECK(stock.block_wide == 35.0);
    CHECK(stock.block_high == 45.0);
    CHECK(stock.block_long == 55.0);
    CHECK(stock.block_mass == Approx(0.6800).epsilon(1e-3));
    CHECK(stock.milled == Approx(26.625));
    CHECK(stock.milling_hours == Approx(0.02958).epsilon(1e-3));
    CHECK(stock.eroded == Approx(2300.0));
    CHECK(stock.erosion_hours == Approx(0.3833).epsilon(1e-3));
}

// The same tool elsewhere in its coordinates is the same block.
TEST_CASE("a tool that stands off its origin") {
    const tool::ArcOutline outline = tool::round_corners(
        {{{-15.0, -50.0}, 0.0}, {{15.0, -50.0}, 0.0}, {{15.0, -10.0}, 0.0}, {{-15.0, -10.0}, 0.0}});
    const shop::ToolStock stock = shop::stock_of(outline, 50.0, 7850.0, {});
    CHECK(stock.block_wide == 35.0);
    CHECK(stock.block_high == 45.0);
    CHECK(stock.milled == Approx(26.625));
    CHECK(stock.eroded == 0.0);
}
