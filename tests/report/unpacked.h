// Reads packed lists back, by the description in render/report/packing.h and stroke_json.h and not by their
// code.

#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace overbend::tests {

std::vector<int> unpacked(const std::string& text);

// Rows of `width` numbers that are differences to the row before.
std::vector<int> unpacked_rows(const std::string& text, std::size_t width);

// Surfaces: differences to the row before, of differences to the station before.
std::vector<int> unpacked_surfaces(const std::string& text, std::size_t stations);

// The data in a page's script element of this id. Throws std::out_of_range when there is none.
nlohmann::json data_in(const std::string& page, const std::string& id);

}  // namespace overbend::tests
