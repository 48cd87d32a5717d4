/* As kernel/model.ts, modes.ts, parts.ts, repairs.ts, alternatives.ts and amounts.ts: the model in columns. */
#ifndef MODEL_H
#define MODEL_H

#include <math.h>

#include "draws.h"

/* As codes.ts. */
enum { HOURS, YEARS, STARTS };
enum { PATCHED, CLEARED, RECONDITIONED, RENEWED };
enum { FIXED, LOGNORMAL, EXPONENTIAL };
enum { NO_DELAY, LOGNORMAL_DELAY, WEIBULL_DELAY };
enum { LEAVE, MEND, REPLACE, GIVE_UP };
enum { NO_LIMIT = -2, GIVE_UP_ABOVE = -1 };
enum { SLICE_SHIFT = 24 };

/* Room for a model; what is larger is refused when it is read. */
enum { MOST_MODES = 2048, MOST_PARTS = 512, MOST_YEARS = 101, MOST_CANDIDATES = 64 };

static double larger(double a, double b) {
  return a > b ? a : b;
}

static double smaller(double a, double b) {
  return a < b ? a : b;
}

/* Many amounts in columns. */
typedef struct {
  const u8 *kind;
  const double *level, *spread;
} Amounts;

static const double *normalTable;

/* Standard normal from 32 random bits: the mean of one of 4,096 equally likely slices. */
static double normalFrom(u32 word) {
  return normalTable[word >> 20];
}

static double drawAmount(const Amounts *amounts, int i, u32 word) {
  const double level = amounts->level[i];
  if (amounts->kind[i] == FIXED) return level;
  if (amounts->kind[i] == EXPONENTIAL) return -level * log(uniformFrom(word));
  return level * exp(amounts->spread[i] * normalFrom(word));
}

static double meanAmount(const Amounts *amounts, int i) {
  const double spread = amounts->spread[i];
  return spread == 0 ? amounts->level[i] : amounts->level[i] * exp(0.5 * spread * spread);
}

#define MODE_COLUMNS(X) \
  X(i32, part) X(u8, clock) X(double, shape) X(i32, leastOnsetRow) X(double, leastOnset) X(double, onsetScale) \
  X(double, logSd) X(u8, delayKind) X(u8, delayClock) X(double, delayLevel) X(double, delaySpread) X(u8, hidden) \
  X(double, stops) X(double, derates) X(double, soot) X(u8, outcome) X(double, agesLess) X(double, delayFactor) \
  X(i32, repair) \
  X(i32, checkFrom) X(i32, checkLooks) X(i32, checkLooksFailed) X(double, checkEvery) X(i32, linkFrom) \
  X(i32, linkPart) X(i32, linkMode) X(double, linkChance) X(u8, linkStartsDefect) X(i32, linkGuard) \
  X(double, linkGuardEffect) X(i32, wearFrom) X(i32, wearMode) X(double, wearFactor) X(i32, dangerFrom) \
  X(i32, dangerKind) X(u8, isWorn) X(u8, isQuoted) X(double, costAtRisk)
#define PART_COLUMNS(X) \
  X(i32, modeFrom) X(i32, repair) X(i32, accessLow) X(i32, accessHigh) X(u8, serviced) X(double, serviceHours) \
  X(double, serviceYears) X(double, serviceDiligence) X(u8, serviceRenews) X(double, servicePrice) \
  X(double, serviceWork) X(u8, serviceByOwner) X(i32, clearsFrom) X(i32, clearsMode) X(i32, broken) \
  X(i32, nearFrom) X(i32, nearPart) X(double, presentQuality)
#define REPAIR_COLUMNS(X) \
  X(double, hours) X(u8, byOwner) X(double, trips) X(double, wrongPart) X(double, intrusion) \
  X(double, lastLikelier) X(i32, supplyFrom) X(double, supplyChance) X(double, supplyPrice) X(double, supplyQuality)
#define CANDIDATE_COLUMNS(X) \
  X(double, fuelPerHour) X(double, partPriceFactor) X(double, labourFactor) X(double, lowLoadShare) \
  X(double, guaranteeYears) X(double, usedYears) X(double, infantFaults) X(double, hourLifeFactor)
#define RESALE_COLUMNS(X) \
  X(double, newPrice) X(double, share) X(double, fallPerYear) X(double, least) X(double, deadShare)
#define ALTERNATIVE_COLUMNS(X) \
  X(u8, now) X(i32, replaceWith) X(i32, laterWith) X(double, laterYear) X(i32, above) X(double, knots) \
  X(i32, itemFrom) X(i32, itemPart) X(i32, itemMode) X(u8, itemOutcome) X(double, itemQuality) \
  X(double, itemAgesLess) X(u8, isQuoted) X(u8, isPriced) X(u8, areDaysGiven) X(double, overrunMedian) \
  X(double, overrunLogSd) X(double, intrusionChance)

