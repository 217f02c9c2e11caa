// Texts with figures that another processor's libraries may round differently.

#pragma once

#include <string>

namespace overbend::tests {

// The same texts, where numbers with decimals may differ by two in their last place. Whole numbers are counts
// or figures of a source, and have to be the same.
bool same_but_for_rounding(const std::string& a, const std::string& b);

}  // namespace overbend::tests
