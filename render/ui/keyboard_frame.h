// The control that the keyboard is on: a frame goes round it, Tab and Shift+Tab take it to the next and the
// one before, in the order in which they stand, and Space uses it. Fields for typing are begun at once.
//
// Dear ImGui goes by Tab to its fields only, and by arrows not from one panel into another: this asks it to
// frame what comes next by its own means. Arrows stay within what is being used: a slider, a field, a list.

#pragma once

#include <string>
#include <vector>

namespace overbend::ui {

// What a control is made of: a field with buttons is named "##" and its words.
enum class FramedAs { item, field, field_with_buttons };

class KeyboardFrame {
  public:
    // At the beginning of a frame. among: what can be framed, by its words, as it stood in the last one.
    void begin(const std::vector<std::string>& among);
    // After a control has been drawn with ImGui: frames it if it is its turn.
    void offer(const std::string& words, FramedAs as);

    const std::string& framed() const { return framed_; }  // empty: none yet

  private:
    std::string framed_, next_;
    std::size_t at_ = 0;  // where it stood: what has gone makes room for its neighbour
};

}  // namespace overbend::ui
