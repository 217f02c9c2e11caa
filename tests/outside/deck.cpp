#include "tests/outside/deck.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <sstream>
#include <stdexcept>

#include "sim/material/flow_curve.h"
#include "tests/files/own_folder.h"

namespace overbend::tests {

namespace {

std::string number(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.12g", value);
    return text;
}

bool is_middle(int i, int j) {
    return i % 2 == 1 && j % 2 == 1;
}

}  // namespace

std::vector<int> Patch::row_of_nodes(int j, int from, int to) const {
    std::vector<int> found;
    for (int i = from; i <= to; ++i)
        if (!is_middle(i, j)) found.push_back(node(i, j));
    return found;
}

std::vector<int> Patch::column_of_nodes(int i) const {
    std::vector<int> found;
    for (int j = 0; j <= 2 * rows; ++j)
        if (!is_middle(i, j)) found.push_back(node(i, j));
    return found;
}

std::vector<int> Patch::nodes() const {
    std::vector<int> found;
    for (int i = 0; i <= 2 * columns; ++i)
        for (const int n : column_of_nodes(i)) found.push_back(n);
    return found;
}

Deck::Numbers Deck::take_numbers(int nodes, int elements) {
    const Numbers first{next_node_, next_element_};
    next_node_ += nodes, next_element_ += elements;
    return first;
}

void Deck::add_node(int number_of_node, const Point& at, double plane) {
    line("*NODE");
    line(std::to_string(number_of_node) + "," + number(at[0]) + "," + number(at[1]) + "," + number(plane));
    places_[number_of_node] = at;
    next_node_ = std::max(next_node_, number_of_node + 1);
}

Patch Deck::add_patch(int columns, int rows, const Place& place) {
    Patch patch{next_node_, next_element_, columns, rows};
    line("*NODE");
    for (int i = 0; i <= 2 * columns; ++i)
        for (int j = 0; j <= 2 * rows; ++j) {
            if (is_middle(i, j)) continue;
            const Point at = place(0.5 * i / columns, 0.5 * j / rows);
            places_[patch.node(i, j)] = at;
            line(std::to_string(patch.node(i, j)) + "," + number(at[0]) + "," + number(at[1]) + ",0.");
        }
    line("*ELEMENT,TYPE=CPE8R");
    for (int c = 0; c < columns; ++c)
        for (int r = 0; r < rows; ++r) {
            const int i = 2 * c, j = 2 * r;
            std::string text = std::to_string(patch.element(c, r));
            for (const auto& [di, dj] : std::array<std::array<int, 2>, 8>{
                     {{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}}})
                text += "," + std::to_string(patch.node(i + di, j + dj));
            line(text);
        }
    next_node_ = patch.node(2 * columns, 2 * rows) + 1;
    next_element_ = patch.last_element() + 1;
    return patch;
}

void Deck::node_set(const std::string& name, const std::vector<int>& nodes) {
    line("*NSET,NSET=" + name);
    for (const int n : nodes) line(std::to_string(n) + ",");
}

void Deck::element_set(const std::string& name, int first, int last) {
    line("*ELSET,ELSET=" + name + ",GENERATE");
    line(std::to_string(first) + "," + std::to_string(last));
}

void Deck::edge_surface(const std::string& name, const Patch& patch, int edge) {
    line("*SURFACE,NAME=" + name);
    for (int c = 0; c < patch.columns; ++c)
        line(std::to_string(patch.element(c, edge == 1 ? 0 : patch.rows - 1)) + ",S" + std::to_string(edge));
}

void Deck::plastic_section(const std::string& set, const material::Card& card) {
    line("*MATERIAL,NAME=M" + set);
    line("*ELASTIC");
    line(number(card.youngs_modulus) + "," + number(card.poisson));
    line("*PLASTIC");
    // As close as the curve is bent: 8 points to every doubling of p + 1e-4, up to p = 2.
    double p = 0.0;
    for (int i = 0; p < 2.0; ++i) {
        line(number(material::flow_point(card.hardening, card.youngs_modulus, p).stress) + "," + number(p));
        p = (p + 1e-4) * 1.0905077326652577 - 1e-4;
    }
    line("*SOLID SECTION,ELSET=" + set + ",MATERIAL=M" + set);
    line("1.");
}

void Deck::elastic_section(const std::string& set, double youngs_modulus) {
    line("*MATERIAL,NAME=M" + set);
    line("*ELASTIC");
    line(number(youngs_modulus) + ",0.3");
    line("*SOLID SECTION,ELSET=" + set + ",MATERIAL=M" + set);
    line("1.");
}

std::vector<PrintedState> read_printed(const std::string& table) {
    std::vector<PrintedState> states;
    std::map<int, Point>* rows = nullptr;
    std::istringstream lines(table);
    for (std::string text; std::getline(lines, text);) {
        const std::size_t at_set = text.find("for set "), at_time = text.find(" and time ");
        if (at_set != std::string::npos && at_time != std::string::npos) {
            const double time = std::strtod(text.c_str() + at_time + 10, nullptr);
            std::string set = text.substr(at_set + 8, at_time - at_set - 8);
            set.erase(set.find_last_not_of(' ') + 1);
            if (states.empty() || states.back().time != time) states.emplace_back().time = time;
            const bool moved = text.find("displacements") != std::string::npos;
            rows = &(moved ? states.back().displacement : states.back().force)[set];
            continue;
        }
        if (!rows) continue;
        std::istringstream row(text);
        std::vector<double> numbers;
        for (double v; row >> v;) numbers.push_back(v);
        if (numbers.size() == 4) (*rows)[static_cast<int>(numbers[0])] = {numbers[1], numbers[2]};
        if (numbers.size() == 3) (*rows)[0] = {numbers[0], numbers[1]};
    }
    return states;
}

std::string table_of_deck(const std::string& deck) {
    if (std::system("command -v ccx >/dev/null 2>&1") != 0)
        throw std::runtime_error("ccx is not installed (Debian's calculix-ccx; tests/install installs it)");
    const OwnFolder folder;
    folder.write("deck.inp", deck);
    const std::string command =
        "cd '" + folder.path().string() + "' && OMP_NUM_THREADS=1 timeout 3600 nice ccx -i deck >said 2>&1";
    const int status = std::system(command.c_str());
    const std::string said = bytes_of(folder.path() / "said");
    if (status != 0 || said.find("Job finished") == std::string::npos ||
        said.find("*ERROR") != std::string::npos)
        throw std::runtime_error("ccx did not solve: " +
                                 said.substr(said.size() - std::min<std::size_t>(said.size(), 600)));
    return bytes_of(folder.path() / "deck.dat");
}

std::vector<PrintedState> run_deck(const std::string& deck) {
    return read_printed(table_of_deck(deck));
}

}  // namespace overbend::tests
