// Controls side by side, on to the next line where there is no room for one.

#pragma once

#include <functional>
#include <string>

#include "render/ui/ui.h"

namespace overbend::window {

class Flow {
  public:
    // To be called before each control with its width in px.
    void next(double width);
    void next_button(const std::string& words);  // as wide as a button with these words
    // A control with its words close before it (a slider, a choice) in so many px.
    void boxed(ui::Ui& ui, const char* id, double width, const std::function<void()>& control);

  private:
    bool first_ = true;
};

}  // namespace overbend::window
