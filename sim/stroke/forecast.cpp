#include "sim/stroke/forecast.h"

#include <algorithm>
#include <cmath>

namespace overbend::stroke {

void Forecast::add(double travel, double turn) {
    known_.erase(std::remove_if(known_.begin(), known_.end(),
                                [&](const Known& k) { return k.travel == travel || k.turn == turn; }),
                 known_.end());
    known_.push_back({travel, turn});
}

double Forecast::travel_for(double turn) {
    std::stable_sort(known_.begin(), known_.end(), [&](const Known& a, const Known& b) {
        return std::abs(a.turn - turn) < std::abs(b.turn - turn);
    });
    if (known_.size() > 3) known_.resize(3);
    double travel = 0.0;
    for (const Known& a : known_) {
        double share = 1.0;
        for (const Known& b : known_)
            if (&a != &b) share *= (turn - b.turn) / (a.turn - b.turn);
        travel += share * a.travel;
    }
    return travel;
}

}  // namespace overbend::stroke
