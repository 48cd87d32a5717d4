/* As kernel/run.ts: one history of one alternative, from now to the horizon. */
#ifndef RUN_H
#define RUN_H

#include "failure.h"

enum { MOST_EVENTS = 100000 };

static int stampOf(int kind, int index) {
  if (kind == SERVICE) return h.serviceStamp[index];
  if (kind == INTRUSION) return h.set;
  return kind == REPLACE_LATER ? 0 : h.stamp[index];
}

/* Outages since it was put into the queue may have moved an event on the hours or starts clock. */
static bool comesLater(const Event *event) {
  const double now = timeAt(clockOf(event->code), event->due);
  if (now <= event->time * (1 + 1e-12)) return false;
  if (kindOf(event->code) == SERVICE) scheduleService(indexOf(event->code), event->time);
  else scheduleAt(event->code, event->stamp, event->due, now);
  return true;
}

static double waitYears(int m, double t) {
  return waitFor(modes.part[m], modes.repair[m], t) / DAYS_PER_YEAR;
}

static void order(int m, double t, double wait) {
  schedule(codeOf(PIECE_COMES, m, YEARS), h.stamp[m], t + wait, t);
}

static void mendPlanned(int m, double t, enum How how) {
  emptyJob();
  addToJob(modes.part[m], m);
  doJob(t, how, PLANNED_JOBS);
}

/* The piece is ordered, and if it would fail first the set may be rested. */
static void foundDefective(int m, double t) {
  const double wait = waitYears(m, t);
  if (timeLeft(m, t) > wait) {
    order(m, t, wait);
    return;
  }
  draw(h.set, m, h.life[m], FOR_REST, h.patches[m]);
  if (uniformFrom(word0) < model.restChance) mendPlanned(m, t, RESTED);
}

static bool isServiceDone(int part) {
  const int count = h.services[part]++;
  u32 word = h.serviceWord[part];
  if ((count & 1) == 0) {
    draw(h.set, parts.modeFrom[part], count >> 1, FOR_SERVICE, 0);
    word = word0;
    h.serviceWord[part] = word1;
  }
  return uniformFrom(word) < parts.serviceDiligence[part];
}

static void payService(int part, double t) {
  const bool byOwner = parts.serviceByOwner[part] == 1;
  const double rate = byOwner ? model.ownPerHour : model.paidPerHour;
  const double work = parts.serviceWork[part] * h.labourFactor;
  const double price = parts.servicePrice[part];
  if (t < h.guaranteeUntil && rate == 0 && price == 0) return;
  const double amount = price * h.partPriceFactor + work * rate;
  const double worth = discount(t);
  h.sums[UPKEEP] += amount * worth;
  h.years[(int)t] += amount;
  h.sums[byOwner ? OWN_HOURS : PAID_HOURS] += work * worth;
}

/* A service does nothing for what has failed already: that waits for its job. */
static void renew(int m, double t, bool wholePart) {
  if (h.state[m] == FAILED) return;
  if (wholePart) h.scale[m] = h.scaleAsNew[m];
  beginLife(m, t, 0);
}

/* A service falls due, and is done or put off by one interval. */
static void serve(int part, double t) {
  if (isServiceDone(part)) {
    payService(part, t);
    if (parts.serviceRenews[part]) {
      for (int m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) renew(m, t, true);
    } else {
      for (int c = parts.clearsFrom[part]; c < parts.clearsFrom[part + 1]; c++) renew(parts.clearsMode[c], t, false);
    }
  }
  restartService(part, t);
}

static void happen(int kind, int index, double t, i32 code) {
  switch (kind) {
    case ONSET:
      if (modes.delayKind[index] == NO_DELAY) fail(index, t, code);
      else becomeDefective(index, t);
      break;
    case FAILS: fail(index, t, code); break;
    case SHOWS: failVisibly(index, t, FAILURES); break;
    case FOUND_DEFECTIVE:
      if (h.state[index] == DEFECTIVE) foundDefective(index, t);
      break;
    case FOUND_FAILED:
      if (h.state[index] == FAILED_UNNOTICED) order(index, t, waitYears(index, t));
      break;
    case FITTING_OUT: mendPlanned(index, t, MET_AT_FITTING_OUT); break;
    case PIECE_COMES: mendPlanned(index, t, PLANNED); break;
    case SERVICE: serve(index, t); break;
    case INTRUSION: faultShows(index, t); break;
    default:
      if (h.set == 0) replaceSet(t, index, true, false);
  }
}

/* Takes the first event and lets it happen, if it still holds. */
static void next(void) {
  const Event event = takeFirst();
  const int kind = kindOf(event.code);
  const int index = indexOf(event.code);
  if (event.stamp != stampOf(kind, index)) return;
  if (event.pauses != h.pauses && clockOf(event.code) != YEARS && comesLater(&event)) return;
  happen(kind, index, event.time, event.code);
}

