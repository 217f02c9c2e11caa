// Four numbers at a time, for the innermost loops. Only for files that are compiled once for each instruction
// set (kernels.h): everything here has a namespace of its own for each of them and is put in where it is
// used, so that no processor comes upon instructions that it does not have.
//
// Every operation is that of IEEE 754 on each number, in the order that is written: the results have the same
// bits on every instruction set.

#pragma once

#include <immintrin.h>

#define OVERBEND_INLINE __attribute__((always_inline)) inline
#ifdef __AVX2__
#define OVERBEND_LANES avx2
#else
#define OVERBEND_LANES sse2
#endif

#ifdef __AVX2__

namespace overbend::material::avx2 {

// What one instruction works on: all four.
typedef double Part __attribute__((vector_size(32)));
typedef long long Bits __attribute__((vector_size(32)));
struct Four {
    Part part;
    double operator[](int i) const { return part[i]; }
};
struct Mask {
    Bits part;
};
template <class Result, class Make, class... Of>
OVERBEND_INLINE Result each(const Make& make, const Of&... of) {
    return {make(of.part...)};
}
OVERBEND_INLINE Four all(double x) {
    return {Part{x, x, x, x}};
}
OVERBEND_INLINE Four four_of(double a, double b, double c, double d) {
    return {Part{a, b, c, d}};
}
// (0, 0, x0, x1)
OVERBEND_INLINE Four raised(Four x) {
    return {(Part)_mm256_permute2f128_pd((__m256d)x.part, (__m256d)x.part, 0x08)};
}
OVERBEND_INLINE bool any(Mask m) {
    return _mm256_movemask_pd((__m256d)m.part) != 0;
}
OVERBEND_INLINE Part root_of(Part x) {
    return (Part)_mm256_sqrt_pd((__m256d)x);
}
OVERBEND_INLINE Part larger_of(Part a, Part b) {
    return (Part)_mm256_max_pd((__m256d)a, (__m256d)b);
}
OVERBEND_INLINE Part picked_of(Bits m, Part a, Part b) {
    return (Part)_mm256_blendv_pd((__m256d)b, (__m256d)a, (__m256d)m);
}
OVERBEND_INLINE Four sums(Four a, Four b, Four c, Four d) {
    const __m256d ab = _mm256_hadd_pd((__m256d)a.part, (__m256d)b.part);
    const __m256d cd = _mm256_hadd_pd((__m256d)c.part, (__m256d)d.part);
    return {(Part)_mm256_add_pd(_mm256_permute2f128_pd(ab, cd, 0x20), _mm256_permute2f128_pd(ab, cd, 0x31))};
}
OVERBEND_INLINE void transpose(Four& a, Four& b, Four& c, Four& d) {
    const __m256d p = _mm256_unpacklo_pd((__m256d)a.part, (__m256d)b.part);
    const __m256d q = _mm256_unpackhi_pd((__m256d)a.part, (__m256d)b.part);
    const __m256d r = _mm256_unpacklo_pd((__m256d)c.part, (__m256d)d.part);
    const __m256d s = _mm256_unpackhi_pd((__m256d)c.part, (__m256d)d.part);
    a.part = (Part)_mm256_permute2f128_pd(p, r, 0x20), b.part = (Part)_mm256_permute2f128_pd(q, s, 0x20);
    c.part = (Part)_mm256_permute2f128_pd(p, r, 0x31), d.part = (Part)_mm256_permute2f128_pd(q, s, 0x31);
}

}  // namespace overbend::material::avx2

#else

namespace overbend::material::sse2 {

// What one instruction works on: a half.
typedef double Part __attribute__((vector_size(16)));
typedef long long Bits __attribute__((vector_size(16)));
struct Four {
    Part low, high;
    double operator[](int i) const { return i < 2 ? low[i] : high[i - 2]; }
};
struct Mask {
    Bits low, high;
};
template <class Result, class Make, class... Of>
OVERBEND_INLINE Result each(const Make& make, const Of&... of) {
    return {make(of.low...), make(of.high...)};
}
OVERBEND_INLINE Four all(double x) {
    return {Part{x, x}, Part{x, x}};
}
OVERBEND_INLINE Four four_of(double a, double b, double c, double d) {
    return {Part{a, b}, Part{c, d}};
}
// (0, 0, x0, x1)
OVERBEND_INLINE Four raised(Four x) {
    return {Part{0.0, 0.0}, x.low};
}
OVERBEND_INLINE bool any(Mask m) {
    return _mm_movemask_pd((__m128d)(m.low | m.high)) != 0;
}
OVERBEND_INLINE Part root_of(Part x) {
    return (Part)_mm_sqrt_pd((__m128d)x);
}
OVERBEND_INLINE Part larger_of(Part a, Part b) {
    return (Part)_mm_max_pd((__m128d)a, (__m128d)b);
}
OVERBEND_INLINE Part picked_of(Bits m, Part a, Part b) {
    return (Part)((m & (Bits)a) | (~m & (Bits)b));
}
OVERBEND_INLINE Part firsts(Part a, Part b) {
    return (Part)_mm_unpacklo_pd((__m128d)a, (__m128d)b);
}
OVERBEND_INLINE Part seconds(Part a, Part b) {
    return (Part)_mm_unpackhi_pd((__m128d)a, (__m128d)b);
}
OVERBEND_INLINE Part two_sums(Four a, Four b) {
    return (firsts(a.low, b.low) + seconds(a.low, b.low)) +
           (firsts(a.high, b.high) + seconds(a.high, b.high));
}
OVERBEND_INLINE Four sums(Four a, Four b, Four c, Four d) {
    return {two_sums(a, b), two_sums(c, d)};
}
OVERBEND_INLINE void transpose(Four& a, Four& b, Four& c, Four& d) {
    const Four p{firsts(a.low, b.low), firsts(c.low, d.low)}, q{seconds(a.low, b.low), seconds(c.low, d.low)};
    const Four r{firsts(a.high, b.high), firsts(c.high, d.high)};
    const Four s{seconds(a.high, b.high), seconds(c.high, d.high)};
    a = p, b = q, c = r, d = s;
}

}  // namespace overbend::material::sse2

