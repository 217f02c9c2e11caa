#include "tests/report/unpacked.h"

#include <cstdint>
#include <stdexcept>

namespace overbend::tests {

namespace {

std::vector<std::uint8_t> from_base64(const std::string& text) {
    const std::string letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::vector<std::uint8_t> bytes;
    std::uint32_t bits = 0;
    int count = 0;
    for (const char c : text) {
        if (c == '=') break;
        const std::size_t value = letters.find(c);
        if (value == std::string::npos) throw std::invalid_argument("no letter of base64");
        bits = (bits << 6u) | static_cast<std::uint32_t>(value);
        count += 6;
        if (count < 8) continue;
        count -= 8;
        bytes.push_back(static_cast<std::uint8_t>(bits >> static_cast<unsigned>(count)));
        bits &= (1u << static_cast<unsigned>(count)) - 1u;
    }
    return bytes;
}

}  // namespace

std::vector<int> unpacked(const std::string& text) {
    const std::vector<std::uint8_t> bytes = from_base64(text);
    std::size_t at = 0;
    const auto number = [&] {
        std::uint32_t value = 0;
        for (unsigned shift = 0;; shift += 7) {
            const std::uint8_t byte = bytes.at(at++);
            value |= static_cast<std::uint32_t>(byte & 127u) << shift;
            if (byte < 128) return value;
        }
    };
    std::vector<int> values;
    while (at < bytes.size()) {
        const std::uint32_t value = number();
        if (value == 0)
            values.insert(values.end(), static_cast<std::size_t>(number()) + 1, 0);
        else if (value % 2 == 0)
            values.push_back(static_cast<int>(value / 2));
        else
            values.push_back(-static_cast<int>(value / 2) - 1);
    }
    return values;
}

std::vector<int> unpacked_rows(const std::string& text, std::size_t width) {
    std::vector<int> values = unpacked(text);
    for (std::size_t i = width; i < values.size(); ++i) values[i] += values[i - width];
    return values;
}

std::vector<int> unpacked_surfaces(const std::string& text, std::size_t stations) {
    std::vector<int> values = unpacked(text);
    const std::size_t row = 4 * stations;
    for (std::size_t i = 0; i < values.size(); ++i)
        if (i % row >= 4) values[i] += values[i - 4];
    for (std::size_t i = row; i < values.size(); ++i) values[i] += values[i - row];
    return values;
}

nlohmann::json data_in(const std::string& page, const std::string& id) {
    const std::string open = "<script type=\"application/json\" id=\"" + id + "\">";
    const std::size_t from = page.find(open);
    if (from == std::string::npos) throw std::out_of_range("no data " + id);
    const std::size_t begin = from + open.size();
    return nlohmann::json::parse(page.substr(begin, page.find("</script>", begin) - begin));
}

}  // namespace overbend::tests
