#include "scenes/commands/bend_kinds.h"

#include "scenes/job/run/channel_bend.h"
#include "scenes/job/run/draw_bend.h"
#include "scenes/job/run/hem_bend.h"
#include "scenes/job/run/offset_bend.h"
#include "scenes/job/run/vee_bend.h"
#include "scenes/job/run/wiping_bend.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

void put_strip(const BendOptions& given, const material::Card& material, job::StripOptions& strip) {
    strip.material = material;
    strip.thickness = given.thickness;
    strip.friction = given.friction;
    strip.width = given.width;
    strip.weighs = given.weighs;
    strip.layers = given.layers;
}

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
    const double least = 0.5 * b.die_opening + b.thickness;
    if (b.flange && *b.flange < least)
        complain("--flange", millimetres(*b.flange) + " does not reach over the shoulder; give at least " +
                                 millimetres(least));
    const double most = job::open_die_travel * b.die_opening;
    const std::optional<double> travel = given.number("--travel");
    if (travel && !b.die_angle && *travel > most)
        complain("--travel",
                 millimetres(*travel) + " is too large for an open die; give at most " + millimetres(most));
    if (given.number("--bottom") && !b.die_angle)
        complain("--bottom", "an open die has no bottom; give --die-angle, or remove it");
}

job::StripResult vee(const BendOptions& given, const material::Card& material,
                     const stroke::StrokeOptions& options) {
    job::VeeBend b;
    put_strip(given, material, b);
    b.die_opening = *given.number("--die-opening");
    b.shoulder_radius = *given.number("--shoulder");
    b.nose_radius = *given.number("--nose");
    if (const auto angle = given.number("--die-angle")) b.die_angle = *angle * degree;
    b.bottom_radius = given.number_or("--bottom", b.bottom_radius);
    b.punch_angle = given.number_or("--punch-angle", 30.0) * degree;
    b.flange = given.number("--flange");
    check_vee(given, b);
    return job::press_strip(job::vee_stroke(b), stop_of(given), options);
}

job::StripResult offset(const BendOptions& given, const material::Card& material,
                        const stroke::StrokeOptions& options) {
    job::OffsetBend b;
    put_strip(given, material, b);
    b.offset = *given.number("--offset");
    b.angle = *given.number("--offset-angle") * degree;
    b.corner_radius = *given.number("--nose");
    b.root_radius = given.number_or("--root", 0.5 * b.thickness);
    b.clearance = given.number("--clearance");
    b.land = given.number("--land");
    b.flange = given.number("--flange");
    return job::press_strip(job::offset_stroke(b), stop_of(given), options);
}

job::StripResult channel(const BendOptions& given, const material::Card& material,
                         const stroke::StrokeOptions& options) {
    job::ChannelBend b;
    put_strip(given, material, b);
    b.punch_width = *given.number("--punch-width");
    b.corner_radius = *given.number("--corner");
    b.shoulder_radius = *given.number("--shoulder");
    b.depth = *given.number("--depth");
    b.clearance = given.number("--clearance");
    b.flange = given.number("--flange");
    b.pad = spring_of(given, "pad");
    return job::press_strip(job::channel_stroke(b), stop_of(given), options);
}

job::StripResult wiping(const BendOptions& given, const material::Card& material,
                        const stroke::StrokeOptions& options) {
    job::WipingBend b;
    put_strip(given, material, b);
    b.edge_radius = *given.number("--edge");
    b.corner_radius = *given.number("--corner");
    b.clearance = given.number("--clearance");
    b.flange = *given.number("--flange");
    b.hold = given.number("--hold");
    b.clamp = spring_of(given, "clamp");
    b.clamp_on = given.clamp_on;
    return job::press_strip(job::wiping_stroke(b), stop_of(given), options);
}

job::StripResult hem(const BendOptions& given, const material::Card& material,
                     const stroke::StrokeOptions& options) {
    job::HemBend b;
    put_strip(given, material, b);
    b.hem = *given.number("--hem");
    b.flange = given.number("--flange");
    b.die_opening = *given.number("--die-opening");
    b.shoulder_radius = *given.number("--shoulder");
    b.nose_radius = *given.number("--nose");
    b.first_free = given.number_or("--first-free", 150.0) * degree;
    return job::bend_hem(b, {given.number("--gap"), given.number("--force-per-mm")}, options);
}

job::StripResult draw(const BendOptions& given, const material::Card& material,
                      const stroke::StrokeOptions& options) {
    job::DrawBend b;
    put_strip(given, material, b);
    b.punch_width = *given.number("--punch-width");
    b.corner_radius = *given.number("--corner");
    b.shoulder_radius = *given.number("--shoulder");
    b.clearance = given.number("--clearance");
    b.flange = *given.number("--flange");
    b.clamp = *spring_of(given, "clamp");
    b.travel = *given.number("--travel");
    return job::bend_draw(b, options);
}

}  // namespace

job::StripResult bend_of_kind(const BendOptions& given, const material::Card& material,
                              const stroke::StrokeOptions& options) {
    switch (given.kind) {
        case BendKind::vee:
            return vee(given, material, options);
        case BendKind::offset:
            return offset(given, material, options);
        case BendKind::channel:
            return channel(given, material, options);
        case BendKind::wiping:
            return wiping(given, material, options);
        case BendKind::hem:
            return hem(given, material, options);
        case BendKind::draw:
            return draw(given, material, options);
    }
    return {};
}

}  // namespace overbend::commands
