/*
 * The simulator's own algorithm in C, for the alternative that leaves the set as it is: same tables, same Threefry,
 * same queue, same order of events. What it comes to must be what the product comes to, but for the last digits.
 *
 * usage: same FILE SEED FROM COUNT; prints mean cost, its standard error, CPU seconds of the best of three runs.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef uint32_t u32;
typedef int32_t i32;
typedef uint8_t u8;

static char *file;
static long fileSize;

static void *col(const char *name) {
  for (long at = 0; at < fileSize;) {
    static const int width[] = {8, 4, 4, 1};
    u32 count, kind;
    memcpy(&count, file + at + 24, 4);
    memcpy(&kind, file + at + 28, 4);
    if (strncmp(file + at, name, 24) == 0) return file + at + 32;
    at += 32 + (((long)count * width[kind] + 7) & ~7L);
  }
  fprintf(stderr, "no section %s\n", name);
  exit(1);
}

static double horizon, interest, lowLoad, fuelPrice, upkeepPerYear, hoursPerDay, ownRate, paidRate, perTrip, overMedian,
    overSd, ownerAccess, testsCatch, intrShape, intrScale, fittingOutShare, restChance, setAge, reNew, reShare, reFall,
    reLeast, reDead, hoursPerYear, hourPerUnit, startPerUnit;
static int endMonth, M, P, N, curveN, months;

#define MODE_COLS(X) X(i32, part) X(u8, clock) X(double, shape) X(i32, leastOnsetRow) X(double, leastOnset) \
  X(double, onsetScale) X(u8, delayKind) X(u8, delayClock) X(double, delayLevel) X(double, delaySpread) X(u8, hidden) \
  X(double, stops) X(double, soot) X(u8, outcome) X(double, agesLess) X(double, delayFactor) X(i32, repair) \
  X(i32, checkFrom) X(i32, checkDetection) X(i32, checkDetectionFailed) X(double, checkEveryHours) \
  X(double, checkDiligence) X(i32, linkFrom) X(i32, linkPart) X(i32, linkMode) X(double, linkChance) \
  X(u8, linkStartsDefect) X(i32, linkGuard) X(double, linkGuardEffect) X(i32, wearFrom) X(i32, wearMode) \
  X(double, wearFactor) X(i32, dangerFrom) X(i32, dangerKind)
#define PART_COLS(X) X(i32, modeFrom) X(i32, repair) X(i32, accessLow) X(i32, accessHigh) X(u8, serviced) \
  X(double, serviceHours) X(double, serviceYears) X(double, serviceDiligence) X(u8, serviceRenews) \
  X(double, servicePrice) X(double, serviceWork) X(u8, serviceByOwner) X(i32, clearsFrom) X(i32, clearsMode) \
  X(i32, broken) X(i32, nearFrom) X(i32, nearPart)
#define USE_COLS(X) X(double, time) X(double, hours) X(double, starts) X(double, neededDays) X(double, discountedHours) \
  X(u8, monthOfYear) X(u8, laidUp) X(i32, hourMonth) X(i32, startMonth)
#define POST_COLS(X) X(double, kappaLog) X(double, kappaWeight) X(float, theta) X(u8, state) X(float, age) \
  X(float, since) X(float, ageHours) X(float, serviceYears) X(float, serviceHours) X(u8, joint)
#define REP_COLS(X) X(double, hours) X(u8, byOwner) X(double, trips) X(double, wrongPart) X(double, intrusion) \
  X(double, lastLikelier) X(i32, supplyFrom) X(double, supplyChance) X(double, supplyPrice) X(double, supplyQuality)
#define FIELD(type, name) type *name;
static struct { MODE_COLS(FIELD) } modes;
static struct { PART_COLS(FIELD) } parts;
static struct { USE_COLS(FIELD) } use;
static struct { POST_COLS(FIELD) } post;
static struct { REP_COLS(FIELD) } rep;
typedef struct { u8 *kind; double *level, *spread; } Amounts;
static Amounts price, workshop, supplyDays;
static double *normalT, *detection, *accessHours, *dangerChance, *byMonth, *curveDays, *curveCost;
static u8 *isWorn;

enum { HOURS, YEARS, STARTS };
enum { PATCHED, CLEARED, RECONDITIONED, RENEWED };
enum { SOUND, DEFECTIVE, FAILED_UNNOTICED, FAILED };
enum { ONSET, FAILS, FOUND_DEFECTIVE, FOUND_FAILED, SERVICE, INTRUSION, PIECE_COMES, REPLACE_LATER, SHOWS, FITTING_OUT };
enum { COST, FAILURES, PLANNED, UPKEEP, FUEL, POWER, INTRUDED, RESALE, OWN_H, PAID_H, TRIPS, DAYS, STOPS_N, SAME_DAY, DANGERS, SUMS };
enum { STOPPED, RUNNING, WHEN_PLANNED, RESTED, AT_FITTING_OUT };
enum { Z_START = 0, Z_LIFE = 1, Z_CHECK = 2, Z_CHECK_FAILED = 3, Z_FAILURE = 4, Z_REST = 5, Z_LINK = 6, Z_PATCH = 8,
  Z_OVERRUN = 9, Z_PRICE = 16, Z_SUPPLY = 17, Z_WORKSHOP = 18, Z_INTRUSION = 19, Z_INTRUSION_MODE = 20, Z_SERVICE = 21,
  Z_SERVICE_START = 22, Z_KAPPA = 32 };
#define WHOLE_SET 8191
#define MAXM 2048
#define DPY 365.25

static u32 seed, number, w0, w1;
static double sums[SUMS], years[128];
static double scale[MAXM], scaleNew[MAXM], birth[MAXM], birthHours[MAXM], birthTime[MAXM], onsetAt[MAXM], failsAt[MAXM], wear[MAXM];
static u8 state[MAXM];
static i32 life[MAXM], stamp[MAXM], patches[MAXM], entry[MAXM], jobs[MAXM], services[MAXM], serviceStamp[MAXM];
static u32 onsetWord[MAXM];
static double servicedHours[MAXM], servicedTime[MAXM];
static float quiet[MAXM];
static double lostHours, lostStarts, downFrom, downUntil, downPrice, downDays, askedAt, hoursThen;
static i32 openLow, openHigh, downIsStop, downIsSameDay;

#define ROT(x, r) (((x) << (r)) | ((x) >> (32 - (r))))
#define R4(p, q, r, s) a += b; b = ROT(b, p) ^ a; a += b; b = ROT(b, q) ^ a; a += b; b = ROT(b, r) ^ a; a += b; b = ROT(b, s) ^ a;
static void draw(u32 mode, u32 lifeNo, u32 purpose, u32 nth) {
  u32 k0 = seed, k1 = number, k2 = 0x1bd11bda ^ k0 ^ k1, a = ((mode << 19) | lifeNo) + k0, b = ((purpose << 18) | nth) + k1;
  R4(13, 15, 26, 6) a += k1; b += k2 + 1;
  R4(17, 29, 16, 24) a += k2; b += k0 + 2;
  R4(13, 15, 26, 6) a += k0; b += k1 + 3;
  R4(17, 29, 16, 24) a += k1; b += k2 + 4;
  R4(13, 15, 26, 6) w0 = a + k2; w1 = b + k0 + 5;
}
static double uni(u32 w) { return (w + 0.5) / 4294967296.0; }
static double normalFrom(u32 w) { return normalT[w >> 20]; }
static double amount(Amounts *a, int i, u32 w) {
  if (a->kind[i] == 0) return a->level[i];
  if (a->kind[i] == 1) return a->level[i] * exp(a->spread[i] * normalFrom(w));
  return -a->level[i] * log(uni(w));
}

static int monthAt(double t) {
  int last = months - 1;
  if (t >= use.time[last]) return last;
  if (t < use.time[1]) return 0;
  int k = 1 + (int)floor((t - use.time[1]) * 12);
  if (k > last) k = last;
  while (k > 0 && use.time[k] > t) k--;
  while (k < last && use.time[k + 1] <= t) k++;
  return k;
}
static double totalAt(double *total, double t) {
  int k = monthAt(t);
  if (k >= months - 1) return total[months - 1];
  return total[k] + ((total[k + 1] - total[k]) * (t - use.time[k])) / (use.time[k + 1] - use.time[k]);
}
static double timeOf(double *total, i32 *month, double perUnit, double value) {
  if (value <= 0) return 0;
  if (!(value <= total[months - 1])) return INFINITY;
  int k = month[(int)floor(value * perUnit)];
  while (k > 0 && total[k - 1] >= value) k--;
  while (total[k] < value) k++;
  if (k == 0) return 0;
  return use.time[k - 1] + ((use.time[k] - use.time[k - 1]) * (value - total[k - 1])) / (total[k] - total[k - 1]);
}
static double position(int clock, double t) {
  if (clock == YEARS) return t;
  double at = t > downUntil ? t : downUntil;
  if (clock == STARTS) return totalAt(use.starts, at) - lostStarts;
  if (at != askedAt) { askedAt = at; hoursThen = totalAt(use.hours, at); }
  return hoursThen - lostHours;
}
static double timeAt(int clock, double due) {
  if (clock == YEARS) return due;
  return clock == HOURS ? timeOf(use.hours, use.hourMonth, hourPerUnit, due + lostHours)
                        : timeOf(use.starts, use.startMonth, startPerUnit, due + lostStarts);
}
static int isBeyond(int clock, double due) {
  if (clock == YEARS) return due >= horizon;
  return clock == HOURS ? due + lostHours > use.hours[endMonth] : due + lostStarts > use.starts[endMonth];
}
static double discount(double t) { return interest == 0 ? 1 : exp(-interest * t); }
static void pay(int heading, double t, double money) {
  sums[heading] += money * discount(t);
  years[(int)floor(t)] += money;
}

/* The queue: a heap of times, each with the slot of its event. */
#define ROOM 65536
static int qSize;
static double qTime[ROOM], qDue[ROOM];
static i32 qSlot[ROOM], qCode[ROOM], qStamp[ROOM];
static void push(double time, i32 code, i32 st, double due) {
  int i = qSize++;
  i32 slot = qSlot[i];
  qCode[slot] = code; qStamp[slot] = st; qDue[slot] = due;
  while (i > 0) {
    int up = (i - 1) >> 1;
    if (qTime[up] <= time) break;
    qTime[i] = qTime[up]; qSlot[i] = qSlot[up];
    i = up;
  }
  qTime[i] = time; qSlot[i] = slot;
}
static void removeFirst(void) {
  int last = --qSize, i = 0;
  i32 freed = qSlot[0], slot = qSlot[last];
  double time = qTime[last];
  for (;;) {
    int c = 2 * i + 1;
    if (c >= last) break;
    if (c + 1 < last && qTime[c + 1] < qTime[c]) c++;
    if (qTime[c] >= time) break;
    qTime[i] = qTime[c]; qSlot[i] = qSlot[c];
    i = c;
  }
  qTime[i] = time; qSlot[i] = slot; qSlot[last] = freed;
}
#define CODE(kind, index, clock) (((clock) << 24) | ((kind) << 16) | (index))
static void scheduleAt(i32 code, i32 st, double due, double t) { if (t < horizon) push(t, code, st, due); }
static void schedule(i32 code, i32 st, double due, double notBefore) {
  int clock = code >> 24;
  if (isBeyond(clock, due)) return;
  scheduleAt(code, st, due, fmax(timeAt(clock, due), notBefore));
}

