#include "scenes/job/plan/suited_pairs.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "scenes/files/case/work.h"
#include "scenes/job/run/measures.h"

namespace overbend::job {

namespace {

constexpr std::size_t most_tried = 24;  // pairs of different nose and opening for a bend
constexpr double as_near = 1.1;         // misses up to so much greater than the least count as near as it

struct Sizes {
    double nose = 0.0, opening = 0.0, shoulder = 0.0;
    bool operator<(const Sizes& o) const {
        return std::tie(nose, opening, shoulder) < std::tie(o.nose, o.opening, o.shoulder);
    }
};

// Of a stroke between V tools.
std::optional<Sizes> sizes_of(const files::Case& c, const files::Step& step) {
    const auto* punch = std::get_if<tool::VeePunch>(&c.tools[step.punch].shape);
    const files::Shoulders over = files::shoulders_of(c.tools[step.die], step.die_face);
    if (!punch || over.opening <= 0.0) return {};
    return Sizes{punch->nose_radius, over.opening, over.radius};
}

class Suit {
  public:
    Suit(const files::Case& c, const std::vector<files::Step>& possible, VeeTrials& trials)
        : c_(c), trials_(trials) {
        tried_.resize(c.part.bends.size());
        least_.assign(c.part.bends.size(), 1e300);
        for (const files::Step& step : possible)
            if (const std::optional<Sizes> sizes = sizes_of(c, step))
                tried_[step.bends.front()].insert(*sizes);
        for (std::size_t b = 0; b < tried_.size(); ++b)
            if (is_tried(b))
                for (const Sizes& sizes : tried_[b]) least_[b] = std::min(least_[b], miss(b, sizes));
    }

    bool holds(const files::Step& step) {
        const std::optional<Sizes> sizes = sizes_of(c_, step);
        const auto b = static_cast<std::size_t>(step.bends.front());
        return !sizes || !is_tried(b) || miss(b, *sizes) <= std::max(1.0, as_near * least_[b]);
    }

  private:
    bool is_tried(std::size_t bend) const {
        return tried_[bend].size() > 1 && tried_[bend].size() <= most_tried &&
               !c_.part.bends[bend].radius_tolerance.reference;
    }
    // Over the tolerance.
    double miss(std::size_t bend, const Sizes& sizes) {
        const files::Bend& drawn = c_.part.bends[bend];
        const VeeTrial& made =
            trials_.trial(std::abs(drawn.angle), sizes.nose, sizes.opening, sizes.shoulder);
        if (!made.reached) return 1e300;
        return std::abs(made.radius - drawn.inside_radius) / allowed_radius(c_, static_cast<int>(bend));
    }

    const files::Case& c_;
    VeeTrials& trials_;
    std::vector<std::set<Sizes>> tried_;
    std::vector<double> least_;
};

}  // namespace

std::vector<files::Step> suited_pairs(const files::Case& c, const std::vector<files::Step>& possible,
                                      plan::BendSet but_for, VeeTrials& trials) {
    Suit suit(c, possible, trials);
    std::vector<files::Step> kept;
    for (const files::Step& step : possible)
        if ((but_for >> step.bends.front() & 1) || suit.holds(step)) kept.push_back(step);
    return kept;
}

}  // namespace overbend::job
