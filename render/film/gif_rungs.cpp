#include "render/film/gif_rungs.h"

#include <algorithm>
#include <cmath>

namespace overbend::film {

using namespace picture;

namespace {

constexpr double widest = 960.0;
constexpr double narrowest = 480.0;
constexpr double aim = 0.9;  // of the limit: what is expected is not quite what comes

PictureSize scaled(const PictureSize& size, double width) {
    const double part = std::min(1.0, width / size.width);
    return {static_cast<int>(std::lround(part * size.width)),
            static_cast<int>(std::lround(part * size.height))};
}

// The rates that a GIF can have, from 25 down.
std::vector<double> rates_up_to(double asked) {
    std::vector<double> rates;
    for (const int hundredths : {4, 5, 6, 8, 10, 12, 16, 20})
        if (100.0 / hundredths <= asked + 1e-9) rates.push_back(100.0 / hundredths);
    if (rates.empty()) rates.push_back(100.0 / std::ceil(100.0 / asked - 1e-9));
    return rates;
}

bool may_be(const PictureSize& size) {
    return size.width >= 320 && size.height >= 180;
}

}  // namespace

std::vector<GifRung> gif_rungs(const PictureSize& size, double frames_per_second) {
    const std::vector<double> rates = rates_up_to(frames_per_second);
    const double width = std::min<double>(widest, size.width);
    std::vector<GifRung> rungs{{scaled(size, width), rates.front()}};
    const auto add = [&](double at_width, double rate) {
        const PictureSize smaller = scaled(size, at_width);
        const GifRung& last = rungs.back();
        if (!may_be(smaller) || smaller.width > last.size.width || rate > last.frames_per_second) return;
        if (smaller.width == last.size.width && rate == last.frames_per_second) return;
        rungs.push_back({smaller, rate});
    };
    for (const double rate : rates)
        if (rate >= 10.0) add(width, rate);
    for (const double w : {880.0, 800.0, 720.0, 640.0}) add(w, rungs.back().frames_per_second);
    for (const double rate : rates) add(rungs.back().size.width, rate);
    for (const double w : {560.0, narrowest}) add(w, rungs.back().frames_per_second);
    return rungs;
}

double expected_bytes(double bytes, const GifRung& was, const GifRung& will_be) {
    // Seen on films of several cases: where less moves from frame to frame, a frame takes less; and lines and
    // words cost by their length, areas nearly nothing.
    const double frames = will_be.frames_per_second / was.frames_per_second;
    const double across = static_cast<double>(will_be.size.width) / was.size.width;
    return bytes * std::pow(frames, 0.9) * std::pow(across, 1.4);
}

std::optional<std::size_t> next_rung(const std::vector<GifRung>& rungs, std::size_t tried, double bytes,
                                     std::uintmax_t limit) {
    for (std::size_t i = tried + 1; i < rungs.size(); ++i)
        if (expected_bytes(bytes, rungs[tried], rungs[i]) <= aim * static_cast<double>(limit)) return i;
    if (tried + 1 < rungs.size()) return rungs.size() - 1;
    return std::nullopt;
}

}  // namespace overbend::film
