#include "scenes/window/process/process_scene.h"

#include <imgui.h>

#include <chrono>
#include <cmath>

#include "scenes/window/job/job_work.h"
#include "scenes/window/panels/process_panels.h"
#include "scenes/window/process/controls.h"
#include "scenes/window/process/section_panel.h"
#include "scenes/window/process/time_bar.h"
#include "scenes/window/shared/flow.h"
#include "scenes/window/shared/severity_mark.h"

namespace overbend::window {

using ui::Motion;
using ui::Ui;

struct ProcessScene::Inside {
    std::string last_case;  // remembered, not opened yet
    std::string trouble;    // with the picture
    ViewChoice look;
    PlayHead head;
    SharedPlayback seen;  // the film that the head is in
    std::optional<SectionMark> mark;
    struct Ringed {
        picture::Place at;
        double frame = 0.0;
        SharedPlayback playback;
    };
    std::optional<Ringed> ringed;  // a finding that was chosen
    picture::Theme theme = picture::Theme::light;
    std::chrono::steady_clock::time_point clock = std::chrono::steady_clock::now();
    double foot = 0.0;    // px, of timeline and controls, as it was last
    bool unseen = false;  // something has changed since the last frame

    PictureArea picture;
    SectionPanel section;
    ProcessPanels panels;
    std::optional<Painted> fresh;  // painted, not shown yet
    JobWork work;
    PicturePainter painter;

