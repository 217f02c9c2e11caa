#include "scenes/window/bench/bench_scene.h"

#include <imgui.h>

#include <algorithm>
#include <chrono>
#include <utility>

#include "render/ui/texture.h"
#include "scenes/files/case/read_card.h"
#include "scenes/window/bench/controls.h"
#include "scenes/window/shared/severity_mark.h"
#include "sim/units.h"

namespace overbend::window {

using ui::Motion;
using ui::Ui;

struct BenchScene::Inside {
    BenchState state;
    RememberedBench left;            // from the last time
    std::vector<std::string> cards;  // none: the scene has not been looked at
    BenchTold told;
    ui::Texture texture;
    std::shared_ptr<picture::Pixels> fresh;  // painted, not shown yet
    BoardSize size;
    picture::Theme theme = picture::Theme::light;
    std::chrono::steady_clock::time_point clock = std::chrono::steady_clock::now();
    bool drawn = false;     // the scene has been looked at: before it, nothing is computed
    bool unseen = false;    // something has changed since the last frame
    bool dragging = false;  // the punch, by the mouse
    BenchWork work;
    Background<Overbend> overbends;

    // Nothing can be shown of what is set up now.
    bool failed() const { return told.trouble || !told.error.empty() || trouble_of(state.setup); }

    void begin() {
        if (!cards.empty()) return;
        cards = files::known_cards();
        state = begin_bench(left);
    }
    BenchRequest request() const;
    void take();
    void look_where_it_is();
    void look_for_overbend();
    void draw_picture(Ui& ui);
};

namespace {

constexpr const char* stale_words = "Figures and picture of the last settings that worked, not of those now.";

}  // namespace

BenchScene::BenchScene(const Remembered& remembered) : in_(std::make_unique<Inside>()) {
    in_->left = remembered.bench;
}
BenchScene::~BenchScene() = default;

BenchRequest BenchScene::Inside::request() const {
    BenchRequest w;
    w.setup = state.setup;
    w.moves = state.moves;
    w.released = state.setup.kind == BenchKind::pure ? released_part(state) : 0.0;
    w.size = size;
    w.look.theme = theme;
    w.look.free = window::told(state);
    const bool known = told.shown && !told.shown->readings.empty();
    w.look.line = game_line(state, known ? told.shown->readings.front().free / degree : 0.0);
    return w;
}

void BenchScene::Inside::take() {
    try {
        if (std::optional<BenchShown> shown = work.take()) {
            told.error.clear();
            told.trouble = shown->trouble;
            unseen = true;
            if (!shown->trouble) {
                // Of ways down that were really bent, not painted alone, in tools that stood there already.
                const bool bent = told.shown && told.shown->way < shown->way &&
                                  same(told.shown->request.setup, shown->request.setup);
                if (bent && shown->bend_seconds > 0.0) told.rate = 1.0 / shown->bend_seconds;
                fresh = shown->board;
                shown->board.reset();
                told.shown = std::move(shown);
            }
        }
    } catch (const std::exception& error) {
        told.error = error.what();
        unseen = true;
    }
    try {
        if (std::optional<Overbend> found = overbends.take()) {
            told.overbend = std::move(found);
            unseen = true;
        }
    } catch (const std::exception& error) {
        told.overbend.reset();
        told.error = error.what();
        unseen = true;
    }
    const bool looking = overbends.busy();
    unseen = unseen || looking != told.looking;
    told.looking = looking;
}

// Without a moment the curvature is what has stayed.
void BenchScene::Inside::look_where_it_is() {
    if (state.setup.kind != BenchKind::pure || state.phase != BenchPhase::free || !told.shown) return;
    const BenchRequest& shown = told.shown->request;
    if (same(shown.setup, state.setup) && shown.moves.size() == state.moves.size() &&
        shown.moves.back().let_go)
        state.way = told.shown->way;
}

Motion BenchScene::motion() {
    Inside& in = *in_;
    const auto now = std::chrono::steady_clock::now();
    const double seconds = std::chrono::duration<double>(now - in.clock).count();
    in.clock = now;
    if (!in.drawn) return Motion::still;
    advance(in.state, std::min(seconds, 0.1));
    in.take();
    in.look_where_it_is();
    const BenchRequest wanted = in.request();
    const bool fulfilled = in.work.requested() && same(*in.work.requested(), wanted);
    if (!fulfilled && !in.work.busy()) in.work.show(wanted);
    if (in.unseen) return Motion::moving;
    const bool waits =
        !fulfilled || in.work.busy() || in.told.looking || in.state.phase == BenchPhase::springing_back;
    return waits ? Motion::awaiting : Motion::still;
}

void BenchScene::Inside::look_for_overbend() {
    overbends.start(
        [setup = state.setup, metal = state.metal, wanted = state.wanted * degree](const Wanted& w) {
            Overbend found = overbend_for(setup, metal, wanted, [&w] { return w.still(); });
            w.check();
            return found;
        });
    told.looking = true;
}

void BenchScene::Inside::draw_picture(Ui& ui) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    size.width = std::max(1, static_cast<int>(room.x)), size.height = std::max(1, static_cast<int>(room.y));
    size.letter = ImGui::GetFontSize();
    if (texture.width() == 0) {
        ui.words(told.error.empty() ? "Placing the strip ..." : told.error, Ui::Weight::muted);
        return;
    }
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const ui::PictureInput input = ui.picture("Punch", texture);
    if (failed()) draw_band(corner, room.x, stale_words);
    if (input.dragged.y() != 0.0 && told.shown) {
        dragging = true;
        const double limit = deepest(state.setup);
        const bool pure = state.setup.kind == BenchKind::pure;
        const double per_px = pure ? limit / (0.6 * size.height) : 1.0 / told.shown->px_per_mm;
        // From where it is held, so that it follows the hand at once.
        press_to(state, std::min(state.way, told.shown->limit) + input.dragged.y() * per_px);
    }
    if (dragging && !input.held) {
        dragging = false;
        release(state);
    }
}

void BenchScene::draw(Ui& ui, picture::Theme theme, double) {
    Inside& in = *in_;
    in.begin();
    in.drawn = true;
    in.theme = theme;
    in.unseen = false;
    if (in.fresh) {
        in.texture.show(*in.fresh);
        in.fresh.reset();
    }
    ImGui::BeginChild("bench panel", {20.0f * ImGui::GetFontSize(), 0.0f});
    ui.scroll_by_keys();
    if (draw_bench_controls(ui, in.state, in.cards, in.told) == BenchAsked::overbend) in.look_for_overbend();
    ImGui::EndChild();
    ImGui::SameLine();
    ImGui::BeginChild("bench picture", {0.0f, 0.0f}, false,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    in.draw_picture(ui);
    ImGui::EndChild();
}

// What cannot be pressed is not begun with the next time.
void BenchScene::remember(Remembered& remembered) const {
    if (in_->cards.empty()) return;
    BenchState state = in_->state;
    if (in_->failed()) {
        if (!in_->told.shown) {
            remembered.bench = {};
            return;
        }
        const double part = state.depth / deepest(state.setup);
        state.setup = in_->told.shown->request.setup;
        state.depth = part * deepest(state.setup);
    }
    window::remember(state, remembered.bench);
}

const BenchState& BenchScene::state() const {
    return in_->state;
}
const BenchTold& BenchScene::told() const {
    return in_->told;
}

}  // namespace overbend::window
