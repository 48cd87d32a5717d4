/* The history under way: modes and parts as they stand, the clocks, the outage, the money, and what comes next. */
#ifndef WORLD_H
#define WORLD_H

#include "calendar.h"

/* LAID_UP: failed in lay-up, and shows or is met when the set is next wanted (17). */
enum { SOUND, DEFECTIVE, UNNOTICED, LAID_UP };

typedef enum {
  ONSET, FAILURE, LOOK_FINDS, PIECE_COMES, FITTING_OUT, SHOWS, SERVICE_DUE, FAULT_SHOWS, REPLACEMENT_DUE
} Kind;

typedef struct {
  double time, due;
  Kind kind;
  int index, clock, stamp;
} Event;

typedef struct {
  int state, stamp;
  /* theta is of the mode (8); quality of the piece in place. */
  double theta, quality;
  /* Position of the mode's clock at which it had no (virtual) age; phase of its checks (13). */
  double birth, checksFrom;
  double onset, fails, wear;
  /* How good each check is at this defect (14); below nought until drawn. */
  double good[MOST_CHECKS];
  /* What the goodness was drawn for: a failure unnoticed, or a defect. */
  bool goodOfFailure[MOST_CHECKS];
  const Supply *ordered;
} Mode;

typedef struct {
  int stamp;
  double servicedHours, servicedYears;
} Part;

enum { MOST_WAITING = 1 << 17 };

static struct {
  const Alternative *alternative;
  const Candidate *candidate;
  double t, boatLog, kappaLog, lowLoadShare, fuelPerHour, guaranteeUntil, setBorn, cost;
  int set;
  bool gaveUp;
  double lostHours, lostStarts, burntUntil;
  /* The outage under way, or the last one: whether its price is still to be booked. */
  double downFrom, downUntil;
  bool isOutageOpen;
  u64 opened;
  Mode mode[MOST_MODES];
  Part part[MOST_PARTS];
  Event waiting[MOST_WAITING];
  int waitingCount;
} world;

/* At its very end the set is still down: a piece that was waited for is fitted before it is up again (16). */
static bool isDown(void) {
  return world.t < world.downUntil || (world.t == world.downUntil && world.downUntil > world.downFrom);
}

static double partPriceFactor(void) {
  return world.candidate == NULL ? 1 : world.candidate->partPriceFactor;
}

static double labourFactor(void) {
  return world.candidate == NULL ? 1 : world.candidate->labourFactor;
}

static void book(double money) {
  world.cost += money * discount(world.t);
}

/* Where a clock stands now; hours and starts stand still in an outage (3). */
static double position(int clock) {
  if (clock == YEARS) return world.t;
  const double at = larger(world.t, world.downUntil);
  if (clock == HOURS) return totalAt(calendar.hours, at) - world.lostHours;
  return totalAt(calendar.starts, at) - world.lostStarts;
}

/* When a clock reaches a position, if no more outages come. */
static double timeAt(int clock, double due) {
  if (clock == YEARS) return due;
  if (clock == HOURS) return timeOf(calendar.hours, due + world.lostHours);
  return timeOf(calendar.starts, due + world.lostStarts);
}

/* A binary heap of what is to come. */
static void push(Event event) {
  if (event.time >= model.horizonYears) return;
  if (world.waitingCount == MOST_WAITING) {
    fprintf(stderr, "too many events wait\n");
    exit(1);
  }
  int i = world.waitingCount++;
  for (int up; i > 0 && world.waiting[up = (i - 1) / 2].time > event.time; i = up) world.waiting[i] = world.waiting[up];
  world.waiting[i] = event;
}

static Event takeFirst(void) {
  const Event first = world.waiting[0];
  const Event last = world.waiting[--world.waitingCount];
  int i = 0;
  for (int child; (child = 2 * i + 1) < world.waitingCount; i = child) {
    if (child + 1 < world.waitingCount && world.waiting[child + 1].time < world.waiting[child].time) child++;
    if (world.waiting[child].time >= last.time) break;
    world.waiting[i] = world.waiting[child];
  }
  world.waiting[i] = last;
  return first;
}

/* Lets something happen when a clock reaches `due`, but not before now. */
static void expect(Kind kind, int index, int stamp, int clock, double due) {
  push((Event){larger(timeAt(clock, due), world.t), due, kind, index, clock, stamp});
}

/* Fuel for the running hours up to t (32). */
static void burnUntil(double t) {
  const double until = smaller(t, model.horizonYears);
  if (until <= world.burntUntil) return;
  const double hours = totalAt(calendar.discountedHours, until) - totalAt(calendar.discountedHours, world.burntUntil);
  world.cost += hours * world.fuelPerHour;
  world.burntUntil = until;
}

/* Price of days without power: straight between the points of a curve that begins at (0, 0) (23). */
static double priceOfDays(double days) {
  double fromDays = 0, fromCost = 0, slope = 0;
  if (days <= 0) return 0;
  for (int i = 0; i < model.curvePoints; i++) {
    const double span = model.curveDays[i] - fromDays;
    if (span > 0) slope = (model.curveCost[i] - fromCost) / span;
    if (days <= model.curveDays[i]) return fromCost + slope * (days - fromDays);
    fromDays = model.curveDays[i];
    fromCost = model.curveCost[i];
  }
  return fromCost + slope * (days - fromDays);
}

/* Books the price of an outage, which lasted until `t` at the latest. */
static void closeOutage(double t) {
  if (!world.isOutageOpen) return;
  world.isOutageOpen = false;
  const double until = smaller(world.downUntil, t);
  const double days = totalAt(calendar.neededDays, until) - totalAt(calendar.neededDays, world.downFrom);
  const int month = calendar.monthOfYear[monthAt(world.downFrom)];
  world.cost += priceOfDays(days) * model.powerByMonth[month] * discount((world.downFrom + until) / 2);
}

/* The set is out until `end` (22); outages that overlap are one, and their clocks stand still once. */
static void takeOutUntil(double end) {
  const bool joins = isDown();
  const double from = joins ? world.downUntil : world.t;
  if (!joins) {
    closeOutage(world.t);
    burnUntil(world.t);
    world.downFrom = world.t;
    world.isOutageOpen = true;
    world.opened = 0;
  }
  if (end > from) {
    world.lostHours += totalAt(calendar.hours, end) - totalAt(calendar.hours, from);
    world.lostStarts += totalAt(calendar.starts, end) - totalAt(calendar.starts, from);
    world.burntUntil = smaller(end, model.horizonYears);
    world.downUntil = end;
  } else if (!joins) {
    world.downUntil = world.t;
  }
}

static void takeOut(double days) {
  takeOutUntil(larger(world.downUntil, world.t + days / DAYS_PER_YEAR));
}

#endif
