// The result of checking a machine or a tool: one figure against one limit.

#pragma once

#include <string>

namespace overbend::shop {

enum class Verdict { fine, thin, over };  // within the limit; near it; beyond it: not possible

struct Check {
    std::string what;  // "force"
    double figure = 0.0, limit = 0.0;
    std::string unit;
    Verdict verdict = Verdict::fine;
    std::string words;   // the whole of it, without the name of its step or tool
    std::string source;  // whose formula or limit it is
};

// beyond the limit: over; beyond `thin` of it: thin; else fine. limit > 0, 0 < thin <= 1
inline Verdict judged(double figure, double limit, double thin) {
    if (!(figure <= limit)) return Verdict::over;
    return figure > thin * limit ? Verdict::thin : Verdict::fine;
}

const char* verdict_word(Verdict verdict);  // "fine", "thin", "over"

}  // namespace overbend::shop
