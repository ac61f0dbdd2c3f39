/*
 * Loaded before libc, so that calls to the disk fail below Node, inside the process that is tried: an error, a write
 * that takes half, the end of the process, or a stop in the midst of it. Only calls below STILLROOM_SHIM_FOLDER count.
 * What fails is said in the file STILLROOM_SHIM_CONTROL, four numbers of 64 bits that both sides map:
 * which call from now on (0: none), what it meets, how many there were, and whether all later ones meet it too.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

enum { SHORT = 1001, HALF_THEN_FULL = 1002, DIE = 1003, STOP = 1004 };
struct control { int64_t at, what, calls, for_good; };

static struct control *control;
static const char *folder;

__attribute__((constructor)) static void start(void) {
  const char *path = getenv("STILLROOM_SHIM_CONTROL");
  folder = getenv("STILLROOM_SHIM_FOLDER");
  int fd = path ? open(path, O_RDWR | O_CLOEXEC) : -1;
  if (fd < 0) return;
  void *map = mmap(NULL, sizeof *control, PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
  if (map != MAP_FAILED) control = map;
  close(fd);
}

static int is_below(const char *path) {
  return control && folder && path && strncmp(path, folder, strlen(folder)) == 0;
}

static int is_open_below(int fd) {
  if (!control || !folder || control->at == 0) return 0;
  char link[64], path[4096];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length < 0) return 0;
  path[length] = 0;
  return is_below(path);
}

/* What this call meets: 0 for nothing, an errno, or SHORT or HALF_THEN_FULL for a write to see to. */
static int meet(void) {
  if (control->at == 0) return 0;
  int64_t now = __atomic_add_fetch(&control->calls, 1, __ATOMIC_SEQ_CST);
  if (now != control->at && !(control->for_good && now > control->at)) return 0;
  if (control->what == DIE) kill(getpid(), SIGKILL);
  if (control->what == STOP) {
    raise(SIGSTOP);
    return 0;
  }
  return (int)control->what;
}

/* Anything but a write cannot come up short. */
static int fails(int met) {
  if (met == 0 || met == SHORT) return 0;
  errno = met == HALF_THEN_FULL ? ENOSPC : met;
  return 1;
}

#define REAL(name) static __typeof__(&name) real; if (!real) real = dlsym(RTLD_NEXT, #name)

#define OPEN(name) \
  int name(const char *path, int flags, ...) { \
    REAL(name); \
    va_list rest; \
    va_start(rest, flags); \
    mode_t mode = (flags & (O_CREAT | O_TMPFILE)) ? va_arg(rest, mode_t) : 0; \
    va_end(rest); \
    if (is_below(path) && fails(meet())) return -1; \
    return real(path, flags, mode); \
  }
OPEN(open)
OPEN(open64)

#define TWO_PATHS(name) \
  int name(const char *from, const char *to) { \
    REAL(name); \
    if (is_below(to) && fails(meet())) return -1; \
    return real(from, to); \
  }
TWO_PATHS(rename)
TWO_PATHS(link)

#define ONE_PATH(name, given, passed) \
  int name given { \
    REAL(name); \
    if (is_below(path) && fails(meet())) return -1; \
    return real passed; \
  }
ONE_PATH(unlink, (const char *path), (path))
ONE_PATH(mkdir, (const char *path, mode_t mode), (path, mode))

#define ONE_FD(name, given, passed) \
  int name given { \
    REAL(name); \
    if (is_open_below(fd) && fails(meet())) return -1; \
    return real passed; \
  }
ONE_FD(fsync, (int fd), (fd))
ONE_FD(fdatasync, (int fd), (fd))
ONE_FD(ftruncate, (int fd, off_t length), (fd, length))
ONE_FD(ftruncate64, (int fd, off64_t length), (fd, length))

/* Some of the bytes are there when the disk says that it is full. */
#define WRITE(name, given, passed) \
  ssize_t name given { \
    REAL(name); \
    int met = is_open_below(fd) ? meet() : 0; \
    if ((met == SHORT || met == HALF_THEN_FULL) && size > 1) { \
      size = (size + 1) / 2; \
      if (met == SHORT) return real passed; \
      if (real passed < 0) return -1; \
    } \
    if (fails(met)) return -1; \
    return real passed; \
  }
WRITE(write, (int fd, const void *bytes, size_t size), (fd, bytes, size))
WRITE(pwrite, (int fd, const void *bytes, size_t size, off_t at), (fd, bytes, size, at))
WRITE(pwrite64, (int fd, const void *bytes, size_t size, off64_t at), (fd, bytes, size, at))

#define READ(name, given, passed) \
  ssize_t name given { \
    REAL(name); \
    if (is_open_below(fd) && fails(meet())) return -1; \
    return real passed; \
  }
READ(read, (int fd, void *bytes, size_t size), (fd, bytes, size))
READ(pread, (int fd, void *bytes, size_t size, off_t at), (fd, bytes, size, at))
READ(pread64, (int fd, void *bytes, size_t size, off64_t at), (fd, bytes, size, at))
