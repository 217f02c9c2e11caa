#include "render/film/frame_parts.h"

#include <algorithm>
#include <cmath>

#include "render/picture/pace.h"

namespace overbend::film {

using namespace picture;

namespace {

using stroke::Recording;
using tool::RigidTool;
using tool::Role;
using tool::ToolSet;

constexpr double lifted_part = 0.06;    // of the stage's height, between the die and the lifted part
constexpr double dimmed = 0.4;          // opacity of the tools while the part is turned
constexpr double towards_us = 0.16;     // a part slid along the bend line is drawn so much larger
constexpr double towards_shift = 0.22;  // and shifted by so much of the stage's height, left and down
constexpr double zooming = 0.3;         // of the turning, at either end
constexpr double gone_at = 0.45;        // of the change: the old tools are out of the picture

bool is_gauge(const RigidTool& t) {
    return t.role == Role::gauge;
}

// A block turned to its other groove has the same name and size, so that all of the outline is compared.
bool same_tool(const RigidTool& a, const RigidTool& b) {
    const std::vector<tool::Piece>& p = a.outline.pieces();
    const std::vector<tool::Piece>& q = b.outline.pieces();
    if (a.name != b.name || a.role != b.role || p.size() != q.size()) return false;
    for (std::size_t i = 0; i < p.size(); ++i)
        if ((p[i].start - q[i].start).norm() > 1e-6 || std::abs(p[i].sweep - q[i].sweep) > 1e-6) return false;
    return true;
}

const RigidTool* find_same(const ToolSet& tools, const RigidTool& wanted) {
    const auto found =
        std::find_if(tools.begin(), tools.end(), [&](const RigidTool& t) { return same_tool(t, wanted); });
    return found == tools.end() ? nullptr : &*found;
}

bool all_found(const ToolSet& tools, const ToolSet& in, bool upper) {
    return std::all_of(tools.begin(), tools.end(), [&](const RigidTool& t) {
        return is_gauge(t) || t.moves_with_ram() != upper || find_same(in, t) != nullptr;
    });
}

// How far a side has to go to be out of the picture: up, or down when it is negative.
double way_out(const ToolSet& tools, bool upper, const View& view) {
    const double top = view.top_mm();
    const double bottom = top - view.height_mm();
    double way = 0.0;
    for (const RigidTool& t : tools) {
        if (is_gauge(t) || t.moves_with_ram() != upper) continue;
        const tool::Box& box = t.outline.box();
        way = upper ? std::max(way, top - (t.position.y() + box.low.y()))
                    : std::min(way, bottom - (t.position.y() + box.high.y()));
    }
    return 1.05 * way;
}

double part_between(double part, double from, double to) {
    return eased((part - from) / (to - from));
}

// Tools as they stand with the punch raised, every one at its place: those of the ram are lifted by `travel`
// less, so that a stage which lowers them by -raised shows them so.
ToolSet standing(const Recording& recording, const stroke::State& state, double raised, double shown_travel) {
    ToolSet tools = recording.tools;
    for (std::size_t k = 0; k < tools.size(); ++k) {
        RigidTool& t = tools[k];
        t.position = stroke::tool_position(recording.tools[k], -raised, 0.0, state.phase);
        if (t.moves_with_ram()) t.position.y() += shown_travel;
        t.draws_back = 0.0;
    }
    return tools;
}

struct Stood {
    ToolSet tools;
    ToolSet in_place;     // the same, where they will stand
    double travel = 0.0;  // the stage's
    double opacity = 1.0;
    bool names = false;
};

void shift_side(ToolSet& tools, bool upper, double by) {
    for (RigidTool& t : tools)
        if (!is_gauge(t) && t.moves_with_ram() == upper) t.position.y() += by;
}

// What stays goes to the place that the next stroke has for it.
void slide(ToolSet& tools, const ToolSet& next, const ToolChange& change, double part) {
    for (RigidTool& t : tools) {
        const bool stays = is_gauge(t) || !(t.moves_with_ram() ? change.upper : change.lower);
        const RigidTool* there = stays ? find_same(next, t) : nullptr;
        if (there) t.position += part * (there->position - t.position);
    }
}

// What is changed, a part of the way out of the picture. A gauge that only one of two strokes has goes with
// the die.
void shift_out(ToolSet& tools, const ToolSet& other, const ToolChange& change, double part,
               const View& view) {
    if (change.upper) shift_side(tools, true, part * way_out(tools, true, view));
    if (!change.lower) return;
    shift_side(tools, false, part * way_out(tools, false, view));
    for (RigidTool& t : tools)
        if (is_gauge(t) && !find_same(other, t)) t.position.x() += part * view.width_mm();
}

double dimming(const Instant& m, const ToolChange& change) {
    const auto between = [&](double from, double to) {
        return dimmed + (1.0 - dimmed) * part_between(m.part, from, to);
    };
    if (m.passage == Passage::away) return between(0.5, 0.0);
    if (m.passage == Passage::turn) return dimmed;
    if (m.from < 0) return 1.0;
    if (m.passage == Passage::change) return between(0.0, 0.15);
    return change.any() ? 1.0 : between(0.5, 1.0);
}

// Tools while the part is carried.
Stood tools_at(const ShownJob& job, const FrameList& frames, const Instant& m, const View& view) {
    const ShownStroke* before = m.from >= 0 ? &job.strokes[m.from] : nullptr;
    const ShownStroke* after = m.to >= 0 ? &job.strokes[m.to] : nullptr;
    const ToolChange change = after ? tool_change(before, *after) : ToolChange{};
    Stood stood;
    stood.travel = -frames.looks[after ? m.to : m.from].raised;
    stood.opacity = after ? dimming(m, change) : 1.0;
    ToolSet old, next;
    if (before)
        old = standing(*before->recording, before->recording->states.back(), frames.looks[m.from].raised,
                       stood.travel);
    if (after)
        next = standing(*after->recording, after->recording->states.front(), frames.looks[m.to].raised,
                        stood.travel);
    const bool old_ones = before && (!after || m.passage == Passage::away || m.passage == Passage::turn ||
                                     (m.passage == Passage::change && m.part < new_tools_from));
    if (old_ones) {
        if (after && m.passage != Passage::away)
            slide(old, next, change, m.passage == Passage::turn ? eased(m.part) : 1.0);
        if (m.passage == Passage::change)
            shift_out(old, next, change, part_between(m.part, 0.1, gone_at), view);
        stood.tools = old;
        return stood;
    }
    stood.in_place = next;
    if (m.passage == Passage::change) {
        // At the beginning of a film they have the whole passage.
        const double left =
            1.0 - (before ? part_between(m.part, new_tools_from, 0.95) : part_between(m.part, 0.0, 0.7));
        shift_out(next, old, change, left, view);
    }
    stood.names = true;
    stood.tools = next;
    return stood;
}

// Names that lie on their tools go with them; of those that stand beside, the line follows. A name for which
// there is no room on the way is left out until there is.
void carry_names(View& view, const ToolSet& tools, const ToolSet& in_place, const Rect& key, double travel) {
    std::vector<ToolLabel> seen;
    for (ToolLabel label : view.labels) {
        if (label.tool >= static_cast<int>(tools.size())) continue;
        const RigidTool& now = tools[label.tool];
        const Place away = now.position - in_place[label.tool].position;
        const tool::Box& box = now.outline.box();
        const double at = now.position.y() - (now.moves_with_ram() ? travel : 0.0);
        const double top = view.top_mm();
        const bool visible = at + box.low.y() < top && at + box.high.y() > top - view.height_mm();
        if (label.inside) {
            label.box.x += view.scale * away.x();
            label.box.y -= view.scale * away.y();
        }
        const bool free = std::none_of(seen.begin(), seen.end(),
                                       [&](const ToolLabel& other) { return overlap(label.box, other.box); });
        if (visible && free && holds(view.stage, label.box) && !overlap(label.box, key))
            seen.push_back(label);
    }
    view.labels = seen;
}

double lowest(const Recording& recording, const stroke::State& state) {
    return *std::min_element(state.y.begin(), state.y.end()) - 0.5 * recording.thickness;
}

// How the part is held off its place in a stroke.
Hold hold(const Recording& recording, const stroke::State& state, clearance::Way way, const View& view) {
    Hold held;
    if (way == clearance::Way::along_the_bend_line) {
        held.shift = Place(-towards_shift, -towards_shift) * view.height_mm();
        held.growth = towards_us;
    } else {
        held.shift.y() = std::max(0.0, -lowest(recording, state)) + lifted_part * view.height_mm();
    }
    return held;
}

// Out of the picture to the left, where the operator stands.
Place out_of_picture(const stroke::State& state, const View& view) {
    const double right = *std::max_element(state.x.begin(), state.x.end());
    const double left_edge = view.centre.x() - 0.5 * view.width_mm();
    return Place(std::min(0.0, left_edge - right) - 0.1 * view.width_mm(), 0.0);
}

Carried carried_at(const Instant& m) {
    if (m.passage == Passage::away) return {eased(m.part), 0.0, 0.0};
    if (m.passage == Passage::turn)
        return {1.0, part_between(m.part, 0.2, 0.7), part_between(m.part, 0.4, 0.9)};
    return {m.passage == Passage::change ? 1.0 : 1.0 - eased(m.part), 1.0, 1.0};
}

StripMotion strip_motion(const ShownJob& job, const FrameList& frames, const Instant& m) {
    const auto held = [&](int stroke, const stroke::State& state, clearance::Way way) {
        return hold(*job.strokes[stroke].recording, state, way, frames.looks[stroke].view);
    };
    StripMotion motion;
    if (m.from >= 0 && m.to >= 0) {
        const ShownStroke& before = job.strokes[m.from];
        const ShownStroke& after = job.strokes[m.to];
        return motion_at(frames.looks[m.from].carry, carried_at(m),
                         held(m.from, before.recording->states.back(), before.way_off),
                         held(m.to, after.recording->states.front(), after.way_in));
    }
    // At an end of the film: in from the left, or off to the left.
    const bool leaving = m.to < 0;
    const int stroke = leaving ? m.from : m.to;
    const Recording& recording = *job.strokes[stroke].recording;
    const stroke::State& state = leaving ? recording.states.back() : recording.states.front();
    const Hold off = held(stroke, state, leaving ? job.strokes[stroke].way_off : job.strokes[stroke].way_in);
    const double part = m.passage == Passage::change ? 1.0 : leaving ? m.part : 1.0 - m.part;
    const double up = part_between(part, 0.0, 0.45);
    const double aside = part_between(part, 0.3, 1.0);
    Place middle = Place::Zero();
    for (std::size_t i = 0; i < state.x.size(); ++i) middle += Place(state.x[i], state.y[i]);
    middle /= static_cast<double>(state.x.size());
    motion.turn *= 1.0 + up * off.growth;
    motion.shift = middle - motion.turn * middle + up * off.shift +
                   aside * (1.0 + off.growth) * out_of_picture(state, frames.looks[stroke].view);
    return motion;
}

View view_at(const FrameList& frames, const Instant& m) {
    if (m.to < 0) return frames.looks[m.from].view;
    if (m.from < 0 || m.passage == Passage::change || m.passage == Passage::lay_in)
        return frames.looks[m.to].view;
    if (m.passage == Passage::away) return frames.looks[m.from].view;
    // Out, until the whole part is seen, and in again.
    const StrokeLook& from = frames.looks[m.from];
    if (m.part < 0.5) return between(from.view, from.turning_view, part_between(m.part, 0.0, zooming));
    return between(from.turning_view, frames.looks[m.to].view, part_between(m.part, 1.0 - zooming, 1.0));
}

}  // namespace

ToolChange tool_change(const ShownStroke* before, const ShownStroke& after) {
    if (!before) return {true, true};
    const ToolSet& a = before->recording->tools;
    const ToolSet& b = after.recording->tools;
    const auto other = [&](bool upper) { return !all_found(a, b, upper) || !all_found(b, a, upper); };
    return {other(true), other(false)};
}

View turning_view(const ShownJob& job, const FrameList& frames, int from, int to) {
    const View& a = frames.looks[from].view;
    const View& b = frames.looks[to].view;
    const stroke::State& state = job.strokes[from].recording->states.back();
    tool::Box box;  // with the die's middle in it
    Instant m;
    m.passage = Passage::turn;
    m.from = from;
    m.to = to;
    for (int i = 0; i <= 12; ++i) {
        m.part = i / 12.0;
        const StripMotion motion = strip_motion(job, frames, m);
        for (std::size_t k = 0; k < state.x.size(); ++k) {
            const Place p = motion.turn * Place(state.x[k], state.y[k]) + motion.shift;
            box.low = box.low.cwiseMin(p);
            box.high = box.high.cwiseMax(p);
        }
    }
    View view = a;
    view.labels.clear();
    view.lens.reset();
    view.centre = 0.5 * (box.low + box.high);
    const Place extent = box.high - box.low;
    view.scale = std::min({a.scale, b.scale, 0.94 * view.stage.width / std::max(1e-9, extent.x()),
                           0.9 * view.stage.height / std::max(1e-9, extent.y())});
    return view;
}

DrawingList draw_between(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                         const Instant& m) {
    View view = view_at(frames, m);
    view.lens.reset();
    const bool early = m.passage == Passage::away || m.to < 0;
    StageInfo info = stage_info(job, options, frames, early ? m.from : m.to, m);
    info.lens = Lens::hidden;
    Stood stood = tools_at(job, frames, m, view);
    if (stood.names)
        carry_names(view, stood.tools, stood.in_place, key_box(lay_out(options.size, options.charts)),
                    stood.travel);
    else
        view.labels.clear();
    info.motion = strip_motion(job, frames, m);
    info.punch_travel = stood.travel;
    info.tools = &stood.tools;
    info.tool_opacity = stood.opacity;
    return draw_stage(*job.strokes[m.stroke].recording, m.at, info, options.size, view);
}

}  // namespace overbend::film
