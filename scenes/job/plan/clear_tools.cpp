#include "scenes/job/plan/clear_tools.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "scenes/files/case/table_writer.h"
#include "scenes/files/case/usual_sizes.h"
#include "scenes/job/plan/propose_vee.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

using Eigen::Vector2d;
using files::ProposedTools;

constexpr double above = 20.0;         // mm of whole shank above a cut
constexpr double higher = 20.0;        // mm, that tools are made higher by at a time
constexpr double root_radius = 2.0;    // mm, in the corners of a cut
constexpr std::size_t most_sets = 6;   // ends of a search that are looked at
constexpr std::size_t most_tools = 8;  // that are proposed at a time

// As a case file has them.
std::string sizes_of(files::ToolShape shape) {
    const files::Kind& kind = files::kind_of(shape);
    return kind.word + files::fields_written([&](files::Fields& f) { kind.describe(f, shape); }).lines();
}

class Clearer {
  public:
    Clearer(Attempt& attempt, VeeTrials& trials) : attempt_(attempt), c_(attempt.c), trials_(trials) {}

    ProposedTools run() {
        const std::vector<plan::BendSet>& ends = attempt_.search.furthest;
        for (std::size_t i = 0; i < ends.size() && i < most_sets; ++i)
            for (int way = 0; way < attempt_.ways->count() && proposed_.tools.size() < most_tools; ++way)
                if (!(attempt_.ways->way(way).bends & ends[i])) look_at(way, ends[i]);
        add_cuts();
        return proposed_;
    }

  private:
    void look_at(int way, plan::BendSet made) {
        const std::optional<Ways::Blocked> blocked = attempt_.ways->blocked(way, made);
        if (!blocked) return;
        const files::Step step = attempt_.ways->step(way);
        if (blocked->missing > 0.0) return narrower_groove(step, blocked->missing);
        if (!blocked->by) return;
        switch (*blocked->by) {
            case tool::Role::punch:
                return relieve(way, made, step, blocked->hit->left);
            case tool::Role::die:
                return narrower(step);
            case tool::Role::holder:
            case tool::Role::ram:
                return raise_punch(step);
            case tool::Role::die_holder:
            case tool::Role::bed:
                return raise_die(step);
            default:
                return;
        }
    }

    // ---- punches

    // A strip that is turned end for end brings what hits the left side of a punch to its right.
    void relieve(int way, plan::BendSet made, const files::Step& step, bool left) {
        const auto* punch = std::get_if<tool::VeePunch>(&c_.tools[step.punch].shape);
        if (left || !punch || punch->relief) return;
        Cut& cut = cuts_[step.punch];
        const std::vector<Vector2d> places = attempt_.ways->swept(way, made, false);
        // Necks: common practice, no source; `tools` checks their strength.
        for (const double neck : {std::max(6.0, 6.0 * c_.thickness), std::max(3.0, 3.0 * c_.thickness)}) {
            std::vector<Vector2d> all = cut.places;
            all.insert(all.end(), places.begin(), places.end());
            std::optional<tool::VeePunch> shape =
                relieved(*punch, tool::Side::right, all, c_.thickness, neck);
            const bool together = shape.has_value();
            if (!shape && !cut.shape) shape = relieved(*punch, tool::Side::right, places, c_.thickness, neck);
            if (!shape) continue;  // what was cut for before is kept
            cut = {together ? all : places, shape, step.bends.front()};
            return;
        }
    }

    void add_cuts() {
        for (const auto& [punch, cut] : cuts_) {
            if (!cut.shape) continue;
            const tool::Relief& r = *cut.shape->relief;
            const std::string& name = c_.tools[punch].name;
            add("relieved " + name, *cut.shape,
                words("nose of %g mm, %g degrees, cut away to %g mm past its axis from %g to %g mm above the "
                      "nose, for "
                      "the flange at '%s'; its neck of %g mm is bent by the load: check its strength",
                      cut.shape->nose_radius, cut.shape->angle / degree, r.set_back, r.from, r.to,
                      c_.part.bends[cut.bend].name.c_str(), r.neck));
        }
    }

    void raise_punch(const files::Step& step) {
        const auto* punch = std::get_if<tool::VeePunch>(&c_.tools[step.punch].shape);
        if (!punch || punch->height > 10.0 * files::usual_punch_height) return;
        tool::VeePunch tall = *punch;
        tall.height += higher;
        add("tall " + c_.tools[step.punch].name, tall,
            words("nose of %g mm, %g degrees, %g mm high, to keep the flange away from what holds it",
                  tall.nose_radius, tall.angle / degree, tall.height));
    }

    // ---- dies

    const tool::VeeFace* groove_of(const files::Step& step) const {
        const auto* die = std::get_if<tool::VeeDie>(&c_.tools[step.die].shape);
        return die ? &die->faces[step.die_face - 1] : nullptr;
    }

    void narrower(const files::Step& step) {
        const tool::VeeFace* groove = groove_of(step);
        if (!groove) return;
        const auto& die = std::get<tool::VeeDie>(c_.tools[step.die].shape);
        for (const double land : {usual_land(c_.thickness), least_land(c_.thickness)}) {
            const tool::VeeDie block = block_of(*groove, land);
            if (block.width >= die.width - 0.25) continue;
            add(words("narrow block %g", groove->die_opening), block,
                words("the groove of %g mm in a block of %g mm, for the flange beside '%s'",
                      groove->die_opening, block.width, c_.part.bends[step.bends.front()].name.c_str()));
            return;
        }
        narrower_groove(step, 0.0);
    }

