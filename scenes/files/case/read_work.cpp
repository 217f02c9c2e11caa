#include "scenes/files/case/read_work.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <type_traits>

#include "scenes/files/case/read_part.h"
#include "scenes/files/case/strict_table.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

Work work_of(const Tool& tool) {
    return kind_of(tool.shape).work;
}

// "a vee-punch with a vee-die or an open-die, ..., an outline with any"
std::string pairs_in_words() {
    const auto with_article = [](const std::string& word) { return (word[0] == 'o' ? "an " : "a ") + word; };
    std::string text;
    for (const Kind& punch : all_kinds()) {
        if (punch.stands != Stands::punch) continue;
        std::string dies;
        for (const Kind& die : all_kinds())
            if (die.stands == Stands::die && die.work == punch.work)
                dies += (dies.empty() ? "" : " or ") + with_article(die.word);
        text += with_article(punch.word) + " with " + dies + ", ";
    }
    return text + "an outline with any";
}

Work work_of(const StrictTable& table, const Tool& punch, const Tool& die) {
    const Work by_punch = work_of(punch), by_die = work_of(die);
    if (by_punch == Work::any) return by_die;
    if (by_die == Work::any || by_die == by_punch) return by_punch;
    table.complain(
        "die",
        std::string("a ") + kind_word(die) + " does not match the punch, which is a " + kind_word(punch),
        "use " + pairs_in_words());
}

// The sense of a bend as it stands in the press: +1 turns the right-hand side up.
int sense(const Step& step, const Bend& bend) {
    const int drawn = bend.angle > 0.0 ? 1 : -1;
    return step.face == Face::up ? drawn : -drawn;
}

void check_one_bend(const StrictTable& table, const Step& step, Work work) {
    if (step.bends.size() == 1) return;
    const std::string stroke = work == Work::hem      ? "a hem"
                               : work == Work::wiping ? "wiping"
                               : work == Work::radius ? "a stroke of radius tools"
                                                      : "a V stroke";
    table.complain("bends", stroke + " makes one bend, not " + std::to_string(step.bends.size()),
                   "name one bend");
}

void check_two_bends(const StrictTable& table, const Step& step, const std::vector<Bend>& bends, Work work) {
    const bool offset = work == Work::offset;
    const std::string stroke = offset ? "an offset stroke" : "a channel stroke";
    const std::string right =
        offset ? "name two adjacent bends of opposite direction, such as 40 and -40 degrees"
               : "name two adjacent bends of the same direction, such as 90 and 90 degrees";
    if (step.bends.size() != 2) table.complain("bends", stroke + " makes two bends at once, not one", right);
    if (step.bends[1] != step.bends[0] + 1) {
        table.complain("bends", stroke + " cannot make two bends with another bend between them", right);
    }
    const bool alike = (bends[step.bends[0]].angle > 0.0) == (bends[step.bends[1]].angle > 0.0);
    if (alike != offset) return;
    table.complain("bends",
                   stroke + " makes two bends of " + (offset ? "opposite direction" : "the same direction") +
                       ", these are of " + (offset ? "the same direction" : "opposite direction"),
                   right);
}

// The strip bends up round a punch; an offset die is high on the right, so its left bend turns up. A flange
// is wiped down.
void check_sense(const StrictTable& table, const Step& step, const std::vector<Bend>& bends, Work work) {
    const bool from_right = work == Work::offset && step.first == First::right;
    const Bend& bend = bends[from_right ? step.bends.back() : step.bends.front()];
    if ((sense(step, bend) > 0) != (work == Work::wiping)) return;
    const std::string other = step.face == Face::up ? "down" : "up";
    table.complain("place",
                   "in this position, the stroke would bend " + in_quotes(bend.name) + " the wrong way",
                   "give place = { face = \"" + other + "\" }" +
                       (work == Work::offset ? " or turn the blank end for end" : ""));
}

// Those that have a check of theirs.
struct PairCheck {
    int die_face = 1;
    double thickness = 0.0;

    void operator()(const tool::VeePunch& punch, const tool::VeeDie& die) const {
        tool::check_pair(punch, die.faces[die_face - 1], thickness);
    }
    template <class Punch, class Die>
    void operator()(const Punch& punch, const Die& die) const {
        const auto check = [](const auto& p, const auto& d, double t) -> decltype(tool::check_pair(p, d, t)) {
            tool::check_pair(p, d, t);
        };
        if constexpr (std::is_invocable_v<decltype(check), const Punch&, const Die&, double>)
            check(punch, die, thickness);
    }
};

// ---- hems

constexpr double hem_angle = 3.14159;  // rad; what is drawn as sharp as that is laid flat

bool is_hem(const Bend& bend) {
    return std::abs(bend.angle) > hem_angle;
}

