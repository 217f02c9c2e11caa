// What ffprobe says of a film's pictures.

#pragma once

#include <cstdio>
#include <filesystem>
#include <map>
#include <string>

namespace overbend::tests {

// Its keys and values, the frames counted one by one ("nb_read_frames"). Empty when it is no film.
inline std::map<std::string, std::string> probed(const std::filesystem::path& film) {
    const std::string line =
        "ffprobe -v error -select_streams v:0 -count_frames -show_streams '" + film.string() + "'";
    std::map<std::string, std::string> found;
    std::FILE* pipe = ::popen(line.c_str(), "r");
    if (pipe == nullptr) return found;
    std::string all;
    char part[4096];
    for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) all.append(part, n);
    ::pclose(pipe);
    for (std::size_t at = 0; at < all.size();) {
        const std::size_t end = std::min(all.find('\n', at), all.size());
        const std::string entry = all.substr(at, end - at);
        const std::size_t is = entry.find('=');
        if (is != std::string::npos) found[entry.substr(0, is)] = entry.substr(is + 1);
        at = end + 1;
    }
    return found;
}

}  // namespace overbend::tests
