#include "scenes/commands/standard_streams.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <iostream>

namespace overbend::commands {

namespace {

bool is_closed(int stream) {
    return ::fcntl(stream, F_GETFD) < 0 && errno == EBADF;
}

}  // namespace

void keep_standard_streams() {
    // In their order: what is opened takes the first number that is free. Output that was closed cannot be
    // written.
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (is_closed(stream) && ::open("/dev/null", stream == STDERR_FILENO ? O_WRONLY : O_RDONLY) != stream)
            ::_exit(3);
}

bool output_was_taken() {
    std::cout.flush();
    return std::cout.good() && std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
}

}  // namespace overbend::commands
