/*
 * The life model written plainly in C, by the sentences of docs/life-model.md, whose numbers stand in round brackets:
 * a structure for each mode and part, continuous draws, a formula where the model has one, a binary heap of what comes
 * next. It shares only the model's numbers and the tables of starting states with the product, and none of its draws.
 */
#include "plain/event.h"
#include "plain/read.h"
#include "tally.h"

enum { MOST_EVENTS = 100000 };

static int stampOf(const Event *event) {
  if (event->kind == SERVICE_DUE) return world.part[event->index].stamp;
  return event->kind == FAULT_SHOWS || event->kind == REPLACEMENT_DUE ? world.set : world.mode[event->index].stamp;
}

static void happen(const Event *event) {
  const int index = event->index;
  switch (event->kind) {
    case ONSET:
      if (model.mode[index].delayKind == NO_DELAY) failByItself(index);
      else beginDefect(index);
      break;
    case FAILURE: failByItself(index); break;
    case LOOK_FINDS: found(index); break;
    case PIECE_COMES: mendPlanned(index, PLANNED, world.mode[index].ordered); break;
    case FITTING_OUT: mendPlanned(index, ASHORE, NULL); break;
    case SHOWS: fail(index); break;
    case SERVICE_DUE: serve(index); break;
    case FAULT_SHOWS: fail(index); break;
    case REPLACEMENT_DUE: replaceSet(&model.candidate[index], isDown()); break;
  }
}

/* Outages since it was foreseen may have moved an event on the clocks of hours and starts. */
static bool comesLater(Event event) {
  const double now = timeAt(event.clock, event.due);
  if (event.clock == YEARS || now <= event.time * (1 + 1e-12)) return false;
  if (event.kind == SERVICE_DUE) {
    expectService(event.index);
  } else {
    event.time = now;
    push(event);
  }
  return true;
}

static void begin(int alternative) {
  world.alternative = &model.alternative[alternative];
  world.candidate = NULL;
  world.t = 0;
  world.cost = 0;
  world.lowLoadShare = model.lowLoadShare;
  world.fuelPerHour = model.fuelPerHour;
  world.guaranteeUntil = -1;
  world.setBorn = -model.setAgeYears;
  world.set = 0;
  world.gaveUp = false;
  world.lostHours = world.lostStarts = world.burntUntil = 0;
  world.downFrom = world.downUntil = -1;
  world.isOutageOpen = false;
  world.opened = 0;
  world.waitingCount = 0;
}

/* One history of one alternative, from now to the horizon: what it costs. */
static double play(u32 seed, u32 history, int alternative) {
  beginStream(seed, history, alternative);
  begin(alternative);
  startPresent();
  actNow();
  for (int events = 0; world.waitingCount > 0; events++) {
    const Event event = takeFirst();
    if (events > MOST_EVENTS) {
      fprintf(stderr, "too many events in history %u of alternative %d\n", history, alternative);
      exit(1);
    }
    if (event.stamp != stampOf(&event)) continue;
    world.t = event.time;
    if (!comesLater(event)) happen(&event);
  }
  if (!world.gaveUp) {
    world.t = model.horizonYears;
    burnUntil(world.t);
    closeOutage(world.t);
    book(-resaleValue(isDown()));
  }
  return world.cost + model.upkeepPerYear * discountedYears(0, model.horizonYears);
}

int main(int argc, char **argv) {
  const Orders orders = readOrders(argc, argv);
  readFlat(argv[1]);
  readModel();
  readCalendar();
  playAll(&orders, model.alternatives, play);
  return 0;
}
