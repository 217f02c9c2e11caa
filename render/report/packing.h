// Lists of whole numbers as short text, for a page that carries its data with it.
//
// A number is written zigzag (0, -1, 1, -2, ... as 0, 1, 2, 3, ...), seven bits a byte, the low ones first,
// the eighth bit set while more follow. Zeros are written as one byte of 0 and their count minus one in the
// same way, without zigzag: what stands still takes no room. The bytes are then base64 with padding.

#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace overbend::report {

std::string packed(const std::vector<int>& values);

// RFC 4648, section 4.
std::string base64(const std::vector<std::uint8_t>& bytes);

}  // namespace overbend::report