static bool standsStopped(void) {
  bool stopped = false;
  for (int p = 0; p < parts.count; p++) {
    const int m = parts.broken[p];
    if (m < 0) continue;
    draw(0, m, 0, FOR_FAILURE, 0);
    if (uniformFrom(word0) < modes.stops[m]) stopped = true;
  }
  return stopped;
}

static void fillJobNow(int a) {
  emptyJob();
  for (int row = alternatives.itemFrom[a]; row < alternatives.itemFrom[a + 1]; row++) {
    const int p = alternatives.itemPart[row];
    addToJob(p, alternatives.itemMode[row]);
    const int i = job.at[p];
    job.outcome[i] = alternatives.itemOutcome[row];
    job.quality[i] = alternatives.itemQuality[row];
    job.agesLess[i] = alternatives.itemAgesLess[row];
  }
}

/* The job in hand: by its quote, or priced as any other. */
static void mendNow(int a, bool brokenStops) {
  fillJobNow(a);
  if (!alternatives.isPriced[a]) {
    doJob(0, brokenStops ? STOPPED : PLANNED, NOW);
    return;
  }
  reckon(0, PLANNED);
  const double usualDays = job.workshopDays + (job.ownHours + job.paidHours) / model.hoursPerDay;
  draw(0, WHOLE_SET, 0, FOR_QUOTE, 0);
  const double factor = alternatives.overrunMedian[a] * exp(alternatives.overrunLogSd[a] * normalFrom(word0));
  if (alternatives.isQuoted[a]) h.sums[QUOTE_FACTOR] += factor;
  draw(0, WHOLE_SET, 0, FOR_QUOTE, 1);
  const double besides = drawAmount(&alternatives.besides, a, word1);
  pay(NOW, 0, drawAmount(&alternatives.price, a, word0) * factor + besides);
  draw(0, WHOLE_SET, 0, FOR_QUOTE_DAYS, 0);
  const double workDays = alternatives.areDaysGiven[a] ? drawAmount(&alternatives.days, a, word0) : usualDays;
  goDown(0, brokenStops ? drawAmount(&alternatives.wait, a, word1) : 0, workDays, false);
  putRight(0);
  intrudeOnce(0, job.part[0], alternatives.intrusionChance[a]);
}

/* What the alternative does now, and what stands broken and is not put right by it. */
static void actNow(void) {
  const int a = h.alternative;
  const bool brokenStops = standsStopped();
  if (alternatives.laterWith[a] >= 0) {
    schedule(codeOf(REPLACE_LATER, alternatives.laterWith[a], YEARS), 0, alternatives.laterYear[a], 0);
  }
  if (alternatives.now[a] == GIVE_UP) {
    giveUp(0, brokenStops);
    return;
  }
  if (alternatives.now[a] == REPLACE) {
    replaceSet(0, alternatives.replaceWith[a], !brokenStops, false);
    return;
  }
  if (alternatives.now[a] == MEND) mendNow(a, brokenStops);
  for (int p = 0; p < parts.count; p++) {
    const int m = parts.broken[p];
    if (m < 0 || h.jobs[p] > 0 || h.set > 0 || h.gaveUpAt >= 0) continue;
    failFromBefore(m);
  }
}

/* What is left at the horizon, and the sum of it all. */
static void settle(void) {
  const double horizon = model.horizonYears;
  if (h.gaveUpAt < 0) h.sums[RESALE] -= resaleValue(horizon, h.downUntil > horizon) * discount(horizon);
  h.sums[COST] = h.sums[NOW] + h.sums[FAILURES] + h.sums[PLANNED_JOBS] + h.sums[UPKEEP] + h.sums[FUEL] +
                 h.sums[POWER] + h.sums[INTRUSIONS] + h.sums[REPLACEMENT] + h.sums[GIVING_UP] + h.sums[RESALE];
  double largest = 0;
  for (int y = 0; y < yearsKept(); y++) largest = larger(largest, h.years[y]);
  h.sums[LARGEST_YEAR] = largest;
  h.sums[REPLACEMENTS] = h.set;
}

/* Plays a history; what it came to is left in h.sums. */
static void runHistory(u32 seed, u32 number, int alternative) {
  trouble = 0;
  resetHistory(seed, number, alternative);
  h.sums[FUEL] = totalAt(use.discountedHours, model.horizonYears) * h.fuelPrice;
  h.sums[UPKEEP] = model.upkeepPerYear * discountedYears(model.interest, 0, model.horizonYears);
  startPresent();
  actNow();
  for (int events = 0; queue.size > 0; events++) {
    if (events >= MOST_EVENTS) {
      stopPlaying(TOO_MANY_EVENTS);
      return;
    }
    next();
  }
  settle();
}

#endif
