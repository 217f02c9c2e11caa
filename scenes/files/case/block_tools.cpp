#include "scenes/files/case/kinds.h"

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;
namespace {

void block(Fields& f, tool::Block& b, double usual_height) {
    f.number({"width_mm", "30.0", "Width of the block"}, size, b.width);
    f.number_or({"corner_radius_mm", "1.0", "Radius of both corners of the working face"}, size_or_none,
                b.left_radius, {0.0});
    b.right_radius = b.left_radius;
    f.number_or({"height_mm", "40.0", "Height of the block"}, size, b.height, {usual_height});
}

SpringTable table_of(const tool::Spring& spring, const std::optional<WoundSprings>& wound) {
    SpringTable table{spring, spring.solid};
    if (wound) table.spring = *wound;
    return table;
}

// The strip's width, which wound springs share, is not known here.
void take(const SpringTable& table, tool::Spring& spring, std::optional<WoundSprings>& wound) {
    if (const auto* by_rate = std::get_if<tool::Spring>(&table.spring))
        spring = *by_rate, wound.reset();
    else
        wound = std::get<WoundSprings>(table.spring);
    spring.solid = table.travel;
}

const Key spring_key = {"spring", "{ preload_N_per_mm = 40.0, rate_N_per_mm2 = 2.0 }",
                        "Its spring: given by rate, or as wound springs"};

std::string spring_words(const tool::Spring& s) {
    if (s.rate <= 0.0) return words(", pressed with %.4g N per mm of width", s.preload);
    return words(", on a spring of %.4g N per mm of width and %.4g more per mm of travel", s.preload, s.rate);
}

std::string block_words(const tool::Block& b) {
    return words("%.4g mm wide, corner radii %.4g and %.4g mm", b.width, b.left_radius, b.right_radius);
}

// ---- of a kind whose tools are a block

template <class T>
void plain(Fields& f, T& t) {
    block(f, t.block, 40.0);
}
template <class T>
std::string only_block(const T& t) {
    return block_words(t.block);
}
template <class T>
void size_above(const drawing::Measurer& m, const T&) {
    m.size(Beside::above);
}
template <class T>
void size_below(const drawing::Measurer& m, const T&) {
    m.size(Beside::below);
}
template <class T>
tool::ArcOutline facing_down(const T& t, int) {
    return tool::block_facing_down(t.block);
}
template <class T>
tool::ArcOutline facing_up(const T& t, int) {
    return tool::block_facing_up(t.block);
}

}  // namespace

// ---- flat-punch, flat-die

Kind flat_punch() {
    return kind<FlatPunch>("flat-punch", Stands::punch, Work::hem, plain, only_block, size_above,
                           facing_down);
}

Kind flat_die() {
    return kind<FlatDie>("flat-die", Stands::die, Work::hem, plain, only_block, size_below, facing_up);
}

// ---- wiping-punch

void describe(Fields& f, WipingPunch& t) {
    block(f, t.block, 60.0);
    f.number({"clearance_mm", "1.1", "Between its wall and the die's"}, size, t.clearance);
}

std::string figures(const WipingPunch& t) {
    return block_words(t.block) + words(", %.4g mm beside the die", t.clearance);
}

void measure(const drawing::Measurer& m, const WipingPunch& t) {
    m.size(Beside::above);
    m.note("Passes " + m.plain(t.clearance) + " mm beside the wall of its die.");
}

Kind wiping_punch() {
    return kind<WipingPunch>("wiping-punch", Stands::punch, Work::wiping, describe, figures, measure,
                             facing_down);
}

// ---- wiping-die

void describe(Fields& f, WipingDie& t) {
    f.number({"width_mm", "40.0", "Width of the block"}, size, t.block.width);
    f.number({"edge_radius_mm", "2.0", "Radius of its right edge, over which the flange is wiped"}, size,
             t.block.right_radius);
    f.number_or({"height_mm", "60.0", "Height of the block"}, size, t.block.height, {60.0});
}

Kind wiping_die() {
    return kind<WipingDie>("wiping-die", Stands::die, Work::wiping, describe, only_block, size_below,
                           facing_up);
}

// ---- pad

void describe(Fields& f, Pad& t) {
    block(f, t.block, 15.0);
    SpringTable spring = table_of(t.spring, t.wound);
    f.table(spring_key, spring);
    take(spring, t.spring, t.wound);
}

std::string figures(const Pad& t) {
    return block_words(t.block) + spring_words(t.spring);
}

Kind pad() {
    return kind<Pad>("pad", Stands::pad, Work::any, describe, figures, size_below, facing_up);
}

// ---- clamp

void describe(Fields& f, Clamp& t) {
    block(f, t.block, 15.0);
    std::optional<SpringTable> spring;
    if (t.spring) spring = table_of(*t.spring, t.wound);
    f.table_if(spring_key, spring, "none: rigid");
    t.spring.reset();
    if (spring) take(*spring, t.spring.emplace(), t.wound);
}

std::string figures(const Clamp& t) {
    return block_words(t.block) + (t.spring ? spring_words(*t.spring) : ", rigid");
}

Kind clamp() {
    return kind<Clamp>("clamp", Stands::clamp, Work::any, describe, figures, size_above, facing_down);
}

void describe(Fields& f, SpringTable& t) {
    f.one_of({"", "", ""}, {"by its rate", "wound"}, t.spring);
    f.number_or({"travel_mm", "10.0", "Greatest compression"}, above_to(0.0, 1000.0), t.travel,
                {tool::Spring().solid, "no limit"});
}

void describe(Fields& f, tool::Spring& t) {
    f.number_or({"preload_N_per_mm", "40.0", "Preload"}, from_to(0.0, 1e5), t.preload, {0.0});
    f.number_or({"rate_N_per_mm2", "2.0", "Spring rate"}, from_to(0.0, 1e5), t.rate, {0.0});
}

void describe(Fields& f, WoundSprings& t) {
    f.number({"wire_mm", "4.0", "Diameter of the wire"}, above_to(0.0, 100.0), t.each.wire);
    f.number({"coil_mm", "25.0", "Mean diameter of the coil"}, above_to(0.0, 500.0), t.each.coil_diameter);
    f.number({"turns", "6.0", "Active turns"}, above_to(0.0, 200.0), t.each.turns);
    f.number({"shear_modulus_MPa", "81500.0", "Shear modulus of the wire"}, from_to(1000.0, 1e6),
             t.each.shear_modulus);
    f.whole_or({"count", "2", "Number of springs; the load is spread over the strip's width"}, 1, 1000,
               t.count, 1);
    f.number_or({"preload_N", "300.0", "Preload of all springs together"}, from_to(0.0, 1e8), t.preload,
                {0.0});
}

}  // namespace overbend::files
