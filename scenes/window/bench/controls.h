// The bench's panel: material, figures, tools, travel, the guessing game, the overbend that is needed.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/ui/ui.h"
#include "scenes/window/bench/state.h"

namespace overbend::window {

struct BenchTold {
    std::optional<BenchTrouble> trouble;  // with what is set up
    std::optional<BenchShown> shown;      // last, without its pixels
    std::optional<Overbend> overbend;     // found last
    bool looking = false;                 // for an overbend
    double rate = 0.0;                    // bends a second lately; 0: none
    std::string error;                    // of a computation, in words
};

enum class BenchAsked { nothing, overbend };

BenchAsked draw_bench_controls(ui::Ui& ui, BenchState& state, const std::vector<std::string>& cards,
                               const BenchTold& told);

}  // namespace overbend::window
