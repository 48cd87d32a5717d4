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

/* What is only cleared takes no piece. */
static double waitDays(int m, double t) {
  return modes.outcome[m] == CLEARED ? 0 : waitFor(modes.part[m], m, t);
}

static void order(int m, double t, double days) {
  schedule(codeOf(PIECE_COMES, m, YEARS), h.stamp[m], t + days / DAYS_PER_YEAR, t);
}

static void mendPlanned(int m, double t, enum How how) {
  emptyJob();
  if (how == PLANNED) job.orderedFor = m;
  addToJob(modes.part[m], m);
  doJob(t, how, PLANNED_JOBS);
}

/* The piece is ordered, and if it would fail first the set may be rested. */
static void foundDefective(int m, double t) {
  const double days = waitDays(m, t);
  if (timeLeft(m, t) <= days / DAYS_PER_YEAR) {
    draw(h.set, m, h.life[m], FOR_REST, h.patches[m]);
    if (uniformFrom(word0) >= model.restChance) return;
    /* At rest it does not fail. */
    h.stamp[m]++;
    goDown(t, days, 0, false);
  }
  order(m, t, days);
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

static void renew(int m, double t, bool wholePart) {
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
      if (h.state[index] == FAILED_UNNOTICED) order(index, t, waitDays(index, t));
      break;
    case FITTING_OUT: mendPlanned(index, t, MET_AT_FITTING_OUT); break;
    case PIECE_COMES: mendPlanned(index, t, PLANNED); break;
    case SERVICE: serve(index, t); break;
    case INTRUSION: faultShows(index, t); break;
    default:
      if (h.set == 0) replaceSet(t, index, !isDown(t), false);
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
    if (m < 0 || modes.hidden[m]) continue;
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

static void payPriced(int a) {
  draw(0, WHOLE_SET, 0, FOR_QUOTE, 0);
  const double factor = alternatives.overrunMedian[a] * exp(alternatives.overrunLogSd[a] * normalFrom(word0));
  if (alternatives.isQuoted[a]) h.sums[QUOTE_FACTOR] += factor;
  draw(0, WHOLE_SET, 0, FOR_QUOTE, 1);
  const double besides = drawAmount(&alternatives.besides, a, word1);
  pay(NOW, 0, drawAmount(&alternatives.price, a, word0) * factor + besides);
}

/* Whether what is done now puts a mode right that stands broken. */
static bool isPutRightNow(int a, int part, int m) {
  for (int row = alternatives.itemFrom[a]; row < alternatives.itemFrom[a + 1]; row++) {
    const int mode = alternatives.itemMode[row];
    const bool whole = mode < 0 || alternatives.itemOutcome[row] >= RECONDITIONED;
    if (alternatives.itemPart[row] == part && (whole || mode == m)) return true;
  }
  return false;
}

/* The job in hand: by its quote, a usual price, or as its parts are priced. */
static void mendNow(int a, bool brokenStops) {
  fillJobNow(a);
  reckon(0, PLANNED);
  const double usualDays = job.workshopDays + (job.ownHours + job.paidHours) / model.hoursPerDay;
  if (alternatives.isPriced[a]) payPriced(a);
  else payJob(0, NOW);
  draw(0, WHOLE_SET, 0, FOR_QUOTE_DAYS, 0);
  const double workDays = alternatives.areDaysGiven[a] ? drawAmount(&alternatives.days, a, word0) : usualDays;
  goDown(0, brokenStops ? drawAmount(&alternatives.wait, a, word1) : 0, workDays, false);
  h.openLow |= job.accessLow;
  h.openHigh |= job.accessHigh;
  for (int i = 0; i < job.count; i++) {
    if (parts.broken[job.part[i]] >= 0) standFailed(parts.broken[job.part[i]]);
  }
  putRight(0);
  if (alternatives.isPriced[a]) intrudeOnce(0, 0, job.count, alternatives.intrusionChance[a]);
  else intrude(0);
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
    if (m < 0 || isPutRightNow(a, p, m) || h.set > 0 || h.gaveUpAt >= 0) continue;
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
