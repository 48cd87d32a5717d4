/* As kernel/job.ts: what is mended together, what it costs, how long the set is out, what state it leaves behind. */
#ifndef JOB_H
#define JOB_H

#include "replacement.h"

/* How a job comes about. */
enum How { STOPPED, RUNNING, PLANNED, MET_AT_FITTING_OUT };

/* The job in hand: parts, each once, with the strongest outcome asked for. */
static struct {
  int count;
  /* Links that hit in the event, and whether it began with a hidden mode. */
  int hits;
  bool hasHiddenRoot;
  /* Mode for which the piece was ordered before, -1 if none was. */
  i32 orderedFor;
  i32 part[MOST_PARTS];
  /* Mode whose remedy it is; -1 where the part is plainly damaged. */
  i32 mode[MOST_PARTS];
  u8 outcome[MOST_PARTS];
  /* Quality 0: as the supply's. */
  double quality[MOST_PARTS], agesLess[MOST_PARTS];
  /* Place of a part in the list, -1 if not in it. */
  i32 at[MOST_PARTS];
  /* What it comes to. */
  double pieces, ownHours, paidHours, trips, waitDays, workshopDays;
  i32 accessLow, accessHigh;
} job;

static void openJob(void) {
  for (int p = 0; p < parts.count; p++) job.at[p] = -1;
}

static void emptyJob(void) {
  for (int i = 0; i < job.count; i++) job.at[job.part[i]] = -1;
  job.count = 0;
  job.orderedFor = -1;
}

/* Adds a part by the remedy of one of its modes, or as plainly damaged (mode -1). */
static void addToJob(int part, int mode) {
  const int outcome = mode >= 0 ? modes.outcome[mode] : RENEWED;
  const int known = job.at[part];
  const int i = known >= 0 ? known : job.count++;
  if (known < 0) {
    job.at[part] = i;
    job.part[i] = part;
  } else if (outcome <= job.outcome[i]) {
    return;
  }
  job.mode[i] = mode;
  job.outcome[i] = (u8)outcome;
  job.quality[i] = 0;
  job.agesLess[i] = mode >= 0 ? modes.agesLess[mode] : 1;
}

static int repairOf(int i) {
  return job.mode[i] >= 0 ? modes.repair[job.mode[i]] : parts.repair[job.part[i]];
}

static double hoursOfAccess(i32 low, i32 high) {
  double sum = 0;
  for (u32 bits = (u32)low; bits != 0; bits &= bits - 1) sum += model.accessHours[__builtin_ctz(bits)];
  for (u32 bits = (u32)high; bits != 0; bits &= bits - 1) sum += model.accessHours[30 + __builtin_ctz(bits)];
  return sum;
}

/* What a workshop would say beforehand: means, no overrun, wait or wrong part. */
static double estimate(void) {
  double money = 0;
  double mostTrips = 0;
  i32 low = 0;
  i32 high = 0;
  bool allOwner = true;
  for (int i = 0; i < job.count; i++) {
    const int r = repairOf(i);
    const int supply = repairs.supplyFrom[r];
    const double factor = supply < repairs.supplyFrom[r + 1] ? repairs.supplyPrice[supply] : 1;
    if (job.outcome[i] != CLEARED) money += meanAmount(&repairs.price, r) * factor * h.partPriceFactor;
    const bool byOwner = repairs.byOwner[r] == 1;
    money += repairs.hours[r] * h.labourFactor * (byOwner ? model.ownPerHour : model.paidPerHour);
    if (!byOwner) allOwner = false;
    mostTrips = larger(mostTrips, repairs.trips[r]);
    low |= parts.accessLow[job.part[i]];
    high |= parts.accessHigh[job.part[i]];
  }
  const double access = hoursOfAccess(low, high);
  const double opening = allOwner ? access * model.ownerAccessFactor * model.ownPerHour : access * model.paidPerHour;
  return money + opening * h.labourFactor + mostTrips * model.perTrip;
}

/* The repair limit at t: straight between its knots at now, half way and the horizon. */
static double limitAt(double t) {
  const double half = model.horizonYears / 2;
  const bool later = t >= half;
  const double *knots = alternatives.knots + h.alternative * 3 + (later ? 1 : 0);
  return knots[0] + ((knots[1] - knots[0]) * (later ? t - half : t)) / half;
}

/* Which supply it is; -1 if none is listed. The last option grows likelier with the years. */
static int supplyOption(int repair, double t, double u) {
  const int from = repairs.supplyFrom[repair];
  const int last = repairs.supplyFrom[repair + 1] - 1;
  if (last < from) return -1;
  const double lastChance = smaller(1, repairs.supplyChance[last] + repairs.lastLikelier[repair] * t);
  if (u >= 1 - lastChance) return last;
  const double others = 1 - repairs.supplyChance[last];
  double sum = 0;
  for (int option = from; option < last; option++) {
    sum += (repairs.supplyChance[option] / others) * (1 - lastChance);
    if (u < sum) return option;
  }
  return last;
}

