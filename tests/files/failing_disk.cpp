// SPDX-License-Identifier: MIT
// Loaded before a program's own libraries (LD_PRELOAD), this stands between it and the disk: every step that changes
// the disk is counted, and by the environment
//   FAILING_DISK_KILLS_AT=N   the program is killed before its N-th step, as by a loss of power
//   FAILING_DISK_HOLDS=N      the disk is full once N bytes are written: the write that meets it is cut, the next fails
//   FAILING_DISK_WAITS=N      each step waits up to N microseconds, so that two programs meet at all moments
// Steps are opening a file to write, writing, syncing, renaming, removing and making a folder.
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace {

long asked(const char* name) {
    const char* const value = std::getenv(name);
    return value != nullptr ? std::atol(value) : -1;
}

/// The function of that name that would have been called without this library.
template <class Function>
Function* real(const char* name) {
    return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

void step() {
    static const long killed_at = asked("FAILING_DISK_KILLS_AT");
    static const long waits = asked("FAILING_DISK_WAITS");
    static std::atomic<long> steps = 0;
    if (++steps == killed_at) {
        ::kill(::getpid(), SIGKILL);
    }
    if (waits > 0) {
        static unsigned seed = static_cast<unsigned>(::getpid());
        ::usleep(static_cast<useconds_t>(::rand_r(&seed) % static_cast<int>(waits)));
    }
}

constexpr int first_file = 3;  // after the three streams

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
    va_end(more);
    if ((flags & (O_WRONLY | O_RDWR)) != 0) {
        step();
    }
    return real<int(const char*, int, ...)>("open")(path, flags, mode);
}

ssize_t write(int file, const void* bytes, size_t count) {
    static std::atomic<long> room = asked("FAILING_DISK_HOLDS");
    auto* const go_on = real<ssize_t(int, const void*, size_t)>("write");
    if (file < first_file) {
        return go_on(file, bytes, count);
    }
    step();
    if (room < 0) {
        return go_on(file, bytes, count);
    }
    if (room == 0) {
        errno = ENOSPC;
        return -1;
    }
    const ssize_t wrote = go_on(file, bytes, count < static_cast<size_t>(room) ? count : static_cast<size_t>(room));
    room -= wrote > 0 ? wrote : 0;
    return wrote;
}

int fsync(int file) {
    step();
    return real<int(int)>("fsync")(file);
}

int rename(const char* from, const char* to) {
    step();
    return real<int(const char*, const char*)>("rename")(from, to);
}

int renameat2(int from_folder, const char* from, int to_folder, const char* to, unsigned flags) {
    step();
    return real<int(int, const char*, int, const char*, unsigned)>("renameat2")(from_folder, from, to_folder, to,
                                                                                flags);
}

int remove(const char* path) {
    step();
    return real<int(const char*)>("remove")(path);
}

int mkdir(const char* path, mode_t mode) {
    step();
    return real<int(const char*, mode_t)>("mkdir")(path, mode);
}
}
