#include "scenes/commands/bend_kinds.h"

#include "sim/units.h"

namespace overbend::commands {

namespace {

stroke::Stop stop_of(const BendOptions& given) {
    stroke::Stop stop;
    if (const auto travel = given.number("--travel"))
        stop.kind = stroke::StopKind::travel, stop.value = *travel;
    if (const auto force = given.number("--force-per-mm"))
        stop.kind = stroke::StopKind::force, stop.value = *force;
    if (const auto free = given.number("--free"))
        stop.kind = stroke::StopKind::free_angle, stop.value = *free * degree;
    return stop;
}

void check_vee(const BendOptions& given, const job::VeeBend& b) {
    const double least = 0.5 * b.die_opening + b.thickness, most = job::open_die_travel * b.die_opening;
    if (b.flange && *b.flange < least)
        complain("--flange", millimetres(*b.flange) + " does not reach over the shoulder; give at least " +
                                 millimetres(least));
    const double travel = given.number_or("--travel", 0.0);
    if (!b.die_angle && travel > most)
        complain("--travel",
                 millimetres(travel) + " is too large for an open die; give at most " + millimetres(most));
    if (given.number("--bottom") && !b.die_angle)
        complain("--bottom", "an open die has no bottom; give --die-angle, or remove it");
}

job::StripResult bend(const BendOptions& given, job::VeeBend& b, const stroke::StrokeOptions& options) {
    check_vee(given, b);
    return job::press_strip(job::vee_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::OffsetBend& b, const stroke::StrokeOptions& options) {
    return job::press_strip(job::offset_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::ChannelBend& b, const stroke::StrokeOptions& options) {
    b.pad = spring_of(given, "pad");
    return job::press_strip(job::channel_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::WipingBend& b, const stroke::StrokeOptions& options) {
    b.clamp = spring_of(given, "clamp");
    b.clamp_on = given.clamp_on.value_or(b.clamp_on);
    return job::press_strip(job::wiping_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::HemBend& b, const stroke::StrokeOptions& options) {
    return job::bend_hem(b, {given.number("--gap"), given.number("--force-per-mm")}, options);
}
job::StripResult bend(const BendOptions& given, job::DrawBend& b, const stroke::StrokeOptions& options) {
    b.clamp = *spring_of(given, "clamp");
    b.travel = *given.number("--travel");
    return job::bend_draw(b, options);
}

}  // namespace

job::StripResult bend_of_kind(const BendOptions& given, const material::Card& material,
                              const stroke::StrokeOptions& options) {
    AnyBend any = bend_of(given);
    return std::visit(
        [&](auto& b) {
            b.material = material;
            b.thickness = given.thickness;
            b.friction = given.friction;
            b.width = given.width;
            b.weighs = given.weighs;
            b.layers = given.layers;
            return bend(given, b, options);
        },
        any);
}

}  // namespace overbend::commands
