#include "sim/shop/tool_making.h"

#include <cassert>
#include <cmath>

namespace overbend::shop {

namespace {

constexpr double on_side = 1e-6;  // mm

bool lies_on_a_side(const tool::Piece& piece, const tool::Box& box) {
    if (piece.is_arc()) return false;
    const auto both = [&](int axis, double side) {
        return std::abs(piece.start[axis] - side) < on_side && std::abs(piece.end[axis] - side) < on_side;
    };
    return both(0, box.low.x()) || both(0, box.high.x()) || both(1, box.low.y()) || both(1, box.high.y());
}

double whole(double length) {
    return std::ceil(length - 1e-9);
}

}  // namespace

ToolStock stock_of(const tool::ArcOutline& outline, double length, double density, const MakingRates& rates) {
    assert(length > 0.0 && density > 0.0 && rates.milling > 0.0 && rates.erosion > 0.0);
    const tool::Box& box = outline.box();
    const double wide = box.high.x() - box.low.x(), high = box.high.y() - box.low.y();
    const double to_kg = density * 1e-9;
    ToolStock stock;
    stock.mass = outline.area() * length * to_kg;
    stock.block_wide = whole(wide + 2.0 * rates.allowance);
    stock.block_high = whole(high + 2.0 * rates.allowance);
    stock.block_long = whole(length + 2.0 * rates.allowance);
    const double block = stock.block_wide * stock.block_high * stock.block_long;
    stock.block_mass = block * to_kg;
    stock.milled = (block - wide * high * length) / 1000.0;
    double profile = 0.0;
    for (const tool::Piece& piece : outline.pieces())
        if (!lies_on_a_side(piece, box)) profile += piece.length;
    stock.eroded = profile * length;
    stock.milling_hours = stock.milled / rates.milling / 60.0;
    stock.erosion_hours = stock.eroded / rates.erosion / 60.0;
    return stock;
}

}  // namespace overbend::shop
