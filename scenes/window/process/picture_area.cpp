#include "scenes/window/process/picture_area.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "render/picture/strip_hit.h"

namespace overbend::window {

using picture::Place;
using picture::Point;

namespace {

constexpr double furthest = 0.3, nearest = 40.0;  // times
constexpr double a_notch = 1.2;                   // of the wheel
constexpr auto still_after = std::chrono::milliseconds(200);

}  // namespace

picture::PictureSize PictureArea::size_in(double width, double height) {
    picture::PictureSize size;
    size.width = std::clamp(static_cast<int>(width), 320, 3840);
    size.height = std::clamp(static_cast<int>(height), 180, std::min(2160, size.width * 16 / 9));
    return size;
}

void PictureArea::show(const Painted& painted) {
    texture_.show(*painted.picture);
    // Times of the film with another job, or another size: the zoom stays.
    shown_ = painted;
    shown_->picture.reset();
    shown_->charts.reset();
}

const picture::View& PictureArea::whole_view() const {
    return shown_->request.playback->frames.looks[shown_->instant.stroke].view;
}

Place PictureArea::place_of(const Point& at) const {
    // By the zoom as it is now: the picture may be a frame behind it.
    const picture::View& view = whole_view();
    const double scale = zoom_.times * view.scale;
    const Point off = at - view.stage.centre();
    return view.centre + zoom_.shift + Place(off.x(), -off.y()) / scale;
}

std::optional<SectionMark> PictureArea::mark_at(const Point& at, double near) const {
    const Playback& playback = *shown_->request.playback;
    const film::Instant& m = shown_->instant;
    const picture::Rect stage = shown_->view.stage;
    if (!picture::holds(stage, at) || !film::in_a_stroke(m.passage)) return {};
    const picture::StripHit hit = picture::nearest_on_strip(*playback.shown.strokes[m.stroke].recording,
                                                            drawn_state(playback, m), place_of(at));
    if (hit.outside * zoom_.times * playback.frames.looks[m.stroke].view.scale > near) return {};
    return SectionMark{hit.blank_position, hit.layer, !playback.shown.strokes[m.stroke].upper_face_up};
}

void PictureArea::draw(ui::Ui& ui, LensFollows lens, std::optional<SectionMark>& mark, double width,
                       double height) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    corner_ = {corner.x, corner.y};
    times_ = std::min({1.0, width / std::max(1, texture_.width()), height / std::max(1, texture_.height())});
    const ui::PictureInput input = ui.picture("Picture", texture_, times_);
    if (!shown_) return;
    const double letter = ImGui::GetFontSize();
    if (input.wheel != 0.0) zoom_about(input.at, std::pow(a_notch, input.wheel));
    const Point dragged = input.dragged + input.dragged_right;
    const bool far_enough =
        ImGui::GetIO().MouseDragMaxDistanceSqr[0] >= 16.0f || input.dragged_right != Point(Point::Zero());
    if (dragged != Point(Point::Zero()) && far_enough) {
        move(Place(-dragged.x(), dragged.y()) / (zoom_.times * whole_view().scale));
    }
    if (input.double_clicked) {
        fit();
        mark = mark_before_;
    }
    if (lens == LensFollows::pointer && input.hovered) {
        if (const std::optional<SectionMark> at = mark_at(input.at, 1e9)) pointed_ = at->blank_position;
    }
    if (lens != LensFollows::pointer) pointed_.reset();
    if (!input.clicked) return;
    mark_before_ = mark;
    if (const std::optional<SectionMark> at = mark_at(input.at, 0.5 * letter)) mark = at;
}

std::optional<Point> PictureArea::seen_at(const Place& place) const {
    if (!shown_) return {};
    const Point at = shown_->view.on_picture(place);
    if (!picture::holds(shown_->view.stage, at)) return {};
    return at;
}

void PictureArea::draw_ring(const Place& place) const {
    const std::optional<Point> at = seen_at(place);
    if (!at) return;
    const Point there = corner_ + times_ * *at;
    const float radius = 1.25f * ImGui::GetFontSize();
    const ImVec2 centre(static_cast<float>(there.x()), static_cast<float>(there.y()));
    ImDrawList* list = ImGui::GetWindowDrawList();
    list->AddCircle(centre, radius, IM_COL32(255, 255, 255, 255), 32, 5.0f);
    list->AddCircle(centre, radius, IM_COL32(0x00, 0x72, 0xB2, 0xFF), 32, 3.0f);
}

void PictureArea::fit() {
    zoom_ = {};
}

void PictureArea::zoom_about(const Point& at, double factor) {
    const picture::View& view = whole_view();
    const Point about = picture::holds(view.stage, at) ? at : view.stage.centre();
    const Place fixed = place_of(about);
    zoom_.times = std::clamp(zoom_.times * factor, furthest, nearest);
    zoom_.shift += fixed - place_of(about);
    moved_ = std::chrono::steady_clock::now();
}

void PictureArea::zoom_by(double factor) {
    if (shown_) zoom_about(shown_->view.stage.centre(), factor);
}

void PictureArea::pan_by(double right, double up) {
    if (!shown_) return;
    const picture::View& view = whole_view();
    move(Place(right * view.width_mm(), up * view.height_mm()) / zoom_.times);
}

void PictureArea::move(const Place& by) {
    zoom_.shift += by;
    moved_ = std::chrono::steady_clock::now();
}

void PictureArea::look_at(const Playback& playback, int stroke, const Place& place) {
    zoom_.times = std::max(zoom_.times, 2.0);
    zoom_.shift = place - playback.frames.looks[stroke].view.centre;
    moved_ = std::chrono::steady_clock::now();
}

void PictureArea::bring_into_view(const Playback& playback, int stroke, const Place& place) {
    const picture::View& fitted = playback.frames.looks[stroke].view;
    picture::View view = fitted;
    view.scale *= zoom_.times, view.centre += zoom_.shift;
    const Point at = view.on_picture(place);
    if (picture::holds(picture::grown(view.stage, -3.0 * ImGui::GetFontSize()), at)) return;
    // The place and the punch's axis at the die's face, with room around.
    const Place extent = place.cwiseAbs();
    const double scale = std::min({fitted.scale, 0.7 * view.stage.width / std::max(1e-9, extent.x()),
                                   0.7 * view.stage.height / std::max(1e-9, extent.y())});
    zoom_.times = std::max(furthest, scale / fitted.scale);
    zoom_.shift = 0.5 * place - fitted.centre;
    moved_ = std::chrono::steady_clock::now();
}

bool PictureArea::moving() const {
    return std::chrono::steady_clock::now() - moved_ < still_after;
}

}  // namespace overbend::window
