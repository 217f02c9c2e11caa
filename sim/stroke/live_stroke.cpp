#include "sim/stroke/live_stroke.h"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include "sim/stroke/driver.h"
#include "sim/stroke/pressed_part.h"
#include "sim/tolerances.h"

namespace overbend::stroke {

struct LiveStroke::Inside {
    StrokeScene whole;
    StrokeOptions options;
    Pressed pressed;
    Driver driver;
    std::vector<Driver::Mark> marks;  // in the order of their travels
    std::vector<State> states;        // recorded up to the last of them
    std::vector<CurvePoint> curve;
    double farthest = 1e300;  // no equilibrium is found beyond
    std::string why;          // what it ended with there
    std::string held;

    Inside(const StrokeScene& scene, const StrokeOptions& given)
        : whole(scene), options(given), pressed(pressed_part(whole)), driver(pressed.scene, options) {
        if (driver.begin())
            keep_mark();
        else
            farthest = 0.0, why = "the strip does not settle on the die";
    }
    void keep_mark() {
        marks.push_back(driver.mark());
        const auto add = [](auto& to, const auto& from) {
            to.insert(to.end(), from.begin() + static_cast<std::ptrdiff_t>(to.size()), from.end());
        };
        add(states, driver.states());
        add(curve, driver.curve());
    }
    void go_to(const Driver::Mark& mark) { driver.go_to(mark, states, curve); }
};

LiveStroke::LiveStroke(const StrokeScene& scene, const StrokeOptions& options)
    : in_(std::make_unique<Inside>(scene, options)) {}
LiveStroke::~LiveStroke() = default;

double LiveStroke::press_to(double travel) {
    Inside& in = *in_;
    in.held.clear();
    if (in.marks.empty()) {
        in.held = in.why;
        return 0.0;
    }
    const double slack = 1e-9 * in.whole.strip.thickness;
    double goal = std::max(0.0, travel);
    if (goal > in.whole.stop.travel_limit) goal = in.whole.stop.travel_limit, in.held = "the tools close";
    if (goal > in.farthest) goal = in.farthest, in.held = in.why;
    const auto after = std::upper_bound(in.marks.begin(), in.marks.end(), goal,
                                        [](double t, const Driver::Mark& m) { return t < m.at.travel; });
    in.go_to(after == in.marks.begin() ? in.marks.front() : *(after - 1));
    while (in.driver.travel() < goal - slack) {
        const Driver::Mark before = in.driver.mark();
        if (!in.driver.step_towards(goal)) {
            in.why = in.held = in.driver.reason();
            in.farthest = before.at.travel;
            // A step that fails leaves what was recorded as it was.
            const std::vector<State> states = in.driver.states();
            const std::vector<CurvePoint> curve = in.driver.curve();
            in.driver.go_to(before, states, curve);
            break;
        }
        const bool whole = in.driver.travel() < goal - slack;
        if (whole && in.driver.travel() > in.marks.back().at.travel) in.keep_mark();
    }
    return in.driver.travel();
}

const std::string& LiveStroke::held_by() const {
    return in_->held;
}

StrokeResult LiveStroke::release() {
    Inside& in = *in_;
    StrokeResult result = in.driver.release_from_here();
    if (result.solved() && result.audit.residue_percent() <= limits::open_balance)
        return on_whole_strip(std::move(result), in.whole, in.pressed.piece, in.options.solver);
    StrokeScene scene = in.whole;
    scene.stop = {StopKind::travel, in.driver.travel(), scene.stop.left, scene.stop.right};
    return press(scene, in.options);
}

}  // namespace overbend::stroke
