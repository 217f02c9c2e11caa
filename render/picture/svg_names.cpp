#include "render/picture/svg_names.h"

#include <cstdint>
#include <cstring>

#include "render/picture/escaped.h"

namespace overbend::picture {

std::string without_surface_numbers(const std::string& svg) {
    std::string result;
    const std::string mark = "id=\"surface";
    size_t from = 0;
    for (size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, from)) {
        result += svg.substr(from, at + mark.size() - from);
        from = svg.find('"', at + mark.size());
    }
    return result + svg.substr(from);
}

std::string with_title(const std::string& svg, const std::string& title) {
    const size_t begin = svg.find("<svg ");
    const size_t end = begin == std::string::npos ? begin : svg.find('>', begin);
    if (title.empty() || end == std::string::npos) return svg;
    return svg.substr(0, end + 1) + "\n<title>" + escaped(title) + "</title>" + svg.substr(end + 1);
}

std::string with_own_names(const std::string& svg) {
    std::uint32_t number = 2166136261u;  // FNV-1a
    for (const char c : svg) number = (number ^ static_cast<unsigned char>(c)) * 16777619u;
    const std::string own = "p" + std::to_string(number) + "-";
    std::string result;
    size_t from = 0;
    while (true) {
        size_t next = std::string::npos, length = 0;
        for (const char* mark : {" id=\"", "url(#", "href=\"#"}) {
            const size_t at = svg.find(mark, from);
            if (at < next) next = at, length = std::strlen(mark);
        }
        if (next == std::string::npos) return result + svg.substr(from);
        result += svg.substr(from, next + length - from) + own;
        from = next + length;
    }
}

}  // namespace overbend::picture
