// A finding of a shop rule.

#pragma once

#include <string>

namespace overbend::plan {

enum class RulePlace { bend, step, cutout };

struct RuleFinding {
    std::string rule;                   // its name: "least inside radius"
    RulePlace place = RulePlace::bend;  // what it is about, set by the caller
    int index = 0;                      // which of them
    double figure = 0.0, limit = 0.0;   // in `unit`
    std::string unit;                   // "mm", "deg", "%"
    std::string words;                  // the whole of it, without the name of what it is about
    std::string source;                 // whose rule it is
    bool stops = false;                 // the job cannot be made so; else it is a caution
};

}  // namespace overbend::plan
