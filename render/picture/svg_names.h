// What an SVG document that Cairo wrote still lacks: bytes that depend on the picture alone, a title, and
// names that do not meet those of another document on the same page.

#pragma once

#include <string>

namespace overbend::picture {

// Cairo numbers its surfaces through the whole run of a program; the numbers are taken out.
std::string without_surface_numbers(const std::string& svg);

// With a title that viewers show and screen readers read. Unchanged for an empty one.
std::string with_title(const std::string& svg, const std::string& title);

// The names of the document's parts (clips, patterns) begin with a number worked out of all its bytes.
std::string with_own_names(const std::string& svg);

}  // namespace overbend::picture
