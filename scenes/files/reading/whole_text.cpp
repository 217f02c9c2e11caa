#include "scenes/files/reading/whole_text.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace overbend::files {

namespace {

class OpenFile {
  public:
    // Without waiting for the other end of a pipe.
    explicit OpenFile(const std::filesystem::path& file)
        : number_(::open(file.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC)) {}
    ~OpenFile() {
        if (number_ >= 0) ::close(number_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    int number() const { return number_; }

  private:
    int number_;
};

[[noreturn]] void refuse_error(int error) {
    if (error == ENOENT || error == ENOTDIR) throw Unreadable("there is no such file", "check the path");
    if (error == EACCES || error == EPERM)
        throw Unreadable("the file cannot be read", "check its permissions");
    throw Unreadable(std::string("the file cannot be read: ") + std::strerror(error), "check the path");
}

void check_kind(const OpenFile& in) {
    struct stat is {};
    if (::fstat(in.number(), &is) != 0) refuse_error(errno);
    if (S_ISDIR(is.st_mode)) throw Unreadable("this is a folder", "give the path of a file");
    if (!S_ISREG(is.st_mode))
        throw Unreadable("this is a pipe or a device, not a file", "save it as a file, and give its path");
}

}  // namespace

std::string whole_text(const std::filesystem::path& file, std::size_t most) {
    const OpenFile in(file);
    if (in.number() < 0) refuse_error(errno);
    check_kind(in);
    std::string text;
    for (std::size_t had = 0;; had = text.size()) {
        constexpr std::size_t part = 1u << 16;
        text.resize(had + part);
        const ssize_t more = ::read(in.number(), text.data() + had, part);
        if (more < 0 && errno != EINTR) refuse_error(errno);
        text.resize(had + static_cast<std::size_t>(more > 0 ? more : 0));
        if (text.size() > most)
            throw Unreadable("the file is larger than " + std::to_string(most >> 20) + " MB",
                             "give a smaller one");
        if (more == 0) return text;
    }
}

}  // namespace overbend::files
