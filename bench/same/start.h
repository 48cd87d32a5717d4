/* As kernel/start.ts: how the present set, a used one and a new one begin. */
#ifndef START_H
#define START_H

#include "life.h"

/* Entries of each table. */
enum { STEPS = 1024 };

/* Tables of what may be true of a set, and what the history under way drew from them. */
typedef struct {
  const double *kappaLog, *kappaWeight;
  const u8 *joint, *states;
  const float *thetas, *ages, *sinces, *agesHours, *servicesYears, *servicesHours;
  int nodes;
  /* History that drew what follows, -1 for none. */
  int64_t history;
  int node;
  /* Of each mode. */
  i32 entry[MOST_MODES];
  u32 onsetWord[MOST_MODES];
  u8 state[MOST_MODES];
  double theta[MOST_MODES], age[MOST_MODES], since[MOST_MODES], ageHours[MOST_MODES];
  /* Chance of no onset before the horizon, of a set that begins now. */
  double quiet[MOST_MODES];
  /* Of each part. */
  i32 serviceIndex[MOST_PARTS];
} States;

static States *present;
/* Of candidates that are bought used; null for others. */
static States *ofCandidate[MOST_CANDIDATES];

static States *statesOf(const char *name) {
  States *states = calloc(1, sizeof *states);
  states->nodes = countOf(nameOf(name, "kappaLog"));
  states->kappaLog = columnOf(name, "kappaLog");
  states->kappaWeight = columnOf(name, "kappaWeight");
  states->joint = columnOf(name, "joint");
  states->states = columnOf(name, "state");
  states->thetas = columnOf(name, "theta");
  states->ages = columnOf(name, "age");
  states->sinces = columnOf(name, "since");
  states->agesHours = columnOf(name, "ageHours");
  states->servicesYears = columnOf(name, "serviceYears");
  states->servicesHours = columnOf(name, "serviceHours");
  states->history = -1;
  return states;
}

static void readStates(void) {
  present = statesOf("states");
  for (int c = 0; c < candidates.count; c++) {
    char name[NAME_BYTES];
    snprintf(name, sizeof name, "states%d", c);
    if (find(nameOf(name, "kappaLog")) != NULL) ofCandidate[c] = statesOf(name);
  }
}

static double sootRate(int m) {
  return 1 + h.lowLoadShare * (modes.soot[m] - 1);
}

/* Hour clocks that soot speeds up are kept in running hours: the scale shrinks instead. */
static void setScale(int m, double theta) {
  h.scaleAsNew[m] = (theta * modes.onsetScale[m]) / sootRate(m);
  h.scale[m] = h.scaleAsNew[m];
}

/* Candidates may stretch the hour clocks. */
static double hourLife(int m) {
  return h.candidate < 0 || modes.clock[m] != HOURS ? 1 : candidates.hourLifeFactor[h.candidate];
}

/* Chance that a sound mode of an age has no onset from now to the horizon, if no outage comes between. */
static double quietChance(int m, double age) {
  const int clock = modes.clock[m];
  const double shape = modes.shape[m];
  const double scale = h.scale[m];
  const double end =
      clock == YEARS ? model.horizonYears : clock == HOURS ? use.hoursToHorizon : use.startsToHorizon;
  return exp(power(age / scale, shape) - power((age + end) / scale, shape));
}

/* Reads table after table in loops that do nothing else, so that their waits for memory overlap. */
static void fetch(States *states) {
  const i32 *entry = states->entry;
  for (int m = 0; m < modes.count; m++) states->theta[m] = states->thetas[entry[m]];
  for (int m = 0; m < modes.count; m++) states->state[m] = states->states[entry[m]];
  for (int m = 0; m < modes.count; m++) states->age[m] = states->ages[entry[m]];
  for (int m = 0; m < modes.count; m++) states->since[m] = states->sinces[entry[m]];
  for (int m = 0; m < modes.count; m++) states->ageHours[m] = states->agesHours[entry[m]];
  for (int m = 0; m < modes.count; m++) {
    setScale(m, states->theta[m] * hourLife(m));
    states->quiet[m] = quietChance(m, states->age[m] / sootRate(m));
  }
}

/* Which entry of the tables each mode starts from: one index for all modes of a part that belong together. */
static void drawStart(States *states, int node) {
  states->history = h.number;
  states->node = node;
  for (int p = 0; p < parts.count; p++) {
    const int first = parts.modeFrom[p];
    const bool joint = states->joint[p] == 1;
    i32 index = 0;
    for (int m = first; m < parts.modeFrom[p + 1]; m++) {
      draw(h.set, m, 0, FOR_START, 0);
      if (m == first || !joint) index = (i32)(word0 >> 22);
      if (m == first) states->serviceIndex[p] = joint ? index : (i32)(word0 & (STEPS - 1));
      states->entry[m] = (node * modes.count + m) * STEPS + index;
      states->onsetWord[m] = word1;
    }
  }
  fetch(states);
}

/* Adds to the index of what is at risk in the present set before the horizon. */
static void bookRisk(int m, double chance) {
  h.sums[modes.isQuoted[m] ? RISK_OF_JOB : RISK_OF_OTHERS] += chance * modes.costAtRisk[m];
}

