// Controls side by side, on to the next line where there is no room for one.

#pragma once

#include <functional>
#include <string>

#include "render/ui/ui.h"

namespace overbend::window {

class Flow {
  public:
    explicit Flow(ui::Ui& ui) : ui_(&ui) {}
    // As those of Ui.
    bool button(const std::string& words, const ui::Key& key = ui::no_key, const std::string& tip = "",
                ui::Enabled enabled = ui::Enabled::yes);
    bool toggle(const std::string& words, ui::Chosen chosen, const ui::Key& key = ui::no_key,
                const std::string& tip = "", ui::Enabled enabled = ui::Enabled::yes);
    // A control with its words close before it (a slider, a choice) in so many px.
    void boxed(const char* id, double width, const std::function<void()>& control);
    // To be called before any other control with its width in px.
    void next(double width);

  private:
    void next_button(const std::string& words);
    ui::Ui* ui_;
    bool first_ = true;
};

}  // namespace overbend::window