#define FIELD(type, name) const type *name;
static struct {
  int count;
  MODE_COLUMNS(FIELD)
} modes;
static struct {
  int count;
  PART_COLUMNS(FIELD)
} parts;
static struct {
  REPAIR_COLUMNS(FIELD)
  Amounts price, workshop, supplyDays;
} repairs;
static struct {
  int count;
  CANDIDATE_COLUMNS(FIELD)
  Amounts price, install, leadDays, installDays;
} candidates;
/* Of the present set at 0, of candidate c at c + 1. A share below nought: nothing is got for it. */
static struct {
  RESALE_COLUMNS(FIELD)
} resale;
static struct {
  int count;
  ALTERNATIVE_COLUMNS(FIELD)
  Amounts price, besides, wait, days;
} alternatives;

/* Single numbers, each with the name of its section. */
#define SINGLE_NUMBERS(X) \
  X(horizonYears, "horizonYears") X(interest, "interest") X(lowLoadShare, "lowLoadShare") \
  X(fuelPerHour, "fuelPerHour") X(upkeepPerYear, "upkeepPerYear") X(boatLogSd, "boatLogSd") \
  X(setLogSd, "setLogSd") X(hoursPerDay, "labour.hoursPerDay") X(ownPerHour, "labour.ownPerHour") \
  X(paidPerHour, "labour.paidPerHour") X(perTrip, "labour.perTrip") X(overrunMedian, "labour.overrunMedian") \
  X(overrunLogSd, "labour.overrunLogSd") X(ownerAccessFactor, "labour.ownerAccessFactor") \
  X(testsCatch, "intrusion.testsCatch") X(intrusionShape, "intrusion.shape") \
  X(intrusionScaleHours, "intrusion.scaleHours") X(fittingOutShare, "care.fittingOutShare") \
  X(restChance, "care.restChance") X(setAgeYears, "setAgeYears") X(salvageAtReplacement, "salvageAtReplacement") \
  X(giveUpPerYear, "giveUp.perYear") X(giveUpDaysPerYear, "giveUp.daysPerYear")
#define SINGLE(name, section) double name;
static struct {
  SINGLE_NUMBERS(SINGLE)
  const double *accessHours, *looksPerLog, *dangerChance;
  int dangerCount;
  /* What a day without power costs: a curve, and the price of one more day at its long end. */
  const double *curveDays, *curveCost, *powerByMonth;
  int curvePoints;
  double lastSlope;
  Amounts giveUpCost;
} model;

static Amounts amountsOf(const char *name) {
  return (Amounts){columnOf(name, "kind"), columnOf(name, "level"), columnOf(name, "spread")};
}

#define READ(group, prefix, name) group.name = column(prefix "." #name);
#define READ_MODE(type, name) READ(modes, "modes", name)
#define READ_PART(type, name) READ(parts, "parts", name)
#define READ_REPAIR(type, name) READ(repairs, "repairs", name)
#define READ_CANDIDATE(type, name) READ(candidates, "candidates", name)
#define READ_RESALE(type, name) READ(resale, "resale", name)
#define READ_ALTERNATIVE(type, name) READ(alternatives, "alternatives", name)
#define READ_SINGLE(name, section) model.name = number(section);

static void readPower(void) {
  model.curveDays = column("power.days");
  model.curveCost = column("power.cost");
  model.curvePoints = countOf("power.days");
  model.powerByMonth = column("power.byMonth");
  const int last = model.curvePoints - 1;
  const double days = model.curveDays[last] - (last > 0 ? model.curveDays[last - 1] : 0);
  const double cost = model.curveCost[last] - (last > 0 ? model.curveCost[last - 1] : 0);
  model.lastSlope = days > 0 ? cost / days : 0;
}

static void readColumns(void) {
  MODE_COLUMNS(READ_MODE)
  PART_COLUMNS(READ_PART)
  REPAIR_COLUMNS(READ_REPAIR)
  CANDIDATE_COLUMNS(READ_CANDIDATE)
  RESALE_COLUMNS(READ_RESALE)
  ALTERNATIVE_COLUMNS(READ_ALTERNATIVE)
  modes.count = countOf("modes.part");
  parts.count = countOf("parts.repair");
  candidates.count = countOf("candidates.hourLifeFactor");
  alternatives.count = countOf("alternatives.now");
}

static void readAmounts(void) {
  repairs.price = amountsOf("repairs.price");
  repairs.workshop = amountsOf("repairs.workshop");
  repairs.supplyDays = amountsOf("repairs.supplyDays");
  candidates.price = amountsOf("candidates.price");
  candidates.install = amountsOf("candidates.install");
  candidates.leadDays = amountsOf("candidates.leadDays");
  candidates.installDays = amountsOf("candidates.installDays");
  alternatives.price = amountsOf("alternatives.price");
  alternatives.besides = amountsOf("alternatives.besides");
  alternatives.wait = amountsOf("alternatives.wait");
  alternatives.days = amountsOf("alternatives.days");
  model.giveUpCost = amountsOf("giveUp.cost");
}

static void readModel(void) {
  readColumns();
  readAmounts();
  readPower();
  SINGLE_NUMBERS(READ_SINGLE)
  normalTable = column("normal");
  model.accessHours = column("accessHours");
  model.looksPerLog = column("looksPerLog");
  model.dangerChance = column("dangerChance");
  model.dangerCount = countOf("dangerChance");
  if (modes.count > MOST_MODES || parts.count > MOST_PARTS || candidates.count > MOST_CANDIDATES) {
    fprintf(stderr, "the model is too large for this program\n");
    exit(1);
  }
}

#endif
