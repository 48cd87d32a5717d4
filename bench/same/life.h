/* As kernel/life.ts: onset, delay, the checks that may find it, the service that forestalls it, wear by others. */
#ifndef LIFE_H
#define LIFE_H

#include "history.h"
#include "normal.h"

static void wearOthers(int m, double t, bool begins);

static double power(double base, double exponent) {
  return exponent == 1 ? base : pow(base, exponent);
}

/* Most words say at a glance that the onset of a life without age or wear lies past the horizon. */
static void scheduleFirstOnset(int m, double t, u32 word) {
  const int clock = modes.clock[m];
  const double birth = h.birth[m];
  const double scale = h.scale[m];
  const double atLeast = modes.leastOnset[modes.leastOnsetRow[m] + (int)(word >> SLICE_SHIFT)];
  if (!modes.isWorn[m] && isBeyond(clock, birth + scale * atLeast)) {
    h.onsetAt[m] = INFINITY;
    return;
  }
  h.onsetAt[m] = birth + scale * power(-log(uniformFrom(word)), 1 / modes.shape[m]);
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t);
}

/* Onset where `hazard` (unit exponential) more has been used than by the age at t. */
static void scheduleOnset(int m, double t, double hazard) {
  const double shape = modes.shape[m];
  const double scale = h.scale[m];
  const int clock = modes.clock[m];
  const double age = position(clock, t) - h.birth[m];
  const double end = (age > 0 ? power(age / scale, shape) : 0) + hazard / h.wear[m];
  h.onsetAt[m] = h.birth[m] + scale * power(end, 1 / shape);
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t);
}

/* `virtualAge` is what a reconditioned part keeps, on the running clock. */
static void beginLife(int m, double t, double virtualAge) {
  if (h.state[m] == FAILED_UNNOTICED) wearOthers(m, t, false);
  h.life[m]++;
  h.stamp[m]++;
  h.patches[m] = 0;
  h.state[m] = SOUND;
  h.birth[m] = position(modes.clock[m], t) - virtualAge;
  h.birthHours[m] = position(HOURS, t);
  h.birthTime[m] = t;
  const u32 word = lifeWord(h.set, m, h.life[m]);
  if (virtualAge == 0 && h.wear[m] == 1) scheduleFirstOnset(m, t, word);
  else scheduleOnset(m, t, -log(uniformFrom(word)));
}

static double delayFrom(int m, u32 word) {
  const double level = modes.delayLevel[m];
  const double spread = modes.delaySpread[m];
  if (modes.delayKind[m] == NO_DELAY) return 0;
  if (modes.delayKind[m] == LOGNORMAL_DELAY) return level * exp(spread * normalFrom(word));
  return level * power(-log(uniformFrom(word)), 1 / spread);
}

/* What is left of a delay that has already lasted `since`. */
static double delayLeft(int m, u32 word, double since) {
  const double level = modes.delayLevel[m];
  const double spread = modes.delaySpread[m];
  const int kind = modes.delayKind[m];
  if (kind == NO_DELAY || since <= 0) return delayFrom(m, word);
  const double u = uniformFrom(word);
  if (kind != LOGNORMAL_DELAY) return level * pow(pow(since / level, spread) - log(u), 1 / spread) - since;
  if (spread == 0) return larger(0, level - since);
  const double left = u * normalCdf(-log(since / level) / spread);
  return level * exp(-spread * normalQuantile(left)) - since;
}

/* The mode fails after `delay` more on the delay's clock. */
static void fallDue(int m, double t, double delay) {
  const int clock = modes.delayClock[m];
  h.failsAt[m] = position(clock, t) + delay;
  schedule(codeOf(FAILS, m, clock), h.stamp[m], h.failsAt[m], t);
}

static double timeLeft(int m, double t) {
  return timeAt(modes.delayClock[m], h.failsAt[m]) - t;
}

/* Words that say how good two checks are at the defect that a mode has in this life. */
static u32 goodWords[2];