    void take_playback();
    PictureRequest request() const;
    void draw_middle(Ui& ui);
    void draw_picture(Ui& ui, double width, double height);
    void draw_panels(Ui& ui);
    bool ring_is_due() const;
    void draw_over(const ImVec2& corner, double width);
    void go_to(const FindingPlace& place);
    void show_interference();
};

ProcessScene::ProcessScene(const Remembered& remembered) : in_(std::make_unique<Inside>()) {
    in_->last_case = remembered.last_case;
    in_->head.speed = remembered.speed;
    in_->look = remembered_choice(remembered);
    in_->panels.recall(remembered);
}
ProcessScene::~ProcessScene() = default;

void ProcessScene::open(const std::filesystem::path& file) {
    in_->last_case.clear();
    in_->trouble.clear();
    in_->panels.open(file);
}

// The head keeps its place in a film of the same case.
void ProcessScene::Inside::take_playback() {
    if (work.playback() == seen) return;
    const SharedPlayback next = work.playback();
    const bool same_case = seen && seen->job->opening == next->job->opening;
    head.at = same_case ? same_place(*seen, head.at, *next) : next->strokes.front().first;
    if (!same_case) mark.reset(), picture.fit();
    seen = next;
}

PictureRequest ProcessScene::Inside::request() const {
    PictureRequest w;
    w.playback = seen;
    w.at = head.at;
    w.theme = theme;
    w.colouring = look.colouring;
    w.springback_scale = look.springback_scale;
    w.zoom = picture.zoom();
    w.names = picture.moving() ? picture::Names::carried_along : picture::Names::placed_anew;
    w.lens_at = picture.pointed();
    w.mark = mark;
    if (mark) {
        w.chart_width = section.chart_width(), w.chart_height = section.chart_height();
        w.chart_letter = section.chart_letter();
    }
    return w;
}

bool ProcessScene::unsaved() const {
    return in_->panels.unsaved();
}

const ProcessPanels& ProcessScene::panels() const {
    return in_->panels;
}
ProcessPanels& ProcessScene::panels() {
    return in_->panels;
}
std::optional<Verdict> ProcessScene::verdict() const {
    return in_->panels.verdict(in_->work);
}

Motion ProcessScene::motion() {
    Inside& in = *in_;
    in.unseen = in.work.take() || in.unseen;
    in.unseen = in.panels.take(in.work) || in.unseen;
    if (in.work.playback()) in.take_playback();
    const auto now = std::chrono::steady_clock::now();
    const double seconds = std::chrono::duration<double>(now - in.clock).count();
    in.clock = now;
    if (!in.seen)
        return in.unseen                            ? Motion::moving
               : in.work.busy() || in.panels.busy() ? Motion::awaiting
                                                    : Motion::still;
    advance(in.head, *in.seen, std::min(seconds, 0.25));
    try {
        if (std::optional<Painted> painted = in.painter.take()) {
            if (in.fresh) in.painter.give_back(*in.fresh);
            in.fresh = std::move(painted);
            in.unseen = true;
        }
    } catch (const std::exception& error) {
        in.trouble = error.what();
        in.unseen = true;
    }
    const PictureRequest wanted = in.request();
    const bool fulfilled = in.painter.requested() && same(*in.painter.requested(), wanted);
    if (!fulfilled && !in.painter.busy()) in.painter.paint(wanted);
    const bool waits = !fulfilled || in.painter.busy() || in.work.busy() || in.panels.busy() ||
                       in.head.playing == Playing::yes || in.picture.moving();
    return in.unseen ? Motion::moving : waits ? Motion::awaiting : Motion::still;
}

void ProcessScene::draw(Ui& ui, picture::Theme theme, double) {
    Inside& in = *in_;
    if (!in.last_case.empty()) open(std::filesystem::path(in.last_case));
    in.theme = theme;
    in.unseen = false;
    if (in.fresh) {
        in.picture.show(*in.fresh);
        in.section.show(*in.fresh);
        in.painter.give_back(*in.fresh);
        in.fresh.reset();
    }
    in.panels.draw_row(ui, in.work, in.trouble, in.request());
    in.draw_panels(ui);
    const double side = std::max(21.0 * ImGui::GetFontSize(), 0.19 * ImGui::GetWindowWidth());
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    const float right = in.mark ? static_cast<float>(side) + gap : 0.0f;
    ImGui::BeginChild("middle", {-right, 0.0f}, false,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    in.draw_middle(ui);
    ImGui::EndChild();
    if (!in.mark) return;
    ImGui::SameLine();
    ImGui::BeginChild("section", {0.0f, 0.0f});
    if (in.section.draw(ui, *in.mark)) in.mark.reset();
    ImGui::EndChild();
}

bool ProcessScene::Inside::ring_is_due() const {
    return ringed && picture.shown() && ringed->playback == picture.shown()->request.playback &&
           ringed->frame == picture.shown()->request.at;
}

void ProcessScene::Inside::draw_panels(Ui& ui) {
    if (!panels.shown()) return;
    const double side = panels.width() * ImGui::GetFontSize();
    ImGui::BeginChild(panels.name(), {static_cast<float>(side), 0.0f});
    ui.scroll_by_keys();
    if (const std::optional<FindingPlace> place = panels.draw(ui, work, request())) go_to(*place);
    ImGui::Dummy({0.0f, 0.5f * ImGui::GetFontSize()});  // the last line is whole at the end
    ImGui::EndChild();
    ImGui::SameLine();
}

void ProcessScene::Inside::go_to(const FindingPlace& place) {
    if (!seen) return;
    const std::optional<double> frame = frame_of_state(*seen, place.step, place.state);
    if (!frame) return;
    window::go_to(head, *seen, *frame);
    ringed.reset();
    if (place.at) ringed = Ringed{*place.at, *frame, seen};
    if (place.at) picture.look_at(*seen, stroke_at(*seen, *frame), *place.at);
}

// Where it is when it begins, if that is beyond what is seen.
void ProcessScene::Inside::show_interference() {
    const Stretch& hit = seen->interferences.front();
    const double at = seen->frames.instants[hit.first].at;
    for (const picture::ShownHit& f : seen->shown.strokes[hit.stroke].hits)
        if (f.is_there(at))
            picture.bring_into_view(*seen, hit.stroke,
                                    f.in_states.empty() ? f.deepest.at : f.in_states.front().first);
}

void ProcessScene::Inside::draw_middle(Ui& ui) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    if (foot == 0.0) foot = time_bar_height() + 2.0 * ImGui::GetFrameHeightWithSpacing();
    // On a small window they are scrolled, so that the picture keeps some room.
    const double height = std::min(foot, 0.45 * room.y);
    draw_picture(ui, room.x, room.y - height);
    if (!seen) return;
    ImGui::SetCursorPosY(room.y - static_cast<float>(height));
    if (const std::optional<double> at = draw_time_bar(ui, *seen, head, theme))
        window::go_to(head, *seen, *at);
    const double bar = ImGui::GetCursorPosY() - (room.y - height);
    ImGui::BeginChild("foot", {0.0f, 0.0f});
    if (draw_play_controls(ui, head, *seen) == Went::to_an_interference) show_interference();
    draw_view_controls(ui, look, picture, *seen, head, mark);
    const double needed = bar + ImGui::GetCursorPosY();
    ImGui::EndChild();
    // Laid out for another height: once more.
    unseen = std::abs(foot - needed) > 0.5;
    foot = needed;
}

void ProcessScene::Inside::draw_picture(Ui& ui, double width, double height) {
    if (width < 1.0 || height < 1.0) return;
    const picture::Lens lens =
        look.lens == LensFollows::nothing ? picture::Lens::hidden : picture::Lens::shown;
    const bool room_for_charts = width > 44.0 * ImGui::GetFontSize() && width > 1.25 * height;
    work.shape(
        {PictureArea::size_in(width, height), lens, room_for_charts ? look.charts : picture::Charts::hidden});
    ImGui::BeginChild("picture", {static_cast<float>(width), static_cast<float>(height)}, false,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    if (picture.has_picture()) {
        const ImVec2 corner = ImGui::GetCursorScreenPos();
        picture.draw(ui, look.lens, mark, width, height);
        draw_over(corner, width);
    } else if (!work.busy() && !panels.busy()) {
        ui.words("Drop a case file on the window to see its strokes here.", Ui::Weight::muted);
    }
    ImGui::EndChild();
}

// The ring of a chosen finding, while its moment is shown; and what is to be said of an older picture.
void ProcessScene::Inside::draw_over(const ImVec2& corner, double width) {
    if (ring_is_due()) picture.draw_ring(ringed->at);
    const std::string words = panels.out_of_date(work);
    if (!words.empty()) draw_band(corner, width, words);
}

const PlayHead& ProcessScene::head() const {
    return in_->head;
}

const std::optional<Painted>& ProcessScene::shown() const {
    return in_->picture.shown();
}

std::optional<picture::Point> ProcessScene::ring() const {
    if (!in_->ring_is_due()) return {};
    return in_->picture.seen_at(in_->ringed->at);
}

const SharedJob& ProcessScene::job() const {
    return in_->work.job();
}

void ProcessScene::remember(Remembered& remembered) const {
    remembered.speed = in_->head.speed;
    remember_choice(in_->look, remembered);
    in_->panels.remember(remembered);
}

}  // namespace overbend::window
