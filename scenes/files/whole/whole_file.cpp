#include "scenes/files/whole/whole_file.h"

#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>
#include <system_error>

namespace overbend::files {

namespace {

[[noreturn]] void complain(const std::filesystem::path& path, const std::string& reason) {
    throw std::runtime_error(path.string() + ": cannot be written: " + reason);
}

// Everything is on the disk, or the reason why it is not.
std::string write_all(const std::filesystem::path& path, const std::string& text) {
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (file == nullptr) return std::strerror(errno);
    const bool written = std::fwrite(text.data(), 1, text.size(), file) == text.size() &&
                         std::fflush(file) == 0 && ::fsync(::fileno(file)) == 0;
    std::string reason = written ? "" : std::strerror(errno);
    if (std::fclose(file) != 0 && written) return std::strerror(errno);
    return reason;
}

}  // namespace

void write_whole(const std::filesystem::path& path, const std::string& text) {
    if (!path.has_filename()) complain(path, "it does not name a file");
    // The process's number keeps two runs that write the same file apart.
    std::filesystem::path beside = path;
    beside += ".part" + std::to_string(::getpid());

    std::error_code error;
    const std::string reason = write_all(beside, text);
    if (!reason.empty()) {
        std::filesystem::remove(beside, error);
        complain(path, reason);
    }
    std::filesystem::rename(beside, path, error);
    if (error) {
        std::error_code ignored;
        std::filesystem::remove(beside, ignored);
        complain(path, error.message());
    }
}

}  // namespace overbend::files
