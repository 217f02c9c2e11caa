#include "scenes/window/bench/guess.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace overbend::window {

bool add_guess(GuessGame& game, const std::string& typed) {
    const std::string digits = "0123456789.,";
    const std::size_t end = typed.find_last_of(digits);
    if (end == std::string::npos) return false;
    const std::size_t before = typed.find_last_not_of(digits, end);
    const std::size_t begin = before == std::string::npos ? 0 : before + 1;
    if (begin > 0 && typed[begin - 1] == '-') return false;
    std::string number = typed.substr(begin, end - begin + 1);
    std::replace(number.begin(), number.end(), ',', '.');
    Guess guess;
    // What a point is must not depend on the machine's language.
    const char* const behind = number.data() + number.size();
    const auto read = std::from_chars(number.data(), behind, guess.angle);
    if (read.ec != std::errc() || read.ptr != behind || guess.angle > 180.0) return false;
    const std::string name = typed.substr(0, begin);
    const std::size_t first = name.find_first_not_of(" :"), last = name.find_last_not_of(" :");
    if (first != std::string::npos) guess.who = name.substr(first, last - first + 1);
    game.guesses.push_back(guess);
    return true;
}

std::vector<Judged> judged(const GuessGame& game, double angle) {
    std::vector<Judged> all;
    for (const Guess& g : game.guesses) all.push_back({g, g.angle - angle});
    std::stable_sort(all.begin(), all.end(),
                     [](const Judged& a, const Judged& b) { return std::abs(a.off) < std::abs(b.off); });
    return all;
}

Round next_round(std::mt19937& chance, const std::vector<std::string>& cards, const std::string& last) {
    std::vector<std::string> others;
    for (const std::string& c : cards)
        if (c != last) others.push_back(c);
    Round round;
    round.card = others[std::uniform_int_distribution<std::size_t>(0, others.size() - 1)(chance)];
    round.way = std::uniform_real_distribution<double>(0.35, 0.85)(chance);
    return round;
}

}  // namespace overbend::window
