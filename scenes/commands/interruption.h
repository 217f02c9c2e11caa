// A wish to stop, by Ctrl-C or from outside (SIGINT, SIGTERM, SIGHUP), for commands that have something to
// clean up.
//
// While one of these is there, the first such signal only notes the wish, and a second one ends the program
// at once. One at a time.

#pragma once

namespace overbend::commands {

class Interruption {
  public:
    Interruption();
    ~Interruption();
    Interruption(const Interruption&) = delete;
    Interruption& operator=(const Interruption&) = delete;

    static bool wanted();
};

}  // namespace overbend::commands
