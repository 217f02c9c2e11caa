// The controls of a window: each is drawn, asked for its key, and noted, so that a list of shortcuts can be
// shown and a script can find every one of them.
//
// All of it is to be called between the begin and the end of a frame, in a Show's draw.
//
// Units  window pixels, from the upper left corner.

#pragma once

#include <SFML/Window/Keyboard.hpp>
#include <map>
#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "render/ui/keyboard_frame.h"
#include "render/ui/texture.h"
#include "render/ui/typed_number.h"

namespace overbend::ui {

// A key, with Ctrl or Shift; without a code there is none.
struct Key {
    sf::Keyboard::Key code = sf::Keyboard::Unknown;
    bool ctrl = false;
    bool shift = false;
};
constexpr Key no_key{};
std::string key_words(const Key& key);  // "Ctrl+Z"

enum class ControlKind { button, check, choice, entry, slider, number, text, picture };

struct Control {
    std::string words;  // unique in a frame: what a user sees
    ControlKind kind = ControlKind::button;
    picture::Rect box;
    bool visible = true;  // at least partly within its panel; else it has to be scrolled to
    bool enabled = true;
    Key key;
};

// What the mouse does on a picture. Places in the picture's own pixels.
struct PictureInput {
    bool hovered = false;
    picture::Point at = picture::Point::Zero();
    double wheel = 0.0;                                     // notches, away from the user positive
    picture::Point dragged = picture::Point::Zero();        // since the last frame, with the left button
    picture::Point dragged_right = picture::Point::Zero();  // the same, right or middle button
    bool pressed = false;                                   // the left button, now
    bool held = false;
    bool released = false;
    bool clicked = false;         // pressed and released without being dragged
    bool double_clicked = false;  // its first click has been told before as a click
};

enum class Enabled { yes, no };
enum class Chosen { no, yes };
constexpr Enabled enabled_if(bool is) {
    return is ? Enabled::yes : Enabled::no;
}
constexpr Chosen chosen_if(bool is) {
    return is ? Chosen::yes : Chosen::no;
}

class Ui {
  public:
    // All of them return true when the user did something with the control. A tip is shown beside the mouse.
    bool button(const std::string& words, const Key& key = no_key, const std::string& tip = "",
                Enabled enabled = Enabled::yes);
    // Looks pressed when chosen.
    bool toggle(const std::string& words, Chosen chosen, const Key& key = no_key, const std::string& tip = "",
                Enabled enabled = Enabled::yes);
    bool check(const std::string& words, bool& value, const Key& key = no_key, const std::string& tip = "");
    bool choice(const std::string& words, int& chosen, const std::vector<std::string>& among,
                const std::string& tip = "");
    // A row of a list, over the whole width.
    bool entry(const std::string& words, Chosen chosen, const std::string& tip = "");
    // format as printf's, with the unit: "%.2f mm". Beside it is a field to type into, "Thickness, typed".
    bool slider(const std::string& words, double& value, double low, double high, const char* format,
                const std::string& tip = "");
    // Typed, or changed by the step's buttons; returns true when it is done with (Enter, another control).
    // What is no number from low to high is refused with a word below the field, and the value is kept.
    bool number(const std::string& words, double& value, double low, double high, double step,
                const char* format, const std::string& tip = "");
    bool text(const std::string& words, std::string& value, const std::string& tip = "");  // with Enter
    // The picture as it was last shown, at its own size.
    // Or so many times larger; places are told in its own pixels all the same.
    PictureInput picture(const std::string& words, const Texture& texture, double times = 1.0);

    // Room of its own for a control that is drawn by its owner, with ImGui: what the mouse does in it.
    PictureInput area(const std::string& words, double width, double height, const std::string& tip = "");

    // Part of the width that is kept for the words before a choice, slider, number or text, from here on in
    // this frame: 0 when each stands close behind its words. At first it is columns_at.
    static constexpr double columns_at = 0.48;
    void words_before(double part) { words_before_ = part; }

    // A key without a control of its own, for the list of shortcuts.
    bool key(const std::string& words, const Key& key);

    // The panel that is being drawn, a page down or up by Ctrl+Page Down and Ctrl+Page Up: what is below its
    // last control is not to be reached by Tab. For one panel in a frame.
    void scroll_by_keys();

    // Words broken to the width; muted for remarks, alarm for problems of a job.
    enum class Weight { plain, muted, alarm, heading };
    void words(const std::string& words, Weight weight = Weight::plain);
    void words_beside(const std::string& words, Weight weight);  // on the line of the control before them

    // Controls in between are not to be used.
    void begin_enabled(Enabled enabled);
    void end_enabled();

    // All shortcuts of this frame up to now, one per line, for the help panel.
    std::vector<std::pair<std::string, std::string>> shortcuts() const;

    // ---- for the code that draws frames, and for scripts
    void begin_frame();
    const std::vector<Control>& controls() const { return controls_; }  // of this frame or the last one
    const std::string& framed() const { return frame_.framed(); }       // by the keyboard; empty: none yet
    const std::map<std::string, int>& used() const { return used_; }    // how often, since the beginning

    // Why what was typed last was not taken, by the words of the control.
    const std::map<std::string, std::string>& refused() const { return refused_; }

  private:
    bool pressed(const Key& key) const;
    void label_before(const std::string& words) const;
    PictureInput pointed(const std::string& words, double width, double height, const std::string& tip);
    void note(const std::string& words, ControlKind kind, const Key& key, const std::string& tip, bool used);
    std::vector<Control> controls_;
    std::map<std::string, int> used_;
    KeyboardFrame frame_;
    // Draws the field at the cursor, as wide; true when what was typed is taken.
    bool typed_field(const std::string& words, const char* id, double width, double& value,
                     const NumberField& field);
    void refusal(const std::string& words, double value, const NumberField& field);
    std::map<std::string, std::string> typed_;    // what is being typed, by the words of its control
    std::map<std::string, std::string> refused_;  // why what was typed last was not taken
    int disabled_ = 0;
    double words_before_ = columns_at;
};

}  // namespace overbend::ui
