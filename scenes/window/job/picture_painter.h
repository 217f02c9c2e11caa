// Paints instants of a film on a thread of its own: the next one is painted while the last one is shown.

#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "render/chart/section_now.h"
#include "render/picture/painter.h"
#include "scenes/window/job/playback.h"
#include "scenes/window/shared/background.h"

namespace overbend::window {

// A place of the strip that was clicked.
struct SectionMark {
    double blank_position = 0.0;  // mm
    int layer = 0;                // from the lower surface as the strip lay then
    bool face_down = false;       // how it lay: turned over, the layers are counted from the other side
};

// What is to be painted.
struct PictureRequest {
    SharedPlayback playback;
    double at = 0.0;
    picture::Theme theme = picture::Theme::light;
    picture::Colouring colouring = picture::Colouring::hoop_stress;
    double springback_scale = 1.0;
    picture::Zoom zoom;
    picture::Names names = picture::Names::placed_anew;
    std::optional<double> lens_at;  // mm of the blank; none: the bend
    std::optional<SectionMark> mark;
    int chart_width = 0, chart_height = 0;  // px, of the section's charts; 0: none are wanted
    double chart_letter = 0.0;              // px, of their smallest words
};
bool same(const PictureRequest& a, const PictureRequest& b);

struct Painted {
    std::shared_ptr<picture::Pixels> picture;
    std::shared_ptr<picture::Pixels> charts;   // none: not wanted, or no room
    std::optional<chart::SectionNow> section;  // of the mark
    PictureRequest request;
    film::Instant instant;
    picture::View view;  // of the stroke that is shown, as it was zoomed
};

// The layer of a mark in a stroke of the job, which may have the strip turned over.
int layer_in(const Playback& playback, int stroke, const SectionMark& mark);

class PicturePainter {
  public:
    PicturePainter();
    ~PicturePainter();

    // Painted as soon as what is in hand is done; what was asked for before and not begun is forgotten.
    void paint(const PictureRequest& request);
    // The request that is being fulfilled or was last.
    const std::optional<PictureRequest>& requested() const { return requested_; }
    bool busy() const { return background_.busy(); }

    // What has been finished, once. Throws what drawing threw.
    std::optional<Painted> take() { return background_.take(); }
    // The same as a drawing, for files: on the thread that asks for it.
    static picture::DrawingList drawing_of(const PictureRequest& request);

    // Its pixels may be painted over.
    void give_back(Painted& painted);

  private:
    struct Canvas;  // what the painting thread keeps from picture to picture
    std::shared_ptr<Canvas> canvas_;
    std::vector<std::shared_ptr<picture::Pixels>> spare_;
    std::optional<PictureRequest> requested_;
    Background<Painted> background_;
};

}  // namespace overbend::window
