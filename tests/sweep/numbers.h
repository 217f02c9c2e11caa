// Random numbers that are the same everywhere: std's distributions are not.

#pragma once

#include <cmath>
#include <cstdint>

namespace overbend::tests {

class Numbers {
  public:
    explicit Numbers(std::uint64_t state) : state_(state) {}
    double between(double low, double high) {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return low + (high - low) * static_cast<double>(state_ >> 11) / 9007199254740992.0;
    }
    double log_between(double low, double high) { return low * std::pow(high / low, between(0.0, 1.0)); }
    bool coin() { return between(0.0, 1.0) < 0.5; }

  private:
    std::uint64_t state_;
};

}  // namespace overbend::tests
