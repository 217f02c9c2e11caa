// The cheapest order of strokes that makes all bends of a part, exactly, by dynamic programming over the sets
// of bends that are made already.
//
// What a stroke meets depends on which bends are made, not on how they came to be made; what it costs depends
// on the set-up of the stroke before it. So the cheapest way to finish is a function of the set and of that
// set-up alone (R. Bellman, Dynamic Programming, Princeton 1957; for sequences: M. Held and R. M. Karp, J.
// SIAM 10 (1962) 196-210), and no order needs to be tried twice. Work grows as 2^bends, not as its factorial.
//
// Units  seconds for costs, mm for the gauge.

#pragma once

#include <cstdint>
#include <functional>
#include <vector>

namespace overbend::plan {

// Bit b: the bend b, counted from the drawing's left end.
using BendSet = std::uint32_t;

constexpr int most_bends_to_order = 16;
constexpr double sharpest_to_order =
    2.967;  // rad, 170 degrees: beyond, a bend is a hem, and takes two strokes

// One way of making a stroke: which bends, and the set-up it asks for.
struct Way {
    BendSet bends = 0;         // one or two
    int tools = 0;             // which punch and die, as numbered by the caller
    bool face_down = false;    // the blank's upper face points down
    bool right_first = false;  // the blank's right end lies to the left
};

// Whether and how a way can be used once these bends are made.
struct Use {
    bool possible = false;
    double gauge = 0.0;  // mm, the distance to which the gauge is set
    int slides = 0;      // 0 to 2: the strip is slid in, off, or both, along the bend line
};

struct OrderCosts {
    double stroke = 0.0, turn = 0.0, flip = 0.0, tool_change = 0.0, gauge_change = 0.0, slide = 0.0;  // >= 0
};

struct OrderProblem {
    int bends = 0;  // 1 to most_bends_to_order
    std::vector<Way> ways;
    OrderCosts costs;
    std::function<Use(int way, BendSet made)> use;  // asked at most once for each pair
};

// What an order takes, by what is done. The first set-up counts as a tool change and a gauge change.
struct OrderWork {
    int strokes = 0, turns = 0, flips = 0, tool_changes = 0, gauge_changes = 0, slides = 0;
    double seconds(const OrderCosts& costs) const;
};

struct OrderStroke {
    int way = 0;
    BendSet made = 0;  // before it
    Use use;
};

struct Order {
    std::vector<OrderStroke> strokes;
    OrderWork work;
    double seconds = 0.0;
};

struct OrderSearch {
    std::vector<Order> best;  // cheapest first; no two make the same bends with the same tools in the same
                              // order
    std::vector<BendSet> furthest;  // when there is none: the largest sets that can be made
    int sets = 0;                   // that were reached
    long asked = 0;                 // pairs of way and set for which `use` was called
};

// how_many >= 1. Throws OutOfRange: too many bends; a way that makes none, or one that does not exist.
OrderSearch best_orders(const OrderProblem& problem, int how_many);

// Two settings of the gauge that are one, mm.
constexpr double same_gauge = 0.05;

}  // namespace overbend::plan
