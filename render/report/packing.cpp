#include "render/report/packing.h"

#include <cstddef>

namespace overbend::report {

namespace {

void add_number(std::vector<std::uint8_t>& bytes, std::uint32_t value) {
    for (; value > 127u; value >>= 7u) bytes.push_back(static_cast<std::uint8_t>(value | 128u));
    bytes.push_back(static_cast<std::uint8_t>(value));
}

std::uint32_t zigzag(int value) {
    const std::uint32_t twice = static_cast<std::uint32_t>(value) << 1u;
    return value < 0 ? ~twice : twice;
}

}  // namespace

std::string base64(const std::vector<std::uint8_t>& bytes) {
    static const char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        std::uint32_t three = 0;
        for (std::size_t k = 0; k < 3; ++k) three = three << 8u | (i + k < bytes.size() ? bytes[i + k] : 0u);
        for (std::size_t k = 0; k < 4; ++k)
            text += i + k > bytes.size() ? '=' : letters[three >> (18u - 6u * k) & 63u];
    }
    return text;
}

std::string packed(const std::vector<int>& values) {
    std::vector<std::uint8_t> bytes;
    for (std::size_t i = 0; i < values.size();) {
        std::size_t end = i;
        while (end < values.size() && values[end] == 0) ++end;
        if (end > i) {
            bytes.push_back(0);
            add_number(bytes, static_cast<std::uint32_t>(end - i - 1));
            i = end;
        } else {
            add_number(bytes, zigzag(values[i++]));
        }
    }
    return base64(bytes);
}

}  // namespace overbend::report