static double normalCdf(double z) { return 0.5 * erfc(-z * M_SQRT1_2); }
/* Inverse by Newton on erfc: used for defects that are there at the start only. */
static double normalQuantile(double p) {
  double z = p < 0.5 ? -sqrt(-2 * log(p)) * 0.9 : sqrt(-2 * log1p(-p)) * 0.9;
  for (int i = 0; i < 60; i++) {
    double step = (normalCdf(z) - p) / (0.3989422804014327 * exp(-z * z / 2));
    if (step > 1) step = 1;
    if (step < -1) step = -1;
    z -= step;
    if (fabs(step) < 1e-13) break;
  }
  return z;
}
static double delayFrom(int m, u32 w) {
  if (modes.delayKind[m] == 0) return 0;
  if (modes.delayKind[m] == 1) return modes.delayLevel[m] * exp(modes.delaySpread[m] * normalFrom(w));
  return modes.delayLevel[m] * pow(-log(uni(w)), 1 / modes.delaySpread[m]);
}
static double delayLeft(int m, u32 w, double since) {
  double level = modes.delayLevel[m], spread = modes.delaySpread[m], u = uni(w);
  if (modes.delayKind[m] == 0 || since <= 0) return delayFrom(m, w);
  if (modes.delayKind[m] == 2) return level * pow(pow(since / level, spread) - log(u), 1 / spread) - since;
  if (spread == 0) return fmax(0, level - since);
  return level * exp(-spread * normalQuantile(u * normalCdf(-log(since / level) / spread))) - since;
}

