#include "sim/shop/tool_load.h"

#include <algorithm>
#include <cmath>

namespace overbend::shop {

namespace {

using tool::Vec2;
constexpr int held_points = 48;    // that stand for the held face
constexpr double near_cut = 0.75;  // thicknesses: forces nearer to a cut are not a beam's
constexpr double counts = 0.01;    // of all forces: smaller ones may be near

double turn(const Vec2& arm, const Vec2& force) {
    return arm.x() * force.y() - arm.y() * force.x();
}

// A force with its place along the boundary.
struct PlacedForce {
    ToolForce of;
    double along = 0.0;
};

// What the held face gives back, in balance with the forces: evenly, and rising from its middle so that it
// turns back.
std::vector<PlacedForce> reaction(const ToolSections& s, const std::vector<ToolForce>& forces) {
    const Vec2 middle = held_middle(s);
    Vec2 sum = Vec2::Zero();
    double moment = 0.0;
    for (const ToolForce& f : forces) sum += f.force, moment += turn(f.at - middle, f.force);
    std::vector<PlacedForce> back;
    std::vector<double> part;  // of the held face that each point stands for
    double arms = 0.0;
    for (const HeldStretch& h : s.held)
        for (int i = 0; i < held_points; ++i) {
            const double share = (i + 0.5) / held_points;
            back.push_back({{h.from + share * (h.to - h.from), Vec2::Zero()}, h.along + share * h.length()});
            part.push_back(h.length() / held_points / held_length(s));
            const double arm = back.back().of.at.x() - middle.x();
            arms += part.back() * arm * arm;
        }
    for (std::size_t i = 0; i < back.size(); ++i) {
        const double arm = back[i].of.at.x() - middle.x();
        back[i].of.force = -part[i] * (sum + Vec2(0.0, moment * arm / arms));
    }
    return back;
}

std::vector<PlacedForce> placed(const ToolSections& s, const std::vector<ToolForce>& forces) {
    std::vector<PlacedForce> all = reaction(s, forces);
    for (const ToolForce& f : forces) all.push_back({f, place_along(s, f.at)});
    return all;
}

double distance(const Vec2& p, const Cut& cut) {
    const Vec2 edge = cut.to - cut.from;
    const double share = std::clamp((p - cut.from).dot(edge) / edge.squaredNorm(), 0.0, 1.0);
    return (p - cut.from - share * edge).norm();
}

bool acts_near(const Cut& cut, const std::vector<ToolForce>& forces) {
    double all = 0.0;
    for (const ToolForce& f : forces) all += f.force.norm();
    return std::any_of(forces.begin(), forces.end(), [&](const ToolForce& f) {
        return f.force.norm() > counts * all && distance(f.at, cut) < near_cut * cut.thickness;
    });
}

// What acts on a stretch of the boundary is a difference of sums over all that comes before its ends.
class Sums {
  public:
    explicit Sums(std::vector<PlacedForce> all) {
        std::stable_sort(all.begin(), all.end(),
                         [](const PlacedForce& a, const PlacedForce& b) { return a.along < b.along; });
        for (const PlacedForce& f : all) {
            along_.push_back(f.along);
            force_.push_back(force_.back() + f.of.force);
            turn_.push_back(turn_.back() + turn(f.of.at, f.of.force));
        }
    }
    SectionLoad load_on(const Cut& cut) const {
        const auto first = std::upper_bound(along_.begin(), along_.end(), cut.low) - along_.begin();
        const auto last = std::lower_bound(along_.begin(), along_.end(), cut.high) - along_.begin();
        const Vec2 middle = 0.5 * (cut.from + cut.to), along = (cut.to - cut.from) / cut.thickness;
        const Vec2 out(along.y(), -along.x());  // towards the part that is looked at
        const Vec2 sum = force_[last] - force_[first];
        SectionLoad load;
        load.cut = cut;
        load.axial = out.dot(sum);
        load.shear = along.dot(sum);
        load.bending = std::abs(turn_[last] - turn_[first] - turn(middle, sum));
        const double mean = load.axial / cut.thickness,
                     edge = 6.0 * load.bending / (cut.thickness * cut.thickness);
        load.tension = std::max(0.0, mean + edge);
        load.compression = std::max(0.0, edge - mean);
        return load;
    }

  private:
    std::vector<double> along_;
    std::vector<Vec2> force_{Vec2::Zero()};  // one more than there are forces, as the next
    std::vector<double> turn_{0.0};          // about the tool's origin
};

// The held face, evenly pressed: what is left of a block that is too stout to have a beam's section.
SectionLoad held_face(const ToolSections& s, const std::vector<ToolForce>& forces) {
    SectionLoad load;
    load.cut.from = s.held.front().from, load.cut.to = s.held.back().to;
    load.cut.thickness = held_length(s);
    for (const ToolForce& f : forces) load.axial += f.force.y();
    load.axial = -std::abs(load.axial);
    load.compression = -load.axial / load.cut.thickness;
    return load;
}

}  // namespace

double SectionLoad::share(const Allowable& steel) const {
    return std::max(tension / steel.tension, compression / steel.compression);
}

std::optional<SectionLoad> load_of(const ToolSections& sections, const Cut& cut,
                                   const std::vector<ToolForce>& forces) {
    if (cut.chip || acts_near(cut, forces)) return std::nullopt;
    return Sums(placed(sections, forces)).load_on(cut);
}

std::optional<SectionLoad> weakest_section(const ToolSections& sections, const std::vector<ToolForce>& forces,
                                           const Allowable& steel) {
    std::optional<SectionLoad> weakest;
    if (forces.empty()) return weakest;
    const Sums all(placed(sections, forces));
    for (const Cut& cut : sections.cuts) {
        const SectionLoad load = all.load_on(cut);
        if (weakest && load.share(steel) <= weakest->share(steel)) continue;
        if (cut.chip || acts_near(cut, forces)) continue;
        weakest = load;
    }
    const SectionLoad face = held_face(sections, forces);
    return weakest && weakest->share(steel) >= face.share(steel) ? *weakest : face;
}

HolderLoad holder_load(const ToolSections& s, const std::vector<ToolForce>& forces) {
    const Vec2 middle = held_middle(s);
    HolderLoad load;
    load.width = held_width(s);
    double turned = 0.0, up = 0.0;
    for (const ToolForce& f : forces) {
        load.thrust += f.force.x();
        up += f.force.y(), turned += (f.at.x() - middle.x()) * f.force.y();
    }
    load.pressed = std::abs(up);
    load.beside = up == 0.0 ? 0.0 : turned / up;
    return load;
}

double thickness_that_bears(const SectionLoad& load, const Allowable& steel) {
    const auto needed = [&](double stress, double axial) {
        // stress h^2 - axial h - 6 M = 0
        return (axial + std::sqrt(axial * axial + 24.0 * stress * load.bending)) / (2.0 * stress);
    };
    return std::max(needed(steel.tension, load.axial), needed(steel.compression, -load.axial));
}

}  // namespace overbend::shop
