/* A disk that loses power. Loaded before the C library (LD_PRELOAD) into the writer of the fault tests: it keeps, beside
 * the store, what a disk would still have if only what was synced had reached it.
 *
 * CUT_STORE    the folder of the store, as the system names it
 * CUT_MIRROR   a folder for what is durable: file-INODE with the bytes of a file's last sync, and dir-INODE with one
 *              line "INODE NAME" for each entry of a folder at its last sync
 * CUT_AT       after the how manieth sync the power goes, from 1
 * CUT_LIES     the end of a file's path whose syncs are answered and not done: a disk that lies
 */
#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static int ends_with(const char *path, const char *end) {
  size_t path_length = strlen(path), length = strlen(end);
  return path_length >= length && !strcmp(path + path_length - length, end);
}

static void keep_file(const char *path, const char *to) {
  char bytes[65536];
  ssize_t n;
  int in = open(path, O_RDONLY | O_CLOEXEC), out = open(to, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  while (in >= 0 && out >= 0 && (n = read(in, bytes, sizeof bytes)) > 0)
    if (write(out, bytes, (size_t)n) != n) abort();
  close(in);
  close(out);
}

static void keep_folder(const char *path, const char *to) {
  DIR *dir = opendir(path);
  FILE *out = fopen(to, "w");
  struct dirent *entry;
  if (!dir || !out) abort();
  while ((entry = readdir(dir)))
    if (strcmp(entry->d_name, ".") && strcmp(entry->d_name, ".."))
      fprintf(out, "%llu %s\n", (unsigned long long)entry->d_ino, entry->d_name);
  fclose(out);
  closedir(dir);
}

static void synced(int fd) {
  static int seen = 0;
  const char *store = getenv("CUT_STORE"), *mirror = getenv("CUT_MIRROR"), *lies = getenv("CUT_LIES");
  char link[64], path[4096], to[4200];
  struct stat found;
  if (!store || !mirror) return;
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t n = readlink(link, path, sizeof path - 1);
  path[n > 0 ? n : 0] = 0;
  if (strncmp(path, store, strlen(store)) || fstat(fd, &found)) return;
  if (!lies || !ends_with(path, lies)) {
    int folder = S_ISDIR(found.st_mode);
    snprintf(to, sizeof to, "%s/%s-%llu", mirror, folder ? "dir" : "file", (unsigned long long)found.st_ino);
    if (folder) keep_folder(path, to);
    else keep_file(path, to);
  }
  if (++seen == atoi(getenv("CUT_AT"))) kill(getpid(), SIGKILL);
}

#define NEXT(name, type) ((type)dlsym(RTLD_NEXT, name))

int fsync(int fd) {
  int done = NEXT("fsync", int (*)(int))(fd);
  if (!done) synced(fd);
  return done;
}

int fdatasync(int fd) {
  int done = NEXT("fdatasync", int (*)(int))(fd);
  if (!done) synced(fd);
  return done;
}
