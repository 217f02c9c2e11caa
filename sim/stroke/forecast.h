// Foretells at which travel a bend will have an angle, from angles at some travels.
//
// Units  mm, rad.

#pragma once

#include <vector>

namespace overbend::stroke {

class Forecast {
  public:
    // A travel or an angle that is known already is replaced.
    void add(double travel, double turn);
    // By the polynomial through the travels of the (up to three) angles next to this one; others are
    // forgotten. At least one must be known.
    double travel_for(double turn);

  private:
    struct Known {
        double travel = 0.0, turn = 0.0;
    };
    std::vector<Known> known_;
};

}  // namespace overbend::stroke
