#include "render/output/row_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <stdexcept>

namespace overbend::output {

namespace {

[[noreturn]] void refuse(const std::filesystem::path& path, const std::string& reason) {
    throw std::runtime_error(path.string() + ": " + reason);
}

// The end of the last whole row.
off_t whole_rows_end(int file, off_t size) {
    std::string part(4096, '\0');
    while (size > 0) {
        const off_t begin = std::max<off_t>(0, size - static_cast<off_t>(part.size()));
        const ssize_t read = ::pread(file, part.data(), static_cast<std::size_t>(size - begin), begin);
        if (read <= 0) return 0;
        const std::size_t end = part.rfind('\n', static_cast<std::size_t>(read) - 1);
        if (end != std::string::npos) return begin + static_cast<off_t>(end) + 1;
        size = begin;
    }
    return 0;
}

}  // namespace

RowFile::RowFile(const std::filesystem::path& path, const std::string& head) : path_(path) {
    file_ = ::open(path.c_str(), O_RDWR | O_CREAT | O_APPEND | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0666);
    if (file_ < 0) refuse(path, std::string("cannot be written: ") + std::strerror(errno));
    try {
        struct stat is {};
        if (::fstat(file_, &is) != 0 || !S_ISREG(is.st_mode)) refuse(path, "this is no regular file");
        if (::flock(file_, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
            refuse(path, "another run is writing it; wait for its end, or stop it");
        ::fstat(file_, &is);
        const off_t end = whole_rows_end(file_, is.st_size);
        if (end < is.st_size && ::ftruncate(file_, end) != 0)
            refuse(path, std::string("cannot be written: ") + std::strerror(errno));
        if (end == 0) {
            add(head);
            return;
        }
        std::string begins(head.size(), '\0');
        const ssize_t read = ::pread(file_, begins.data(), begins.size(), 0);
        if (read != static_cast<ssize_t>(head.size()) || begins != head)
            refuse(path,
                   "it has the rows of another case, study or version; remove it, or give another folder");
    } catch (...) {
        ::close(file_);
        throw;
    }
}

RowFile::~RowFile() {
    ::close(file_);
}

void RowFile::add(const std::string& row) {
    for (std::size_t done = 0; done < row.size();) {
        const ssize_t more = ::write(file_, row.data() + done, row.size() - done);
        if (more < 0 && errno != EINTR)
            refuse(path_, std::string("cannot be written: ") + std::strerror(errno));
        if (more > 0) done += static_cast<std::size_t>(more);
    }
}

}  // namespace overbend::output
