/* The command line that both programs share, and what they print: a line of seconds, then one line an alternative. */
#ifndef TALLY_H
#define TALLY_H

#include <math.h>
#include <stdbool.h>
#include <sys/resource.h>

#include "flat.h"

enum { MOST_ALTERNATIVES = 64 };

typedef struct {
  u32 seed, from;
  long count;
  /* How often to play them; the quickest time counts. The first fills tables and caches. */
  int passes;
  /* Where to write the cost of each history, alternative after alternative; may be absent. */
  const char *costs;
} Orders;

typedef struct {
  long count;
  double mean, squares;
} Moments;

static Orders readOrders(int argc, char **argv) {
  if (argc < 6) {
    fprintf(stderr, "usage: %s MODEL SEED FROM COUNT PASSES [COSTS]\n", argv[0]);
    exit(2);
  }
  return (Orders){(u32)strtoul(argv[2], NULL, 10), (u32)strtoul(argv[3], NULL, 10), atol(argv[4]), atoi(argv[5]),
                  argc > 6 ? argv[6] : NULL};
}

/* Welford's running mean and sum of squares about it. */
static void add(Moments *moments, double value) {
  const double off = value - moments->mean;
  moments->mean += off / ++moments->count;
  moments->squares += off * (value - moments->mean);
}

static double userSeconds(void) {
  struct rusage usage;
  getrusage(RUSAGE_SELF, &usage);
  return (double)usage.ru_utime.tv_sec + 1e-6 * (double)usage.ru_utime.tv_usec;
}

/* Plays every alternative history by history. */
static void playAll(const Orders *orders, int alternatives, double (*play)(u32 seed, u32 history, int alternative)) {
  static Moments moments[MOST_ALTERNATIVES];
  FILE *costs = orders->costs == NULL ? NULL : fopen(orders->costs, "wb");
  double best = INFINITY;
  for (int pass = 0; pass < orders->passes; pass++) {
    const double began = userSeconds();
    memset(moments, 0, sizeof moments);
    for (long i = 0; i < orders->count; i++) {
      for (int a = 0; a < alternatives; a++) {
        const double cost = play(orders->seed, orders->from + (u32)i, a);
        add(&moments[a], cost);
        if (costs != NULL && pass == 0) fwrite(&cost, sizeof cost, 1, costs);
      }
    }
    best = fmin(best, userSeconds() - began);
  }
  if (costs != NULL) fclose(costs);
  printf("%.6g\n", best);
  for (int a = 0; a < alternatives; a++) {
    const double count = (double)moments[a].count;
    printf("%.15g %.8g\n", moments[a].mean, sqrt(moments[a].squares / (count - 1) / count));
  }
}

#endif
