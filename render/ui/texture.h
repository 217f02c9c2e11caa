// A picture's pixels where the graphics card can show them.

#pragma once

#include "render/picture/drawing_list.h"
#include "render/picture/painter.h"

struct ImDrawList;

namespace overbend::ui {

// Belongs to the OpenGL context of the window it was made in.
class Texture {
  public:
    Texture() = default;
    ~Texture();
    Texture(const Texture&) = delete;
    Texture& operator=(const Texture&) = delete;

    void show(const picture::Pixels& pixels);
    void show(const picture::DrawingList& list);  // painted on this thread

    int width() const { return width_; }  // px; 0: nothing yet
    int height() const { return height_; }
    void* handle() const;  // ImGui's name for it

    // Into the list of what ImGui draws: its left upper corner there, at its own size, over what lies below.
    // Or so many times larger.
    void add_to(ImDrawList& list, const picture::Point& corner, double times = 1.0) const;

  private:
    unsigned name_ = 0;
    int width_ = 0, height_ = 0;
    picture::Pixels pixels_;  // kept, to save their allocation
};

}  // namespace overbend::ui
