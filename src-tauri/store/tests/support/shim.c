/* A disk that fails or tells. Loaded before the C library (LD_PRELOAD) into the writer of the fault tests.
 *
 * SHIM_MATCH   the end of a file's path that the fault is for
 * SHIM_CALL    "write" or "sync": which calls fail
 * SHIM_NTH     the how manieth such call fails, from 1
 * SHIM_STICKY  set: all later ones fail too
 * SHIM_ERRNO   with which error (5 = EIO, 28 = ENOSPC)
 * SHIM_TRACE   a file that gets one line for each write, sync and rename, and one more for a failed one
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static void path_of(int fd, char *path, size_t size) {
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t n = readlink(link, path, size - 1);
  path[n > 0 ? n : 0] = 0;
}

static void trace(const char *call, const char *path) {
  static int out = -2;
  const char *name = getenv("SHIM_TRACE");
  if (!name) return;
  if (out == -2) out = open(name, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  char line[4200];
  int n = snprintf(line, sizeof line, "%s %s\n", call, path);
  syscall(SYS_write, out, line, (size_t)n);
}

static int fails(const char *call, const char *path) {
  static int seen = 0;
  const char *match = getenv("SHIM_MATCH"), *which = getenv("SHIM_CALL");
  if (!match || !which || strcmp(which, call)) return 0;
  size_t path_length = strlen(path), match_length = strlen(match);
  if (path_length < match_length || strcmp(path + path_length - match_length, match)) return 0;
  int nth = atoi(getenv("SHIM_NTH"));
  seen++;
  if (seen != nth && !(getenv("SHIM_STICKY") && seen > nth)) return 0;
  errno = atoi(getenv("SHIM_ERRNO"));
  return 1;
}

static int stopped(const char *call, int fd) {
  char path[4096];
  path_of(fd, path, sizeof path);
  trace(call, path);
  if (!fails(call, path)) return 0;
  int error = errno;
  trace("failed", path);
  errno = error;
  return 1;
}

#define NEXT(name, type) ((type)dlsym(RTLD_NEXT, name))

ssize_t write(int fd, const void *bytes, size_t n) {
  if (stopped("write", fd)) return -1;
  return NEXT("write", ssize_t (*)(int, const void *, size_t))(fd, bytes, n);
}

ssize_t pwrite(int fd, const void *bytes, size_t n, off_t at) {
  if (stopped("write", fd)) return -1;
  return NEXT("pwrite", ssize_t (*)(int, const void *, size_t, off_t))(fd, bytes, n, at);
}

ssize_t pwrite64(int fd, const void *bytes, size_t n, off64_t at) {
  if (stopped("write", fd)) return -1;
  return NEXT("pwrite64", ssize_t (*)(int, const void *, size_t, off64_t))(fd, bytes, n, at);
}

int fsync(int fd) {
  if (stopped("sync", fd)) return -1;
  return NEXT("fsync", int (*)(int))(fd);
}

int fdatasync(int fd) {
  if (stopped("sync", fd)) return -1;
  return NEXT("fdatasync", int (*)(int))(fd);
}

int rename(const char *from, const char *to) {
  trace("rename", to);
  return NEXT("rename", int (*)(const char *, const char *))(from, to);
}
