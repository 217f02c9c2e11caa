#include "scenes/job/plan/fitting_pairs.h"

#include <algorithm>

#include "scenes/files/case/work.h"
#include "sim/errors.h"

namespace overbend::job {

namespace {

class Fitter {
  public:
    Fitter(const files::Case& c, const Blank& blank, const std::vector<int>& bends) : c_(c), blank_(blank) {
        stroke_.bends = bends;
    }

    Fitting run() {
        for (stroke_.punch = 0; stroke_.punch < count(); ++stroke_.punch)
            for (stroke_.die = 0; stroke_.die < count(); ++stroke_.die) try_pair();
        return fitting_;
    }

  private:
    void try_pair() {
        const files::Tool &punch = c_.tools[stroke_.punch], &die = c_.tools[stroke_.die];
        if (!punch.is_punch() || !die.is_die()) return;
        const files::WorkKind* work = files::shared_work(punch, die);
        if (!work || !work->set_path || !makes_them(*work)) return;
        for (stroke_.die_face = 1; stroke_.die_face <= files::face_count(die); ++stroke_.die_face)
            try_with_others(*work, die);
    }

    bool makes_them(const files::WorkKind& work) const {
        if (stroke_.bends.size() == 1) return work.bends == 1;
        return files::are_its_pair(work, c_.part.bends[stroke_.bends[0]], c_.part.bends[stroke_.bends[1]]);
    }

    // With every clamp; with every pad that goes in, and without one only when none does: a free floor bows.
    void try_with_others(const files::WorkKind& work, const files::Tool& die) {
        bool judged = false;
        for (int i = 0; i < count(); ++i) {
            const auto* pad = std::get_if<files::Pad>(&c_.tools[i].shape);
            const bool goes_in = pad && work.pad_travel && work.pad_travel(*pad, die) > 0.0;
            const bool holds = work.needs_clamp && c_.tools[i].is_clamp();
            if (!goes_in && !holds) continue;
            (holds ? stroke_.clamp : stroke_.pad) = i;
            judge(work);
            judged = true;
        }
        stroke_.pad.reset(), stroke_.clamp.reset();
        if (!judged && !work.needs_clamp) judge(work);
    }

    void judge(const files::WorkKind& work) {
        const files::Shortfall lacking = shortfall(work);
        if (lacking.why.empty())
            fitting_.pairs.push_back(stroke_);
        else
            fitting_.misfits.push_back({stroke_, lacking.why, lacking.miss});
    }

    files::Shortfall shortfall(const files::WorkKind& work) const {
        try {
            files::check_pair(c_.tools[stroke_.punch], c_.tools[stroke_.die], stroke_.die_face, c_.thickness);
        } catch (const OutOfRange& error) {
            return {error.name + ": " + error.wrong};
        }
        if (!files::have_like_angles(c_.part.bends[stroke_.bends.front()],
                                     c_.part.bends[stroke_.bends.back()]))
            return {"it makes two equal bends; these two have different angles"};
        return work.misfit ? work.misfit(c_, blank_, stroke_) : files::Shortfall{};
    }

    int count() const { return static_cast<int>(c_.tools.size()); }

    const files::Case& c_;
    const Blank& blank_;
    files::Step stroke_;  // that is tried
    Fitting fitting_;
};

}  // namespace

Fitting fitting_pairs(const files::Case& c, const Blank& blank, const std::vector<int>& bends) {
    return Fitter(c, blank, bends).run();
}

std::string pair_words(const files::Case& c, const files::Step& stroke) {
    const files::Tool& die = c.tools[stroke.die];
    return "'" + c.tools[stroke.punch].name + "' with '" + die.name + "'" +
           (files::face_count(die) > 1 ? " (face " + std::to_string(stroke.die_face) + ")" : "");
}

namespace {

std::string bend_words(const files::Case& c, const std::vector<int>& bends) {
    std::string text;
    for (const int b : bends) text += (text.empty() ? "'" : " and '") + c.part.bends[b].name + "'";
    return text;
}

void add(const files::Case& c, const Blank& blank, const std::vector<int>& bends, Choices& choices) {
    const Fitting fitting = fitting_pairs(c, blank, bends);
    choices.possible.insert(choices.possible.end(), fitting.pairs.begin(), fitting.pairs.end());
    for (const Misfit& m : fitting.misfits) {
        // one line for all bends that are turned down for the same reason
        const std::string pair = pair_words(c, m.stroke) + " for ";
        const auto same = [&](const Rejected& r) { return r.why == m.why && r.what.rfind(pair, 0) == 0; };
        const auto before = std::find_if(choices.rejected.begin(), choices.rejected.end(), same);
        if (before == choices.rejected.end())
            choices.rejected.push_back({pair + bend_words(c, bends), m.why, m.miss});
        else
            before->what += ", " + bend_words(c, bends);
    }
}

}  // namespace

std::vector<Rejected> grouped(const std::vector<Rejected>& all) {
    constexpr std::size_t told_one_by_one = 2;
    const auto reason = [](std::string why) {
        why.erase(
            std::remove_if(why.begin(), why.end(),
                           [](char letter) { return (letter >= '0' && letter <= '9') || letter == '.'; }),
            why.end());
        return why;
    };
    const auto nearer = [](const Rejected& a, const Rejected& b) { return a.miss < b.miss; };
    std::vector<Rejected> lines;
    std::vector<std::string> reasons;
    for (const Rejected& r : all) {
        const std::string why = reason(r.why);
        if (std::find(reasons.begin(), reasons.end(), why) != reasons.end()) continue;
        reasons.push_back(why);
        std::vector<Rejected> alike;
        for (const Rejected& other : all)
            if (reason(other.why) == why) alike.push_back(other);
        std::stable_sort(alike.begin(), alike.end(), nearer);
        if (alike.size() > told_one_by_one) {
            const Rejected& nearest = alike.front();
            alike = {{nearest.what + ", and " + std::to_string(alike.size() - 1) + " others alike",
                      nearest.why, nearest.miss}};
        }
        lines.insert(lines.end(), alike.begin(), alike.end());
    }
    std::stable_sort(lines.begin(), lines.end(), nearer);
    return lines;
}

Choices choices_of(const files::Case& c, const Blank& blank) {
    const int bends = static_cast<int>(c.part.bends.size());
    Choices choices;
    for (int b = 0; b < bends; ++b) add(c, blank, {b}, choices);
    for (int b = 0; b + 1 < bends; ++b) add(c, blank, {b, b + 1}, choices);
    for (int b = 0; b < bends; ++b) {
        const bool served =
            std::any_of(choices.possible.begin(), choices.possible.end(), [b](const files::Step& choice) {
                return std::count(choice.bends.begin(), choice.bends.end(), b) > 0;
            });
        if (!served) choices.unserved.push_back(b);
    }
    return choices;
}

}  // namespace overbend::job
