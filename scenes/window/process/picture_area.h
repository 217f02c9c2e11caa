// The picture of the job on the screen: zoomed about the pointer, dragged, pointed at.

#pragma once

#include <chrono>
#include <optional>

#include "render/ui/texture.h"
#include "render/ui/ui.h"
#include "scenes/window/job/picture_painter.h"

namespace overbend::window {

enum class LensFollows { nothing, bend, pointer };

class PictureArea {
  public:
    // The size of a picture that fits into so much room; what is left of it stays empty.
    static picture::PictureSize size_in(double width, double height);

    // Shows what has been painted; the pixels are free again afterwards.
    void show(const Painted& painted);
    bool has_picture() const { return texture_.width() > 0; }
    const std::optional<Painted>& shown() const { return shown_; }  // without its pixels

    // The mark becomes the place of the strip that was clicked. A double click fits the picture, and leaves
    // the mark as it was before its first click.
    // Until it has been painted for the room that is there, it is drawn smaller, so that all of it is seen.
    void draw(ui::Ui& ui, LensFollows lens, std::optional<SectionMark>& mark, double width, double height);
    // Where a place of what is shown is on it; none: out of sight.
    std::optional<picture::Point> seen_at(const picture::Place& place) const;
    void draw_ring(const picture::Place& place) const;

    const picture::Zoom& zoom() const { return zoom_; }
    // Where the pointer is on the strip, for the lens.
    const std::optional<double>& pointed() const { return pointed_; }

    void fit();
    void zoom_by(double factor);           // about the stage's middle
    void pan_by(double right, double up);  // parts of what is seen
    void look_at(const Playback& playback, int stroke, const picture::Place& place);  // from near
    // From further off, if it is not seen.
    void bring_into_view(const Playback& playback, int stroke, const picture::Place& place);
    // Names wait for it to come to rest.
    bool moving() const;

  private:
    std::optional<SectionMark> mark_before_;  // the last click
    void zoom_about(const picture::Point& at, double factor);
    void move(const picture::Place& by);
    const picture::View& whole_view() const;  // of the stroke that is shown, before it is zoomed
    picture::Place place_of(const picture::Point& at) const;
    std::optional<SectionMark> mark_at(const picture::Point& at, double near) const;
    ui::Texture texture_;
    std::optional<Painted> shown_;
    picture::Zoom zoom_;
    std::optional<double> pointed_;
    picture::Point corner_ = picture::Point::Zero();  // px in the window, as it was drawn last
    double times_ = 1.0;                              // smaller or larger
    std::chrono::steady_clock::time_point moved_{};
};

}  // namespace overbend::window
