// Named errors of the mechanics. What is thrown here says what was asked for, what is wrong and what would
// be right; the edge of the program turns it into a message with file, line and key.

#pragma once

#include <stdexcept>
#include <string>

namespace overbend {

// A caller's value that is not possible: a radius below zero, a nose too large for its groove.
struct OutOfRange : std::invalid_argument {
    // name   what is out of range, in the trade's words ("nose radius")
    // wrong  the value found, with its unit, and why it is wrong
    // right  what would be right
    OutOfRange(const std::string& name_, const std::string& wrong_, const std::string& right_)
        : std::invalid_argument(name_ + ": " + wrong_ + "; " + right_),
          name(name_),
          wrong(wrong_),
          right(right_) {}
    std::string name;
    std::string wrong;
    std::string right;
};

// A state for which no equilibrium was found. Never passes for a result.
struct NotSolved : std::runtime_error {
    explicit NotSolved(const std::string& what) : std::runtime_error(what) {}
};

}  // namespace overbend
