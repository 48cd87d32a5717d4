/* As kernel/history.ts: the state of every mode and part, the clocks, the outage, the money so far. */
#ifndef HISTORY_H
#define HISTORY_H

#include "queue.h"
#include "use.h"

/* As kept-at.ts. */
enum Kept {
  COST, NOW, FAILURES, PLANNED_JOBS, UPKEEP, FUEL, POWER, INTRUSIONS, REPLACEMENT, GIVING_UP, RESALE, QUOTE_FACTOR,
  OWN_HOURS, PAID_HOURS, TRIPS, DAYS_WITHOUT, STOPS, SAME_DAY_STOPS, DANGERS, LARGEST_YEAR, REPLACED_AT, REPLACEMENTS,
  FIRST_MODE, FIRST_TIME, FIRST_COST, KAPPA_LOG, RISK_OF_JOB, RISK_OF_OTHERS, DERATES,
  KEPT
};

/* FAILED: a visible failure, from its event to its mend, or standing since before now. */
enum { SOUND, DEFECTIVE, FAILED_UNNOTICED, FAILED };

/* Kinds of event, in the high bits of an event's code; the low 16 bits are a mode or a part. */
enum { ONSET, FAILS, FOUND_DEFECTIVE, FOUND_FAILED, SERVICE, INTRUSION, PIECE_COMES, REPLACE_LATER, SHOWS, FITTING_OUT };

static struct {
  u32 number;
  int alternative;
  /* Set number: 0 the present one. Candidate fitted, -1 the present set. */
  int set, candidate;
  double boatLog, kappa, partPriceFactor, labourFactor, lowLoadShare, fuelPrice, guaranteeUntil, setBorn, gaveUpAt;
  /* Last moment asked for, and the calendar's running hours then. */
  double askedAt, hoursThen;
  double lostHours, lostStarts;
  int pauses;
  double downFrom, downUntil, downPrice, downDays;
  i32 openLow, openHigh;
  bool downIsStop, downIsSameDay;

  /* Of each mode. */
  double scale[MOST_MODES], scaleAsNew[MOST_MODES], birth[MOST_MODES], birthHours[MOST_MODES], birthTime[MOST_MODES];
  double onsetAt[MOST_MODES], failsAt[MOST_MODES], wear[MOST_MODES];
  u8 state[MOST_MODES];
  i32 life[MOST_MODES], stamp[MOST_MODES], patches[MOST_MODES], orderedAs[MOST_MODES];
  double orderedAt[MOST_MODES];

  /* Of each part. */
  i32 jobs[MOST_PARTS], supplies[MOST_PARTS], services[MOST_PARTS], serviceStamp[MOST_PARTS];
  u32 serviceWord[MOST_PARTS];
  double servicedHours[MOST_PARTS], servicedTime[MOST_PARTS];

  double sums[KEPT], years[MOST_YEARS];
} h;

/* Counted over the histories of each alternative. */
static double *failuresOfMode, *failuresOfDanger;

static void openHistory(void) {
  failuresOfMode = calloc((size_t)(alternatives.count * modes.count), sizeof(double));
  failuresOfDanger = calloc((size_t)(alternatives.count * model.dangerCount + 1), sizeof(double));
}

static int yearsKept(void) {
  return (int)ceil(model.horizonYears) + 1;
}

static void resetSums(void) {
  memset(h.sums, 0, sizeof h.sums);
  memset(h.years, 0, (size_t)yearsKept() * sizeof h.years[0]);
  h.sums[REPLACED_AT] = -1;
  h.sums[FIRST_MODE] = -1;
}

static void resetModesAndParts(void) {
  memset(h.life, 0, (size_t)modes.count * sizeof h.life[0]);
  memset(h.stamp, 0, (size_t)modes.count * sizeof h.stamp[0]);
  memset(h.patches, 0, (size_t)modes.count * sizeof h.patches[0]);
  for (int m = 0; m < modes.count; m++) h.wear[m] = 1;
  memset(h.jobs, 0, (size_t)parts.count * sizeof h.jobs[0]);
  memset(h.supplies, 0, (size_t)parts.count * sizeof h.supplies[0]);
  memset(h.services, 0, (size_t)parts.count * sizeof h.services[0]);
  memset(h.serviceStamp, 0, (size_t)parts.count * sizeof h.serviceStamp[0]);
}

static void resetHistory(u32 seed, u32 number, int alternative) {
  clearQueue();
  beginDraws(seed, number);
  h.number = number;
  h.alternative = alternative;
  h.set = 0;
  h.candidate = -1;
  h.partPriceFactor = 1;
  h.labourFactor = 1;
  h.lowLoadShare = model.lowLoadShare;
  h.fuelPrice = model.fuelPerHour;
  h.guaranteeUntil = -1;
  h.setBorn = -model.setAgeYears;
  h.gaveUpAt = -1;
  h.askedAt = -1;
  h.lostHours = h.lostStarts = 0;
  h.pauses = 0;
  h.downFrom = h.downUntil = -1;
  h.downPrice = h.downDays = 0;
  h.downIsStop = h.downIsSameDay = false;
  resetModesAndParts();
  resetSums();
}

/* Running hours of the calendar; the last answer is kept, because one event asks for the same moment often. */
static double hoursAt(double t) {
  if (t != h.askedAt) {
    h.askedAt = t;
    h.hoursThen = totalAt(use.hours, t);
  }
  return h.hoursThen;
}

/* Where a clock of the set stands; hours and starts stand still in an outage. */
static double position(int clock, double t) {
  if (clock == YEARS) return t;
  const double at = larger(t, h.downUntil);
  return clock == HOURS ? hoursAt(at) - h.lostHours : totalAt(use.starts, at) - h.lostStarts;
}

/* When a clock reaches a position, if no more outages come. */
static double timeAt(int clock, double due) {
  if (clock == YEARS) return due;
  return clock == HOURS ? timeOfHours(due + h.lostHours) : timeOfStarts(due + h.lostStarts);
}

static bool isBeyond(int clock, double due) {
  if (clock == YEARS) return due >= model.horizonYears;
  return clock == HOURS ? due + h.lostHours > use.hoursToHorizon : due + h.lostStarts > use.startsToHorizon;
}

static i32 codeOf(int kind, int index, int clock) {
  return (clock << 24) | (kind << 16) | index;
}

static int kindOf(i32 code) {
  return (code >> 16) & 0xff;
}

static int indexOf(i32 code) {
  return code & 0xffff;
}

static int clockOf(i32 code) {
  return code >> 24;
}

static void scheduleAt(i32 code, i32 stamp, double due, double t) {
  if (t < model.horizonYears) push((Event){t, due, code, stamp, h.pauses, -1});
}

/* Puts an event into the queue, unless it falls on the horizon or past it. */
static void schedule(i32 code, i32 stamp, double due, double notBefore) {
  const int clock = clockOf(code);
  if (isBeyond(clock, due)) return;
  scheduleAt(code, stamp, due, larger(timeAt(clock, due), notBefore));
}

static double discount(double t) {
  return model.interest == 0 ? 1 : exp(-model.interest * t);
}

static void pay(enum Kept heading, double t, double amount) {
  h.sums[heading] += amount * discount(t);
  h.years[(int)t] += amount;
}

#endif
