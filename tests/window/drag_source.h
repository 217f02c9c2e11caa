// A program that drags files on to a window and drops them there, by the messages of XDND.

#pragma once

#include <SFML/Window/WindowHandle.hpp>
#include <functional>
#include <string>

namespace overbend::tests {

struct DropOutcome {
    bool aware = false;     // the window says that things may be dropped on it
    bool accepted = false;  // it would take what is dragged over it
    bool finished = false;  // it said that it has it
};

// turn: lets the window look after its events. type: of what is offered ("text/uri-list").
DropOutcome drop_on(sf::WindowHandle window, const std::string& type, const std::string& list,
                    const std::function<void()>& turn);

}  // namespace overbend::tests
