#include "scenes/job/study/sobol_points.h"

#include <boost/random/sobol.hpp>
#include <string>

#include "sim/errors.h"

namespace overbend::job {

// splitmix64: G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
std::uint64_t mixed(std::uint64_t counter) {
    std::uint64_t z = (counter + 1) * 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

std::vector<double> sobol_point(int dimensions, std::uint64_t number, int series) {
    if (dimensions < 1 || dimensions > most_dimensions)
        throw OutOfRange("dimensions of a study", std::to_string(dimensions),
                         "let 1 to " + std::to_string(most_dimensions) + " things vary");
    using Engine = boost::random::sobol_engine<std::uint64_t, 52>;
    constexpr std::uint64_t cells = std::uint64_t(1) << 52;
    const auto count = static_cast<std::size_t>(dimensions);
    std::vector<std::uint64_t> bits(count, 0);
    // The library begins with the point after the origin.
    if (number > 0) {
        thread_local Engine engine(1);
        if (engine.dimension() != count) engine = Engine(count);
        engine.seed();
        engine.discard((number - 1) * count);
        for (std::uint64_t& each : bits) each = engine();
    }
    std::vector<double> point(count);
    for (std::size_t d = 0; d < count; ++d) {
        const std::uint64_t shift = mixed((static_cast<std::uint64_t>(series) << 20) + d) % cells;
        point[d] = (static_cast<double>(bits[d] ^ shift) + 0.5) / static_cast<double>(cells);
    }
    return point;
}

}  // namespace overbend::job
