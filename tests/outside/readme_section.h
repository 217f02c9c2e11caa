// The README's section on how good the numbers are, made of the table.

#pragma once

#include <string>

#include "tests/outside/table.h"

namespace overbend::tests {

// Everything between the two markers, each row ending in a newline.
std::string readme_section(const std::vector<Row>& rows);

// The same texts, where numbers may differ by two in their last place: another processor's libraries round
// otherwise.
bool same_but_for_rounding(const std::string& a, const std::string& b);

// What stands between the markers of a page, and a page with something else there. Throw std::runtime_error
// when a marker is missing.
std::string marked_part(const std::string& page);
std::string with_marked_part(const std::string& page, const std::string& part);

}  // namespace overbend::tests
