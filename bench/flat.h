/*
 * A compiled model as it lies in a file: the very sections that the simulator's kernel reads, found by name.
 *
 * A section is its name (32 bytes, padded with zeros), the count of its numbers (u32), the bytes that they take
 * (u32), and the numbers, padded to 8 bytes. A name of length 0 ends them.
 */
#ifndef FLAT_H
#define FLAT_H

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef uint8_t u8;
typedef int32_t i32;
typedef uint32_t u32;
typedef uint64_t u64;

enum { NAME_BYTES = 32, HEAD_BYTES = 40 };

static char *flat;

static void readFlat(const char *path) {
  FILE *file = fopen(path, "rb");
  long size = -1;
  if (file != NULL && fseek(file, 0, SEEK_END) == 0) size = ftell(file);
  if (size > 0) flat = malloc((size_t)size);
  if (flat == NULL || fseek(file, 0, SEEK_SET) != 0 || fread(flat, 1, (size_t)size, file) != (size_t)size) {
    fprintf(stderr, "%s cannot be read\n", path);
    exit(1);
  }
  fclose(file);
}

/* Where a section's numbers stand; null if there is none of that name. */
static void *find(const char *name) {
  char *at = flat;
  while (*at != 0) {
    u32 bytes;
    if (strncmp(at, name, NAME_BYTES) == 0) return at + HEAD_BYTES;
    memcpy(&bytes, at + NAME_BYTES + 4, sizeof bytes);
    at += HEAD_BYTES + bytes;
  }
  return NULL;
}

static void *column(const char *name) {
  void *found = find(name);
  if (found == NULL) {
    fprintf(stderr, "the model has no section %s\n", name);
    exit(1);
  }
  return found;
}

static int countOf(const char *name) {
  u32 count;
  memcpy(&count, (char *)column(name) - 8, sizeof count);
  return (int)count;
}

/* The only number of a section. */
static double number(const char *name) {
  return *(double *)column(name);
}

/* The name of a column behind that of what it belongs to; good until the next is asked for. */
static const char *nameOf(const char *prefix, const char *name) {
  static char whole[4 * NAME_BYTES];
  snprintf(whole, sizeof whole, "%.*s.%.*s", NAME_BYTES, prefix, NAME_BYTES, name);
  return whole;
}

static void *columnOf(const char *prefix, const char *name) {
  return column(nameOf(prefix, name));
}

#endif
