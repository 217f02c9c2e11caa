#include "render/film/child_process.h"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <system_error>

namespace overbend::film {

namespace {

constexpr int look_up_ms = 50;                 // between two questions whether to go on
constexpr std::size_t complaint_kept = 65536;  // bytes of its standard error, the last ones

[[noreturn]] void fail(int error, const std::string& what) {
    throw std::system_error(error, std::generic_category(), what);
}

// Two ends of which a child gets one; closed when it goes, except what was taken.
struct Ends {
    int ours = -1, theirs = -1;
    Ends() = default;
    ~Ends() {
        if (ours >= 0) ::close(ours);
        if (theirs >= 0) ::close(theirs);
    }
    Ends(const Ends&) = delete;
    Ends& operator=(const Ends&) = delete;
    int take() {
        const int end = ours;
        ours = -1;
        return end;
    }
};

// No other child inherits them: close-on-exec from the start. Those of ours do not block.
void make_socket(Ends& ends) {
    std::array<int, 2> pair{};
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, pair.data()) != 0) fail(errno, "a socket");
    ends.ours = pair[0];
    ends.theirs = pair[1];
    ::fcntl(ends.ours, F_SETFL, O_NONBLOCK);
    const int room = 1 << 20;  // the default is a fifth of a frame; without it there are more turns, no more
    ::setsockopt(ends.ours, SOL_SOCKET, SO_SNDBUF, &room, sizeof room);
}

void make_pipe_from(Ends& ends) {
    std::array<int, 2> pair{};
    if (::pipe2(pair.data(), O_CLOEXEC) != 0) fail(errno, "a pipe");
    ends.ours = pair[0];
    ends.theirs = pair[1];
    ::fcntl(ends.ours, F_SETFL, O_NONBLOCK);
}

// A descriptor above those that the child's standard ones are made of, so that none is overwritten.
void lift(int& descriptor) {
    const int high = ::fcntl(descriptor, F_DUPFD_CLOEXEC, 10);
    if (high < 0) fail(errno, "a descriptor");
    ::close(descriptor);
    descriptor = high;
}

// What the child starts with: its descriptors, no signals blocked or ignored, a process group of its own.
struct Start {
    posix_spawn_file_actions_t actions;
    posix_spawnattr_t attributes;
    Start() {
        ::posix_spawn_file_actions_init(&actions);
        ::posix_spawnattr_init(&attributes);
        sigset_t none, usual;
        ::sigemptyset(&none);
        ::sigemptyset(&usual);
        for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGPIPE}) ::sigaddset(&usual, signal);
        ::posix_spawnattr_setsigmask(&attributes, &none);
        ::posix_spawnattr_setsigdefault(&attributes, &usual);
        ::posix_spawnattr_setpgroup(&attributes, 0);
        ::posix_spawnattr_setflags(&attributes,
                                   POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETPGROUP);
    }
    ~Start() {
        ::posix_spawn_file_actions_destroy(&actions);
        ::posix_spawnattr_destroy(&attributes);
    }
    Start(const Start&) = delete;
    Start& operator=(const Start&) = delete;
    void give(const Ends& ends, int as) { ::posix_spawn_file_actions_adddup2(&actions, ends.theirs, as); }
};

bool asked_to_stop(const KeepGoing& keep_going) {
    return keep_going && !keep_going();
}

// Reads what is there; closes the end when there will be no more.
void read_from(int& end, std::string& into) {
    std::array<char, 16384> part;
    for (;;) {
        const ssize_t n = ::read(end, part.data(), part.size());
        if (n > 0) {
            into.append(part.data(), static_cast<std::size_t>(n));
            continue;
        }
        if (n < 0 && (errno == EAGAIN || errno == EINTR)) return;
        ::close(end);
        end = -1;
        return;
    }
}

}  // namespace

