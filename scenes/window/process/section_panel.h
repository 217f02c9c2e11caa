// Beside the picture: the clicked section of the strip at the moment that is shown.

#pragma once

#include "render/ui/texture.h"
#include "render/ui/ui.h"
#include "scenes/window/job/picture_painter.h"

namespace overbend::window {

class SectionPanel {
  public:
    void show(const Painted& painted);
    // Returns true when it is to be closed.
    bool draw(ui::Ui& ui, const SectionMark& mark);
    // px, of the charts that have room in it; asked for in the next request
    int chart_width() const { return width_; }
    int chart_height() const { return height_; }
    double chart_letter() const { return letter_; }

  private:
    ui::Texture charts_;
    bool has_charts_ = false;
    struct Figures {
        double blank_position = 0.0, height = 0.0, stress = 0.0, plastic_strain = 0.0;
        chart::SectionPoint at;
    };
    std::optional<Figures> figures_;
    int width_ = 0, height_ = 0;
    double letter_ = 0.0;
};

}  // namespace overbend::window