/* Leaves in word0 and word1 how many looks the two checks take. */
static void drawLooks(int m, enum Purpose purpose, int ofPair) {
  draw(h.set, m, h.life[m], FOR_CHECK, ofPair);
  goodWords[0] = word0;
  goodWords[1] = word1;
  const int patches = h.patches[m] & 1023;
  if (purpose != FOR_CHECK || patches > 0) draw(h.set, m, h.life[m], purpose, ofPair | patches << 8);
}

/* Each check is as good at this defect as one draw says, so the looks until it is found are geometric. */
static void scheduleFinding(int m, double t, enum Purpose purpose) {
  const bool runs = use.hoursPerYear > 0;
  const int clock = runs ? HOURS : YEARS;
  const double now = position(clock, t);
  const double born = runs ? h.birthHours[m] : h.birthTime[m];
  const i32 *rows = purpose == FOR_CHECK ? modes.checkLooks : modes.checkLooksFailed;
  const int from = modes.checkFrom[m];
  double found = INFINITY;
  for (int c = from; c < modes.checkFrom[m + 1]; c++) {
    const int half = (c - from) & 1;
    if (half == 0) drawLooks(m, purpose, (c - from) >> 1);
    const double perLog = model.looksPerLog[rows[c] + (int)(goodWords[half] >> SLICE_SHIFT)];
    const double missed = floor(log(uniformFromLow(half == 0 ? word0 : word1)) * perLog);
    const double every = modes.checkEvery[c];
    const double at = born + (floor((now - born) / every) + 1 + missed) * every;
    if (at < found) found = at;
  }
  if (found == INFINITY) return;
  schedule(codeOf(purpose == FOR_CHECK ? FOUND_DEFECTIVE : FOUND_FAILED, m, clock), h.stamp[m], found, t);
}

static void becomeDefective(int m, double t) {
  h.state[m] = DEFECTIVE;
  h.onsetAt[m] = INFINITY;
  draw(h.set, m, h.life[m], FOR_DELAY, 0);
  fallDue(m, t, delayFrom(m, word0));
  scheduleFinding(m, t, FOR_CHECK);
}

/* A mode that failed unnoticed begins, or ends, to wear others: what is left of their lives shrinks, or grows. */
static void wearOthers(int m, double t, bool begins) {
  for (int w = modes.wearFrom[m]; w < modes.wearFrom[m + 1]; w++) {
    const int worn = modes.wearMode[w];
    const double factor = begins ? modes.wearFactor[w] : 1 / modes.wearFactor[w];
    if (h.state[worn] != SOUND) {
      h.wear[worn] *= factor;
      continue;
    }
    const double shape = modes.shape[worn];
    const double age = larger(0, position(modes.clock[worn], t) - h.birth[worn]);
    const double used = power(age / h.scale[worn], shape);
    const double end = power((h.onsetAt[worn] - h.birth[worn]) / h.scale[worn], shape);
    const double hazard = larger(0, end - used) * h.wear[worn];
    h.wear[worn] *= factor;
    h.stamp[worn]++;
    scheduleOnset(worn, t, hazard);
  }
}

/* The earlier of its hours and its years. */
static void scheduleService(int part, double t) {
  if (!parts.serviced[part]) return;
  const double dueHours = h.servicedHours[part] + parts.serviceHours[part];
  const double dueTime = h.servicedTime[part] + parts.serviceYears[part];
  const double reached = isBeyond(HOURS, dueHours) ? INFINITY : timeAt(HOURS, dueHours);
  const bool byHours = reached < dueTime;
  const i32 code = codeOf(SERVICE, part, byHours ? HOURS : YEARS);
  scheduleAt(code, h.serviceStamp[part], byHours ? dueHours : dueTime, larger(byHours ? reached : dueTime, t));
}

static void restartService(int part, double t) {
  if (!parts.serviced[part]) return;
  h.serviceStamp[part]++;
  h.servicedHours[part] = position(HOURS, t);
  h.servicedTime[part] = t;
  scheduleService(part, t);
}

#endif
