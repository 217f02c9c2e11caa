// The checks that look at the whole table.

#pragma once

namespace overbend::tests {

// Its name sorts after the others', so that it is run last.
inline constexpr const char* closing_suite = "the whole table";

// The manual's page on accuracy is written instead of being checked.
inline bool write_page = false;

}  // namespace overbend::tests
