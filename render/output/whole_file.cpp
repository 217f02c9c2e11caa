#include "render/output/whole_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <random>
#include <stdexcept>
#include <system_error>

namespace overbend::output {

namespace {

[[noreturn]] void complain(const std::filesystem::path& path, const std::string& reason) {
    throw std::runtime_error(path.string() + ": cannot be written: " + reason);
}

std::string random_digits() {
    std::random_device random;
    char text[17];
    std::snprintf(text, sizeof text, "%08x%08x", random(), random());
    return text;
}

// For the whole program: it is the same whatever writes, and each writer would have to be handed it.
std::vector<std::filesystem::path> never_replaced;

bool must_stay(const std::filesystem::path& path) {
    return std::any_of(never_replaced.begin(), never_replaced.end(), [&](const std::filesystem::path& kept) {
        std::error_code ignored;
        return std::filesystem::equivalent(path, kept, ignored);
    });
}

}  // namespace

void never_replace(const std::vector<std::filesystem::path>& files) {
    never_replaced.insert(never_replaced.end(), files.begin(), files.end());
}

std::filesystem::path place_beside(const std::filesystem::path& path) {
    return path.parent_path() / (".overbend-" + random_digits());
}

PartFile::PartFile(const std::filesystem::path& path) : path_(path) {
    if (!path.has_filename()) complain(path, "it does not name a file");
    place_ = place_beside(path);
    unfinished_.emplace(place_);
    file_ = ::open(place_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (file_ < 0) complain(path, std::strerror(errno));
}

PartFile::~PartFile() {
    ::close(file_);
    std::error_code ignored;
    if (!place_.empty()) std::filesystem::remove(place_, ignored);
}

std::uintmax_t PartFile::size() const {
    std::error_code error;
    const std::uintmax_t size = std::filesystem::file_size(place_, error);
    return error ? 0 : size;
}

void PartFile::write(const std::string& bytes) {
    for (std::size_t done = 0; done < bytes.size();) {
        const ssize_t more = ::write(file_, bytes.data() + done, bytes.size() - done);
        if (more < 0 && errno != EINTR) complain(path_, std::strerror(errno));
        if (more > 0) done += static_cast<std::size_t>(more);
    }
}

void PartFile::give_name() {
    if (::fsync(file_) != 0) complain(path_, std::strerror(errno));
    if (must_stay(path_)) complain(path_, "it was read for this; give another folder");
    std::error_code error;
    std::filesystem::rename(place_, path_, error);
    if (error) complain(path_, error.message());
    place_.clear();
    unfinished_.reset();
}

void write_whole(const std::filesystem::path& path, const std::string& bytes) {
    PartFile file(path);
    file.write(bytes);
    file.give_name();
}

}  // namespace overbend::output