static void wearOthers(int m, double t, int begins);
static void scheduleOnset(int m, double t, double hazard) {
  double shape = modes.shape[m], age = position(modes.clock[m], t) - birth[m];
  double end = (age > 0 ? pow(age / scale[m], shape) : 0) + hazard / wear[m];
  onsetAt[m] = birth[m] + scale[m] * (shape == 1 ? end : pow(end, 1 / shape));
  schedule(CODE(ONSET, m, modes.clock[m]), stamp[m], onsetAt[m], t);
}
static void firstOnset(int m, double t, u32 word) {
  int clock = modes.clock[m];
  double least = modes.leastOnset[modes.leastOnsetRow[m] + (word >> 24)], shape = modes.shape[m];
  if (!isWorn[m] && isBeyond(clock, birth[m] + scale[m] * least)) { onsetAt[m] = INFINITY; return; }
  double hazard = -log(uni(word));
  onsetAt[m] = birth[m] + scale[m] * (shape == 1 ? hazard : pow(hazard, 1 / shape));
  schedule(CODE(ONSET, m, clock), stamp[m], onsetAt[m], t);
}
static void beginLife(int m, double t, double virtualAge) {
  if (state[m] == FAILED_UNNOTICED) wearOthers(m, t, 0);
  life[m]++; stamp[m]++; patches[m] = 0; state[m] = SOUND;
  birth[m] = position(modes.clock[m], t) - virtualAge;
  birthHours[m] = position(HOURS, t);
  birthTime[m] = t;
  draw(m, life[m], Z_LIFE, 0);
  if (virtualAge == 0 && wear[m] == 1) firstOnset(m, t, w0);
  else scheduleOnset(m, t, -log(uni(w0)));
}
static void fallDue(int m, double t, double delay) {
  failsAt[m] = position(modes.delayClock[m], t) + delay;
  schedule(CODE(FAILS, m, modes.delayClock[m]), stamp[m], failsAt[m], t);
}
static void scheduleFinding(int m, double t, int what) {
  int runs = hoursPerYear > 0, clock = runs ? HOURS : YEARS;
  double now = position(clock, t), born = runs ? birthHours[m] : birthTime[m], found = INFINITY;
  i32 *table = what == Z_CHECK ? modes.checkDetection : modes.checkDetectionFailed;
  for (int c = modes.checkFrom[m]; c < modes.checkFrom[m + 1]; c++) {
    draw(m, life[m], Z_CHECK, c - modes.checkFrom[m]);
    double good = detection[table[c] * 256 + (w0 >> 24)];
    if (what != Z_CHECK) draw(m, life[m], what, c - modes.checkFrom[m]);
    double chance = good * modes.checkDiligence[c];
    if (chance <= 0) continue;
    double missed = chance >= 1 ? 0 : floor(log(uni(w1)) / log1p(-chance));
    double every = runs ? fmin(modes.checkEveryHours[c], hoursPerYear) : 1;
    double at = born + (floor((now - born) / every) + 1 + missed) * every;
    if (at < found) found = at;
  }
  if (found == INFINITY) return;
  schedule(CODE(what == Z_CHECK ? FOUND_DEFECTIVE : FOUND_FAILED, m, clock), stamp[m], found, t);
}
static void becomeDefective(int m, double t) {
  state[m] = DEFECTIVE;
  onsetAt[m] = INFINITY;
  draw(m, life[m], Z_LIFE, 0);
  fallDue(m, t, delayFrom(m, w1));
  scheduleFinding(m, t, Z_CHECK);
}
static void wearOthers(int m, double t, int begins) {
  for (int w = modes.wearFrom[m]; w < modes.wearFrom[m + 1]; w++) {
    int v = modes.wearMode[w];
    double f = begins ? modes.wearFactor[w] : 1 / modes.wearFactor[w];
    if (state[v] != SOUND) { wear[v] *= f; continue; }
    double shape = modes.shape[v], age = fmax(0, position(modes.clock[v], t) - birth[v]);
    double hazard = fmax(0, pow((onsetAt[v] - birth[v]) / scale[v], shape) - pow(age / scale[v], shape)) * wear[v];
    wear[v] *= f;
    stamp[v]++;
    scheduleOnset(v, t, hazard);
  }
}
static void scheduleService(int p, double t) {
  if (!parts.serviced[p]) return;
  double dueHours = servicedHours[p] + parts.serviceHours[p], dueTime = servicedTime[p] + parts.serviceYears[p];
  double reached = isBeyond(HOURS, dueHours) ? INFINITY : timeAt(HOURS, dueHours);
  int byHours = reached < dueTime;
  scheduleAt(CODE(SERVICE, p, byHours ? HOURS : YEARS), serviceStamp[p], byHours ? dueHours : dueTime,
             fmax(byHours ? reached : dueTime, t));
}
static void restartService(int p, double t) {
  if (!parts.serviced[p]) return;
  serviceStamp[p]++;
  servicedHours[p] = position(HOURS, t);
  servicedTime[p] = t;
  scheduleService(p, t);
}

