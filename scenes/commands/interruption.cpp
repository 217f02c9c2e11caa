#include "scenes/commands/interruption.h"

#include <array>
#include <csignal>

#include "render/output/unfinished.h"

namespace overbend::commands {

namespace {

using Handler = void (*)(int);

constexpr std::array<int, 3> wishes = {SIGINT, SIGTERM, SIGHUP};
volatile std::sig_atomic_t noted = 0;

// As the signal would have ended us.
extern "C" void end(int signal) {
    output::remove_unfinished();
    std::signal(signal, SIG_DFL);
    std::raise(signal);
}

extern "C" void note(int signal) {
    if (noted != 0) return end(signal);
    noted = 1;
}

void handle(int signal, Handler handler) {
    struct sigaction now {};
    ::sigaction(signal, nullptr, &now);
    if (now.sa_handler == SIG_IGN) return;
    struct sigaction next {};
    next.sa_handler = handler;
    next.sa_flags = SA_RESTART;
    ::sigemptyset(&next.sa_mask);
    ::sigaction(signal, &next, nullptr);
}

}  // namespace

void leave_nothing_at_signals() {
    for (const int signal : wishes) handle(signal, end);
    handle(SIGPIPE, end);
    std::signal(SIGXFSZ, SIG_IGN);
}

Interruption::Interruption() {
    noted = 0;
    for (const int signal : wishes) handle(signal, note);
}

Interruption::~Interruption() {
    for (const int signal : wishes) handle(signal, end);
}

bool Interruption::wanted() {
    return noted != 0;
}

}  // namespace overbend::commands
