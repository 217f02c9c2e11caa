#include "render/drawing/hatch.h"

#include <algorithm>
#include <cmath>

namespace overbend::drawing {

using namespace picture;

namespace {

const Point along = Point(1.0, -1.0).normalized();  // up to the right
const Point across = Point(1.0, 1.0).normalized();

// Where the line across . p = c enters and leaves, by their place along it.
std::vector<double> crossings(const std::vector<std::vector<Point>>& outline, double c) {
    std::vector<double> found;
    for (const std::vector<Point>& polygon : outline) {
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
            const double s = across.dot(a) - c, t = across.dot(b) - c;
            if ((s < 0.0) == (t < 0.0)) continue;
            found.push_back(along.dot(a) + s / (s - t) * along.dot(b - a));
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

// The stretch less what lies in a box.
void cut_out(std::vector<std::pair<double, double>>& stretches, double c, const Rect& box) {
    // along the line p = c across + s along: x = (c + s) / sqrt 2, y = (c - s) / sqrt 2
    const double root = std::sqrt(2.0);
    const double low = std::max(root * box.x - c, c - root * box.bottom());
    const double high = std::min(root * box.right() - c, c - root * box.y);
    if (low >= high) return;
    std::vector<std::pair<double, double>> left;
    for (const auto& [from, to] : stretches) {
        if (from < low) left.emplace_back(from, std::min(to, low));
        if (to > high) left.emplace_back(std::max(from, high), to);
    }
    stretches = left;
}

}  // namespace

std::vector<Line> hatched(const std::vector<std::vector<Point>>& outline, double distance,
                          const std::vector<Label>& labels) {
    double low = 1e300, high = -1e300;
    for (const std::vector<Point>& polygon : outline)
        for (const Point& p : polygon)
            low = std::min(low, across.dot(p)), high = std::max(high, across.dot(p));
    std::vector<Line> lines;
    for (double c = low + 0.5 * distance; c < high; c += distance) {
        const std::vector<double> ends = crossings(outline, c);
        std::vector<std::pair<double, double>> stretches;
        for (std::size_t i = 0; i + 1 < ends.size(); i += 2) stretches.emplace_back(ends[i], ends[i + 1]);
        for (const Label& label : labels) cut_out(stretches, c, grown(label.box, 0.9));
        for (const auto& [from, to] : stretches)
            if (to - from > 0.05)
                lines.push_back({c * across + from * along, c * across + to * along, Stroke::hidden});
    }
    return lines;
}

}  // namespace overbend::drawing