static double priceOfDays(double days) {
  if (days <= 0) return 0;
  double d = 0, c = 0, slope = 0;
  for (int i = 0; i < curveN; i++) {
    if (days <= curveDays[i]) return c + ((curveCost[i] - c) * (days - d)) / (curveDays[i] - d);
    slope = curveDays[i] > d ? (curveCost[i] - c) / (curveDays[i] - d) : 0;
    d = curveDays[i]; c = curveCost[i];
  }
  return c + slope * (days - d);
}
static void goDown(double t, double waitDays, double workDays, int isStop) {
  int joined = t < downUntil;
  double ready = t + waitDays / DPY, end = (joined ? fmax(downUntil, ready) : ready) + workDays / DPY;
  double from = joined ? downUntil : t;
  if (!joined) { downFrom = t; downPrice = downDays = 0; downIsStop = 0; }
  if (end > from) {
    lostHours += totalAt(use.hours, end) - totalAt(use.hours, from);
    lostStarts += totalAt(use.starts, end) - totalAt(use.starts, from);
    double ends = fmin(end, horizon);
    if (from < ends) sums[FUEL] -= (totalAt(use.discountedHours, ends) - totalAt(use.discountedHours, from)) * fuelPrice;
  }
  downUntil = end;
  double stop = fmin(end, horizon), days = totalAt(use.neededDays, stop) - totalAt(use.neededDays, downFrom);
  sums[DAYS] += days - downDays;
  downDays = days;
  double cost = priceOfDays(days) * byMonth[use.monthOfYear[monthAt(downFrom)]] * discount((downFrom + stop) / 2);
  sums[POWER] += cost - downPrice;
  downPrice = cost;
  int isShort = downUntil - downFrom < 1 / DPY;
  if (isStop && !joined) { downIsStop = 1; downIsSameDay = isShort; sums[isShort ? SAME_DAY : STOPS_N] += 1; }
  else if (downIsStop && downIsSameDay && !isShort) { downIsSameDay = 0; sums[SAME_DAY] -= 1; sums[STOPS_N] += 1; }
}

