#include "tests/outside/slab_deck.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::tests {

namespace {

// A closed outline as points, no straight line between two longer than `longest`.
std::vector<Place> cut_outline(const tool::ArcOutline& outline, double sag, double longest) {
    const std::vector<tool::Vec2> corners = tool::sample(outline, sag);
    std::vector<Place> points;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Place a = corners[i], b = corners[(i + 1) % corners.size()];
        const int parts = std::max(1, static_cast<int>(std::ceil((b - a).norm() / longest)));
        for (int k = 0; k < parts; ++k) points.push_back(a + (b - a) * k / parts);
    }
    return points;
}

// The stretch of a closed line of points that lies in a box, beginning where it comes in.
std::vector<Place> stretch_in(const std::vector<Place>& points, const Place& position, const tool::Box& box) {
    const auto inside = [&](std::size_t i) {
        const Place p = points[i % points.size()] + position;
        return (p.array() >= box.low.array()).all() && (p.array() <= box.high.array()).all();
    };
    std::size_t first = 0;
    while (first < points.size() && !(inside(first) && !inside(first + points.size() - 1))) ++first;
    std::vector<Place> stretch;
    for (std::size_t i = first; i < first + points.size() && inside(i); ++i)
        stretch.push_back(points[i % points.size()] + position);
    return stretch;
}

Place left_of(const Place& direction) {
    return Place(-direction.y(), direction.x()).normalized();
}

}  // namespace

std::vector<int> Slab::nodes() const {
    std::vector<int> found;
    for (int n = first_node; n <= node(columns, rows, 1); ++n) found.push_back(n);
    return found;
}

std::vector<int> Slab::front_nodes() const {
    std::vector<int> found;
    for (int n = first_node; n <= node(columns, rows, 0); n += 2) found.push_back(n);
    return found;
}

std::vector<int> Slab::column_of_nodes(int i) const {
    std::vector<int> found;
    for (int n = node(i, 0, 0); n <= node(i, rows, 1); ++n) found.push_back(n);
    return found;
}

Slab add_slab(Deck& deck, int columns, int rows, const std::function<Point(int, int)>& place) {
    const Deck::Numbers first = deck.take_numbers(2 * (columns + 1) * (rows + 1), columns * rows);
    const Slab slab{first.node, first.element, columns, rows};
    for (int i = 0; i <= columns; ++i)
        for (int j = 0; j <= rows; ++j)
            for (const int plane : {0, 1}) deck.add_node(slab.node(i, j, plane), place(i, j), plane);
    deck.line("*ELEMENT,TYPE=C3D8I");
    for (int c = 0; c < columns; ++c)
        for (int r = 0; r < rows; ++r) {
            std::string text = std::to_string(slab.element(c, r));
            for (const int plane : {0, 1})
                for (const auto& [i, j] : {std::pair{0, 0}, {1, 0}, {1, 1}, {0, 1}})
                    text += "," + std::to_string(slab.node(c + i, r + j, plane));
            deck.line(text);
        }
    return slab;
}

Slab add_strip(Deck& deck, const std::vector<double>& blank, double thickness, int rows,
               const StripPlacing& at) {
    const double c = std::cos(at.turn), s = std::sin(at.turn);
    return add_slab(deck, static_cast<int>(blank.size()) - 1, rows, [&](int i, int j) {
        const double along = blank[i], across = thickness * (static_cast<double>(j) / rows - 0.5);
        return Point{at.left[0] + along * c - across * s, at.left[1] + along * s + across * c};
    });
}

std::vector<int> add_tool(Deck& deck, const std::string& name, const tool::ArcOutline& outline,
                          const Point& position, const tool::Box& box) {
    constexpr double sag = 1e-4, longest = 0.5, depth = 0.1;
    const std::vector<Place> face =
        stretch_in(cut_outline(outline, sag, longest), Place(position[0], position[1]), box);
    const int last = static_cast<int>(face.size()) - 1;
    const Slab slab = add_slab(deck, last, 1, [&](int i, int j) {
        const Place along = face[std::min(i + 1, last)] - face[std::max(i - 1, 0)];
        const Place at = face[i] + depth * j * left_of(along);
        return Point{at.x(), at.y()};
    });
    deck.element_set(name + "BODY", slab.first_element, slab.last_element());
    deck.elastic_section(name + "BODY", 200e3);
    face_surface(deck, name, slab, Face::lower, 0, last - 1);
    return slab.nodes();
}

