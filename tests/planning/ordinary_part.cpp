#include "tests/planning/ordinary_part.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/bent_strip.h"
#include "sim/plan/bend_allowance.h"
#include "sim/plan/least_radius.h"
#include "sim/units.h"
#include "tests/sweep/numbers.h"

namespace overbend::tests {

namespace {

constexpr std::array<const char*, 11> cards = {"aluminium-5754-h22",
                                               "aluminium-6061-t6",
                                               "brass-cuzn37",
                                               "bronze-cusn6",
                                               "dc01",
                                               "dc04",
                                               "dp600",
                                               "s235",
                                               "spring-steel-c75s",
                                               "stainless-1.4301",
                                               "stainless-1.4310"};

using job::Place;

// The mid-line, sampled, with the length along it.
std::vector<Place> mid_line(const files::Case& c, double step) {
    std::vector<Place> points = {Place::Zero()};
    double turn = 0.0;
    const auto go = [&](double length, double turned) {
        const int parts = std::max(1, static_cast<int>(std::ceil(length / step)));
        for (int i = 0; i < parts; ++i) {
            turn += 0.5 * turned / parts;
            points.push_back(points.back() + length / parts * Place(std::cos(turn), std::sin(turn)));
            turn += 0.5 * turned / parts;
        }
    };
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        go(c.part.flats[i], 0.0);
        if (i == c.part.bends.size()) break;
        const files::Bend& b = c.part.bends[i];
        go(std::abs(b.angle) * (b.inside_radius + 0.5 * c.thickness), b.angle);
    }
    return points;
}

bool keeps_clear_of_itself(const files::Case& c) {
    const double step = 0.5 * c.thickness, clear = 1.5 * c.thickness;
    const std::vector<Place> points = mid_line(c, step);
    // Along a bend that is drawn as sharp as here, places so far apart are no neighbours.
    const auto apart = static_cast<std::size_t>(std::ceil(8.0 * c.thickness / step));
    for (std::size_t i = 0; i < points.size(); ++i)
        for (std::size_t j = i + apart; j < points.size(); ++j)
            if ((points[i] - points[j]).norm() < clear) return false;
    return true;
}

class Draughtsman {
  public:
    Draughtsman(std::uint64_t seed, int bends) : draw_(seed), wanted_(bends) {}

    files::Case part() {
        for (;;) {
            draw_strip();
            draw_bends();
            draw_flats();
            if (keeps_clear_of_itself(c_)) return c_;
        }
    }

  private:
    int one_of(int count) { return std::min(count - 1, static_cast<int>(draw_.between(0.0, count))); }
    double tenth(double value) { return std::round(10.0 * value) / 10.0; }

    void draw_strip() {
        c_ = {};
        c_.title = "ordinary part";
        c_.material = files::read_card(cards[one_of(static_cast<int>(cards.size()))], "");
        c_.thickness = tenth(draw_.log_between(0.5, 3.0));
        c_.width = 5.0 * std::round(draw_.between(15.0, 60.0) / 5.0);
        std::string why_not;
        const auto least = plan::least_radius(c_.material, {c_.thickness, 90.0 * degree, false}, why_not);
        for (double& radius : radii_)
            radius = tenth(std::max(least ? least->radius : 0.0, c_.thickness * draw_.log_between(0.8, 4.0)));
    }

    void add_bend(double angle, double radius) {
        c_.part.bends.push_back({"bend " + std::to_string(c_.part.bends.size() + 1), angle, radius});
        between_.push_back(0.0);
    }

    void draw_bends() {
        between_.clear();
        while (static_cast<int>(c_.part.bends.size()) < wanted_) {
            const double radius = radii_[draw_.between(0.0, 1.0) < 0.7 ? 0 : 1];
            const double sign = draw_.coin() ? 1.0 : -1.0, kind = draw_.between(0.0, 1.0);
            const bool two = static_cast<int>(c_.part.bends.size()) + 2 <= wanted_;
            if (two && kind < 0.12) {
                const double angle = 5.0 * std::round(draw_.between(30.0, 60.0) / 5.0) * degree;
                const double step = c_.thickness * draw_.between(2.0, 5.0);
                // The sloped flat, after what the two arcs rise.
                const double arcs = 2.0 * (radius + 0.5 * c_.thickness) * (1.0 - std::cos(angle));
                add_bend(sign * angle, radius);
                between_.back() = std::max(0.5 * c_.thickness, (step - arcs) / std::sin(angle));
                add_bend(-sign * angle, radius);
            } else if (two && kind < 0.24) {
                add_bend(sign * 90.0 * degree, radius);
                between_.back() = std::max(draw_.between(8.0, 40.0) - 2.0 * radius, 2.0 * c_.thickness);
                add_bend(sign * 90.0 * degree, radius);
            } else {
                const double angle = draw_.coin() ? 90.0 : 5.0 * std::round(draw_.between(30.0, 135.0) / 5.0);
                add_bend(sign * angle * degree, radius);
            }
        }
    }

    void draw_flats() {
        c_.part.flats.clear();
        for (int i = 0; i <= wanted_; ++i) {
            if (i > 0 && i < wanted_ && between_[i - 1] > 0.0) {
                c_.part.flats.push_back(tenth(between_[i - 1]));
                continue;
            }
            double corner = 0.0;
            for (const int b : {i - 1, i})
                if (b >= 0 && b < wanted_)
                    corner += plan::outer_corner(c_.part.bends[b].inside_radius, c_.thickness,
                                                 std::abs(c_.part.bends[b].angle));
            const double least = std::max(0.7 * 6.0 * c_.thickness - corner, c_.thickness);
            c_.part.flats.push_back(tenth(draw_.between(least, std::max(60.0 - corner, least))));
        }
    }

    Numbers draw_;
    int wanted_;
    files::Case c_;
    std::array<double, 2> radii_ = {};
    std::vector<double> between_;  // the flat after each bend where the pair asks for it; 0: any
};

}  // namespace

files::Case ordinary_part(std::uint64_t seed, int bends) {
    return Draughtsman(seed, bends).part();
}

}  // namespace overbend::tests
