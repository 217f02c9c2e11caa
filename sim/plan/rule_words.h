// Figures for the words of findings. For sim/plan only.

#pragma once

#include <cstdio>
#include <string>

namespace overbend::plan {

template <class... Values>
std::string rule_words(const char* form, Values... values) {
    char text[400];
    std::snprintf(text, sizeof text, form, values...);
    return text;
}

constexpr double degree = 3.14159265358979323846 / 180.0;

}  // namespace overbend::plan