void face_surface(Deck& deck, const std::string& name, const Slab& slab, Face face, int first_column,
                  int last_column) {
    const bool lower = face == Face::lower;
    deck.line("*SURFACE,NAME=" + name);
    for (int c = first_column; c <= last_column; ++c)
        deck.line(std::to_string(slab.element(c, lower ? 0 : slab.rows - 1)) + (lower ? ",S3" : ",S5"));
}

void touch(Deck& deck, const std::string& name, const std::vector<std::pair<std::string, std::string>>& pairs,
           double friction) {
    deck.line("*SURFACE INTERACTION,NAME=" + name);
    deck.line("*SURFACE BEHAVIOR,PRESSURE-OVERCLOSURE=LINEAR");
    deck.line("2.e5");  // a pressure of 400 MPa sinks in by 0.002 mm
    if (friction > 0.0) {
        deck.line("*FRICTION");
        deck.line(std::to_string(friction) + ",1.e4");
    }
    for (const auto& [nodes, faces] : pairs) {
        deck.line("*CONTACT PAIR,INTERACTION=" + name + ",TYPE=NODE TO SURFACE");
        deck.line(nodes + "," + faces);
    }
}

void hold_softly(Deck& deck, const std::vector<std::pair<int, int>>& nodes_and_directions, double stiffness) {
    // One element a spring; numbers of elements are free from the last slab on.
    const int count = static_cast<int>(nodes_and_directions.size());
    const int first = deck.take_numbers(0, count).element;
    for (int i = 0; i < count; ++i) {
        const std::string set = "HOLD" + std::to_string(i + 1);
        deck.line("*ELEMENT,TYPE=SPRING1,ELSET=" + set);
        deck.line(std::to_string(first + i) + "," + std::to_string(nodes_and_directions[i].first));
        deck.line("*SPRING,ELSET=" + set);
        deck.line(std::to_string(nodes_and_directions[i].second));
        deck.line(std::to_string(stiffness));
    }
}

std::vector<double> graded_columns(double length, const std::vector<double>& places, double reach,
                                   double fine, double coarse) {
    const auto wanted = [&](double at) {
        double nearest = 1e300;
        for (const double p : places) nearest = std::min(nearest, std::abs(at - p));
        return std::min(coarse, fine + 0.2 * std::max(0.0, nearest - reach));
    };
    std::vector<double> blank = {0.0};
    while (blank.back() < length) blank.push_back(blank.back() + wanted(blank.back() + 0.5 * fine));
    for (double& b : blank) b *= length / blank.back();
    return blank;
}

BentShape bent_shape(const Deck& deck, const Slab& strip, const std::vector<double>& blank,
                     const std::map<int, Point>& displacement) {
    const auto place = [&](int i, int j) {
        const int n = strip.node(i, j, 0);
        const Point from = deck.place_of(n), by = displacement.at(n);
        return Place(from[0] + by[0], from[1] + by[1]);
    };
    BentShape shape;
    for (int i = 0; i <= strip.columns; ++i) {
        Place across = Place::Zero();
        for (int j = 0; j <= strip.rows; ++j) across += (2.0 * j - strip.rows) * place(i, j);
        double turn = std::atan2(-across.x(), across.y());
        // Sections turn by little from one to the next: a strip may turn by more than half a circle.
        if (i > 0) turn = shape.turn.back() + std::remainder(turn - shape.turn.back(), 2.0 * pi);
        shape.blank.push_back(blank[i]);
        shape.turn.push_back(turn);
        shape.lower.push_back(place(i, 0));
        shape.upper.push_back(place(i, strip.rows));
    }
    return shape;
}

}  // namespace overbend::tests
