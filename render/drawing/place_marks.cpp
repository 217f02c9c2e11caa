// A row of marks; declared in place_dimensions.h.

#include <algorithm>
#include <numeric>

#include "render/drawing/place_dimensions.h"

namespace overbend::drawing {

using namespace picture;

namespace {

constexpr double between = 1.6;   // mm, words of the row
constexpr double straight = 3.0;  // mm, before a line turns to its words
constexpr double slant = 8.0;     // mm, in height, for the turn

// Places as near as possible to the preferred ones with these distances between neighbours, in the same
// order: neighbours that would touch move together, to the mean of their preferences.
std::vector<double> spread(const std::vector<double>& wanted, const std::vector<double>& half_width) {
    struct Block {
        double sum = 0.0;  // of the places that its members prefer for the first one
        std::size_t first = 0, count = 0;
        double width = 0.0;  // from its first member to its last
        double place() const { return sum / static_cast<double>(count); }
    };
    std::vector<Block> blocks;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        blocks.push_back({wanted[i], i, 1, 0.0});
        while (blocks.size() > 1) {
            Block &a = blocks[blocks.size() - 2], &b = blocks.back();
            const std::size_t last = a.first + a.count - 1;
            const double least = half_width[last] + half_width[b.first] + between;
            if (a.place() + a.width + least <= b.place()) break;
            const double shift = a.width + least;
            a.sum += b.sum - shift * static_cast<double>(b.count);
            a.count += b.count;
            a.width = shift + b.width;
            blocks.pop_back();
        }
    }
    std::vector<double> places(wanted.size());
    for (const Block& block : blocks) {
        double at = block.place();
        for (std::size_t i = block.first; i < block.first + block.count; ++i) {
            places[i] = at;
            if (i + 1 < wanted.size()) at += half_width[i] + half_width[i + 1] + between;
        }
    }
    return places;
}

}  // namespace

std::vector<Ink> mark_row(const std::vector<Dimension>& marks, const OnPaper& paper, const Rect& box,
                          const Rect& area) {
    std::vector<std::size_t> order(marks.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return marks[a].from.x() < marks[b].from.x(); });
    std::vector<double> wanted, half_width;
    for (const std::size_t i : order) {
        wanted.push_back(paper(marks[i].from).x());
        half_width.push_back(0.5 * label_at(marks[i].words, {0.0, 0.0}).box.width);
    }
    const std::vector<double> places = spread(wanted, half_width);
    std::vector<Ink> row(marks.size());
    for (std::size_t k = 0; k < order.size(); ++k) {
        const Dimension& mark = marks[order[k]];
        const double down = mark.beside == Beside::below ? 1.0 : -1.0;
        const Point from = paper(mark.from);
        const double edge = down > 0.0 ? box.bottom() : box.y;
        const Point turn(from.x(), edge + down * straight), end(places[k], edge + down * (straight + slant));
        Ink& ink = row[order[k]];
        ink.lines.push_back({from + Point(0.0, down * off_outline), turn, Stroke::extension});
        ink.lines.push_back({turn, end, Stroke::extension});
        const Label label = label_at(mark.words, end);
        ink.labels.push_back(label_at(mark.words, end + Point(0.0, down * (0.9 + 0.5 * label.box.height))));
        if (!holds(area, ink.labels.back().box)) return {};
    }
    return row;
}

}  // namespace overbend::drawing
