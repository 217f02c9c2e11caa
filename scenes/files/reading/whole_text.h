// All of a file that somebody named, if it is one that can be read to its end.

#pragma once

#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace overbend::files {

struct Unreadable : std::runtime_error {
    Unreadable(const std::string& wrong_, const std::string& right_)
        : std::runtime_error(wrong_ + "; " + right_), wrong(wrong_), right(right_) {}
    std::string wrong, right;
};

// most: bytes, whole megabytes. Never waits: what is no regular file (a pipe, a device) is refused unread.
// Throws Unreadable: not there, a folder, no regular file, not allowed, longer than that.
std::string whole_text(const std::filesystem::path& file, std::size_t most);

}  // namespace overbend::files
