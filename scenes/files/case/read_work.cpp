#include "scenes/files/case/read_work.h"

#include <algorithm>

#include "scenes/files/case/read_part.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/work.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

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

// A punch and a die of one work, or of any with an outline.
void check_tools(const StrictTable& table, const Tool& punch, const Tool& die) {
    const Work by_punch = work_of(punch).work, by_die = work_of(die).work;
    if (by_punch == by_die || by_punch == Work::any || by_die == Work::any) return;
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

void check_one_bend(const StrictTable& table, const Step& step, const WorkKind& work) {
    if (step.bends.size() == 1) return;
    table.complain("bends",
                   std::string(work.stroke) + " makes one bend, not " + std::to_string(step.bends.size()),
                   "name one bend");
}

void check_two_bends(const StrictTable& table, const Step& step, const std::vector<Bend>& bends,
                     const WorkKind& work) {
    const std::string stroke = work.stroke, like = work.alike ? "the same direction" : "opposite direction";
    const std::string right = "name two adjacent bends of " + like + ", such as " +
                              (work.alike ? "90 and 90 degrees" : "40 and -40 degrees");
    if (step.bends.size() != 2) table.complain("bends", stroke + " makes two bends at once, not one", right);
    if (step.bends[1] != step.bends[0] + 1) {
        table.complain("bends", stroke + " cannot make two bends with another bend between them", right);
    }
    if (are_its_pair(work, bends[step.bends[0]], bends[step.bends[1]])) return;
    table.complain("bends",
                   stroke + " makes two bends of " + like + ", these are of " +
                       (work.alike ? "opposite direction" : "the same direction"),
                   right);
}

void check_sense(const StrictTable& table, const Step& step, const std::vector<Bend>& bends,
                 const WorkKind& work) {
    const bool from_right = !work.alike && step.first == First::right;
    const Bend& bend = bends[from_right ? step.bends.back() : step.bends.front()];
    if (sense(step, bend) * work.sense > 0.0) return;
    const std::string other = step.face == Face::up ? "down" : "up";
    table.complain(
        "place", "in this position, the stroke would bend " + in_quotes(bend.name) + " the wrong way",
        "give place = { face = \"" + other + "\" }" + (work.alike ? "" : " or turn the blank end for end"));
}

// ---- hems

void check_stop_of_hem(const StrictTable& table, const Step& step, const Case& job,
                       const std::vector<Step>& before) {
    const bool begun = std::any_of(before.begin(), before.end(), [&](const Step& other) {
        return std::count(other.bends.begin(), other.bends.end(), step.bends.front()) > 0;
    });
    if (!begun)
        table.complain("bends",
                       "flat tools cannot start " + in_quotes(job.part.bends[step.bends.front()].name),
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

void check_pad(const StrictTable& table, const Step& step, const WorkKind& work) {
    if (step.pad && !work.pad_travel)
        table.complain("pad", "this stroke cannot use a pad",
                       "remove it; a pad goes in a channel-die or in an outline");
}

void check_clamp(const StrictTable& table, const Step& step, const Case& job, const WorkKind& work) {
    if (step.clamp && !work.needs_clamp)
        table.complain("clamp", "this stroke cannot use a clamp",
                       "remove it; a clamp holds the strip on a wiping-die");
    if (!step.clamp && work.needs_clamp)
        table.complain_missing("clamp", "name a clamp, which holds the strip on the wiping-die");
    if (!step.clamp || step.clamp_on == ClampOn::frame) return;
    if (!std::get<Clamp>(job.tools[*step.clamp].shape).spring)
        table.complain("clamp", "a clamp on the ram needs a spring", "give the clamp a spring");
}

}  // namespace

void check_work(const StrictTable& table, const Step& step, const Case& job,
                const std::vector<Step>& before) {
    const Tool& punch = job.tools[step.punch];
    const Tool& die = job.tools[step.die];
    check_tools(table, punch, die);
    const WorkKind& work = work_of(job, step);
    check_pad(table, step, work);
    check_clamp(table, step, job, work);
    if (work.bends == 1) check_one_bend(table, step, work);
    if (work.bends == 2) check_two_bends(table, step, job.part.bends, work);
    if (work.check_step) work.check_step(table, step, job);
    if (work.lays_hem)
        check_stop_of_hem(table, step, job, before);
    else
        check_begun(table, step, job);
    if (work.bends == 0) return;
    check_sense(table, step, job.part.bends, work);
    try {
        check_pair(punch, die, step.die_face, job.thickness);
    } catch (const OutOfRange& error) {
        table.complain("", error);
    }
}

void check_hems_laid(const StrictTable& part, const Case& job) {
    for (std::size_t b = 0; b < job.part.bends.size(); ++b) {
        if (!is_hem(job.part.bends[b])) continue;
        const Step* last = nullptr;
        for (const Step& step : job.steps)
            if (std::count(step.bends.begin(), step.bends.end(), static_cast<int>(b)) > 0) last = &step;
        if (last && work_of(job, *last).lays_hem) continue;
        const std::string name = in_quotes(job.part.bends[b].name);
        complain_of_bend(part, b, "no step closes the hem " + name,
                         "name it in a last step with a flat-punch and a flat-die");
    }
}

}  // namespace overbend::files