/* The job: parts with the strongest outcome asked for. */
static int jobCount, jobHits, jobPart[MAXM], jobMode[MAXM], jobOutcome[MAXM], jobAt[MAXM];
static double jobQuality[MAXM], jobAgesLess[MAXM], drawnWait;
static void emptyJob(void) { for (int i = 0; i < jobCount; i++) jobAt[jobPart[i]] = -1; jobCount = 0; }
static void addToJob(int part, int mode) {
  int outcome = mode >= 0 ? modes.outcome[mode] : RENEWED, i = jobAt[part];
  if (i < 0) { i = jobCount++; jobAt[part] = i; jobPart[i] = part; }
  else if (outcome <= jobOutcome[i]) return;
  jobMode[i] = mode; jobOutcome[i] = outcome; jobQuality[i] = 0;
  jobAgesLess[i] = mode >= 0 ? modes.agesLess[mode] : 1;
}
static int repairOf(int i) { return jobMode[i] >= 0 ? modes.repair[jobMode[i]] : parts.repair[jobPart[i]]; }
static int supplyOption(int r, double t, double u) {
  int from = rep.supplyFrom[r], last = rep.supplyFrom[r + 1] - 1;
  if (last < from) return -1;
  double lastChance = fmin(1, rep.supplyChance[last] + rep.lastLikelier[r] * t), others = 1 - rep.supplyChance[last], sum = 0;
  if (u >= 1 - lastChance) return last;
  for (int o = from; o < last; o++) {
    sum += (rep.supplyChance[o] / others) * (1 - lastChance);
    if (u < sum) return o;
  }
  return last;
}
static double supplyWait(int part, int r, int option) {
  int key = parts.modeFrom[part];
  draw(key, jobs[part], Z_SUPPLY, 0);
  double days = amount(&supplyDays, option, w0);
  if (uni(w1) >= rep.wrongPart[r]) return days;
  draw(key, jobs[part], Z_WORKSHOP, 0);
  return days + amount(&supplyDays, option, w1);
}
static double waitFor(int part, int r, double t) {
  draw(parts.modeFrom[part], jobs[part], Z_PRICE, 0);
  int option = supplyOption(r, t, uni(w1));
  return option < 0 ? 0 : supplyWait(part, r, option);
}
static double drawPiece(int i, int r, double t) {
  draw(parts.modeFrom[jobPart[i]], jobs[jobPart[i]], Z_PRICE, 0);
  double p = amount(&price, r, w0);
  int option = supplyOption(r, t, uni(w1));
  if (option < 0) { drawnWait = 0; return p; }
  drawnWait = supplyWait(jobPart[i], r, option);
  if (jobQuality[i] == 0) jobQuality[i] = rep.supplyQuality[option];
  return p * rep.supplyPrice[option];
}
static double openHours(i32 low, i32 high) {
  double sum = 0;
  int i = 0;
  for (u32 bits = low; bits; bits >>= 1, i++) if (bits & 1) sum += accessHours[i];
  i = 30;
  for (u32 bits = high; bits; bits >>= 1, i++) if (bits & 1) sum += accessHours[i];
  return sum;
}
static void patch(int m, double t) {
  if (state[m] == SOUND) return;
  if (modes.delayKind[m] == 0) { beginLife(m, t, 0); return; }
  if (state[m] == FAILED_UNNOTICED) wearOthers(m, t, 0);
  stamp[m]++;
  state[m] = DEFECTIVE;
  draw(m, life[m], Z_PATCH, patches[m]++);
  fallDue(m, t, delayFrom(m, w0) * modes.delayFactor[m]);
  scheduleFinding(m, t, Z_CHECK);
}
static void putRight(double t) {
  for (int i = 0; i < jobCount; i++) {
    int p = jobPart[i], one = jobMode[i];
    int from = parts.modeFrom[p], to = parts.modeFrom[p + 1];
    double quality = jobQuality[i] != 0 ? jobQuality[i] : 1;
    jobs[p]++;
    if (jobOutcome[i] <= CLEARED && one >= 0) { from = one; to = one + 1; }
    for (int m = from; m < to; m++) {
      if (jobOutcome[i] == PATCHED) patch(m, t);
      else if (jobOutcome[i] == CLEARED) beginLife(m, t, 0);
      else if (jobOutcome[i] == RECONDITIONED) {
        double hours = birthHours[m], time = birthTime[m], age = position(modes.clock[m], t) - birth[m];
        beginLife(m, t, age * (1 - jobAgesLess[i]));
        birthHours[m] = hours; birthTime[m] = time;
      } else { scale[m] = scaleNew[m] * quality; beginLife(m, t, 0); }
    }
    if (jobOutcome[i] == RENEWED) restartService(p, t);
  }
}
static int visibleMode(int p, u32 word) {
  int count = 0;
  for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) count += !modes.hidden[m];
  int pick = (int)floor(uni(word) * count);
  for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) if (!modes.hidden[m] && pick-- == 0) return m;
  return -1;
}
static void intrude(double t, int part, double chance) {
  if (chance == 0) return;
  int key = parts.modeFrom[part];
  draw(key, jobs[part], Z_INTRUSION, 0);
  if (uni(w0) >= chance * (1 - testsCatch)) return;
  int from = parts.nearFrom[part];
  int struck = parts.nearPart[from + (int)floor(uni(w1) * (parts.nearFrom[part + 1] - from))];
  draw(key, jobs[part], Z_INTRUSION_MODE, 0);
  u32 word = w1;
  int m = visibleMode(struck, w0);
  if (m < 0) return;
  schedule(CODE(INTRUSION, m, HOURS), 0, position(HOURS, t) + intrScale * pow(-log(uni(word)), 1 / intrShape), t);
}
static void doJob(double t, int comes, int heading) {
  double pieces = 0, own = 0, paid = 0, trips = 0, wait = 0, shop = 0;
  i32 low = 0, high = 0;
  int allOwner = 1;
  for (int i = 0; i < jobCount; i++) {
    int p = jobPart[i], r = repairOf(i);
    if (jobOutcome[i] != CLEARED) { pieces += drawPiece(i, r, t); wait = fmax(wait, drawnWait); }
    if (workshop.level[r] != 0) {
      draw(parts.modeFrom[p], jobs[p], Z_WORKSHOP, 0);
      shop = fmax(shop, amount(&workshop, r, w0));
    }
    if (rep.byOwner[r]) own += rep.hours[r];
    else { paid += rep.hours[r]; allOwner = 0; }
    trips = fmax(trips, rep.trips[r]);
    low |= parts.accessLow[p]; high |= parts.accessHigh[p];
  }
  if (t < downUntil && comes != AT_FITTING_OUT) trips = 0;
  else openLow = openHigh = 0;
  double opening = openHours(low & ~openLow, high & ~openHigh);
  if (allOwner) own += opening * ownerAccess; else paid += opening;
  double factor = overMedian;
  if (overSd != 0) {
    int m = jobMode[0];
    if (m >= 0) draw(m, life[m], Z_OVERRUN, patches[m]);
    else draw(WHOLE_SET, jobs[jobPart[0]], Z_OVERRUN, jobPart[0]);
    factor = overMedian * exp(overSd * normalFrom(w0));
  }
  double out = discount(t) * factor;
  sums[OWN_H] += own * out; sums[PAID_H] += paid * out; sums[TRIPS] += trips * out;
  pay(heading, t, factor * (pieces + own * ownRate + paid * paidRate + trips * perTrip));
  if (comes != AT_FITTING_OUT) {
    int waits = (t < downUntil && comes == RUNNING) || comes == STOPPED || comes == RESTED;
    goDown(t, waits ? wait : 0, shop + (own + paid) / hoursPerDay, comes == STOPPED);
    openLow |= low; openHigh |= high;
  }
  putRight(t);
  for (int i = 0; i < jobCount; i++) intrude(t, jobPart[i], rep.intrusion[repairOf(i)]);
}

