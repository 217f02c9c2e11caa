// Files that are dragged on to a window and dropped there, which SFML does not tell of.
//
// Source  Drag-and-Drop Protocol for the X Window System (XDND), version 5, freedesktop.org: the messages
//         come to a window of ours that stands in for SFML's (property XdndProxy).

#pragma once

#include <SFML/Window/WindowHandle.hpp>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace overbend::ui {

class DropTarget {
  public:
    // Where the display takes no second connection, nothing can be dropped; that is no error.
    explicit DropTarget(sf::WindowHandle window);
    ~DropTarget();
    DropTarget(const DropTarget&) = delete;
    DropTarget& operator=(const DropTarget&) = delete;

    // Answers the program that drags, and returns what has been dropped since the last call.
    std::vector<std::filesystem::path> take();

  private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

// The files of a list of URIs (RFC 2483, text/uri-list): those on this machine; other lines are left out.
std::vector<std::filesystem::path> files_of_uris(const std::string& list);

}  // namespace overbend::ui
