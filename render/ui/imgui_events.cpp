#include "render/ui/imgui_events.h"

#include <imgui.h>

#include <SFML/Window/Clipboard.hpp>
#include <string>

namespace overbend::ui {

namespace {

void set_clipboard(void*, const char* words) {
    sf::Clipboard::setString(sf::String::fromUtf8(words, words + std::char_traits<char>::length(words)));
}

const char* clipboard(void*) {
    static std::string words;
    const std::basic_string<sf::Uint8> utf8 = sf::Clipboard::getString().toUtf8();
    words.assign(utf8.begin(), utf8.end());
    return words.c_str();
}

void set_key(const sf::Event::KeyEvent& key, bool down) {
    ImGuiIO& io = ImGui::GetIO();
    if (key.code >= 0 && key.code < sf::Keyboard::KeyCount) io.KeysDown[key.code] = down;
    io.KeyCtrl = key.control, io.KeyShift = key.shift, io.KeyAlt = key.alt, io.KeySuper = key.system;
}

void release_all() {
    ImGuiIO& io = ImGui::GetIO();
    for (bool& down : io.KeysDown) down = false;
    for (bool& down : io.MouseDown) down = false;
    io.KeyCtrl = io.KeyShift = io.KeyAlt = io.KeySuper = false;
}

}  // namespace

void connect_keys() {
    ImGuiIO& io = ImGui::GetIO();
    using Key = sf::Keyboard;
    // Not Tab and arrows: see keyboard_frame.h.
    const std::pair<ImGuiKey_, Key::Key> keys[] = {
        {ImGuiKey_Insert, Key::Insert}, {ImGuiKey_Delete, Key::Delete}, {ImGuiKey_Backspace, Key::Backspace},
        {ImGuiKey_Space, Key::Space},   {ImGuiKey_Enter, Key::Enter},   {ImGuiKey_Escape, Key::Escape},
        {ImGuiKey_A, Key::A},           {ImGuiKey_C, Key::C},           {ImGuiKey_V, Key::V},
        {ImGuiKey_X, Key::X},           {ImGuiKey_Y, Key::Y},           {ImGuiKey_Z, Key::Z}};
    for (const auto& [imgui, sfml] : keys) io.KeyMap[imgui] = sfml;
    io.SetClipboardTextFn = set_clipboard;
    io.GetClipboardTextFn = clipboard;
}

void tell_imgui(const sf::Event& event) {
    ImGuiIO& io = ImGui::GetIO();
    switch (event.type) {
        case sf::Event::MouseMoved:
            io.MousePos = {static_cast<float>(event.mouseMove.x), static_cast<float>(event.mouseMove.y)};
            break;
        case sf::Event::MouseButtonPressed:
        case sf::Event::MouseButtonReleased:
            io.MousePos = {static_cast<float>(event.mouseButton.x), static_cast<float>(event.mouseButton.y)};
            if (event.mouseButton.button < 5)
                io.MouseDown[event.mouseButton.button] = event.type == sf::Event::MouseButtonPressed;
            break;
        case sf::Event::MouseWheelScrolled:
            (event.mouseWheelScroll.wheel == sf::Mouse::VerticalWheel ? io.MouseWheel : io.MouseWheelH) +=
                event.mouseWheelScroll.delta;
            break;
        case sf::Event::KeyPressed:
            set_key(event.key, true);
            break;
        case sf::Event::KeyReleased:
            set_key(event.key, false);
            break;
        case sf::Event::TextEntered:
            if (event.text.unicode >= 32 && event.text.unicode != 127)
                io.AddInputCharacter(event.text.unicode);
            break;
        case sf::Event::LostFocus:
            release_all();
            break;
        default:
            break;
    }
}

}  // namespace overbend::ui
