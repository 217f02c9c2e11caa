// What SFML tells of keyboard, mouse and window, handed to Dear ImGui.

#pragma once

#include <SFML/Window/Event.hpp>

namespace overbend::ui {

// Which of SFML's keys are ImGui's; the clipboard is SFML's. Once, after ImGui has its context.
void connect_keys();

// Key indices in ImGui's state are SFML's key codes.
void tell_imgui(const sf::Event& event);

}  // namespace overbend::ui
