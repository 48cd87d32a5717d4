/* Another set, or none (30, 31), and how each set begins (9, 12). */
#ifndef POLICY_H
#define POLICY_H

#include "life.h"

enum { STEPS = 1024 };

/* One index for all modes of a part that belong together, else one for each. */
static void startPart(const Tables *tables, int node, int p, double quality) {
  const PartKind *kind = &model.part[p];
  const int shared = pick(STEPS);
  for (int m = kind->firstMode; m < kind->firstMode + kind->modes; m++) {
    const int entry = (node * model.modes + m) * STEPS + (tables->joint[p] ? shared : pick(STEPS));
    const ModeKind *modeKind = &model.mode[m];
    Mode *mode = &world.mode[m];
    mode->theta = tables->theta[entry] / quality;
    mode->quality = quality;
    mode->birth = position(modeKind->clock) - tables->age[entry] / sootRate(modeKind);
    mode->checksFrom = checkClock() - tables->ageHours[entry];
    if (calendar.hoursPerYear == 0) mode->checksFrom = modeKind->clock == YEARS ? mode->birth : world.t;
    if (tables->state[entry] == 0) expectOnset(m, exponential());
    if (tables->state[entry] == 1) beDefective(m, drawDelayBeyond(modeKind, tables->since[entry]) - tables->since[entry]);
    if (tables->state[entry] == 2) mode->state = UNNOTICED;
  }
  const int entry = (node * model.parts + p) * STEPS + shared;
  world.part[p].servicedYears = world.t - tables->serviceYears[entry];
  world.part[p].servicedHours = position(HOURS) - tables->serviceHours[entry];
  expectService(p);
}

/* Every mode anew, nothing of the old set to come. */
static void clearModes(void) {
  for (int m = 0; m < model.modes; m++) {
    Mode *mode = &world.mode[m];
    mode->state = SOUND;
    mode->stamp++;
    mode->wear = 1;
    mode->quality = 1;
    forgetDefect(m);
  }
  for (int p = 0; p < model.parts; p++) world.part[p].stamp++;
}

static void startFromTables(const Tables *tables, int node, bool isPresent) {
  clearModes();
  for (int p = 0; p < model.parts; p++) startPart(tables, node, p, isPresent ? model.part[p].quality : 1);
  for (int m = 0; m < model.modes; m++) {
    if (world.mode[m].state != UNNOTICED) continue;
    wearOthers(m, true);
    expectLooks(m);
  }
}

static void startPresent(void) {
  const Tables *tables = &model.present;
  const double boat = model.boatLogSd * model.boatLogSd;
  const double set = model.setLogSd * model.setLogSd;
  int node = 0;
  for (double u = uniform() - tables->kappaWeight[0]; u > 0 && node < tables->nodes - 1; u -= tables->kappaWeight[node]) {
    node++;
  }
  /* Given b + g, b is normal about its share of the variance. */
  world.boatLog = 0;
  if (boat + set > 0) {
    world.boatLog = tables->kappaLog[node] * boat / (boat + set) + sqrt(boat * set / (boat + set)) * normal();
  }
  startFromTables(tables, node, true);
}

static void startUsed(const Tables *tables) {
  int node = 0;
  for (int n = 1; n < tables->nodes; n++) {
    if (fabs(tables->kappaLog[n] - world.kappaLog) < fabs(tables->kappaLog[node] - world.kappaLog)) node = n;
  }
  startFromTables(tables, node, false);
}

static void startNew(void) {
  clearModes();
  for (int m = 0; m < model.modes; m++) {
    Mode *mode = &world.mode[m];
    mode->theta = exp(world.kappaLog + model.mode[m].logSd * normal());
    mode->birth = position(model.mode[m].clock);
    mode->checksFrom = checkClock();
    expectOnset(m, exponential());
  }
  for (int p = 0; p < model.parts; p++) restartService(p);
}

/* A fault in one of the visible modes of a part, to show some running hours from now (26). */
static void putFaultIn(int p) {
  const PartKind *kind = &model.part[p];
  int visible[MOST_MODES];
  int count = 0;
  for (int m = kind->firstMode; m < kind->firstMode + kind->modes; m++) {
    if (!model.mode[m].hidden) visible[count++] = m;
  }
  if (count == 0) return;
  const double hours = weibull(model.intrusionScaleHours, model.intrusionShape);
  expect(FAULT_SHOWS, visible[pick(count)], world.set, HOURS, position(HOURS) + hours);
}

/* Fits a candidate; the set is out for the lead time only if it stands stopped (30). */
static void replaceSet(const Candidate *candidate, bool standsStopped) {
  book(drawAmount(&candidate->price) + drawAmount(&candidate->install) - model.salvage);
  const double lead = drawAmount(&candidate->leadDays);
  const double days = drawAmount(&candidate->installDays);
  burnUntil(world.t);
  takeOut((standsStopped ? lead : 0) + days);
  world.opened = 0;
  world.set++;
  world.candidate = candidate;
  world.fuelPerHour = candidate->fuelPerHour;
  world.lowLoadShare = candidate->lowLoadShare;
  world.guaranteeUntil = world.t + candidate->guaranteeYears;
  world.setBorn = world.t - candidate->usedYears;
  world.kappaLog = world.boatLog + model.setLogSd * normal();
  if (candidate->isUsed) startUsed(&candidate->tables);
  else startNew();
  for (int count = poisson(candidate->infantFaults); count > 0; count--) putFaultIn(pick(model.parts));
}

/* What the set in place would fetch (32). */
static double resaleValue(bool isDead) {
  const Resale *resale = &model.resaleOfPresent;
  if (world.candidate != NULL) resale = &model.resaleOfCandidate[world.candidate - model.candidate];
  if (resale->share < 0) return 0;
  const double age = world.t - world.setBorn;
  const double worth = resale->newPrice * resale->share * exp(-resale->fallPerYear * age);
  return larger(resale->least, worth) * (isDead ? resale->deadShare : 1);
}

/* Slope of the last segment of the curve that has a length. */
static double lastSlope(void) {
  const int last = model.curvePoints - 1;
  const double days = model.curveDays[last] - (last > 0 ? model.curveDays[last - 1] : 0);
  const double cost = model.curveCost[last] - (last > 0 ? model.curveCost[last - 1] : 0);
  return days > 0 ? cost / days : 0;
}

/* Lives on without a set (31). */
static void giveUp(bool standsFailed) {
  double byMonth = 0;
  for (int month = 0; month < 12; month++) byMonth += model.powerByMonth[month] / 12;
  const double perYear = model.giveUpPerYear + model.giveUpDaysPerYear * lastSlope() * byMonth;
  book(drawAmount(&model.giveUpCost) - resaleValue(standsFailed));
  burnUntil(world.t);
  closeOutage(world.t);
  world.cost += (perYear - model.upkeepPerYear) * discountedYears(world.t, model.horizonYears);
  world.gaveUp = true;
  world.waitingCount = 0;
}

#endif
