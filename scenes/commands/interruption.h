// A wish to stop, by Ctrl-C or from outside (SIGINT, SIGTERM, SIGHUP).
//
// It ends the program, which leaves no file that is not whole. While an Interruption is there, for commands
// that have more to clean up, the first such signal only notes the wish, and a second one ends the program.
// One at a time.

#pragma once

namespace overbend::commands {

// From now on a signal that ends the program removes the files under way first; a file that grows too large
// for its limit is an error of its writer and no signal. Signals that our parent ignores stay ignored, as
// with nohup.
void leave_nothing_at_signals();

class Interruption {
  public:
    Interruption();
    ~Interruption();
    Interruption(const Interruption&) = delete;
    Interruption& operator=(const Interruption&) = delete;

    static bool wanted();
};

}  // namespace overbend::commands
