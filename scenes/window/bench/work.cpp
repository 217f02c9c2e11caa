#include "scenes/window/bench/work.h"

#include <algorithm>
#include <chrono>
#include <exception>
#include <utility>

namespace overbend::window {

namespace {

double seconds_since(std::chrono::steady_clock::time_point begin) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

bool same(const BoardInfo& a, const BoardInfo& b) {
    return a.theme == b.theme && a.free == b.free && a.line == b.line;
}

bool same(const std::vector<BenchMove>& a, const std::vector<BenchMove>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const BenchMove& x, const BenchMove& y) { return same(x, y); });
}

}  // namespace

bool same(const BenchRequest& a, const BenchRequest& b) {
    return same(a.moves, b.moves) && a.released == b.released && same(a.size, b.size) &&
           same(a.look, b.look) && same(a.setup, b.setup);
}

struct BenchWork::Bench {
    std::unique_ptr<BenchPress> press;
    std::optional<BoardPlan> plan;
    std::optional<BenchRequest> followed;  // last

    // Nothing when it can be made.
    std::optional<BenchTrouble> set_up(const BenchSetup& setup) {
        if (press && same(press->setup(), setup)) return {};
        if (std::optional<BenchTrouble> trouble = trouble_of(setup)) return trouble;
        try {
            auto next = std::make_unique<BenchPress>(setup);
            press = std::move(next);
        } catch (const std::exception& error) {
            return BenchTrouble{BenchSlider::thickness, error.what()};
        }
        plan.reset();
        followed.reset();
        return {};
    }

    BenchShown show(const BenchRequest& request) {
        BenchShown shown;
        shown.request = request;
        auto begin = std::chrono::steady_clock::now();
        shown.trouble = set_up(request.setup);
        if (shown.trouble) return shown;
        if (!followed || !same(followed->moves, request.moves) || followed->released != request.released) {
            press->follow(request.moves, request.released);
            followed = request;
        }
        shown.bend_seconds = seconds_since(begin);
        begin = std::chrono::steady_clock::now();
        if (!plan || !same(plan->size, request.size) || !has_room(*plan, press->strips()))
            plan = plan_board(*press, request.size);
        shown.board = std::make_shared<picture::Pixels>();
        picture::paint(draw_board(press->strips(), *plan, request.look), *shown.board);
        shown.paint_seconds = seconds_since(begin);
        for (const BentStrip& s : press->strips())
            shown.readings.push_back(
                {s.metal.name, s.loaded, s.free, s.radius_loaded, s.radius_free, s.let_go, s.presses});
        const BenchMove& now = request.moves.back();
        const double limit = press->way_limit();
        shown.way = std::clamp(now.let_go ? 0.0 : now.way, -limit, limit);
        if (request.setup.kind == BenchKind::pure && press->strips().front().let_go)
            shown.way = press->strips().front().recording.states.back().travel;
        for (const BentStrip& s : press->strips())
            if (!s.held_by.empty() && !s.let_go) shown.held_by = s.metal.name + ": " + s.held_by;
        shown.limit = press->way_limit(), shown.limited_by = press->limited_by();
        shown.px_per_mm = plan->views.front().scale;
        return shown;
    }
};

BenchWork::BenchWork() : bench_(std::make_shared<Bench>()) {}

void BenchWork::show(const BenchRequest& request) {
    requested_ = request;
    background_.start_next([bench = bench_, request](const Wanted&) { return bench->show(request); });
}

}  // namespace overbend::window
