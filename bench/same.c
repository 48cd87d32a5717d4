/*
 * The simulator's own algorithm in C, file by file as in src/alternatives/kernel: the same bytes of the model, the same
 * draws, tables, queue and order of events, for every alternative. What a history comes to must be what the product
 * says, but for the last digits of exp, log and pow, which rarely turn a draw.
 */
#include "same/run.h"
#include "tally.h"

static double play(u32 seed, u32 history, int alternative) {
  runHistory(seed, history, alternative);
  if (trouble != 0) {
    fprintf(stderr, "history %u of alternative %d cannot be played to its end\n", history, alternative);
    exit(1);
  }
  return h.sums[COST];
}

int main(int argc, char **argv) {
  const Orders orders = readOrders(argc, argv);
  readFlat(argv[1]);
  readModel();
  readUse();
  readStates();
  openQueue(model.horizonYears);
  openHistory();
  openJob();
  playAll(&orders, alternatives.count, play);
  return 0;
}
