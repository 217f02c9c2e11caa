// The innermost loops of the band matrix (band_solve.h), compiled once for each instruction set, as in
// sim/material/kernels.h: plain data.
//
// A row has `band_row` numbers: one that is always 0, `band_half` on the left of the diagonal, the diagonal
// and as many on the right; behind the last row is another 0.

#pragma once

namespace overbend::stroke {

constexpr int band_half = 19, band_row = 2 * band_half + 2;
constexpr int band_reach = band_half + 1;  // numbers on either side, with a 0 more: whole fours

struct BandKernels {
    // Replaces the matrix by its factors; their diagonal is inverted. reach: of each row, the last unknown
    // that hangs together with it or one before. False: a pivot is not above `least`.
    bool (*factor)(double* band, const int* reach, int size, double least);
    void (*clear)(double* numbers, long count);  // to 0
    // x: the right-hand side in place, with band_reach numbers before and after that are 0.
    void (*solve)(const double* factors, int size, double* x);
};
const BandKernels& band_kernels();

const BandKernels& band_kernels_sse2();
const BandKernels& band_kernels_avx2();

}  // namespace overbend::stroke
