#include "scenes/files/dxf/chain.h"
#include "sim/words.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace overbend::files {

namespace {

using tool::Piece;
using tool::Vec2;

constexpr double same = 1e-6;    // mm, ends nearer than this are one
constexpr double joined = 1e-9;  // mm, nearer still: nothing to close

std::string place(const Vec2& at) {
    return words("(%.4g, %.4g) mm", at.x(), at.y());
}

// End 2 i is the start of piece i, end 2 i + 1 its end.
struct Ends {
    const std::vector<DxfPiece>& pieces;
    std::vector<int> partner;
    explicit Ends(const std::vector<DxfPiece>& all) : pieces(all), partner(2 * all.size(), -1) {}
    int count() const { return static_cast<int>(partner.size()); }
    const DxfPiece& of(int end) const { return pieces[end / 2]; }
    const Vec2& at(int end) const { return end % 2 == 0 ? of(end).piece.start : of(end).piece.end; }
    double between(int a, int b) const { return (at(a) - at(b)).norm(); }
    bool open(int end) const { return partner[end] < 0; }
    void join(int a, int b) { partner[a] = b, partner[b] = a; }
};

[[noreturn]] void branching(const Ends& ends, int a) {
    throw DxfError(ends.of(a).line, "more than two lines or arcs meet at " + place(ends.at(a)),
                   "leave only one outline, with nothing drawn twice, or name its layer");
}

// Ends that are one; three of them at one place are a branch.
void join_same(Ends& ends, double gap) {
    const double within = std::min(same, std::max(gap, joined));
    for (int a = 0; a < ends.count(); ++a) {
        for (int b = a + 1; b < ends.count(); ++b) {
            if (ends.between(a, b) > within) continue;
            if (!ends.open(a) || !ends.open(b)) branching(ends, a);
            ends.join(a, b);
        }
    }
}

void join_near(Ends& ends, double gap) {
    struct Pair {
        double apart;
        int a, b;
    };
    std::vector<Pair> pairs;
    for (int a = 0; a < ends.count(); ++a) {
        for (int b = a + 1; ends.open(a) && b < ends.count(); ++b) {
            // a piece is not closed on itself by a gap as long as it is
            const bool itself = a / 2 == b / 2 && !ends.of(a).piece.is_arc();
            const double apart = ends.between(a, b);
            if (ends.open(b) && apart <= gap && !itself) pairs.push_back({apart, a, b});
        }
    }
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& x, const Pair& y) { return x.apart < y.apart; });
    for (const Pair& pair : pairs)
        if (ends.open(pair.a) && ends.open(pair.b)) ends.join(pair.a, pair.b);
}

void check_none_open(const Ends& ends) {
    for (int a = 0; a < ends.count(); ++a) {
        if (!ends.open(a)) continue;
        int nearest = -1;
        for (int b = 0; b < ends.count(); ++b)
            if (b != a && ends.open(b) && (nearest < 0 || ends.between(a, b) < ends.between(a, nearest)))
                nearest = b;
        std::string wrong = "the outline is open at " + place(ends.at(a));
        std::string right = "close it";
        if (nearest >= 0) {
            const double apart = ends.between(a, nearest);
            wrong += words(": the nearest open end is %.4g mm away, at ", apart) + place(ends.at(nearest));
            if (apart <= 1.0) right += ", or allow the gap (gap_mm)";
        }
        throw DxfError(ends.of(a).line, wrong, right);
    }
}

Piece turned_round(Piece piece) {
    std::swap(piece.start, piece.end);
    piece.sweep = -piece.sweep;
    return piece;
}

// "; lines and arcs by layer: CONTOUR 12, CENTRE 1"
std::string by_layer(const std::vector<DxfPiece>& pieces) {
    std::map<std::string, int> counts;
    for (const DxfPiece& piece : pieces) ++counts[piece.layer.substr(0, 60)];
    if (counts.size() < 2) return "";
    std::string told;
    for (const auto& [name, count] : counts)
        told += (told.empty() ? "" : ", ") + name + " " + std::to_string(count);
    return "; lines and arcs by layer: " + told.substr(0, 400);
}

std::vector<Piece> walked(const Ends& ends) {
    std::vector<Piece> loop;
    std::vector<bool> seen(ends.pieces.size(), false);
    int end = 0;  // where a piece is entered
    do {
        const Piece& piece = ends.of(end).piece;
        loop.push_back(end % 2 == 0 ? piece : turned_round(piece));
        seen[end / 2] = true;
        end = ends.partner[end ^ 1];
    } while (end != 0 && !seen[end / 2]);
    const auto other = std::find(seen.begin(), seen.end(), false);
    if (other != seen.end()) {
        const DxfPiece& there = ends.pieces[other - seen.begin()];
        throw DxfError(there.line,
                       "there is more than one outline: another passes " + place(there.piece.start),
                       "leave only one, or name its layer" + by_layer(ends.pieces));
    }
    return loop;
}

Piece moved(const Piece& piece, const Vec2& start, const Vec2& end) {
    return piece_of_bulge(start, end, piece.is_arc() ? std::tan(0.25 * piece.sweep) : 0.0);
}

std::vector<Piece> mended(std::vector<Piece> loop) {
    const std::size_t count = loop.size();
    std::vector<Vec2> start(count), end(count);
    for (std::size_t i = 0; i < count; ++i) start[i] = loop[i].start, end[i] = loop[i].end;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t next = (i + 1) % count;
        if ((loop[i].end - loop[next].start).norm() <= joined) continue;
        Vec2 meet = 0.5 * (loop[i].end + loop[next].start);
        if (loop[i].is_arc() != loop[next].is_arc()) meet = loop[i].is_arc() ? loop[i].end : loop[next].start;
        end[i] = start[next] = meet;
    }
    for (std::size_t i = 0; i < count; ++i)
        if (start[i] != loop[i].start || end[i] != loop[i].end) loop[i] = moved(loop[i], start[i], end[i]);
    return loop;
}

// An outline is of two pieces at least.
std::vector<Piece> halved(const Piece& circle) {
    Piece first = circle;
    first.sweep = 0.5 * circle.sweep;
    const Vec2 arm = circle.start - circle.centre;
    const double c = std::cos(first.sweep), s = std::sin(first.sweep);
    first.end = circle.centre + Vec2(c * arm.x() - s * arm.y(), s * arm.x() + c * arm.y());
    Piece second = first;
    second.start = first.end;
    second.end = circle.end;
    return {first, second};
}

}  // namespace

std::vector<Piece> chained(const std::vector<DxfPiece>& pieces, double gap) {
    if (pieces.empty()) throw DxfError(0, "it has no lines or arcs", "give a drawing with an outline");
    Ends ends(pieces);
    join_same(ends, gap);
    join_near(ends, gap);
    check_none_open(ends);
    std::vector<Piece> loop = walked(ends);
    if (loop.size() == 1) {
        if (!loop.front().is_arc())
            throw DxfError(pieces.front().line, "a single line is not a closed outline", "close it");
        loop = halved(loop.front());
    }
    return mended(std::move(loop));
}

}  // namespace overbend::files
