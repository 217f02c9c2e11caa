#include "tests/outside/vee_deck_file.h"

#include <atomic>
#include <cstdio>
#include <exception>
#include <sstream>
#include <stdexcept>
#include <thread>

#include "render/output/whole_file.h"
#include "tests/files/own_folder.h"

namespace overbend::tests {

namespace {

constexpr const char* path = "tests/outside/vee_deck.csv";
constexpr const char* head =
    "# V air bends by finite elements: test_outside --run-vee-deck works them out and writes this file.\n"
    "# name,card,thickness,die_opening,shoulder_radius,nose_radius,friction,travel (mm),end_force,peak_force "
    "(N/mm),included_loaded,included_free (deg)\n";

std::string line_of_result(const VeeDeckBend& b, const VeeDeckResult& r) {
    char text[300];
    std::snprintf(text, sizeof text, "%s,%s,%g,%g,%g,%g,%g,%g,%.2f,%.2f,%.3f,%.3f\n", b.name.c_str(),
                  b.card.c_str(), b.thickness, b.die_opening, b.shoulder_radius, b.nose_radius, b.friction,
                  b.travel, r.end_force, r.peak_force, r.included_loaded, r.included_free);
    return text;
}

}  // namespace

std::vector<std::pair<VeeDeckBend, VeeDeckResult>> stored_vee_decks() {
    std::vector<std::pair<VeeDeckBend, VeeDeckResult>> all;
    std::istringstream lines(bytes_of(path));
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line[0] == '#') continue;
        VeeDeckBend b;
        VeeDeckResult r;
        char name[40], card[40];
        if (std::sscanf(line.c_str(), "%39[^,],%39[^,],%lf,%lf,%lf,%lf,%lf,%lf,%lf,%lf,%lf,%lf", name, card,
                        &b.thickness, &b.die_opening, &b.shoulder_radius, &b.nose_radius, &b.friction,
                        &b.travel, &r.end_force, &r.peak_force, &r.included_loaded, &r.included_free) != 12)
            throw std::runtime_error(std::string(path) + ": not twelve fields: " + line);
        b.name = name, b.card = card;
        all.emplace_back(b, r);
    }
    return all;
}

void run_and_store_vee_deck() {
    const auto stored = stored_vee_decks();
    std::vector<VeeDeckResult> now(stored.size());
    std::vector<std::string> failed(stored.size());
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < stored.size(); i = next++) {
            try {
                now[i] = run_vee_deck(stored[i].first);
            } catch (const std::exception& e) {
                failed[i] = e.what();
            }
        }
    };
    std::printf("two decks at a time, each some ten minutes\n");
    std::fflush(stdout);
    std::thread other(work);
    work();
    other.join();

    std::string text = head;
    for (std::size_t i = 0; i < stored.size(); ++i) {
        const auto& [bend, before] = stored[i];
        if (!failed[i].empty()) throw std::runtime_error(bend.name + ": " + failed[i]);
        std::printf("before %snow    %s", line_of_result(bend, before).c_str(),
                    line_of_result(bend, now[i]).c_str());
        text += line_of_result(bend, now[i]);
    }
    output::write_whole(path, text);
}

}  // namespace overbend::tests