static int countFailure(int m) {
  for (int d = modes.dangerFrom[m]; d < modes.dangerFrom[m + 1]; d++) sums[DANGERS] += dangerChance[modes.dangerKind[d]];
  if (modes.hidden[m]) return 0;
  draw(m, life[m], Z_FAILURE, patches[m]);
  return uni(w0) < modes.stops[m];
}
static int hits(int m, int l) {
  draw(m, life[m], Z_LINK, (l - modes.linkFrom[m]) * 64 + (patches[m] & 63));
  double u = uni(w0), chance = modes.linkChance[l];
  int guard = modes.linkGuard[l], asleep = -1;
  if (guard < 0) return u < chance;
  for (int g = parts.modeFrom[guard]; g < parts.modeFrom[guard + 1] && asleep < 0; g++) if (state[g] == FAILED_UNNOTICED) asleep = g;
  if (asleep < 0) return u < chance * (1 - modes.linkGuardEffect[l]);
  if (u < chance || !modes.hidden[m]) addToJob(guard, asleep);
  return u < chance;
}
static int spread(int m, double t) {
  int stops = 0;
  for (int l = modes.linkFrom[m]; l < modes.linkFrom[m + 1]; l++) {
    int part = modes.linkPart[l], mode = modes.linkMode[l];
    if (jobAt[part] >= 0 || !hits(m, l)) continue;
    if (modes.linkStartsDefect[l] && mode >= 0 && modes.delayKind[mode] != 0) {
      if (state[mode] == SOUND) { stamp[mode]++; becomeDefective(mode, t); jobHits++; }
      continue;
    }
    jobHits++;
    addToJob(part, mode);
    if (mode < 0) continue;
    if (countFailure(mode)) stops = 1;
    if (spread(mode, t)) stops = 1;
  }
  return stops;
}
static void failVisibly(int m, double t, int heading) {
  emptyJob();
  state[m] = FAILED;
  addToJob(modes.part[m], m);
  int stops = countFailure(m);
  if (spread(m, t)) stops = 1;
  doJob(t, stops ? STOPPED : RUNNING, heading);
}
static void fail(int m, double t, i32 code) {
  if (modes.hidden[m]) {
    emptyJob();
    state[m] = FAILED_UNNOTICED;
    countFailure(m);
    wearOthers(m, t, 1);
    addToJob(modes.part[m], m);
    jobHits = 0;
    int stops = spread(m, t);
    if (jobHits > 0) doJob(t, stops ? STOPPED : RUNNING, FAILURES);
    else scheduleFinding(m, t, Z_CHECK_FAILED);
  } else if ((code >> 24) == YEARS && t >= downUntil && use.laidUp[monthAt(t)]) {
    draw(m, life[m], Z_FAILURE, patches[m]);
    int kind = uni(w1) < fittingOutShare ? FITTING_OUT : SHOWS, k = monthAt(t);
    state[m] = FAILED;
    while (k <= months - 1 && use.laidUp[k]) k++;
    schedule(CODE(kind, m, YEARS), stamp[m], k > months - 1 ? INFINITY : use.time[k], t);
  } else failVisibly(m, t, FAILURES);
}
static void planned(int m, double t, int comes) { emptyJob(); addToJob(modes.part[m], m); doJob(t, comes, PLANNED); }
static void renew(int m, double t) {
  if (state[m] == FAILED) return;
  if (parts.serviceRenews[modes.part[m]]) scale[m] = scaleNew[m];
  beginLife(m, t, 0);
}
static void serve(int p, double t) {
  draw(parts.modeFrom[p], services[p]++, Z_SERVICE, 0);
  if (uni(w0) < parts.serviceDiligence[p]) {
    double work = parts.serviceWork[p], money = parts.servicePrice[p] + work * (parts.serviceByOwner[p] ? ownRate : paidRate);
    double worth = discount(t);
    sums[UPKEEP] += money * worth;
    years[(int)floor(t)] += money;
    sums[parts.serviceByOwner[p] ? OWN_H : PAID_H] += work * worth;
    if (parts.serviceRenews[p]) for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) renew(m, t);
    else for (int c = parts.clearsFrom[p]; c < parts.clearsFrom[p + 1]; c++) renew(parts.clearsMode[c], t);
  }
  restartService(p, t);
}
static void found(int m, double t, int mayRest) {
  double wait = waitFor(modes.part[m], modes.repair[m], t) / DPY;
  if (!mayRest || timeAt(modes.delayClock[m], failsAt[m]) - t > wait) {
    schedule(CODE(PIECE_COMES, m, YEARS), stamp[m], t + wait, t);
    return;
  }
  draw(m, life[m], Z_REST, patches[m]);
  if (uni(w0) < restChance) planned(m, t, RESTED);
}

