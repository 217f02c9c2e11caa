#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

constexpr double em = 2048.0;  // the fonts' units

// Code points 32 to 126.
constexpr int normal_advance[95] = {
    651,  821,  942,  1716, 1303, 1946, 1597, 563,  799,  799,  1024, 1716, 651,  739,  651,  690,
    1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690,  690,  1716, 1716, 1716, 1087,
    2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604,  604,  1343, 1141, 1767, 1532, 1612,
    1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799,  690,  799,  1716, 1024,
    1024, 1255, 1300, 1126, 1300, 1260, 721,  1300, 1298, 569,  569,  1186, 569,  1995, 1298, 1253,
    1300, 1300, 842,  1067, 803,  1298, 1212, 1675, 1212, 1212, 1075, 1303, 690,  1303, 1716};
constexpr int bold_advance[95] = {
    713,  934,  1067, 1716, 1425, 2052, 1786, 627,  936,  936,  1071, 1716, 778,  850,  778,  748,
    1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 819,  819,  1716, 1716, 1716, 1188,
    2048, 1585, 1561, 1503, 1700, 1399, 1399, 1681, 1714, 762,  762,  1587, 1305, 2038, 1714, 1741,
    1501, 1741, 1577, 1475, 1397, 1663, 1585, 2259, 1579, 1483, 1485, 936,  748,  936,  1716, 1024,
    1024, 1382, 1466, 1214, 1466, 1389, 891,  1466, 1458, 702,  702,  1362, 702,  2134, 1458, 1407,
    1466, 1466, 1010, 1219, 979,  1458, 1335, 1892, 1321, 1335, 1192, 1458, 748,  1458, 1716};

int advance(char32_t c, Weight weight) {
    const bool bold = weight == Weight::bold;
    if (c >= 32 && c < 127) return (bold ? bold_advance : normal_advance)[c - 32];
    if (c == U'\u00b0' || c == U'\u2013') return 1024;  // degree, dash
    if (c == U'\u00b1' || c == U'\u2212') return 1716;  // plus or minus, minus
    if (c == U'\u00b7') return bold ? 778 : 651;        // middle dot
    return c < 0x250 ? (bold ? 1500 : 1400) : 2048;
}

// Length in bytes of the UTF-8 letter that begins with this byte; a stray byte counts as a letter.
size_t letter_length(unsigned char first) {
    if (first >= 0xf0) return 4;
    if (first >= 0xe0) return 3;
    if (first >= 0xc0) return 2;
    return 1;
}

// The letter at `at`, which is moved on to the next one.
char32_t next_letter(const std::string& words, size_t& at) {
    const unsigned char first = static_cast<unsigned char>(words[at]);
    const size_t length = std::min(letter_length(first), words.size() - at);
    char32_t c = length == 1 ? first : first & (0xffu >> (length + 1));
    for (size_t i = 1; i < length; ++i) c = (c << 6) | (static_cast<unsigned char>(words[at + i]) & 0x3fu);
    at += length;
    return c;
}

}  // namespace

double text_width(const std::string& words, double size, Weight weight) {
    long sum = 0;
    for (size_t at = 0; at < words.size();) sum += advance(next_letter(words, at), weight);
    return static_cast<double>(sum) * size / em;
}

Rect text_box(const Text& text) {
    const double width = text_width(text.words, text.size, text.weight);
    const double part = text.across == Across::left ? 0.0 : text.across == Across::middle ? 0.5 : 1.0;
    // Ascent and descent without the room for accents on capitals.
    return {text.at.x() - part * width, text.at.y() - 0.78 * text.size, width, 1.01 * text.size};
}

std::string fitted(const std::string& words, double size, double width, Weight weight) {
    if (text_width(words, size, weight) <= width) return words;
    const std::string ellipsis = "\u2026";
    const double room = width - text_width(ellipsis, size, weight);
    size_t kept = 0;
    for (size_t at = 0; at < words.size();) {
        next_letter(words, at);
        if (text_width(words.substr(0, at), size, weight) > room) break;
        kept = at;
    }
    while (kept > 0 && words[kept - 1] == ' ') --kept;
    return words.substr(0, kept) + ellipsis;
}

std::vector<std::string> wrapped(const std::string& words, double size, double first_width, double width,
                                 int lines) {
    std::vector<std::string> result;
    size_t begin = 0;
    while (begin < words.size() && static_cast<int>(result.size()) < lines) {
        const double room = result.empty() ? first_width : width;
        const std::string rest = words.substr(begin);
        const bool last = static_cast<int>(result.size()) + 1 == lines;
        if (last || text_width(rest, size) <= room) {
            result.push_back(fitted(rest, size, room));
            break;
        }
        size_t cut = std::string::npos;  // the last blank before which the words fit
        for (size_t at = rest.find(' '); at != std::string::npos; at = rest.find(' ', at + 1))
            if (text_width(rest.substr(0, at), size) <= room) cut = at;
        if (cut == std::string::npos) {
            result.push_back(fitted(rest, size, room));
            break;
        }
        result.push_back(rest.substr(0, cut));
        begin += cut + 1;
    }
    return result;
}

}  // namespace overbend::picture
