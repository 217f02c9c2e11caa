// The screen that a window would be on.

#pragma once

#include <memory>
#include <optional>
#include <string>

namespace overbend::ui {

// A connection to it of our own. To be kept as long as there is a window: a display without any connection
// may begin again, and the next one fail meanwhile.
class Screen {
  public:
    Screen();
    ~Screen();
    Screen(const Screen&) = delete;
    Screen& operator=(const Screen&) = delete;

    // Why no window can be opened here, in words; nothing when one can.
    std::optional<std::string> why_not() const;

    // How much larger than on an ordinary screen (96 dots an inch) words and lines should be: what the
    // environment variable OVERBEND_SCALE says, or else the resource Xft.dpi of the display over 96; 1
    // without either. Between 0.5 and 4.
    double scale() const;

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace overbend::ui
