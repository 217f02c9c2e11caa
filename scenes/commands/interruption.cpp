#include "scenes/commands/interruption.h"

#include <array>
#include <csignal>

namespace overbend::commands {

namespace {

constexpr std::array<int, 3> signals = {SIGINT, SIGTERM, SIGHUP};
std::array<struct sigaction, 3> before;
volatile std::sig_atomic_t noted = 0;

extern "C" void note(int) {
    noted = 1;
}

}  // namespace

Interruption::Interruption() {
    noted = 0;
    struct sigaction noting {};
    noting.sa_handler = note;
    noting.sa_flags = static_cast<int>(SA_RESETHAND | SA_RESTART);
    sigemptyset(&noting.sa_mask);
    for (std::size_t i = 0; i < signals.size(); ++i) {
        ::sigaction(signals[i], nullptr, &before[i]);
        // Signals ignored by our parent stay ignored, as with nohup.
        if (before[i].sa_handler != SIG_IGN) ::sigaction(signals[i], &noting, nullptr);
    }
}

Interruption::~Interruption() {
    for (std::size_t i = 0; i < signals.size(); ++i) ::sigaction(signals[i], &before[i], nullptr);
}

bool Interruption::wanted() {
    return noted != 0;
}

}  // namespace overbend::commands
