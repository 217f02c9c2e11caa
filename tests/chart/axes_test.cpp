// Ticks: at round numbers, evenly apart, few enough, and the data between the first and the last one.

#include "render/chart/axes.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "sim/errors.h"

using namespace overbend;
using namespace overbend::chart;

namespace {

// The number that is 1, 2 or 5 times a power of ten and nearest to this one; 0 when none is near.
double round_number(double step) {
    const double power = std::pow(10.0, std::floor(std::log10(step) + 1e-4));
    for (const double m : {1.0, 2.0, 5.0})
        if (std::abs(step / power - m) < 1e-3) return m * power;
    return 0.0;
}

void check_linear(double low, double high, int most) {
    CAPTURE(low);
    CAPTURE(high);
    CAPTURE(most);
    const Axis axis = make_axis("force, kN", {low, high}, most);
    const std::vector<double>& t = axis.ticks;
    REQUIRE(t.size() >= 2);
    CHECK(static_cast<int>(t.size()) <= most);
    CHECK(axis.numbers.size() == t.size());
    const double step = round_number((t.back() - t.front()) / (static_cast<double>(t.size()) - 1.0));
    REQUIRE(step > 0.0);
    for (std::size_t i = 1; i < t.size(); ++i)
        CHECK(std::abs(t[i] - t[i - 1] - step) < 1e-12 * std::abs(t[i]) + 1e-9 * step);
    for (const double v : t)
        CHECK(std::abs(v - step * std::round(v / step)) < 1e-12 * std::abs(v) + 1e-9 * step);
    CHECK(t.front() == axis.low);
    CHECK(t.back() == doctest::Approx(axis.high));
    const double rounding = 1e-6 * (high - low) + 1e-12 * std::abs(high);
    CHECK(axis.low <= low + rounding);
    CHECK(axis.high >= high - rounding);
    // not more than a step of each side is empty
    if (high > low) CHECK(axis.high - high < step * (1.0 + 1e-6));
    CHECK(std::set<std::string>(axis.numbers.begin(), axis.numbers.end()).size() == t.size());
    for (std::size_t i = 0; i < t.size(); ++i) {
        std::string number = axis.numbers[i];
        const std::string minus = "\u2212";
        if (number.find(minus) == 0) number = "-" + number.substr(minus.size());
        for (std::size_t at = number.find(' '); at != std::string::npos; at = number.find(' '))
            number.erase(at, 1);
        CHECK(std::stod(number) == doctest::Approx(t[i]).epsilon(1e-6).scale(step));
    }
}

}  // namespace

TEST_CASE("linear ticks stand at round numbers around the data") {
    for (const double low : {0.0, -1000.0, -0.3, 0.02, 7.0, 123456.0})
        for (const double width : {1e-4, 0.07, 0.9, 1.0, 3.4567, 60.0, 999.0, 1e5})
            for (const int most : {3, 5, 9}) check_linear(low, low + width, most);
}

TEST_CASE("an extent without width is widened") {
    check_linear(0.0, 0.0, 6);
    check_linear(5.0, 5.0, 6);
    check_linear(-2.0, -2.0, 6);
}

TEST_CASE("a remainder of zero by rounding gets no step of the axis") {
    const Axis axis = make_axis("moment", {-1e-7, 190.0}, 6);
    CHECK(axis.low == 0.0);
}

TEST_CASE("logarithmic ticks are 1, 2 and 5 times powers of ten, or these alone") {
    for (const double low : {1.0, 3.0, 0.02, 150.0})
        for (const double factor : {1.5, 30.0, 1e3, 1e6, 1e12})
            for (const int most : {3, 5, 9}) {
                CAPTURE(low);
                CAPTURE(factor);
                CAPTURE(most);
                const Axis axis = make_axis("batch, parts", {low, low * factor}, most, Scale::logarithmic);
                CHECK(axis.low <= low * (1.0 + 1e-9));
                CHECK(axis.high >= low * factor * (1.0 - 1e-9));
                CHECK(axis.low > low / 5.0);
                CHECK(static_cast<int>(axis.ticks.size()) <= most);
                CHECK_FALSE(axis.ticks.empty());
                for (const double t : axis.ticks) CHECK(0.0 != round_number(t));
                CHECK(0.0 != round_number(axis.low));
                CHECK(0.0 != round_number(axis.high));
            }
}

TEST_CASE("parts of an axis") {
    const Axis axis = make_axis("", {0.0, 10.0}, 6);
    CHECK(axis.part(0.0) == doctest::Approx(0.0));
    CHECK(axis.part(2.5) == doctest::Approx(0.25));
    CHECK(axis.part(20.0) == doctest::Approx(2.0));
    const Axis decades = make_axis("", {1.0, 10000.0}, 9, Scale::logarithmic);
    CHECK(decades.part(1.0) == doctest::Approx(0.0));
    CHECK(decades.part(100.0) == doctest::Approx(0.5));
    CHECK(decades.part(10000.0) == doctest::Approx(1.0));
}

TEST_CASE("numbers have as many decimals as their step, and thousands stand apart") {
    CHECK(tick_number(0.5, 0.5) == "0.5");
    CHECK(tick_number(0.0, 0.05) == "0.00");
    CHECK(tick_number(-1000.0, 500.0) == "\u22121000");
    CHECK(tick_number(12500.0, 2500.0) == "12 500");
    CHECK(tick_number(1234567.0, 1.0) == "1 234 567");
    CHECK(tick_number(-10000.0, 1.0) == "\u221210 000");
}

TEST_CASE("ranges that no axis can have are refused by name") {
    CHECK_THROWS_WITH_AS(make_axis("cost", {0.0, 10.0}, 5, Scale::logarithmic), doctest::Contains("cost"),
                         OutOfRange);
    CHECK_THROWS_WITH_AS(make_axis("force", nothing_yet(), 5), doctest::Contains("force"), OutOfRange);
    CHECK_THROWS_AS(make_axis("force", {0.0, std::nan("")}, 5), OutOfRange);
    Extent extent = nothing_yet();
    extent.take_in(std::nan(""));
    extent.take_in(3.0);
    CHECK(extent.low == 3.0);
    CHECK(extent.high == 3.0);
}