/* Start: one record for each entry of the tables, filled as it is first drawn. */
typedef struct { float theta, age, since, ageHours, state, quiet, pad[2]; } Record;
static Record *records;
static double sootRate(int m) { return 1 + lowLoad * (modes.soot[m] - 1); }
static void setScale(int m, double theta) { scaleNew[m] = scale[m] = (theta * modes.onsetScale[m]) / sootRate(m); }
static void fillRecord(int m) {
  long e = entry[m];
  Record *r = &records[e];
  int clock = modes.clock[m];
  *r = (Record){post.theta[e], post.age[e], post.since[e], post.ageHours[e], post.state[e], 0, {0, 0}};
  setScale(m, r->theta);
  double age = r->age / sootRate(m), end = clock == YEARS ? horizon : clock == HOURS ? use.hours[endMonth] : use.starts[endMonth];
  r->quiet = exp(pow(age / scale[m], modes.shape[m]) - pow((age + end) / scale[m], modes.shape[m]));
}
static void start(void) {
  draw(WHOLE_SET, 0, Z_KAPPA, 0);
  double u = uni(w0), sum = 0;
  int node = 0;
  for (; node < N - 1; node++) { sum += post.kappaWeight[node]; if (u < sum) break; }
  for (int p = 0; p < P; p++) {
    u32 index = 0;
    for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) {
      draw(m, 0, Z_START, 0);
      if (m == parts.modeFrom[p] || !post.joint[p]) index = w0 >> 22;
      entry[m] = (node * M + m) * 1024 + index;
      onsetWord[m] = w1;
    }
  }
  for (int m = 0; m < M; m++) quiet[m] = records[entry[m]].quiet;
  for (int m = 0; m < M; m++) if (records[entry[m]].theta == 0) { fillRecord(m); quiet[m] = records[entry[m]].quiet; }
  for (int p = 0; p < P; p++) {
    for (int m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) {
      Record *r = &records[entry[m]];
      int clock = modes.clock[m];
      setScale(m, r->theta);
      wear[m] = 1; life[m] = 0; stamp[m]++;
      state[m] = (u8)r->state;
      birth[m] = position(clock, 0) - r->age / sootRate(m);
      birthHours[m] = position(HOURS, 0) - r->ageHours;
      birthTime[m] = clock == YEARS ? birth[m] : 0;
      onsetAt[m] = INFINITY;
      if (state[m] == DEFECTIVE) { fallDue(m, 0, delayLeft(m, onsetWord[m], r->since)); scheduleFinding(m, 0, Z_CHECK); }
      else if (state[m] != SOUND) scheduleFinding(m, 0, Z_CHECK_FAILED);
      else {
        double v = uni(onsetWord[m]);
        if (!isWorn[m] && v < quiet[m]) continue;
        double age = position(clock, 0) - birth[m], end = pow(age / scale[m], modes.shape[m]) - log(v);
        onsetAt[m] = birth[m] + scale[m] * pow(end, 1 / modes.shape[m]);
        schedule(CODE(ONSET, m, clock), stamp[m], onsetAt[m], 0);
      }
    }
    if (!parts.serviced[p]) continue;
    u32 index = entry[parts.modeFrom[p]] % 1024;
    if (!post.joint[p]) { draw(parts.modeFrom[p], 0, Z_SERVICE_START, 0); index = w0 >> 22; }
    long e = ((long)node * P + p) * 1024 + index;
    serviceStamp[p]++;
    servicedTime[p] = 0 - post.serviceYears[e];
    servicedHours[p] = position(HOURS, 0) - post.serviceHours[e];
    scheduleService(p, 0);
  }
  for (int m = 0; m < M; m++) if (state[m] == FAILED_UNNOTICED) wearOthers(m, 0, 1);
}
static double annuity(double to) { return interest == 0 ? to : -expm1(-interest * to) / interest; }

