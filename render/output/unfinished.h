// Files under way, which have no name yet: known to the whole program, so that a signal that ends it leaves
// none of them.

#pragma once

#include <filesystem>

namespace overbend::output {

// One of them, from before it is opened until it has its name or is gone.
class Unfinished {
  public:
    explicit Unfinished(const std::filesystem::path& file);
    ~Unfinished();
    Unfinished(const Unfinished&) = delete;
    Unfinished& operator=(const Unfinished&) = delete;

  private:
    int slot_;  // -1: there are too many already, or its path is too long; it is not known then
};

// Removes them all. Does only what the handler of a signal may do.
void remove_unfinished();

}  // namespace overbend::output
