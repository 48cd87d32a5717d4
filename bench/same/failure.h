/* As kernel/failure.ts: a failure and what it drags down, one event in which a part is mended and charged once. */
#ifndef FAILURE_H
#define FAILURE_H

#include "job.h"

/* Counts a failure and its dangers; says whether a visible one stops the set. */
static bool countFailure(int m) {
  failuresOfMode[h.alternative * modes.count + m]++;
  for (int d = modes.dangerFrom[m]; d < modes.dangerFrom[m + 1]; d++) {
    const int kind = modes.dangerKind[d];
    failuresOfDanger[h.alternative * model.dangerCount + kind]++;
    h.sums[DANGERS] += model.dangerChance[kind];
  }
  if (modes.hidden[m]) return false;
  draw(h.set, m, h.life[m], FOR_FAILURE, h.patches[m]);
  const double u = uniformFrom(word0);
  if (u < modes.stops[m]) return true;
  if (u < modes.stops[m] + modes.derates[m]) h.sums[DERATES] += 1;
  return false;
}

static int sleepingMode(int part) {
  for (int m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) {
    if (h.state[m] == FAILED_UNNOTICED) return m;
  }
  return -1;
}

/* A working shutdown takes part of the chance away; one found asleep joins the job. */
static bool hits(int m, int l) {
  draw(h.set, m, h.life[m], FOR_LINK, (l - modes.linkFrom[m]) * 64 + (h.patches[m] & 63));
  const double u = uniformFrom(word0);
  const double chance = modes.linkChance[l];
  const int guard = modes.linkGuard[l];
  if (guard < 0) return u < chance;
  const int asleep = sleepingMode(guard);
  if (asleep < 0) return u < chance * (1 - modes.linkGuardEffect[l]);
  const bool hit = u < chance;
  if (hit || !job.hasHiddenRoot) addToJob(guard, asleep);
  return hit;
}

/* What fails unnoticed keeps its state, so that its wear ends with its mend. */
static void standFailed(int m) {
  if (h.state[m] != FAILED_UNNOTICED) h.state[m] = FAILED;
}

/* Links of a failed mode and of all that they ruin in turn. Says whether any of what was ruined stops the set. */
static bool spread(int m, double t) {
  bool stops = false;
  for (int l = modes.linkFrom[m]; l < modes.linkFrom[m + 1]; l++) {
    const int part = modes.linkPart[l];
    const int mode = modes.linkMode[l];
    if (job.at[part] >= 0 || !hits(m, l)) continue;
    const bool startsDefect = modes.linkStartsDefect[l] && mode >= 0;
    if (startsDefect && h.state[mode] != SOUND) continue;
    job.hits++;
    if (startsDefect && modes.delayKind[mode] != NO_DELAY) {
      h.stamp[mode]++;
      becomeDefective(mode, t);
      continue;
    }
    addToJob(part, mode);
    if (mode < 0) continue;
    standFailed(mode);
    if (countFailure(mode)) stops = true;
    if (spread(mode, t)) stops = true;
  }
  return stops;
}

static void finishEvent(double t, int m, bool stops, enum Kept heading) {
  const int year = (int)t;
  const double before = h.years[year];
  const bool first = h.sums[FIRST_MODE] < 0;
  if (first) {
    h.sums[FIRST_MODE] = m;
    h.sums[FIRST_TIME] = t;
  }
  doJob(t, stops ? STOPPED : RUNNING, heading);
  if (first) h.sums[FIRST_COST] = h.years[year] - before;
}

/* A visible failure in use, with its knock-on, its job and its money under `heading`. */
static void failVisibly(int m, double t, enum Kept heading) {
  emptyJob();
  job.hasHiddenRoot = false;
  h.state[m] = FAILED;
  addToJob(modes.part[m], m);
  const bool stops = countFailure(m);
  const bool othersStop = spread(m, t);
  finishEvent(t, m, stops || othersStop, heading);
}

/* A mode that stood failed before now: what it was to drag down it has dragged down. */
static void failFromBefore(int m) {
  emptyJob();
  h.state[m] = FAILED;
  h.stamp[m]++;
  addToJob(modes.part[m], m);
  finishEvent(0, m, countFailure(m), FAILURES);
}

/* Nothing shows, unless the failure brings something down with it. */
static void failUnnoticed(int m, double t) {
  emptyJob();
  h.state[m] = FAILED_UNNOTICED;
  countFailure(m);
  wearOthers(m, t, true);
  addToJob(modes.part[m], m);
  job.hits = 0;
  job.hasHiddenRoot = true;
  const bool stops = spread(m, t);
  if (job.hits > 0) finishEvent(t, m, stops, FAILURES);
  else scheduleFinding(m, t, FOR_CHECK_FAILED);
}

/* In lay-up a failure shows at the next day of use, unless fitting out meets it before. */
static void failInLayUp(int m, double t) {
  draw(h.set, m, h.life[m], FOR_FAILURE, h.patches[m]);
  const int kind = uniformFrom(word1) < model.fittingOutShare ? FITTING_OUT : SHOWS;
  h.state[m] = FAILED;
  schedule(codeOf(kind, m, YEARS), h.stamp[m], nextUse(t), t);
}

/* A mode's delay is over, or it fails without warning. */
static void fail(int m, double t, i32 code) {
  if (modes.hidden[m]) failUnnoticed(m, t);
  else if (clockOf(code) == YEARS && use.laidUp[monthAt(t)]) failInLayUp(m, t);
  else failVisibly(m, t, FAILURES);
}

/* A fault that work or the maker put in comes out. */
static void faultShows(int m, double t) {
  if (h.state[m] == DEFECTIVE || h.state[m] == SOUND) failVisibly(m, t, INTRUSIONS);
}

#endif