static double supplyDays(int part, int number, int repair, int option) {
  const int key = parts.modeFrom[part];
  draw(h.set, key, number, FOR_SUPPLY, 0);
  const double days = drawAmount(&repairs.supplyDays, option, word0);
  if (uniformFrom(word1) >= repairs.wrongPart[repair]) return days;
  draw(h.set, key, number, FOR_WORKSHOP, 0);
  return days + drawAmount(&repairs.supplyDays, option, word1);
}

/* Days until the next piece for a part would be there; `orderedAs` of its mode is then the number of that supply. */
static double waitFor(int part, int m, double t) {
  const int number = h.supplies[part]++;
  const int repair = modes.repair[m];
  h.orderedAs[m] = number;
  h.orderedAt[m] = t;
  draw(h.set, parts.modeFrom[part], number, FOR_PRICE, 0);
  const int option = supplyOption(repair, t, uniformFrom(word1));
  return option < 0 ? 0 : supplyDays(part, number, repair, option);
}

/* Price of a piece, with the days of its supply beside it: both come from the same draws. */
static double drawPiece(int i, int repair, double t, double *wait) {
  const int part = job.part[i];
  const int ordered = job.orderedFor;
  const int number = ordered >= 0 ? h.orderedAs[ordered] : h.supplies[part]++;
  draw(h.set, parts.modeFrom[part], number, FOR_PRICE, 0);
  const double price = drawAmount(&repairs.price, repair, word0) * h.partPriceFactor;
  const int option = supplyOption(repair, ordered >= 0 ? h.orderedAt[ordered] : t, uniformFrom(word1));
  *wait = 0;
  if (option < 0) return price;
  *wait = supplyDays(part, number, repair, option);
  if (job.quality[i] == 0) job.quality[i] = repairs.supplyQuality[option];
  return price * repairs.supplyPrice[option];
}

static double drawWorkshop(int part, int repair) {
  if (repairs.workshop.level[repair] == 0) return 0;
  draw(h.set, parts.modeFrom[part], h.jobs[part], FOR_WORKSHOP, 0);
  return drawAmount(&repairs.workshop, repair, word0);
}

static void reckonPart(int i, double t, bool *allOwner) {
  const int part = job.part[i];
  const int repair = repairOf(i);
  if (job.outcome[i] != CLEARED) {
    double wait;
    job.pieces += drawPiece(i, repair, t, &wait);
    job.waitDays = larger(job.waitDays, wait);
  }
  job.workshopDays = larger(job.workshopDays, drawWorkshop(part, repair));
  const double hours = repairs.hours[repair] * h.labourFactor;
  if (repairs.byOwner[repair]) job.ownHours += hours;
  else {
    job.paidHours += hours;
    *allOwner = false;
  }
  job.trips = larger(job.trips, repairs.trips[repair]);
  job.accessLow |= parts.accessLow[part];
  job.accessHigh |= parts.accessHigh[part];
}

/* A failure met while the set is down. */
static bool joinsOutage(double t, enum How how) {
  return isDown(t) && (how == STOPPED || how == RUNNING);
}

/* Draws the pieces and their waits, and adds up hours; access counts once, and not what already stands open. */
static void reckon(double t, enum How how) {
  bool allOwner = true;
  job.pieces = job.ownHours = job.paidHours = job.trips = job.waitDays = job.workshopDays = 0;
  job.accessLow = job.accessHigh = 0;
  for (int i = 0; i < job.count; i++) reckonPart(i, t, &allOwner);
  if (!isDown(t)) h.openLow = h.openHigh = 0;
  const bool joins = joinsOutage(t, how);
  if (joins) job.trips = 0;
  const i32 low = joins ? job.accessLow & ~h.openLow : job.accessLow;
  const i32 high = joins ? job.accessHigh & ~h.openHigh : job.accessHigh;
  const double opening = hoursOfAccess(low, high) * h.labourFactor;
  if (allOwner) job.ownHours += opening * model.ownerAccessFactor;
  else job.paidHours += opening;
}

static double drawOverrun(void) {
  if (model.overrunLogSd == 0) return model.overrunMedian;
  const int mode = job.mode[0];
  if (mode >= 0) draw(h.set, mode, h.life[mode], FOR_OVERRUN, h.patches[mode]);
  else draw(h.set, WHOLE_SET, h.jobs[job.part[0]], FOR_OVERRUN, job.part[0]);
  return model.overrunMedian * exp(model.overrunLogSd * normalFrom(word0));
}

static void payJob(double t, enum Kept heading) {
  const double factor = drawOverrun();
  const double out = discount(t) * factor;
  h.sums[OWN_HOURS] += job.ownHours * out;
  h.sums[PAID_HOURS] += job.paidHours * out;
  h.sums[TRIPS] += job.trips * out;
  const double hands = job.ownHours * model.ownPerHour + job.paidHours * model.paidPerHour;
  pay(heading, t, factor * (job.pieces + hands + job.trips * model.perTrip));
}