ChildProcess::ChildProcess(const std::vector<std::string>& words, const std::string& second_input) {
    Ends input, out, error, second;
    make_socket(input);
    make_pipe_from(out);
    make_pipe_from(error);
    if (!second_input.empty()) {
        make_socket(second);
        // So few bytes fit into it at once.
        if (::send(second.ours, second_input.data(), second_input.size(), MSG_NOSIGNAL) !=
            static_cast<ssize_t>(second_input.size()))
            fail(errno, "a socket");
        ::close(second.take());
    }
    Start start;
    for (Ends* ends : {&input, &out, &error, &second})
        if (ends->theirs >= 0) lift(ends->theirs);
    start.give(input, 0);
    start.give(out, 1);
    start.give(error, 2);
    if (second.theirs >= 0) start.give(second, 3);

    std::vector<char*> arguments;
    arguments.reserve(words.size() + 1);
    for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    const int failed =
        ::posix_spawnp(&pid_, arguments[0], &start.actions, &start.attributes, arguments.data(), environ);
    if (failed != 0) {
        pid_ = -1;
        fail(failed, words.front());
    }
    input_ = input.take();
    out_ = out.take();
    error_ = error.take();
}

ChildProcess::~ChildProcess() {
    close_all();
    if (pid_ < 0) return;
    ::kill(-pid_, SIGKILL);  // all of its group: what it has started too
    while (::waitpid(pid_, nullptr, 0) < 0 && errno == EINTR) {
    }
}

void ChildProcess::close_all() {
    for (int* end : {&input_, &out_, &error_}) {
        if (*end >= 0) ::close(*end);
        *end = -1;
    }
}

void ChildProcess::read_some(int timeout_ms, bool writable) {
    // A descriptor of -1 is passed over.
    std::array<pollfd, 3> ends{pollfd{out_, POLLIN, 0}, pollfd{error_, POLLIN, 0},
                               pollfd{writable ? input_ : -1, POLLOUT, 0}};
    ::poll(ends.data(), ends.size(), timeout_ms);
    if (ends[0].revents != 0) read_from(out_, output_);
    if (ends[1].revents != 0) read_from(error_, complaint_);
    if (complaint_.size() > 2 * complaint_kept) complaint_.erase(0, complaint_.size() - complaint_kept);
    takes_more_ = ends[2].revents != 0;
}

bool ChildProcess::write(const std::uint8_t* bytes, std::size_t count, const KeepGoing& keep_going) {
    while (count > 0) {
        if (asked_to_stop(keep_going)) throw Interrupted();
        const ssize_t n = ::send(input_, bytes, count, MSG_NOSIGNAL);
        if (n > 0) {
            bytes += n;
            count -= static_cast<std::size_t>(n);
        } else if (n < 0 && errno != EAGAIN && errno != EINTR) {
            return false;
        } else {
            read_some(look_up_ms, true);
        }
    }
    return true;
}

int ChildProcess::finish(const KeepGoing& keep_going) {
    if (input_ >= 0) ::close(input_);
    input_ = -1;
    int ended = 0;
    for (;;) {
        const pid_t found = ::waitpid(pid_, &ended, WNOHANG);
        if (found == pid_) break;
        if (found < 0 && errno != EINTR) fail(errno, "the encoder");
        if (asked_to_stop(keep_going)) throw Interrupted();
        // Silent ends are no signal that it is done, so the look at them is short.
        if (out_ >= 0 || error_ >= 0)
            read_some(look_up_ms, false);
        else
            ::poll(nullptr, 0, 1);
    }
    pid_ = -1;
    read_some(0, false);
    close_all();
    return WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended);
}

std::string ChildProcess::last_words() const {
    const std::size_t end = complaint_.find_last_not_of("\r\n \t");
    if (end == std::string::npos) return "";
    const std::size_t before = complaint_.find_last_of("\r\n", end);
    return complaint_.substr(before == std::string::npos ? 0 : before + 1, end - before);
}

}  // namespace overbend::film
