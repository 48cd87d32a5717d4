/* Lives of modes (7 to 12), care (13 to 16) and wear (27). */
#ifndef PLAIN_LIFE_H
#define PLAIN_LIFE_H

#include "world.h"

static double sootRate(const ModeKind *kind) {
  return 1 + world.lowLoadShare * (kind->soot - 1);
}

/* Scale of the onset on the running clock: soot is a faster clock (4), here a shorter scale. */
static double scaleOf(int m) {
  const ModeKind *kind = &model.mode[m];
  const double hourLife = world.candidate != NULL && kind->clock == HOURS ? world.candidate->hourLifeFactor : 1;
  return world.mode[m].theta * kind->onsetScale * world.mode[m].quality * hourLife / sootRate(kind);
}

static double ageOf(int m) {
  return position(model.mode[m].clock) - world.mode[m].birth;
}

/* Onset when this much more of the cumulative hazard is used. */
static void expectOnset(int m, double hazard) {
  const ModeKind *kind = &model.mode[m];
  Mode *mode = &world.mode[m];
  const double scale = scaleOf(m);
  const double used = pow(larger(0, ageOf(m)) / scale, kind->shape);
  mode->onset = mode->birth + scale * pow(used + hazard / mode->wear, 1 / kind->shape);
  expect(ONSET, m, mode->stamp, kind->clock, mode->onset);
}

static void forgetDefect(int m) {
  for (int c = 0; c < model.mode[m].checks; c++) world.mode[m].good[c] = -1;
}

/* A mode that fails unnoticed begins, or ends, to wear others: what is left of their lives shrinks, or grows. */
static void wearOthers(int m, bool begins) {
  for (int i = 0; i < model.mode[m].wears; i++) {
    const Wear *wear = &model.mode[m].wear[i];
    Mode *worn = &world.mode[wear->mode];
    const double shape = model.mode[wear->mode].shape;
    const double scale = scaleOf(wear->mode);
    double hazard = 0;
    if (worn->state == SOUND) {
      const double used = pow(larger(0, ageOf(wear->mode)) / scale, shape);
      hazard = larger(0, pow((worn->onset - worn->birth) / scale, shape) - used) * worn->wear;
    }
    worn->wear *= begins ? wear->factor : 1 / wear->factor;
    if (worn->state != SOUND) continue;
    worn->stamp++;
    expectOnset(wear->mode, hazard);
  }
}

static double checkClock(void) {
  return position(calendar.hoursPerYear > 0 ? HOURS : YEARS);
}

/* The mode is sound at a virtual age; whatever was to come of its old life comes no more. */
static void makeSound(int m, double virtualAge) {
  Mode *mode = &world.mode[m];
  if (mode->state == UNNOTICED) wearOthers(m, false);
  mode->state = SOUND;
  mode->stamp++;
  mode->birth = position(model.mode[m].clock) - virtualAge;
  forgetDefect(m);
  expectOnset(m, exponential());
}

static void beginLife(int m) {
  makeSound(m, 0);
  world.mode[m].checksFrom = checkClock();
}

static double drawDelay(const ModeKind *kind) {
  if (kind->delayKind == NO_DELAY) return 0;
  if (kind->delayKind == LOGNORMAL_DELAY) return lognormal(kind->delayLevel, kind->delaySpread);
  return weibull(kind->delayLevel, kind->delaySpread);
}

/* A delay given that it exceeds what it has lasted already (12). */
static double drawDelayBeyond(const ModeKind *kind, double since) {
  const double level = kind->delayLevel;
  const double spread = kind->delaySpread;
  if (since <= 0 || kind->delayKind == NO_DELAY) return drawDelay(kind);
  if (kind->delayKind == WEIBULL_DELAY) return level * pow(pow(since / level, spread) + exponential(), 1 / spread);
  if (spread == 0) return larger(since, level);
  return level * exp(spread * normalBeyond(log(since / level) / spread));
}

/* How good a check is at what is wrong with a mode now: drawn once, and on failing the same quantile (14). */
static double goodnessOf(int m, int c) {
  const Check *check = &model.mode[m].check[c];
  Mode *mode = &world.mode[m];
  const bool failed = mode->state == UNNOTICED;
  const double mean = failed ? check->detectionFailed : check->detection;
  if (mode->good[c] < 0) mode->good[c] = betaAbout(mean);
  else if (failed && !mode->goodOfFailure[c] && check->detectionFailed != check->detection)
    mode->good[c] = betaMoved(check->detection, mode->good[c], mean);
  mode->goodOfFailure[c] = failed;
  return mode->good[c];
}

/* The first look of any check that is made and finds something (13): looks that miss are geometric. */
static void expectLooks(int m) {
  const ModeKind *kind = &model.mode[m];
  const double since = checkClock() - world.mode[m].checksFrom;
  double first = INFINITY;
  for (int c = 0; c < kind->checks; c++) {
    const double chance = goodnessOf(m, c) * kind->check[c].diligence;
    if (chance <= 0) continue;
    const double missed = chance < 1 ? floor(log(uniform()) / log1p(-chance)) : 0;
    const double looks = floor(since / kind->check[c].every) + 1 + missed;
    first = smaller(first, looks * kind->check[c].every);
  }
  if (first == INFINITY) return;
  const int clock = calendar.hoursPerYear > 0 ? HOURS : YEARS;
  expect(LOOK_FINDS, m, world.mode[m].stamp, clock, world.mode[m].checksFrom + first);
}

static void beDefective(int m, double delayLeft) {
  const ModeKind *kind = &model.mode[m];
  Mode *mode = &world.mode[m];
  mode->state = DEFECTIVE;
  mode->fails = position(kind->delayClock) + delayLeft;
  expect(FAILURE, m, mode->stamp, kind->delayClock, mode->fails);
  expectLooks(m);
}

static void beginDefect(int m) {
  world.mode[m].stamp++;
  forgetDefect(m);
  beDefective(m, drawDelay(&model.mode[m]));
}

/* When the next service of a part is due: the earlier of its hours and its years (15). */
static void expectService(int p) {
  const PartKind *kind = &model.part[p];
  const Part *part = &world.part[p];
  if (!kind->serviced) return;
  const double dueHours = part->servicedHours + kind->serviceHours;
  const double dueYears = part->servicedYears + kind->serviceYears;
  const bool byHours = timeAt(HOURS, dueHours) < dueYears;
  expect(SERVICE_DUE, p, part->stamp, byHours ? HOURS : YEARS, byHours ? dueHours : dueYears);
}

static void restartService(int p) {
  world.part[p].stamp++;
  world.part[p].servicedHours = position(HOURS);
  world.part[p].servicedYears = world.t;
  expectService(p);
}

static void serve(int p) {
  const PartKind *kind = &model.part[p];
  restartService(p);
  if (!happens(kind->serviceDiligence)) return;
  const double hourly = kind->serviceByOwner ? model.ownPerHour : model.paidPerHour;
  book(kind->servicePrice * partPriceFactor() + kind->serviceWork * labourFactor() * hourly);
  for (int m = kind->firstMode; kind->serviceRenews && m < kind->firstMode + kind->modes; m++) {
    world.mode[m].quality = 1;
    beginLife(m);
  }
  for (int c = 0; !kind->serviceRenews && c < kind->clears; c++) beginLife(kind->clear[c]);
}

#endif
