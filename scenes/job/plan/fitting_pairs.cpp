#include "scenes/job/plan/fitting_pairs.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "scenes/job/plan/stroke_geometry.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

constexpr double same_angle = 0.5 * degree;  // of two bends that one stroke makes
// What the step of a free S is over that of its tools, which stay open by a little: simulated strokes lie
// between.
constexpr double least_step = 0.5, most_step = 1.15;

class Fitter {
  public:
    Fitter(const files::Case& c, const Blank& blank, const std::vector<int>& bends)
        : c_(c), blank_(blank), bends_(bends) {}

    Fitting run() {
        const int count = static_cast<int>(c_.tools.size());
        for (int punch = 0; punch < count; ++punch)
            for (int die = 0; die < count; ++die) {
                if (bends_.size() == 1)
                    try_one(punch, die);
                else
                    try_two(punch, die);
            }
        return fitting_;
    }

  private:
    void try_one(int punch, int die) {
        ToolPair pair{punch, die, 1, {}, {}};
        if (const auto* wedge = shape_of<tool::VeePunch>(c_, punch)) {
            if (const auto* vee = shape_of<tool::VeeDie>(c_, die))
                for (; pair.die_face <= static_cast<int>(vee->faces.size()); ++pair.die_face)
                    try_groove(pair, *wedge, vee->faces[pair.die_face - 1]);
            else if (shape_of<tool::OpenDie>(c_, die))
                judge(pair, [] { return std::string(); });
        }
        if (shape_of<files::WipingPunch>(c_, punch) && shape_of<files::WipingDie>(c_, die)) try_wiping(pair);
    }

    void try_groove(const ToolPair& pair, const tool::VeePunch& wedge, const tool::VeeFace& face) {
        judge(pair, [&] {
            tool::check_pair(wedge, face, c_.thickness);
            const double reached = tool::largest_bend_angle(wedge, face, c_.thickness);
            const double needed = stroke_path(c_, blank_, step(pair)).loaded;
            if (reached >= needed) return std::string();
            return words("it closes at %.1f degrees; %.1f are needed under load", reached / degree,
                         needed / degree);
        });
    }

    void try_wiping(ToolPair pair) {
        const files::WipingPunch& punch = *shape_of<files::WipingPunch>(c_, pair.punch);
        for (int clamp = 0; clamp < static_cast<int>(c_.tools.size()); ++clamp) {
            if (!c_.tools[clamp].is_clamp()) continue;
            pair.clamp = clamp;
            judge(pair, [&] {
                if (punch.clearance < c_.thickness)
                    return words("its clearance of %.3g mm is less than the strip's thickness",
                                 punch.clearance);
                if (angle() > 92.0 * degree) return words("wiping cannot bend past 90 degrees");
                return std::string();
            });
        }
    }

    void try_two(int punch, int die) {
        const bool alike = (bend(0).angle > 0.0) == (bend(1).angle > 0.0);
        const ToolPair pair{punch, die, 1, {}, {}};
        const auto* upper = shape_of<tool::OffsetPunch>(c_, punch);
        const auto* lower = shape_of<tool::OffsetDie>(c_, die);
        if (upper && lower && !alike) judge(pair, [&] { return why_no_offset(pair, *upper, *lower); });
        const auto* foot = shape_of<tool::ChannelPunch>(c_, punch);
        const auto* channel = shape_of<tool::ChannelDie>(c_, die);
        if (foot && channel && alike) try_channel(pair, *foot, *channel);
    }

    std::string why_no_offset(const ToolPair& pair, const tool::OffsetPunch& upper,
                              const tool::OffsetDie& lower) const {
        tool::check_pair(upper, lower, c_.thickness);
        if (differ()) return words("it makes two equal bends; these two have different angles");
        const double needed = stroke_path(c_, blank_, step(pair)).loaded;
        if (lower.angle < needed)
            return words("it closes at %.1f degrees; %.1f are needed under load", lower.angle / degree,
                         needed / degree);
        const double drawn = drawn_step(c_, bends_.front());
        if (lower.offset < least_step * drawn || lower.offset > most_step * drawn)
            return words("its offset is %.2f mm; this step needs %.2f mm", lower.offset, drawn);
        return "";
    }

    // With every pad that goes in, and without one only when none does: a free floor bows.
    void try_channel(ToolPair pair, const tool::ChannelPunch& foot, const tool::ChannelDie& die) {
        bool padded = false;
        for (int p = 0; p < static_cast<int>(c_.tools.size()); ++p) {
            const auto* pad = shape_of<files::Pad>(c_, p);
            if (!pad || pad->block.width >= die.die_opening || pad->block.height >= die.depth) continue;
            pair.pad = p, padded = true;
            judge(pair, [&] { return why_no_channel(foot, die); });
        }
        pair.pad.reset();
        if (!padded) judge(pair, [&] { return why_no_channel(foot, die); });
    }

    std::string why_no_channel(const tool::ChannelPunch& foot, const tool::ChannelDie& die) const {
        tool::check_pair(foot, die, c_.thickness);
        if (differ()) return words("it makes two equal bends; these two have different angles");
        if (angle() > 91.0 * degree) return words("it can press its walls to at most 90 degrees");
        const double inside = c_.part.flats[bends_.back()] + 2.0 * bend(0).inside_radius;
        if (std::abs(foot.width - inside) > c_.thickness)
            return words("its foot is %.2f mm wide; this channel is %.2f mm wide inside", foot.width, inside);
        return "";
    }

    template <class Why>
    void judge(const ToolPair& pair, const Why& why) {
        std::string reason;
        try {
            reason = why();
        } catch (const OutOfRange& error) {
            reason = error.name + ": " + error.wrong;
        }
        if (reason.empty())
            fitting_.pairs.push_back(pair);
        else
            fitting_.misfits.push_back({pair, reason});
    }

    const files::Bend& bend(std::size_t i) const { return c_.part.bends[bends_[i]]; }
    double angle() const { return std::abs(bend(0).angle); }
    bool differ() const { return std::abs(angle() - std::abs(bend(1).angle)) > same_angle; }
    files::Step step(const ToolPair& pair) const {
        files::Step s;
        s.bends = bends_, s.punch = pair.punch, s.die = pair.die, s.die_face = pair.die_face;
        s.pad = pair.pad, s.clamp = pair.clamp;
        return s;
    }

    const files::Case& c_;
    const Blank& blank_;
    const std::vector<int>& bends_;
    Fitting fitting_;
};

}  // namespace

Fitting fitting_pairs(const files::Case& c, const Blank& blank, const std::vector<int>& bends) {
    return Fitter(c, blank, bends).run();
}

std::string pair_words(const files::Case& c, const ToolPair& pair) {
    std::string text = "'" + c.tools[pair.punch].name + "' with '" + c.tools[pair.die].name + "'";
    const auto* vee = std::get_if<tool::VeeDie>(&c.tools[pair.die].shape);
    if (vee && vee->faces.size() > 1) text += " (face " + std::to_string(pair.die_face) + ")";
    return text;
}

double drawn_step(const files::Case& c, int left_bend) {
    const files::Bend &left = c.part.bends[left_bend], &right = c.part.bends[left_bend + 1];
    const double angle = std::abs(left.angle);
    const double radii = left.inside_radius + right.inside_radius + c.thickness;
    return c.part.flats[left_bend + 1] * std::sin(angle) + radii * (1.0 - std::cos(angle));
}

}  // namespace overbend::job
