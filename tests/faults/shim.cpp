// Loaded before the C library (LD_PRELOAD): makes the n-th call of a kind fail, counted from the beginning of
// main in all threads, and says so.
//
//   OVERBEND_FAIL_WRITE=N   the N-th of those that change files: opening to write, writing, fsync, rename,
//                           mkdir
//   OVERBEND_FAIL_NEW=N     the N-th allocation of C++
//   OVERBEND_FAIL_LASTS=1   and all of that kind after it
//   OVERBEND_FAIL_SAID=FILE what failed is written there; no file: there were fewer calls

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <cstdlib>
#include <cstring>
#include <new>

namespace {

std::atomic<bool> in_main{false};

long number_of(const char* name) {
    const char* text = std::getenv(name);
    return text == nullptr ? 0 : std::atol(text);
}

// Calls of one kind.
struct Kind {
    long fails = 0;
    bool lasts = false;
    std::atomic<long> calls{0};

    void begin(const char* name) {
        fails = number_of(name);
        lasts = number_of("OVERBEND_FAIL_LASTS") != 0;
    }
    bool fail(const char* what) {
        if (fails == 0 || !in_main) return false;
        const long call = ++calls;
        if (call == fails) say(what);
        return call == fails || (lasts && call > fails);
    }
    static void say(const char* what) {
        const char* said = std::getenv("OVERBEND_FAIL_SAID");
        if (said == nullptr) return;
        const long file = ::syscall(SYS_openat, AT_FDCWD, said, O_WRONLY | O_CREAT | O_TRUNC, 0600);
        ::syscall(SYS_write, file, what, std::strlen(what));
        ::syscall(SYS_close, file);
    }
};
Kind writing, allocating;

template <class Function>
Function* next(const char* name) {
    return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

bool denied(const char* what, int error) {
    if (!writing.fail(what)) return false;
    errno = error;
    return true;
}

constexpr int standard_streams = 2;

int open_or_fail(const char* name, int folder, const char* path, int flags, mode_t mode) {
    if ((flags & O_ACCMODE) != O_RDONLY && denied("open", ENOSPC)) return -1;
    using Open = int(int, const char*, int, ...);
    return next<Open>(name)(folder, path, flags, mode);
}

mode_t mode_of(int flags, std::va_list rest) {
    return (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
}

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_of(flags, rest);
    va_end(rest);
    return open_or_fail("openat", AT_FDCWD, path, flags, mode);
}

int open64(const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_of(flags, rest);
    va_end(rest);
    return open_or_fail("openat64", AT_FDCWD, path, flags, mode);
}

int openat(int folder, const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_of(flags, rest);
    va_end(rest);
    return open_or_fail("openat", folder, path, flags, mode);
}

ssize_t write(int file, const void* bytes, size_t size) {
    if (file > standard_streams && denied("write", ENOSPC)) return -1;
    return ::syscall(SYS_write, file, bytes, size);
}

ssize_t writev(int file, const iovec* parts, int count) {
    if (file > standard_streams && denied("write", ENOSPC)) return -1;
    return ::syscall(SYS_writev, file, parts, count);
}

int fsync(int file) {
    if (denied("fsync", EIO)) return -1;
    return static_cast<int>(::syscall(SYS_fsync, file));
}

int rename(const char* from, const char* to) noexcept {
    if (denied("rename", EACCES)) return -1;
    return static_cast<int>(::syscall(SYS_renameat, AT_FDCWD, from, AT_FDCWD, to));
}

int renameat2(int from_folder, const char* from, int to_folder, const char* to, unsigned flags) noexcept {
    if (denied("rename", EACCES)) return -1;
    return static_cast<int>(::syscall(SYS_renameat2, from_folder, from, to_folder, to, flags));
}

int mkdir(const char* path, mode_t mode) noexcept {
    if (denied("mkdir", ENOSPC)) return -1;
    return static_cast<int>(::syscall(SYS_mkdirat, AT_FDCWD, path, mode));
}

using Main = int(int, char**, char**);
static Main* real_main = nullptr;

static int counted_main(int argc, char** argv, char** environment) {
    in_main = true;
    const int status = real_main(argc, argv, environment);
    in_main = false;
    return status;
}

int __libc_start_main(Main* main, int argc, char** argv, void (*init)(), void (*fini)(), void (*rtld_fini)(),
                      void* stack_end) {
    writing.begin("OVERBEND_FAIL_WRITE");
    allocating.begin("OVERBEND_FAIL_NEW");
    real_main = main;
    using Start = int(Main*, int, char**, void (*)(), void (*)(), void (*)(), void*);
    return next<Start>("__libc_start_main")(counted_main, argc, argv, init, fini, rtld_fini, stack_end);
}

}  // extern "C"

void* operator new(std::size_t size) {
    if (allocating.fail("new")) throw std::bad_alloc();
    void* memory = std::malloc(size == 0 ? 1 : size);
    if (memory == nullptr) throw std::bad_alloc();
    return memory;
}
void operator delete(void* memory) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}
