#include "render/film/timeline.h"

#include <algorithm>
#include <cmath>

#include "render/film/frame_parts.h"
#include "render/picture/numbers.h"
#include "render/picture/pace.h"
#include "sim/errors.h"

namespace overbend::film {

using namespace picture;

namespace {

using stroke::Phase;
using stroke::Recording;
using stroke::State;

// Shares of a stroke of 8 s; what is left of them is pressed.
constexpr double placed_share = 0.6 / 8.0;
constexpr double approach_share = 0.7 / 8.0;
constexpr double dwell_share = 0.5 / 8.0;
constexpr double retract_share = 1.0 / 8.0;
constexpr double free_share = 2.4 / 8.0;
constexpr double press_share = 1.0 - placed_share - approach_share - dwell_share - retract_share - free_share;
constexpr double raising_part = 0.3;  // of the free passage: the punch goes up
constexpr double true_size_at =
    0.85;  // of the free passage: a springback drawn larger has its true size again

// Shares of the time between two strokes.
constexpr double away_share = 0.9 / 6.0;
constexpr double turn_share = 2.2 / 6.0;
constexpr double change_share = 1.8 / 6.0;
constexpr double lay_in_share = 1.0 - away_share - turn_share - change_share;

constexpr double title_seconds = 4.0;
constexpr double finished_seconds = 5.0;

void check_range(const char* name, double value, double low, double high, const char* unit) {
    if (value >= low && value <= high) return;
    throw OutOfRange(name, fixed(value, 2) + unit,
                     "it must be between " + fixed(low, 1) + unit + " and " + fixed(high, 1) + unit);
}

void check(const ShownJob& job, const FilmOptions& options) {
    check_size(options.size);
    check_range("frames per second", options.frames_per_second, 1.0, 120.0, "");
    check_range("time of a stroke", options.seconds_per_stroke, 1.0, 120.0, " s");
    check_range("time between strokes", options.seconds_between, 0.1, 60.0, " s");
    check_range("scale of the springback", options.springback_scale, 1.0, 20.0, "");
    if (!(job.strip_width > 0.0))
        throw OutOfRange("strip width", fixed(job.strip_width, 2) + " mm", "it must be above 0 mm");
    check_strokes(job, "film");
    if (job.finished) check_recording(*job.finished);
}

// Instants spread evenly over the way from one state to another.
std::vector<double> evenly(const Recording& recording, int first, int last, int count, double by_travel,
                           double by_shift) {
    const std::vector<double> way = way_between(recording, first, last, by_travel, by_shift);
    std::vector<double> instants;
    size_t k = 0;
    for (int i = 1; i <= count; ++i) {
        const double wanted = way.back() * i / count;
        while (k + 2 < way.size() && way[k + 1] < wanted) ++k;
        const double part = way.size() < 2 ? 0.0 : (wanted - way[k]) / (way[k + 1] - way[k]);
        instants.push_back(
            std::min<double>(last, first + static_cast<double>(k) + std::min(1.0, std::max(0.0, part))));
    }
    return instants;
}

View view_of(const ShownStroke& stroke, const FilmOptions& options) {
    StageInfo wanted;
    wanted.charts = options.charts;
    wanted.lens = options.lens;
    wanted.bends = stroke.bends;
    for (const ShownHit& hit : stroke.hits) wanted.interferences.push_back(hit.deepest);
    return choose_view(*stroke.recording, options.size, wanted);
}

StrokeLook look_of(const ShownStroke& stroke, const FilmOptions& options) {
    const Recording& recording = *stroke.recording;
    StrokeLook look;
    look.view = view_of(stroke, options);
    look.raised = raised_by(recording, look.view);
    look.loaded_at = stroke::loaded_state(recording);
    look.bends = stroke.bends;
    for (int i = 0; i < static_cast<int>(look.bends.size()); ++i) {
        BendMark& bend = look.bends[i];
        if (!(bend.reach > 0.0)) bend.reach = found_reach(recording, stroke.bends, i);
        const State& loaded = recording.states[stroke::loaded_state(recording)];
        const State& last = recording.states.back();
        if (!bend.loaded) bend.loaded = measured(recording, loaded, bend).angle;
        if (!bend.free && last.phase == Phase::free) bend.free = measured(recording, last, bend).angle;
    }
    return look;
}

struct StrokeTimes {
    int placed, approach, press, dwell, retract, free;  // frames
};

int frames_in(double seconds, double per_second) {
    return std::max(1, static_cast<int>(std::lround(seconds * per_second)));
}

StrokeTimes times(const FilmOptions& o) {
    const auto frames = [&](double share) {
        return frames_in(share * o.seconds_per_stroke, o.frames_per_second);
    };
    return {frames(placed_share), frames(approach_share), frames(press_share),
            frames(dwell_share),  frames(retract_share),  frames(free_share)};
}

void add_stroke(const ShownJob& job, int index, const FilmOptions& options, FrameList& list) {
    const ShownStroke& stroke = job.strokes[index];
    const StrokeLook& look = list.looks[index];
    const Recording& recording = *stroke.recording;
    const int loaded = static_cast<int>(look.loaded_at);
    const int last = static_cast<int>(recording.states.size()) - 1;
    const StrokeTimes n = times(options);
    const auto add = [&](Passage passage, double at, std::optional<double> punch_travel, double scale = 1.0) {
        Instant instant;
        instant.stroke = index;
        instant.passage = passage;
        instant.at = at;
        instant.punch_travel = punch_travel;
        instant.caption = caption(passage, stroke, look);
        instant.springback_scale = scale;
        list.instants.push_back(instant);
    };
    const double touch = recording.states.front().travel;
    for (int i = 0; i < n.placed; ++i) add(Passage::placed, 0.0, -look.raised);
    for (int i = 1; i <= n.approach; ++i) {
        const double part = eased(static_cast<double>(i) / n.approach);
        add(Passage::approach, 0.0, (1.0 - part) * -look.raised + part * touch);
    }
    for (const double at : evenly(recording, 0, loaded, n.press, 1.0, 0.01)) add(Passage::press, at, {});
    for (int i = 0; i < n.dwell; ++i) add(Passage::dwell, loaded, {});
    if (last == loaded) return;  // the stroke was not finished: there is nothing after the stop
    const double large = options.springback_scale;
    for (const double at : evenly(recording, loaded, last, n.retract, 0.05, 1.0))
        add(Passage::retract, at, {}, large);
    const double off = recording.states.back().travel;
    for (int i = 1; i <= n.free; ++i) {
        const double part = static_cast<double>(i) / n.free;
        const double up = eased(part / raising_part);
        const double back = large > 1.0 ? eased((part - true_size_at) / (1.0 - true_size_at)) : 0.0;
        add(Passage::free, last, (1.0 - up) * off + up * -look.raised, (1.0 - back) * large + back);
    }
}

void add_between(const ShownJob& job, int from, int to, Passage passage, double share,
                 const FilmOptions& options, FrameList& list) {
    const int count = frames_in(share * options.seconds_between, options.frames_per_second);
    Instant instant;
    instant.passage = passage;
    instant.from = from;
    instant.to = to;
    instant.stroke = from >= 0 ? from : to;
    if (from >= 0) instant.at = static_cast<double>(job.strokes[from].recording->states.size()) - 1.0;
    for (int i = 1; i <= count; ++i) {
        instant.part = static_cast<double>(i) / count;
        instant.caption = between_caption(instant, job, from >= 0 ? list.looks[from].carry : Carry{});
        list.instants.push_back(instant);
    }
}

// From one stroke to the next; from: -1 before the first, to: -1 after the last.
void add_interlude(const ShownJob& job, int from, int to, const FilmOptions& options, FrameList& list) {
    const auto add = [&](Passage passage, double share) {
        add_between(job, from, to, passage, share, options, list);
    };
    if (from >= 0) add(Passage::away, away_share);
    if (to < 0) return;
    if (from >= 0) add(Passage::turn, turn_share);
    if (tool_change(from >= 0 ? &job.strokes[from] : nullptr, job.strokes[to]).any())
        add(Passage::change, change_share);
    add(Passage::lay_in, lay_in_share);
}

void add_card(Passage passage, double seconds, FrameList& list) {
    Instant instant;
    instant.passage = passage;
    const int count = frames_in(seconds, list.frames_per_second);
    list.instants.insert(list.instants.end(), static_cast<std::size_t>(count), instant);
}

bool finished_to_its_end(const Recording& recording) {
    return recording.states.back().phase == Phase::free;
}

}  // namespace

FrameList timeline(const ShownJob& job, const FilmOptions& options) {
    check(job, options);
    FrameList list;
    list.frames_per_second = options.frames_per_second;
    std::vector<const Recording*> recordings;
    for (const ShownStroke& stroke : job.strokes) {
        recordings.push_back(stroke.recording);
        list.looks.push_back(look_of(stroke, options));
    }
    list.colour_limit = colour_limit(job, options.colouring);
    const int count = static_cast<int>(job.strokes.size());
    for (int i = 0; i + 1 < count; ++i) {
        list.looks[i].carry = find_carry(*recordings[i], *recordings[i + 1]);
        list.looks[i].turning_view = turning_view(job, list, i, i + 1);
    }
    if (options.cards == Cards::shown) add_card(Passage::title, title_seconds, list);
    for (int i = 0; i < count; ++i) {
        // Over strokes that are left out, or that came to no end, no part is carried.
        const bool goes_on = i > 0 && number_of(job, i) == number_of(job, i - 1) + 1 &&
                             finished_to_its_end(*recordings[i - 1]);
        if (!goes_on && i > 0 && finished_to_its_end(*recordings[i - 1]))
            add_interlude(job, i - 1, -1, options, list);
        add_interlude(job, goes_on ? i - 1 : -1, i, options, list);
        add_stroke(job, i, options, list);
    }
    if (finished_to_its_end(*recordings.back())) add_interlude(job, count - 1, -1, options, list);
    if (options.cards == Cards::shown && job.finished) add_card(Passage::finished, finished_seconds, list);
    return list;
}

}  // namespace overbend::film
