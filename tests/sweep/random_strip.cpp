#include "tests/sweep/random_strip.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"
#include "tests/stop_at.h"
#include "tests/sweep/numbers.h"

namespace overbend::tests {

namespace {

const std::vector<material::Card>& all_cards() {
    static const std::vector<material::Card> cards = [] {
        std::vector<material::Card> read;
        for (const std::string& name : files::known_cards()) read.push_back(files::read_card(name, "."));
        return read;
    }();
    return cards;
}

struct Draw {
    Numbers numbers;
    double t = 1.0;
    job::StripOptions strip;
    char words[400] = "";

    explicit Draw(std::uint64_t seed, double finer) : numbers(seed * 2862933555777941757ULL + 3037000493ULL) {
        const std::vector<material::Card>& cards = all_cards();
        const double draw = numbers.between(0.0, static_cast<double>(cards.size()));
        strip.material = cards[std::min(cards.size() - 1, static_cast<std::size_t>(draw))];
        t = strip.thickness = numbers.log_between(0.2, 8.0);
        strip.friction = numbers.between(0.0, 0.3);
        strip.layers = 11;
        strip.elements_per_thickness = 8.0 * finer;
    }
    double flange(double least) { return std::max(least, t * numbers.log_between(3.0, 300.0)); }
    template <class Bend>
    Bend begin() const {
        Bend bend;
        static_cast<job::StripOptions&>(bend) = strip;
        return bend;
    }
};

stroke::Stop free_angle(double angle) {
    return stop_at(stroke::StopKind::free_angle, angle);
}
stroke::Stop travel(double way) {
    return stop_at(stroke::StopKind::travel, way);
}
stroke::Stop force(double per_mm) {
    return stop_at(stroke::StopKind::force, per_mm);
}

// Air bending to 30 to 120 degrees; bottoming in a groove with 2 to 8 times the force of air bending.
void draw_vee(Draw& d, RandomStroke& r) {
    const double t = d.t;
    job::VeeBend b = d.begin<job::VeeBend>();
    b.die_opening = t * d.numbers.between(6.0, 12.0);
    b.nose_radius = std::min(t * d.numbers.between(0.3, 2.5), 0.48 * b.die_opening - t);
    b.shoulder_radius = t * d.numbers.between(0.5, 2.5);
    b.flange = d.flange(0.8 * b.die_opening + 0.5 * t);
    if (r.kind == Kind::bottoming) {
        b.die_angle = d.numbers.between(75.0, 120.0) * degree;
        b.punch_angle = std::min(*b.die_angle, d.numbers.between(60.0, 90.0) * degree);
        b.bottom_radius = 0.3 * t;
        const double strength =
            1.5 * material::flow_point(b.material.hardening, b.material.youngs_modulus, 0.1).stress;
        r.stop = force(d.numbers.between(2.0, 8.0) * strength * t * t / b.die_opening);
    } else {
        r.stop = free_angle(d.numbers.between(30.0, 120.0) * degree);
    }
    std::snprintf(d.words, sizeof d.words,
                  "opening %.2f nose %.2f shoulder %.2f groove %.1f flange %.2f to %.4g", b.die_opening,
                  b.nose_radius, b.shoulder_radius, b.die_angle.value_or(0.0) / degree, *b.flange,
                  r.stop.value);
    r.stroke = job::vee_stroke(b);
}

void draw_offset(Draw& d, RandomStroke& r) {
    const double t = d.t;
    job::OffsetBend b = d.begin<job::OffsetBend>();
    b.offset = t * d.numbers.between(2.0, 8.0);
    b.angle = d.numbers.between(30.0, 75.0) * degree;
    b.corner_radius = t * d.numbers.between(0.5, 1.5);
    b.root_radius = 0.5 * t;
    b.clearance = t * d.numbers.between(1.03, 1.3);
    const bool by_force = d.numbers.coin();
    const double strength = material::flow_point(b.material.hardening, b.material.youngs_modulus, 0.1).stress;
    r.stop = by_force ? force(d.numbers.between(0.3, 1.5) * strength * t)
                      : free_angle(d.numbers.between(0.5, 0.9) * b.angle);
    std::snprintf(d.words, sizeof d.words, "offset %.2f angle %.1f corner %.2f clearance %.3f %s %.4g",
                  b.offset, b.angle / degree, b.corner_radius, *b.clearance, by_force ? "force" : "angle",
                  r.stop.value);
    r.stroke = job::offset_stroke(b);
}

void draw_channel(Draw& d, RandomStroke& r) {
    const double t = d.t;
    job::ChannelBend b = d.begin<job::ChannelBend>();
    b.punch_width = t * d.numbers.between(8.0, 30.0);
    b.corner_radius = t * d.numbers.between(0.8, 3.0);
    b.shoulder_radius = t * d.numbers.between(1.0, 4.0);
    b.clearance = t * d.numbers.between(1.05, 1.4);
    b.depth = t * d.numbers.between(6.0, 15.0);
    b.flange = b.depth + b.shoulder_radius + t * d.numbers.between(1.0, 10.0);
    const double strength = material::flow_point(b.material.hardening, b.material.youngs_modulus, 0.1).stress;
    if (d.numbers.coin())
        b.pad = tool::Spring{d.numbers.between(0.02, 0.2) * strength * t,
                             d.numbers.between(0.0, 0.02) * strength};
    r.stop = travel(d.numbers.between(0.4, 0.95) * b.depth);
    std::snprintf(
        d.words, sizeof d.words,
        "punch %.2f corner %.2f shoulder %.2f clearance %.3f depth %.2f flange %.2f pad %.3g + %.3g to %.3f",
        b.punch_width, b.corner_radius, b.shoulder_radius, *b.clearance, b.depth, *b.flange,
        b.pad ? b.pad->preload : 0.0, b.pad ? b.pad->rate : 0.0, r.stop.value);
    r.stroke = job::channel_stroke(b);
}

void draw_wiping(Draw& d, RandomStroke& r) {
    const double t = d.t;
    job::WipingBend b = d.begin<job::WipingBend>();
    b.edge_radius = t * d.numbers.between(0.8, 4.0);
    b.corner_radius = t * d.numbers.between(1.0, 5.0);
    b.clearance = t * d.numbers.between(1.03, 1.5);
    b.flange = b.edge_radius + b.corner_radius + d.flange(4.0 * t);
    const double strength = material::flow_point(b.material.hardening, b.material.youngs_modulus, 0.1).stress;
    const double draw = d.numbers.between(0.0, 3.0);
    if (draw > 1.0) b.clamp = tool::Spring{d.numbers.between(0.1, 1.0) * strength * t, 0.0};
    b.clamp_on = draw > 2.0 ? files::ClampOn::ram : files::ClampOn::frame;
    const bool by_angle = d.numbers.coin();
    r.stop = by_angle ? free_angle(d.numbers.between(30.0, 80.0) * degree)
                      : travel(b.edge_radius + b.corner_radius + t * d.numbers.between(0.0, 5.0));
    std::snprintf(d.words, sizeof d.words,
                  "edge %.2f corner %.2f clearance %.3f flange %.2f clamp %s %.3g %s %.4g", b.edge_radius,
                  b.corner_radius, *b.clearance, b.flange,
                  b.clamp ? draw > 2.0 ? "on the ram" : "in the frame" : "firm",
                  b.clamp ? b.clamp->preload : 0.0, by_angle ? "angle" : "travel", r.stop.value);
    r.stroke = job::wiping_stroke(b);
}

}  // namespace

const char* kind_word(Kind kind) {
    static const char* const words[kinds] = {"air bending", "bottoming", "offset", "channel", "wiping"};
    return words[static_cast<int>(kind)];
}

RandomStroke random_stroke(std::uint64_t seed, double finer) {
    Draw d(seed, finer);
    RandomStroke r;
    r.kind = static_cast<Kind>(seed % kinds);
    if (r.kind == Kind::air_bending || r.kind == Kind::bottoming) draw_vee(d, r);
    if (r.kind == Kind::offset) draw_offset(d, r);
    if (r.kind == Kind::channel) draw_channel(d, r);
    if (r.kind == Kind::wiping) draw_wiping(d, r);
    char head[100];
    std::snprintf(head, sizeof head, "%s, %s, t %.3f, friction %.3f, ", kind_word(r.kind),
                  d.strip.material.name.c_str(), d.t, d.strip.friction);
    r.words = std::string(head) + d.words;
    return r;
}

}  // namespace overbend::tests
