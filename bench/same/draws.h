/* As kernel/draws.ts: every random number a pure function of what it is for; Threefry-2x32 with 20 rounds. */
#ifndef DRAWS_H
#define DRAWS_H

#include <stdbool.h>

#include "../flat.h"

/* As purpose.ts. */
enum Purpose {
  FOR_START = 0,
  FOR_LIFE = 1,
  FOR_CHECK = 2,
  FOR_CHECK_FAILED = 3,
  FOR_FAILURE = 4,
  FOR_REST = 5,
  FOR_LINK = 6,
  FOR_SCALE = 7,
  FOR_PATCH = 8,
  FOR_OVERRUN = 9,
  FOR_PRICE = 16,
  FOR_SUPPLY = 17,
  FOR_WORKSHOP = 18,
  FOR_INTRUSION = 19,
  FOR_INTRUSION_MODE = 20,
  FOR_SERVICE = 21,
  FOR_DELAY = 22,
  FOR_KAPPA = 32,
  FOR_NEW_SET = 33,
  FOR_QUOTE = 34,
  FOR_QUOTE_DAYS = 35,
  FOR_REPLACEMENT = 36,
  FOR_REPLACEMENT_DAYS = 37,
  FOR_INFANTS = 38,
  FOR_INFANT = 39,
  FOR_INFANT_ONSET = 40,
  FOR_GIVE_UP = 41
};

/* Stands for "no mode". */
enum { WHOLE_SET = 8191, MOST_SETS = 256 };
enum { LIFE_BITS = 19, PURPOSE_BITS = 6, USE_BITS = 18 };

static u32 word0, word1;
static u32 drawSeed, drawHistory;

/* The last pair of lives drawn. */
static struct {
  bool isDrawn;
  u32 counter0, counter1, word0, word1;
} pair;

static void beginDraws(u32 seed, u32 history) {
  drawSeed = seed;
  drawHistory = history;
  pair.isDrawn = false;
}

static u32 rotated(u32 word, int by) {
  return (word << by) | (word >> (32 - by));
}

#define ROUND(by) \
  a += b; \
  b = rotated(b, by) ^ a;
#define FOUR_ROUNDS(r0, r1, r2, r3) ROUND(r0) ROUND(r1) ROUND(r2) ROUND(r3)

static void threefry(u32 key0, u32 key1, u32 counter0, u32 counter1) {
  const u32 key2 = 0x1bd11bda ^ key0 ^ key1;
  u32 a = counter0 + key0;
  u32 b = counter1 + key1;
  FOUR_ROUNDS(13, 15, 26, 6)
  a += key1;
  b += key2 + 1;
  FOUR_ROUNDS(17, 29, 16, 24)
  a += key2;
  b += key0 + 2;
  FOUR_ROUNDS(13, 15, 26, 6)
  a += key0;
  b += key1 + 3;
  FOUR_ROUNDS(17, 29, 16, 24)
  a += key1;
  b += key2 + 4;
  FOUR_ROUNDS(13, 15, 26, 6)
  word0 = a + key2;
  word1 = b + key0 + 5;
}

static u32 counterOfLife(int mode, int life) {
  return ((u32)mode << LIFE_BITS) | (u32)life;
}

static u32 counterOfUse(int set, enum Purpose purpose, int use) {
  return ((u32)set << (PURPOSE_BITS + USE_BITS)) | ((u32)purpose << USE_BITS) | (u32)use;
}

static void draw(int set, int mode, int life, enum Purpose purpose, int use) {
  threefry(drawSeed, drawHistory, counterOfLife(mode, life), counterOfUse(set, purpose, use));
}

/* Neighbouring modes share a draw, and a part renews its modes together, so most need none of their own. */
static u32 lifeWord(int set, int mode, int life) {
  const u32 counter0 = counterOfLife(mode >> 1, life);
  const u32 counter1 = counterOfUse(set, FOR_LIFE, 0);
  if (!pair.isDrawn || counter0 != pair.counter0 || counter1 != pair.counter1) {
    threefry(drawSeed, drawHistory, counter0, counter1);
    pair.isDrawn = true;
    pair.counter0 = counter0;
    pair.counter1 = counter1;
    pair.word0 = word0;
    pair.word1 = word1;
  }
  return (mode & 1) == 0 ? pair.word0 : pair.word1;
}

static double uniformFrom(u32 word) {
  return (word + 0.5) / 4294967296.0;
}

/* From the lower 24 bits; the upper eight are free for a table. */
static double uniformFromLow(u32 word) {
  return ((word & 0xffffff) + 0.5) / 16777216.0;
}

#endif
