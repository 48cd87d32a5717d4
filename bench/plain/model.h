/* The model in structures: a part has modes, a mode has checks, links and wear, each with its own numbers. */
#ifndef PLAIN_MODEL_H
#define PLAIN_MODEL_H

#include "chance.h"

enum { HOURS, YEARS, STARTS };
enum { PATCHED, CLEARED, RECONDITIONED, RENEWED };
enum { FIXED, LOGNORMAL, EXPONENTIAL };
enum { NO_DELAY, LOGNORMAL_DELAY, WEIBULL_DELAY };
enum { LEAVE, MEND, REPLACE, GIVE_UP };
enum { NO_LIMIT = -2, GIVE_UP_ABOVE = -1 };
/* Modes and parts are numbered through; access groups are bits. */
enum { MOST_MODES = 2048, MOST_PARTS = 512, MOST_CHECKS = 8 };

typedef struct {
  int kind;
  double level, spread;
} Amount;

typedef struct {
  double chance, priceFactor, quality;
  Amount days;
} Supply;

typedef struct {
  Amount price, workshop;
  double hours, trips, wrongPart, intrusion, lastLikelier;
  bool byOwner;
  int supplies;
  Supply *supply;
} Repair;

typedef struct {
  double detection, detectionFailed, diligence, every;
} Check;

typedef struct {
  int part, mode, guard;
  double chance, guardEffect;
  bool startsDefect;
} Link;

typedef struct {
  int mode;
  double factor;
} Wear;

typedef struct {
  int part, clock, delayKind, delayClock, outcome;
  double shape, onsetScale, logSd, delayLevel, delaySpread, stops, soot, agesLess, delayFactor;
  bool hidden;
  const Repair *repair;
  int checks, links, wears;
  Check *check;
  Link *link;
  Wear *wear;
} ModeKind;

typedef struct {
  int firstMode, modes, broken, clears, nears;
  const Repair *repair;
  u64 access;
  bool serviced, serviceRenews, serviceByOwner;
  double serviceHours, serviceYears, serviceDiligence, servicePrice, serviceWork;
  /* Of the piece in place at the start. */
  double quality;
  const i32 *clear, *near;
} PartKind;

typedef struct {
  double newPrice, share, fallPerYear, least, deadShare;
} Resale;

/* What may be true of a set now: 1,024 equally likely states of each mode, at each node of kappa. */
typedef struct {
  int nodes;
  const double *kappaLog, *kappaWeight;
  const u8 *joint, *state;
  const float *theta, *age, *since, *ageHours, *serviceYears, *serviceHours;
} Tables;

typedef struct {
  Amount price, install, leadDays, installDays;
  double fuelPerHour, partPriceFactor, labourFactor, lowLoadShare, guaranteeYears, usedYears, infantFaults;
  double hourLifeFactor;
  bool isUsed;
  Tables tables;
} Candidate;

typedef struct {
  int part, mode, outcome;
  double quality, agesLess;
} Item;

typedef struct {
  int now, replaceWith, laterWith, above, items;
  double laterYear, knots[3], overrunMedian, overrunLogSd, intrusionChance;
  bool isQuoted, isPriced, areDaysGiven;
  Amount price, besides, wait, days;
  Item *item;
} Alternative;

static struct {
  double horizonYears, interest, lowLoadShare, fuelPerHour, upkeepPerYear, boatLogSd, setLogSd, hoursPerDay, ownPerHour;
  double paidPerHour, perTrip, overrunMedian, overrunLogSd, ownerAccessFactor, testsCatch, intrusionShape;
  double intrusionScaleHours, fittingOutShare, restChance, setAgeYears, salvage, giveUpPerYear, giveUpDaysPerYear;
  Amount giveUpCost;
  const double *accessHours;
  int accessGroups, modes, parts, repairs, candidates, alternatives, curvePoints;
  const double *curveDays, *curveCost, *powerByMonth;
  ModeKind mode[MOST_MODES];
  PartKind part[MOST_PARTS];
  Repair *repair;
  Resale resaleOfPresent;
  Resale *resaleOfCandidate;
  Candidate *candidate;
  Alternative *alternative;
  Tables present;
} model;

static double larger(double a, double b) {
  return a > b ? a : b;
}

static double smaller(double a, double b) {
  return a < b ? a : b;
}

static double drawAmount(const Amount *amount) {
  if (amount->kind == FIXED) return amount->level;
  if (amount->kind == EXPONENTIAL) return amount->level * exponential();
  return lognormal(amount->level, amount->spread);
}

static double meanAmount(const Amount *amount) {
  return amount->kind == LOGNORMAL ? amount->level * exp(amount->spread * amount->spread / 2) : amount->level;
}

/* Continuously discounted length of the years between. */
static double discountedYears(double from, double to) {
  if (to <= from) return 0;
  if (model.interest == 0) return to - from;
  return (exp(-model.interest * from) - exp(-model.interest * to)) / model.interest;
}

static double discount(double t) {
  return exp(-model.interest * t);
}

#endif
