#include "tests/outside/pure_bending_deck.h"

#include <Eigen/Dense>
#include <cmath>
#include <stdexcept>

#include "tests/outside/deck.h"

namespace overbend::tests {

namespace {

struct Model {
    Deck deck;
    Patch grid;  // strip and block
    int strip_columns = 0, couple_upper = 0, couple_lower = 0;
    std::vector<int> upper, lower;  // nodes that the circles go through
};

Model model(const PureBendingDeck& s) {
    Model m;
    const double width = s.length / s.columns, t = s.thickness;
    const int block = static_cast<int>(std::lround(t / width));  // as long as it is thick
    m.strip_columns = s.columns;
    m.grid = m.deck.add_patch(s.columns + block, s.rows, [&](double u, double v) {
        return Point{u * (s.columns + block) * width, (v - 0.5) * t};
    });
    const int last = 2 * m.grid.columns, half = 2 * static_cast<int>(std::lround(0.4 * s.columns));
    m.couple_lower = m.grid.node(last, 0), m.couple_upper = m.grid.node(last, 2 * s.rows);
    m.upper = m.grid.row_of_nodes(2 * s.rows, 0, half), m.lower = m.grid.row_of_nodes(0, 0, half);

    const int first_of_block = m.grid.element(s.columns, 0);
    m.deck.element_set("STRIP", m.grid.first_element, first_of_block - 1);
    m.deck.element_set("BLOCK", first_of_block, m.grid.last_element());
    m.deck.plastic_section("STRIP", s.card);
    m.deck.elastic_section("BLOCK", 20.0 * s.card.youngs_modulus);
    m.deck.node_set("SYMMETRY", m.grid.column_of_nodes(0));
    m.deck.node_set("UPPER", m.upper);
    m.deck.node_set("LOWER", m.lower);
    m.deck.node_set("COUPLE", {m.couple_lower, m.couple_upper});
    return m;
}

// Bends to turn the block by `turn`, as the difference of the two nodes' displacements along the strip: then
// their forces are equal and opposite, whatever they are.
void step(Model& m, const PureBendingDeck& s, int reference, double turn, int increments) {
    m.deck.line("*STEP,NLGEOM,INC=1000");
    m.deck.line("*STATIC");
    const std::string size = std::to_string(1.0 / increments);
    m.deck.line(size + ",1.,1e-7," + size);
    m.deck.line("*BOUNDARY");
    m.deck.line(std::to_string(reference) + ",1,1," + std::to_string(-s.thickness * std::sin(turn)));
    for (const char* set : {"UPPER", "LOWER", "COUPLE"}) {
        m.deck.line(std::string("*NODE PRINT,NSET=") + set);
        m.deck.line("U");
    }
    m.deck.line("*NODE PRINT,NSET=COUPLE");
    m.deck.line("RF");
    m.deck.line("*END STEP");
}

Model whole(const PureBendingDeck& s) {
    Model m = model(s);
    const int reference = m.grid.node(2 * m.grid.columns, 2 * s.rows) + 1;
    m.deck.add_node(reference, {s.length + 2.0 * s.thickness, 0.0});
    m.deck.line("*EQUATION");
    m.deck.line("3");
    m.deck.line(std::to_string(m.couple_upper) + ",1,1.," + std::to_string(m.couple_lower) + ",1,-1.," +
                std::to_string(reference) + ",1,-1.");
    m.deck.line("*BOUNDARY");
    m.deck.line("SYMMETRY,1,1,0.");
    m.deck.line(std::to_string(m.grid.node(0, s.rows)) + ",2,2,0.");
    m.deck.line(std::to_string(reference) + ",2,3,0.");
    step(m, s, reference, s.curvature * s.length, s.increments);
    // Back past the free state: it is read where the couple changes its sign.
    const double past = s.free_guess - 0.1 * (s.curvature - s.free_guess);
    step(m, s, reference, past * s.length, 11);
    return m;
}

// Radius of the circle through points, its centre on the symmetry line x = 0: x^2 + y^2 = 2 y0 y + c.
double radius(const Model& m, const std::vector<int>& nodes, const std::map<int, Point>& moved) {
    Eigen::MatrixXd A(nodes.size(), 2);
    Eigen::VectorXd b(nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const Point from = m.deck.place_of(nodes[i]), by = moved.at(nodes[i]);
        const double x = from[0] + by[0], y = from[1] + by[1];
        A(i, 0) = 2.0 * y, A(i, 1) = 1.0;
        b(i) = x * x + y * y;
    }
    const Eigen::Vector2d fit = A.colPivHouseholderQr().solve(b);
    return std::sqrt(fit(1) + fit(0) * fit(0));
}

PureBendingState read_state(const Model& m, const PrintedState& s) {
    const double inner = radius(m, m.upper, s.displacement.at("UPPER"));
    const double outer = radius(m, m.lower, s.displacement.at("LOWER"));
    const std::map<int, Point>& moved = s.displacement.at("COUPLE");
    const double arm = m.deck.place_of(m.couple_upper)[1] + moved.at(m.couple_upper)[1] -
                       m.deck.place_of(m.couple_lower)[1] - moved.at(m.couple_lower)[1];
    const double force =
        0.5 * (s.force.at("COUPLE").at(m.couple_lower)[0] - s.force.at("COUPLE").at(m.couple_upper)[0]);
    const int top = m.upper.front(), bottom = m.lower.front();  // on the symmetry line
    const double thickness = m.deck.place_of(top)[1] + s.displacement.at("UPPER").at(top)[1] -
                             m.deck.place_of(bottom)[1] - s.displacement.at("LOWER").at(bottom)[1];
    return {2.0 / (inner + outer), force * arm, thickness};
}

}  // namespace

PureBendingRun run_pure_bending_deck(const PureBendingDeck& s) {
    const Model m = whole(s);
    PureBendingRun run;
    PureBendingState before;
    for (const PrintedState& printed : run_deck(m.deck.text())) {
        const PureBendingState now = read_state(m, printed);
        if (printed.time < 1.0 + 1e-9)
            run.loading.push_back(now);
        else if (before.moment > 0.0 && now.moment <= 0.0)
            run.free_curvature = now.curvature + (before.curvature - now.curvature) * now.moment /
                                                     (now.moment - before.moment);
        before = now;
    }
    if (run.loading.empty() || before.moment > 0.0) throw std::runtime_error("the couple is not gone");
    return run;
}

}  // namespace overbend::tests
