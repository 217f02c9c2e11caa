// One of the things that the window can show. Its controls are drawn by ImGui in the window that MainShow
// has opened for it; it never waits for a computation.

#pragma once

#include "render/ui/window.h"
#include "scenes/window/shared/remembered.h"

namespace overbend::window {

class Scene {
  public:
    Scene() = default;
    virtual ~Scene() = default;
    Scene(const Scene&) = delete;
    Scene& operator=(const Scene&) = delete;

    // Takes in what other threads have finished; see render::Show.
    virtual ui::Motion motion() = 0;
    // In the room that is left of ImGui's present window. seconds: since the frame before.
    virtual void draw(ui::Ui& ui, picture::Theme theme, double seconds) = 0;
    // Adds what it wants to be remembered.
    virtual void remember(Remembered& remembered) const = 0;
};

}  // namespace overbend::window
