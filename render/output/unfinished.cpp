#include "render/output/unfinished.h"

#include <limits.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstring>

namespace overbend::output {

namespace {

// State of the whole program, as the handler of a signal can be handed nothing.
enum class Slot { free, filling, filled };
constexpr int slots = 32;  // a film and its frame; a window writes three files at a time at most
std::array<std::atomic<Slot>, slots> slot;
std::array<std::array<char, PATH_MAX>, slots> path;

int take_slot() {
    for (int i = 0; i < slots; ++i) {
        Slot free = Slot::free;
        if (slot[static_cast<std::size_t>(i)].compare_exchange_strong(free, Slot::filling)) return i;
    }
    return -1;
}

}  // namespace

Unfinished::Unfinished(const std::filesystem::path& file)
    : slot_(file.native().size() < PATH_MAX ? take_slot() : -1) {
    if (slot_ < 0) return;
    const auto i = static_cast<std::size_t>(slot_);
    std::memcpy(path[i].data(), file.c_str(), file.native().size() + 1);
    slot[i] = Slot::filled;
}

Unfinished::~Unfinished() {
    if (slot_ >= 0) slot[static_cast<std::size_t>(slot_)] = Slot::free;
}

void remove_unfinished() {
    const int before = errno;
    for (std::size_t i = 0; i < slots; ++i)
        if (slot[i] == Slot::filled) ::unlink(path[i].data());
    errno = before;
}

}  // namespace overbend::output