    // missing: of the strip beside the bend
    void narrower_groove(const files::Step& step, double missing) {
        const tool::VeeFace* groove = groove_of(step);
        if (!groove || step.bends.size() != 1) return;
        const int bend = step.bends.front();
        const std::vector<double>& openings = standard_openings();
        for (auto o = openings.rbegin(); o != openings.rend(); ++o) {
            if (*o >= groove->die_opening || groove->die_opening - *o < missing) continue;
            if (*o < 4.0 * c_.thickness) return;
            const std::optional<NoseFor> nose = trials_.nose_for(bend, *o, usual_shoulder(*o));
            if (!nose) continue;
            const std::size_t before = proposed_.tools.size();
            const tool::VeeFace face = groove_over(c_, {bend}, *o, trials_);
            add(words("narrow block %g", *o), block_of(face, usual_land(c_.thickness)),
                words("opening of %g mm, for the short flange at '%s'", *o,
                      c_.part.bends[bend].name.c_str()));
            add_punch_for(bend, *nose, face);
            if (proposed_.tools.size() > before) return;
        }
    }

    // Unless one that the case has makes the radius over this groove.
    void add_punch_for(int bend, const NoseFor& nose, const tool::VeeFace& face) {
        const double angle = face.angle - 4.0 * degree, wanted = files::hundredth(nose.nose);
        const auto serves = [&](const files::Tool& t) {
            const auto* punch = std::get_if<tool::VeePunch>(&t.shape);
            return punch && punch->angle <= angle + 1e-9 &&
                   std::abs(punch->nose_radius - wanted) * nose.slope < 0.1 + 0.05 * wanted;
        };
        if (std::any_of(c_.tools.begin(), c_.tools.end(), serves) ||
            std::any_of(proposed_.tools.begin(), proposed_.tools.end(), serves))
            return;
        tool::VeePunch punch;
        punch.nose_radius = wanted, punch.angle = angle;
        punch.height = punch_height(c_);
        punch.shank_width = files::usual_shank_width(wanted);
        add(words("wedge %g", angle / degree), punch,
            words("nose of %g mm, for '%s' over that groove", wanted, c_.part.bends[bend].name.c_str()));
    }

    void raise_die(const files::Step& step) {
        const auto* die = std::get_if<tool::VeeDie>(&c_.tools[step.die].shape);
        if (!die || die->height > 400.0) return;
        tool::VeeDie tall = *die;
        tall.height += higher;
        add("high " + c_.tools[step.die].name, tall,
            words("opening of %g mm, %.4g mm high, to keep the flange away from what it stands on",
                  tall.faces.front().die_opening, tall.height));
    }

    // ----

    // Not what is there already.
    void add(const std::string& name, const files::ToolShape& shape, const std::string& reason) {
        const std::string sizes = sizes_of(shape);
        const auto same = [&](const files::Tool& t) { return sizes_of(t.shape) == sizes; };
        if (std::any_of(c_.tools.begin(), c_.tools.end(), same) ||
            std::any_of(proposed_.tools.begin(), proposed_.tools.end(), same))
            return;
        proposed_.add(name, shape, reason);
    }

    // What a punch is to be cut away for: all that hits it, as far as one cut goes.
    struct Cut {
        std::vector<Vector2d> places;
        std::optional<tool::VeePunch> shape;
        int bend = 0;
    };

    Attempt& attempt_;
    const files::Case& c_;
    VeeTrials& trials_;
    std::map<int, Cut> cuts_;  // by the punch
    ProposedTools proposed_;
};

double halves_down(double value) {
    return std::floor(2.0 * value) / 2.0;
}

}  // namespace

std::optional<tool::VeePunch> relieved(const tool::VeePunch& punch, tool::Side side,
                                       const std::vector<Vector2d>& places, double room, double neck) {
    const double half = 0.5 * punch.angle, slope = std::tan(half), shank = 0.5 * punch.shank_width;
    const double apex = punch.nose_radius - punch.nose_radius / std::sin(half);
    const double aside = std::sqrt(2.0) * room;  // of a face at 45 degrees
    tool::Relief cut;
    cut.side = side;
    cut.neck = neck;
    cut.root_radius = root_radius;
    cut.set_back = -0.4 * punch.shank_width;
    cut.from = 1e300, cut.to = -1e300;
    for (const Vector2d& place : places) {
        const double x = side == tool::Side::right ? place.x() : -place.x(), y = place.y();
        const double surface = std::min(shank, (y - apex) * slope);
        if (y <= 0.0 || y > 1000.0 || x >= surface + room || x < -500.0) continue;
        cut.set_back = std::max(cut.set_back, room - x);
        // The lower face leaves the wedge, or the shank.
        const double on_wedge = (x + y - aside + apex * slope) / (1.0 + slope);
        cut.from = std::min({cut.from, on_wedge, x + y - aside});
        cut.to = std::max(cut.to, y + shank + aside - x);
    }
    if (cut.from > 1e299) return {};
    cut.from = halves_down(cut.from);
    cut.to = files::halves_up(cut.to);
    cut.set_back = files::halves_up(cut.set_back);
    tool::VeePunch with = punch;
    with.relief = cut;
    with.height = std::max(punch.height, cut.to + above);
    try {
        make_outline(with);
    } catch (const OutOfRange&) {
        return {};  // there is no room for such a cut in this wedge
    }
    return with;
}

ProposedTools clear_tools(Attempt& attempt, VeeTrials& trials) {
    return Clearer(attempt, trials).run();
}

}  // namespace overbend::job
