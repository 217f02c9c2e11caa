#include "scenes/job/plan/ways.h"

#include <algorithm>

#include "scenes/job/run/press_blocks.h"
#include "scenes/job/run/step_clearance.h"
#include "scenes/job/run/step_tools.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::job {

namespace {

bool lies_on(tool::Role role) {
    return role == tool::Role::die || role == tool::Role::pad || role == tool::Role::clamp;
}

}  // namespace

Ways::Ways(const files::Case& c, const Blank& blank, const std::vector<files::Step>& choices, double margin,
           double lies_deep)
    : c_(c), blank_(blank), part_(folded_part(c, blank)) {
    for (files::Step step : choices)
        for (const files::Face face : {files::Face::up, files::Face::down})
            for (const files::First first : {files::First::left, files::First::right}) {
                step.face = face, step.first = first;
                add(step, margin, lies_deep);
            }
}

// ---- what a stroke meets

const clearance::Solid& Ways::solid_of(const tool::RigidTool& t, int face) {
    return solids_.try_emplace({t.name, face}, t.outline).first->second;
}

std::vector<plan::Obstacle> Ways::obstacles_of(const files::Step& step) {
    std::vector<plan::Obstacle> obstacles;
    tool::ToolSet tools = tools_of(c_, step);  // the punch's origin at height 0
    const tool::ToolSet blocks = press_blocks(c_, tools[0], tools[1]);
    tools.insert(tools.end(), blocks.begin(), blocks.end());
    for (const tool::RigidTool& t : tools) {
        if (t.role == tool::Role::pad) continue;  // the strip lies on it wherever it is
        plan::Obstacle o;
        o.solid = &solid_of(t, t.role == tool::Role::die ? step.die_face : 0);
        o.stands = t.position;
        if (t.role == tool::Role::clamp) o.stands.y() = c_.thickness;
        o.with_ram = t.moves_with_ram();
        o.lies_on = lies_on(t.role);
        o.role = t.role;
        o.words = std::string(tool::role_word(t.role)) + " '" + t.name + "'";
        obstacles.push_back(o);
    }
    return obstacles;
}

void Ways::add(files::Step step, double margin, double lies_deep) {
    for (const int b : step.bends) step.name += (step.name.empty() ? "" : " and ") + c_.part.bends[b].name;

    const bool face_down = step.face == files::Face::down, turned = step.first == files::First::right;
    const plan::FoldedPart laid = plan::as_laid(part_, face_down, turned);
    const int last = part_.bends() - 1;
    const int left_bend = turned ? last - step.bends.back() : step.bends.front();
    const int right_bend = turned ? last - step.bends.front() : step.bends.back();
    if (laid.angle[left_bend] * files::work_of(c_.tools[step.punch]).sense < 0.0) return;
    const plan::StrokePath path = files::stroke_path(c_, blank_, step);

    plan::Way way;
    for (const int b : step.bends) way.bends |= bit(b);
    way.tools = tool_numbers_.insert({step.set_up(), static_cast<int>(tool_numbers_.size())}).first->second;
    way.face_down = face_down, way.right_first = turned;
    ways_.push_back(way);
    steps_.push_back(step);

    const Hold hold = hold_of(c_, blank_, step);
    plan::RoomOptions options;
    options.margin = margin;
    options.lies_deep = lies_deep;
    options.raised = ram_rise(c_);
    options.gauge_low = -c_.thickness;
    options.gauge_high = c_.press && c_.press->gauge ? c_.press->gauge->height : 3.0 * c_.thickness;
    rooms_.emplace_back(path, plan::left_of(laid, left_bend), plan::right_of(laid, right_bend),
                        obstacles_of(step), hold.reach_left - path.half_allowance,
                        hold.reach_right - path.half_allowance, options);
}

// ---- the problem

