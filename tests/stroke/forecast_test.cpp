// A forecast is exact for what it is made of, a parabola of the travel over the angle, and forgets angles
// that are far from the one that is asked for.

#include "sim/stroke/forecast.h"

#include <doctest/doctest.h>

using overbend::stroke::Forecast;

TEST_SUITE("stroke") {
    TEST_CASE("a forecast goes through the angles next to the one that is asked for") {
        const auto travel = [](double turn) { return 0.2 + 1.5 * turn - 0.4 * turn * turn; };
        Forecast forecast;
        forecast.add(travel(0.3), 0.3);
        CHECK(forecast.travel_for(1.0) == doctest::Approx(travel(0.3)));
        forecast.add(travel(0.5), 0.5);
        CHECK(forecast.travel_for(0.4) == doctest::Approx(0.5 * (travel(0.3) + travel(0.5))));
        forecast.add(5.0, -2.0);
        for (const double turn : {0.8, 0.9}) forecast.add(travel(turn), turn);
        CHECK(forecast.travel_for(0.85) == doctest::Approx(travel(0.85)));
        CHECK(forecast.travel_for(0.4) == doctest::Approx(travel(0.4)));
    }

    TEST_CASE("a travel that is looked at again replaces what was known of it") {
        Forecast forecast;
        forecast.add(1.0, 0.4);
        forecast.add(2.0, 0.8);
        forecast.add(2.0, 0.6);
        CHECK(forecast.travel_for(0.5) == doctest::Approx(1.5));
    }

}  // TEST_SUITE