static double runHistory(u32 n) {
  number = n;
  qSize = 0;
  lostHours = lostStarts = downPrice = downDays = 0;
  downFrom = downUntil = -1;
  memset(sums, 0, sizeof sums);
  memset(years, 0, sizeof years);
  memset(stamp, 0, M * sizeof *stamp); memset(patches, 0, M * sizeof *patches);
  memset(jobs, 0, P * sizeof *jobs); memset(services, 0, P * sizeof *services); memset(serviceStamp, 0, P * sizeof *serviceStamp);
  sums[FUEL] = totalAt(use.discountedHours, horizon) * fuelPrice;
  sums[UPKEEP] = upkeepPerYear * annuity(horizon);
  start();
  for (int p = 0; p < P; p++) {
    int m = parts.broken[p];
    if (m < 0 || jobs[p] > 0) continue;
    emptyJob();
    state[m] = FAILED; stamp[m]++;
    addToJob(p, m);
    draw(m, 0, Z_FAILURE, 0);
    doJob(0, uni(w0) < modes.stops[m] ? STOPPED : RUNNING, FAILURES);
  }
  while (qSize > 0) {
    double t = qTime[0], due = qDue[qSlot[0]];
    i32 code = qCode[qSlot[0]], st = qStamp[qSlot[0]];
    removeFirst();
    int kind = (code >> 16) & 255, i = code & 65535, clock = code >> 24;
    if (st != (kind == SERVICE ? serviceStamp[i] : kind == INTRUSION ? 0 : stamp[i])) continue;
    if (clock != YEARS) {
      double now = timeAt(clock, due);
      if (now > t * (1 + 1e-12)) {
        if (kind == SERVICE) scheduleService(i, t);
        else if (now < horizon) push(now, code, st, due);
        continue;
      }
    }
    switch (kind) {
      case ONSET: if (modes.delayKind[i] == 0) fail(i, t, code); else becomeDefective(i, t); break;
      case FAILS: fail(i, t, code); break;
      case SHOWS: failVisibly(i, t, FAILURES); break;
      case FOUND_DEFECTIVE: if (state[i] == DEFECTIVE) found(i, t, 1); break;
      case FOUND_FAILED: if (state[i] == FAILED_UNNOTICED) found(i, t, 0); break;
      case FITTING_OUT: planned(i, t, AT_FITTING_OUT); break;
      case PIECE_COMES: planned(i, t, WHEN_PLANNED); break;
      case SERVICE: serve(i, t); break;
      case INTRUSION: if (state[i] == DEFECTIVE || state[i] == SOUND) failVisibly(i, t, INTRUDED); break;
    }
  }
  double worth = fmax(reLeast, reNew * reShare * exp(-reFall * (horizon + setAge)));
  sums[RESALE] -= (downUntil > horizon ? worth * reDead : worth) * discount(horizon);
  double cost = 0;
  for (int k = FAILURES; k <= RESALE; k++) cost += sums[k];
  return cost;
}

static void load(const char *path) {
  FILE *f = fopen(path, "rb");
  if (!f) { perror(path); exit(1); }
  fseek(f, 0, SEEK_END);
  fileSize = ftell(f);
  rewind(f);
  file = malloc(fileSize);
  if (fread(file, 1, fileSize, f) != (size_t)fileSize) exit(1);
  fclose(f);
  double *s = col("scalars");
  double *into[] = {&horizon, &interest, &lowLoad, &fuelPrice, &upkeepPerYear, &hoursPerDay, &ownRate, &paidRate, &perTrip,
    &overMedian, &overSd, &ownerAccess, &testsCatch, &intrShape, &intrScale, &fittingOutShare, &restChance, &setAge, &reNew,
    &reShare, &reFall, &reLeast, &reDead, &hoursPerYear};
  for (int i = 0; i < 24; i++) *into[i] = s[i];
  endMonth = s[24]; hourPerUnit = s[25]; startPerUnit = s[26]; M = s[27]; P = s[28]; N = s[29]; curveN = s[32]; months = s[33];
#define LM(type, name) modes.name = col("modes." #name);
#define LP(type, name) parts.name = col("parts." #name);
#define LU(type, name) use.name = col("use." #name);
#define LO(type, name) post.name = col("post." #name);
#define LR(type, name) rep.name = col("rep." #name);
  MODE_COLS(LM) PART_COLS(LP) USE_COLS(LU) POST_COLS(LO) REP_COLS(LR)
  price = (Amounts){col("rep.price.kind"), col("rep.price.level"), col("rep.price.spread")};
  workshop = (Amounts){col("rep.workshop.kind"), col("rep.workshop.level"), col("rep.workshop.spread")};
  supplyDays = (Amounts){col("rep.supplyDays.kind"), col("rep.supplyDays.level"), col("rep.supplyDays.spread")};
  normalT = col("normal"); detection = col("detection"); accessHours = col("accessHours"); isWorn = col("isWorn");
  dangerChance = col("dangerChance"); byMonth = col("byMonth"); curveDays = col("curveDays"); curveCost = col("curveCost");
  records = calloc((size_t)N * M * 1024, sizeof *records);
  for (int i = 0; i < ROOM; i++) qSlot[i] = i;
  for (int p = 0; p < P; p++) jobAt[p] = -1;
  askedAt = -1;
}

int main(int argc, char **argv) {
  if (argc < 5) return 2;
  load(argv[1]);
  seed = (u32)atol(argv[2]);
  u32 from = (u32)atol(argv[3]);
  long count = atol(argv[4]);
  double best = INFINITY, sum = 0, squares = 0;
  for (int run = 0; run < (count > 200000 ? 1 : 3); run++) {
    clock_t began = clock();
    sum = squares = 0;
    for (long i = 0; i < count; i++) {
      double cost = runHistory(from + (u32)i);
      sum += cost;
      squares += cost * cost;
    }
    best = fmin(best, (double)(clock() - began) / CLOCKS_PER_SEC);
  }
  double mean = sum / count;
  printf("%.9g %.6g %.6g\n", mean, sqrt((squares / count - mean * mean) / count), best);
  return 0;
}
