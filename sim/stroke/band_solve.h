// Linear equations of a strip: a band matrix, nearly symmetric, solved without pivoting.
//
// A node has five unknowns (sim/strip/beam_element.h). An element, or a contact point, couples those of its
// nodes and of the nodes beside, so four nodes: nineteen places on either side of the diagonal. At an
// equilibrium that a strip can stand in, the pivots are positive; one that is not tells of a direction
// without hold.

#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "sim/strip/beam_element.h"
#include "sim/stroke/band_kernels.h"

namespace overbend::stroke {

class BandMatrix {
  public:
    static constexpr int half = 4 * strip::node_unknowns - 1;
    static_assert(half == band_half);

    void resize(int size) {
        size_ = size;
        a_.assign(static_cast<std::size_t>(size) * band_row + 1, 0.0);
        reach_.assign(size, 0);
    }
    void clear() {
        band_kernels().clear(a_.data(), static_cast<long>(a_.size()));
        std::fill(reach_.begin(), reach_.end(), 0);
    }
    int size() const { return size_; }
    double* rows() { return a_.data(); }
    const double* rows() const { return a_.data(); }
    // |i - j| <= half
    double& at(int i, int j) { return a_[place(i, j)]; }
    const double& at(int i, int j) const { return a_[place(i, j)]; }

    // Says that the unknowns first ... last hang together; what is not said is taken to be 0.
    void join(int first, int last) {
        for (int i = first; i < last; ++i) reach_[i] = std::max(reach_[i], last);
    }
    // The last unknown that hangs together with i or one before it.
    const std::vector<int>& reach() const { return reach_; }
    void close_reach() {
        for (int i = 0; i < size_; ++i) reach_[i] = std::max({reach_[i], i, i > 0 ? reach_[i - 1] : 0});
    }

  private:
    static std::size_t place(int i, int j) {
        return static_cast<std::size_t>(i) * band_row + (j - i + band_reach);
    }

    int size_ = 0;
    std::vector<double> a_;  // see band_kernels.h
    std::vector<int> reach_;
};

// Replaces a by its factors. Returns false, with a spoilt, when a pivot is not above `least`.
bool factor(BandMatrix& a, double least);

// Solves with the factors, in place.
void solve(const BandMatrix& factors, std::vector<double>& b);

}  // namespace overbend::stroke