/* Kijima II: a share of the virtual age goes; the rhythm of the checks stays. */
static void recondition(int m, double t, double agesLess) {
  const double hours = h.birthHours[m];
  const double time = h.birthTime[m];
  const double age = position(modes.clock[m], t) - h.birth[m];
  beginLife(m, t, age * (1 - agesLess));
  h.birthHours[m] = hours;
  h.birthTime[m] = time;
}

/* Stays defective; what is left until it fails is drawn again, and shorter. */
static void patch(int m, double t) {
  if (h.state[m] == SOUND) return;
  if (modes.delayKind[m] == NO_DELAY) {
    beginLife(m, t, 0);
    return;
  }
  if (h.state[m] == FAILED_UNNOTICED) wearOthers(m, t, false);
  h.stamp[m]++;
  h.state[m] = DEFECTIVE;
  draw(h.set, m, h.life[m], FOR_PATCH, h.patches[m]++);
  fallDue(m, t, delayFrom(m, word0) * modes.delayFactor[m]);
  scheduleFinding(m, t, FOR_CHECK);
}

static void putRightPart(int i, double t) {
  const int part = job.part[i];
  const int mode = job.mode[i];
  const int outcome = job.outcome[i];
  const double quality = job.quality[i] == 0 ? 1 : job.quality[i];
  const bool one = mode >= 0 && (outcome == PATCHED || outcome == CLEARED);
  const int from = one ? mode : parts.modeFrom[part];
  const int to = one ? mode + 1 : parts.modeFrom[part + 1];
  h.jobs[part]++;
  for (int m = from; m < to; m++) {
    if (outcome == PATCHED) patch(m, t);
    else if (outcome == CLEARED) beginLife(m, t, 0);
    else if (outcome == RECONDITIONED) recondition(m, t, job.agesLess[i]);
    else {
      h.scale[m] = h.scaleAsNew[m] * quality;
      beginLife(m, t, 0);
    }
  }
  if (outcome == RENEWED) restartService(part, t);
}

static void putRight(double t) {
  for (int i = 0; i < job.count; i++) putRightPart(i, t);
}

/* One of the parts that share access with a part of the job from `from` up to `to`, each once. */
static int partNear(int from, int to, double u) {
  static i32 list[MOST_PARTS];
  static bool isNear[MOST_PARTS];
  int count = 0;
  for (int i = from; i < to; i++) {
    const int part = job.part[i];
    for (int n = parts.nearFrom[part]; n < parts.nearFrom[part + 1]; n++) {
      if (isNear[parts.nearPart[n]]) continue;
      isNear[parts.nearPart[n]] = true;
      list[count++] = parts.nearPart[n];
    }
  }
  for (int i = 0; i < count; i++) isNear[list[i]] = false;
  return list[(int)(u * count)];
}

/* With the chance given, less what the tests catch, a fault is left in a part that shares the opened access. */
static void intrudeOnce(double t, int from, int to, double chance) {
  if (chance == 0) return;
  const int part = job.part[from];
  const int key = parts.modeFrom[part];
  draw(h.set, key, h.jobs[part], FOR_INTRUSION, 0);
  if (uniformFrom(word0) >= chance * (1 - model.testsCatch)) return;
  const int struck = partNear(from, to, uniformFrom(word1));
  draw(h.set, key, h.jobs[part], FOR_INTRUSION_MODE, 0);
  const u32 onsetWord = word1;
  const int mode = visibleModeOf(struck, word0);
  if (mode >= 0) plantFault(t, mode, onsetWord);
}

static void intrude(double t) {
  for (int i = 0; i < job.count; i++) intrudeOnce(t, i, i + 1, repairs.intrusion[repairOf(i)]);
}

static void insteadOfMending(double t, enum How how) {
  const bool stopped = how == STOPPED;
  const bool stands = stopped || isDown(t);
  const int above = alternatives.above[h.alternative];
  if (above == GIVE_UP_ABOVE) {
    if (stopped) goDown(t, 0, 0, true);
    giveUp(t, stands);
  } else {
    replaceSet(t, above, !stands, stopped);
  }
}

/* Chooses by the repair limit, then mends, replaces or gives up. `heading` is where its money is booked. */
static void doJob(double t, enum How how, enum Kept heading) {
  const bool guaranteed = t < h.guaranteeUntil;
  const bool judged = !guaranteed && heading != NOW && alternatives.above[h.alternative] != NO_LIMIT;
  if (judged && estimate() > limitAt(t)) {
    insteadOfMending(t, how);
    return;
  }
  reckon(t, how);
  const double workDays = (job.ownHours + job.paidHours) / model.hoursPerDay;
  if (!guaranteed) payJob(t, heading);
  if (how != MET_AT_FITTING_OUT) {
    const double days = job.workshopDays + workDays;
    if (joinsOutage(t, how)) goDown(t, job.waitDays, days, how == STOPPED);
    else goDown(t, (how == STOPPED ? job.waitDays : 0) + days, 0, how == STOPPED);
    h.openLow |= job.accessLow;
    h.openHigh |= job.accessHigh;
  }
  putRight(t);
  intrude(t);
}

#endif