static void startSound(const States *states, int m, double t) {
  const double u = uniformFrom(states->onsetWord[m]);
  if (t == 0 && !modes.isWorn[m]) {
    const double quiet = states->quiet[m];
    if (h.set == 0) bookRisk(m, 1 - quiet);
    if (u < quiet) return;
  }
  const double shape = modes.shape[m];
  const double scale = h.scale[m];
  const int clock = modes.clock[m];
  const double age = position(clock, t) - h.birth[m];
  const double end = power(age / scale, shape) - log(u);
  h.onsetAt[m] = h.birth[m] + scale * power(end, 1 / shape);
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t);
}

static void startMode(const States *states, int m, double t) {
  const int clock = modes.clock[m];
  setScale(m, states->theta[m] * hourLife(m));
  /* The tables tell of the piece in place; the next one is as good as new. */
  if (h.set == 0) h.scaleAsNew[m] /= parts.presentQuality[modes.part[m]];
  h.wear[m] = 1;
  h.life[m] = 0;
  h.stamp[m]++;
  h.state[m] = states->state[m];
  h.birth[m] = position(clock, t) - states->age[m] / sootRate(m);
  h.birthHours[m] = position(HOURS, t) - states->ageHours[m];
  h.birthTime[m] = clock == YEARS ? h.birth[m] : t;
  h.onsetAt[m] = INFINITY;
  if (h.state[m] == SOUND) {
    startSound(states, m, t);
    return;
  }
  if (h.set == 0) bookRisk(m, 1);
  if (h.state[m] == DEFECTIVE) {
    fallDue(m, t, delayLeft(m, states->onsetWord[m], states->since[m]));
    scheduleFinding(m, t, FOR_CHECK);
  } else {
    scheduleFinding(m, t, FOR_CHECK_FAILED);
  }
}

static void startService(const States *states, int part, double t) {
  if (!parts.serviced[part]) return;
  const i32 entry = (states->node * parts.count + part) * STEPS + states->serviceIndex[part];
  h.serviceStamp[part]++;
  h.servicedTime[part] = t - states->servicesYears[entry];
  h.servicedHours[part] = position(HOURS, t) - states->servicesHours[entry];
  scheduleService(part, t);
}

static void startFromTables(const States *states, double t) {
  for (int p = 0; p < parts.count; p++) {
    for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) startMode(states, m, t);
    startService(states, p, t);
  }
  /* Only when every mode has its life can one that stands failed wear the others. */
  for (int m = 0; m < modes.count; m++) {
    if (h.state[m] == FAILED_UNNOTICED) wearOthers(m, t, true);
  }
}

static int nodeAt(const States *states, double u) {
  double sum = 0;
  for (int n = 0; n < states->nodes - 1; n++) {
    sum += states->kappaWeight[n];
    if (u < sum) return n;
  }
  return states->nodes - 1;
}

/* The present set; its states are drawn once for all alternatives of a history. */
static void startPresent(void) {
  draw(0, WHOLE_SET, 0, FOR_KAPPA, 0);
  const int node = nodeAt(present, uniformFrom(word0));
  const double log = present->kappaLog[node];
  const double boat = model.boatLogSd;
  const double set = model.setLogSd;
  const double variance = boat * boat + set * set;
  /* Given b + g, b is normal about its share of the sum. */
  h.boatLog =
      variance == 0 ? 0 : (log * boat * boat) / variance + ((boat * set) / sqrt(variance)) * normalFrom(word1);
  h.kappa = exp(log);
  h.sums[KAPPA_LOG] = log;
  if (present->history != h.number) drawStart(present, node);
  startFromTables(present, 0);
}

/* A used set, fitted at t: any past that its age allows. */
static void startUsed(double t, States *states) {
  const double wanted = log(h.kappa);
  int node = 0;
  for (int n = 1; n < states->nodes; n++) {
    if (fabs(states->kappaLog[n] - wanted) < fabs(states->kappaLog[node] - wanted)) node = n;
  }
  drawStart(states, node);
  startFromTables(states, t);
}

static void startNew(double t) {
  for (int m = 0; m < modes.count; m++) {
    draw(h.set, m, 0, FOR_SCALE, 0);
    const double own = modes.logSd[m] == 0 ? 1 : exp(modes.logSd[m] * normalFrom(word0));
    setScale(m, h.kappa * own * hourLife(m));
    h.wear[m] = 1;
    h.life[m] = 0;
    h.stamp[m]++;
    h.state[m] = SOUND;
    h.birth[m] = position(modes.clock[m], t);
    h.birthHours[m] = position(HOURS, t);
    h.birthTime[m] = t;
    draw(h.set, m, 0, FOR_START, 0);
    scheduleFirstOnset(m, t, word1);
  }
  for (int p = 0; p < parts.count; p++) restartService(p, t);
}

/* Another set, as the candidate fitted is bought. */
static void startCandidate(double t) {
  States *states = ofCandidate[h.candidate];
  if (states != NULL) startUsed(t, states);
  else startNew(t);
}

/* Fault put in by the maker or by work: a mode that will fail some running hours later. */
static void plantFault(double t, int mode, u32 onsetWord) {
  const double hours = model.intrusionScaleHours * power(-log(uniformFrom(onsetWord)), 1 / model.intrusionShape);
  schedule(codeOf(INTRUSION, mode, HOURS), h.set, position(HOURS, t) + hours, t);
}

/* A visible mode of a part, drawn evenly; -1 if all are hidden. */
static int visibleModeOf(int part, u32 word) {
  int count = 0;
  for (int m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) count += !modes.hidden[m];
  int pick = (int)(uniformFrom(word) * count);
  for (int m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) {
    if (!modes.hidden[m] && pick-- == 0) return m;
  }
  return -1;
}

#endif