void check_hem(const StrictTable& table, const Step& step, const Case& job, const std::vector<Step>& before) {
    const Bend& bend = job.part.bends[step.bends.front()];
    if (!is_hem(bend))
        table.complain(
            "bends",
            "flat tools close a hem, but " + in_quotes(bend.name) + " is drawn with less than 180 degrees",
            "draw it with bend_deg = 180 or -180, or name other tools");
    const bool begun = std::any_of(before.begin(), before.end(), [&](const Step& other) {
        return std::count(other.bends.begin(), other.bends.end(), step.bends.front()) > 0;
    });
    if (!begun)
        table.complain("bends", "flat tools cannot start " + in_quotes(bend.name),
                       "first bend it sharply in an earlier step, for example to free_deg = 150");
    if (step.stop == StopKind::free_angle)
        table.complain("stop", "a hem is not closed to an angle",
                       "give one of gap_mm, force_kN and travel_mm");
}

void check_begun(const StrictTable& table, const Step& step, const Case& job) {
    for (const int b : step.bends) {
        const Bend& bend = job.part.bends[b];
        if (is_hem(bend) && step.stop == StopKind::drawing_angle)
            table.complain(
                "stop", "these tools cannot bend " + in_quotes(bend.name) + " to the drawing's 180 degrees",
                "give a stop such as { free_deg = 150 } here, and a step with flat tools after this one");
    }
    if (step.stop == StopKind::gap)
        table.complain("stop", "only flat tools, which close a hem, can stop at a gap",
                       "give one of free_deg, travel_mm and force_kN");
}

// ---- pads and clamps

void check_pad(const StrictTable& table, const Step& step, const Case& job, Work work) {
    if (!step.pad) return;
    if (work != Work::channel && work != Work::any)
        table.complain("pad", "this stroke cannot use a pad",
                       "remove it; a pad goes in a channel-die or in an outline");
    const auto* channel = std::get_if<tool::ChannelDie>(&job.tools[step.die].shape);
    const tool::Block& pad = std::get<Pad>(job.tools[*step.pad].shape).block;
    if (!channel) return;
    if (pad.width >= channel->die_opening)
        table.complain("pad",
                       "it is " + worked_out(pad.width) + " mm wide and does not fit in an opening of " +
                           worked_out(channel->die_opening) + " mm",
                       "give less width_mm");
    if (pad.height >= channel->depth)
        table.complain("pad",
                       "it is " + worked_out(pad.height) + " mm high and has no travel in a channel " +
                           worked_out(channel->depth) + " mm deep",
                       "give less height_mm, or a deeper channel");
}

void check_clamp(const StrictTable& table, const Step& step, const Case& job, Work work) {
    if (step.clamp && work != Work::wiping)
        table.complain("clamp", "this stroke cannot use a clamp",
                       "remove it; a clamp holds the strip on a wiping-die");
    if (!step.clamp && work == Work::wiping)
        table.complain_missing("clamp", "name a clamp, which holds the strip on the wiping-die");
    if (!step.clamp || step.clamp_on == ClampOn::frame) return;
    if (!std::get<Clamp>(job.tools[*step.clamp].shape).spring)
        table.complain("clamp", "a clamp on the ram needs a spring", "give the clamp a spring");
}

void check_wiping(const StrictTable& table, const Step& step, const Case& job) {
    const auto* punch = std::get_if<WipingPunch>(&job.tools[step.punch].shape);
    if (!punch || punch->clearance >= job.thickness) return;
    table.complain(
        "punch",
        "its clearance of " + worked_out(punch->clearance) + " mm is less than the strip's thickness",
        "give at least clearance_mm = " + worked_out(job.thickness));
}

}  // namespace

void check_work(const StrictTable& table, const Step& step, const Case& job,
                const std::vector<Step>& before) {
    const Tool& punch = job.tools[step.punch];
    const Tool& die = job.tools[step.die];
    const Work work = work_of(table, punch, die);
    check_pad(table, step, job, work);
    check_clamp(table, step, job, work);
    if (work == Work::hem) check_one_bend(table, step, work), check_hem(table, step, job, before);
    if (work != Work::hem) check_begun(table, step, job);
    if (work == Work::any) return;
    if (work == Work::vee || work == Work::wiping || work == Work::radius) check_one_bend(table, step, work);
    if (work == Work::offset || work == Work::channel) check_two_bends(table, step, job.part.bends, work);
    check_sense(table, step, job.part.bends, work);
    if (work == Work::wiping) check_wiping(table, step, job);
    try {
        std::visit(PairCheck{step.die_face, job.thickness}, punch.shape, die.shape);
    } catch (const OutOfRange& error) {
        table.complain("", error.name + ": " + error.wrong, error.right);
    }
}

bool lays_hem(const Step& step, const Case& job) {
    return work_of(job.tools[step.punch]) == Work::hem || work_of(job.tools[step.die]) == Work::hem;
}

void check_hems_laid(const StrictTable& part, const Case& job) {
    for (std::size_t b = 0; b < job.part.bends.size(); ++b) {
        if (!is_hem(job.part.bends[b])) continue;
        const Step* last = nullptr;
        for (const Step& step : job.steps)
            if (std::count(step.bends.begin(), step.bends.end(), static_cast<int>(b)) > 0) last = &step;
        if (last && lays_hem(*last, job)) continue;
        const std::string name = in_quotes(job.part.bends[b].name);
        complain_of_bend(part, b, "no step closes the hem " + name,
                         "name it in a last step with a flat-punch and a flat-die");
    }
}

}  // namespace overbend::files
