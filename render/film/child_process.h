// Another program at work for us: it is given bytes on its standard input, and what it says is kept.
//
// It is started directly, not by a shell, in a process group of its own: a Ctrl-C at the terminal reaches us,
// who end it in our own way. Its input is a socket, so that one that dies gives an error and no SIGPIPE.
// Whatever happens, it has ended when this object is gone: by itself after `finish`, else killed, with
// all that it has started.

#pragma once

#include <sys/types.h>

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace overbend::film {

// Asked now and then while we wait; false: give up waiting.
using KeepGoing = std::function<bool()>;

// Thrown when it said false. Nothing is left of what was begun.
struct Interrupted : std::exception {
    const char* what() const noexcept override { return "interrupted; unfinished files were removed"; }
};

class ChildProcess {
  public:
    // words: the program, looked for on PATH, and its arguments. second_input: bytes that it may read from
    // file descriptor 3, at most 4096 of them; none: there is no such descriptor. Throws std::system_error:
    // it cannot be started (no such program: errc::no_such_file_or_directory).
    explicit ChildProcess(const std::vector<std::string>& words, const std::string& second_input = "");
    ~ChildProcess();
    ChildProcess(const ChildProcess&) = delete;
    ChildProcess& operator=(const ChildProcess&) = delete;

    // Hands bytes over and waits until they are taken. False: it takes no more. Throws Interrupted.
    bool write(const std::uint8_t* bytes, std::size_t count, const KeepGoing& keep_going);

    // Ends its input, and waits until it is done. The exit status; 128 and the signal's number when a signal
    // ended it. Throws Interrupted.
    int finish(const KeepGoing& keep_going);

    const std::string& output() const { return output_; }  // all that it wrote on its standard output
    // The last line of what it wrote on its standard error; empty when it was silent.
    std::string last_words() const;

  private:
    void read_some(int timeout_ms, bool writable);
    void close_all();

    pid_t pid_ = -1;  // -1: ended, and its status fetched
    int input_ = -1, out_ = -1, error_ = -1;
    bool takes_more_ = false;  // as the last look at it has it
    std::string output_, complaint_;
};

}  // namespace overbend::film