#endif

namespace overbend::material::OVERBEND_LANES {

OVERBEND_INLINE Four load(const double* p) {
    Four x;
    __builtin_memcpy(&x, p, sizeof x);
    return x;
}
OVERBEND_INLINE void store(double* p, Four x) {
    __builtin_memcpy(p, &x, sizeof x);
}
// sums(a, b, c, d): the sum of each.
OVERBEND_INLINE double sum(Four x) {
    return (x[0] + x[1]) + (x[2] + x[3]);
}

OVERBEND_INLINE Four operator-(Four a) {
    return each<Four>([](Part x) { return -x; }, a);
}
OVERBEND_INLINE Four operator+(Four a, Four b) {
    return each<Four>([](Part x, Part y) { return x + y; }, a, b);
}
OVERBEND_INLINE Four operator-(Four a, Four b) {
    return each<Four>([](Part x, Part y) { return x - y; }, a, b);
}
OVERBEND_INLINE Four operator*(Four a, Four b) {
    return each<Four>([](Part x, Part y) { return x * y; }, a, b);
}
OVERBEND_INLINE Four operator/(Four a, Four b) {
    return each<Four>([](Part x, Part y) { return x / y; }, a, b);
}
OVERBEND_INLINE Four operator+(Four a, double b) {
    return a + all(b);
}
OVERBEND_INLINE Four operator+(double a, Four b) {
    return all(a) + b;
}
OVERBEND_INLINE Four operator-(Four a, double b) {
    return a - all(b);
}
OVERBEND_INLINE Four operator-(double a, Four b) {
    return all(a) - b;
}
OVERBEND_INLINE Four operator*(Four a, double b) {
    return a * all(b);
}
OVERBEND_INLINE Four operator*(double a, Four b) {
    return all(a) * b;
}
OVERBEND_INLINE Four operator/(double a, Four b) {
    return all(a) / b;
}
OVERBEND_INLINE void operator+=(Four& a, Four b) {
    a = a + b;
}
OVERBEND_INLINE void operator-=(Four& a, Four b) {
    a = a - b;
}
OVERBEND_INLINE Mask operator>(Four a, Four b) {
    return each<Mask>([](Part x, Part y) { return (Bits)(x > y); }, a, b);
}
OVERBEND_INLINE Mask operator<=(Four a, Four b) {
    return each<Mask>([](Part x, Part y) { return (Bits)(x <= y); }, a, b);
}
OVERBEND_INLINE Mask operator&(Mask a, Mask b) {
    return each<Mask>([](Bits x, Bits y) { return x & y; }, a, b);
}
OVERBEND_INLINE Mask operator|(Mask a, Mask b) {
    return each<Mask>([](Bits x, Bits y) { return x | y; }, a, b);
}
OVERBEND_INLINE Mask operator~(Mask a) {
    return each<Mask>([](Bits x) { return ~x; }, a);
}
OVERBEND_INLINE Four root(Four a) {
    return each<Four>([](Part x) { return root_of(x); }, a);
}
OVERBEND_INLINE Four larger(Four a, Four b) {
    return each<Four>([](Part x, Part y) { return larger_of(x, y); }, a, b);
}
OVERBEND_INLINE Four size(Four a) {
    return each<Four>([](Part x) { return larger_of(x, -x); }, a);
}
// a where the mask is set, else b.
OVERBEND_INLINE Four pick(Mask m, Four a, Four b) {
    return each<Four>([](Bits x, Part y, Part z) { return picked_of(x, y, z); }, m, a, b);
}

// Natural logarithm of x > 0, not denormal, to some 2e-16 of it or of 1, whichever is larger: with x = 2^p m,
// m from sqrt(1/2) to sqrt(2), and s = (m - 1)/(m + 1), it is p ln 2 + 2 artanh s, by artanh's series.
OVERBEND_INLINE Four logarithm(Four x) {
    constexpr long long root_half = 0x3fe6a09e667f3bcdLL, one = 0x3ff0000000000000LL;
    constexpr long long mantissa = 0x000fffffffffffffLL;
    // p + 1023 as the last bits of a number above 2^52.
    const Four power = each<Four>(
        [](Part v) {
            typedef unsigned long long Shifted __attribute__((vector_size(sizeof(Bits))));
            return (Part)(((Shifted)((Bits)v + (one - root_half)) >> 52) | 0x4330000000000000ULL);
        },
        x);
    const Four rest =
        each<Four>([](Part v) { return (Part)((((Bits)v + (one - root_half)) & mantissa) + root_half); }, x);
    const Four s = (rest - 1.0) / (rest + 1.0), z = s * s, twice = s + s;
    Four series = all(1.0 / 21.0);
    for (int odd = 19; odd > 1; odd -= 2) series = series * z + 1.0 / odd;
    return (power - (4503599627370496.0 + 1023.0)) * 0.69314718055994531 + (twice * (series * z) + twice);
}

}  // namespace overbend::material::OVERBEND_LANES