Ways::Sides Ways::sides(int way, plan::BendSet made) const {
    const files::Step& step = steps_[way];
    const int bends = part_.bends();
    const bool turned = step.first == files::First::right;
    const plan::BendSet laid = plan::as_laid(made, bends, turned);
    const int left_bend = turned ? bends - 1 - step.bends.back() : step.bends.front();
    const int right_bend = turned ? bends - 1 - step.bends.front() : step.bends.back();
    return {plan::bits_left_of(laid, left_bend), plan::bits_right_of(laid, right_bend)};
}

plan::Use Ways::use(int way, plan::BendSet made) {
    const Sides s = sides(way, made);
    plan::StrokeRoom& room = rooms_[way];
    plan::Use use;
    use.possible = room.has_room(s.left, s.right);
    if (!use.possible) return use;
    use.gauge = room.gauge(s.right);
    use.slides = room.slides(s.left, s.right);
    return use;
}

plan::OrderProblem Ways::problem() {
    plan::OrderProblem problem;
    problem.bends = part_.bends();
    problem.ways = ways_;
    const files::Handling& h = c_.handling;
    problem.costs = {h.stroke, h.turn, h.flip, h.tool_change, h.gauge_change, h.slide};
    problem.use = [this](int way, plan::BendSet made) { return use(way, made); };
    return problem;
}

files::Step Ways::step(int way) const {
    return steps_[way];
}

// ---- in words

// "the flat after 'lip'", as the drawing counts them from the left.
std::string Ways::flat_name(int way, const plan::Hit& hit) const {
    const files::Step& step = steps_[way];
    const bool towards_drawing_left = hit.left == (step.first == files::First::left);
    const int flat =
        towards_drawing_left ? step.bends.front() - hit.group : step.bends.back() + 1 + hit.group;
    const std::vector<files::Bend>& bends = c_.part.bends;
    if (flat == 0) return "the flange before '" + bends.front().name + "'";
    if (flat == static_cast<int>(bends.size())) return "the flange after '" + bends.back().name + "'";
    return "the flat between '" + bends[flat - 1].name + "' and '" + bends[flat].name + "'";
}

std::optional<Ways::Blocked> Ways::blocked(int way, plan::BendSet made) {
    const Sides s = sides(way, made);
    plan::StrokeRoom& room = rooms_[way];
    if (room.has_room(s.left, s.right)) return {};
    Blocked b;
    b.missing = std::max(room.missing_left(s.left), room.missing_right(s.right));
    if (b.missing > 0.0) return b;
    b.hit = room.worst_hit(s.left, s.right);
    if (b.hit && b.hit->obstacle >= 0) b.by = room.obstacles()[b.hit->obstacle].role;
    return b;
}

std::vector<Eigen::Vector2d> Ways::swept(int way, plan::BendSet made, bool left) const {
    const Sides s = sides(way, made);
    return rooms_[way].swept(left, left ? s.left : s.right);
}

std::string Ways::reason(int way, plan::BendSet made) {
    const Sides s = sides(way, made);
    plan::StrokeRoom& room = rooms_[way];
    if (room.has_room(s.left, s.right)) return "";
    const double missing = std::max(room.missing_left(s.left), room.missing_right(s.right));
    if (missing > 0.0)
        return words("the strip beside the bend is %.1f mm too short to rest on the die '%s'", missing,
                     c_.tools[steps_[way].die].name.c_str());
    const std::optional<plan::Hit> hit = room.worst_hit(s.left, s.right);
    if (!hit) return "the clearance is less than the minimum";
    if (hit->obstacle < 0) return words("%s hits the other half of the strip", flat_name(way, *hit).c_str());
    const std::string& solid = room.obstacles()[hit->obstacle].words;
    const double angle = hit->s * room.path().loaded / degree;
    if (hit->depth > 0.0)
        return words("%s would be %.2f mm deep in the %s at %.0f degrees", flat_name(way, *hit).c_str(),
                     hit->depth, solid.c_str(), angle);
    return words("%s would come within %.2f mm of the %s at %.0f degrees", flat_name(way, *hit).c_str(),
                 -hit->depth, solid.c_str(), angle);
}

}  // namespace overbend::job
