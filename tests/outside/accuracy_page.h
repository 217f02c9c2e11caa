// The manual's page on accuracy, of which one part is made of the table.

#pragma once

#include <string>

#include "tests/outside/table.h"

namespace overbend::tests {

// From the source folder.
inline constexpr const char* accuracy_page = "assets/manual/accuracy.md";

// Everything between the page's two markers, each row ending in a newline.
std::string accuracy_part(const std::vector<Row>& rows);

// What stands between the markers of a page, and a page with something else there. Throw std::runtime_error
// when a marker is missing.
std::string marked_part(const std::string& page);
std::string with_marked_part(const std::string& page, const std::string& part);

}  // namespace overbend::tests
