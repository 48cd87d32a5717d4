/* As kernel/replacement.ts: another set, or none. */
#ifndef REPLACEMENT_H
#define REPLACEMENT_H

#include "outage.h"
#include "start.h"

enum { TOO_MANY_EVENTS = 1, TOO_MANY_SETS = 2 };

/* 0 while all is well. */
static int trouble;

static void stopPlaying(int why) {
  if (trouble == 0) trouble = why;
  clearQueue();
}

static int poisson(double mean, double u) {
  double chance = exp(-mean);
  double sum = chance;
  int count = 0;
  while (u > sum && chance > 0) {
    count++;
    chance *= mean / count;
    sum += chance;
  }
  return count;
}

/* Faults built in: a Poisson number, each in a part drawn evenly. */
static void plantInfantFaults(double t, double mean) {
  if (mean == 0) return;
  draw(h.set, WHOLE_SET, 0, FOR_INFANTS, 0);
  const int count = poisson(mean, uniformFrom(word0));
  for (int i = 0; i < count; i++) {
    draw(h.set, WHOLE_SET, 0, FOR_INFANT, i);
    const int mode = visibleModeOf((int)(uniformFrom(word0) * parts.count), word1);
    draw(h.set, WHOLE_SET, 0, FOR_INFANT_ONSET, i);
    if (mode >= 0) plantFault(t, mode, word0);
  }
}

/* Discounted running hours from t, or from the end of the outage under way, to the horizon. */
static double hoursAhead(double t) {
  const double from = larger(t, smaller(h.downUntil, model.horizonYears));
  return totalAt(use.discountedHours, model.horizonYears) - totalAt(use.discountedHours, from);
}

/* Running hours that were booked at the old set's fuel go on at the new one's. */
static void changeFuel(double t, double fuelPrice) {
  const double old = h.fuelPrice;
  h.fuelPrice = fuelPrice;
  h.sums[FUEL] += hoursAhead(t) * (fuelPrice - old);
}

/* Fits candidate c. Planned: the set comes while the old one still runs. */
static void replaceSet(double t, int c, bool planned, bool isStop) {
  if (h.set + 1 >= MOST_SETS) {
    stopPlaying(TOO_MANY_SETS);
    return;
  }
  h.set++;
  h.candidate = c;
  if (h.sums[REPLACED_AT] < 0) h.sums[REPLACED_AT] = t;
  draw(h.set, WHOLE_SET, 0, FOR_REPLACEMENT, 0);
  const double price = drawAmount(&candidates.price, c, word0);
  const double install = drawAmount(&candidates.install, c, word1);
  pay(REPLACEMENT, t, price + install - model.salvageAtReplacement);
  draw(h.set, WHOLE_SET, 0, FOR_REPLACEMENT_DAYS, 0);
  const double lead = drawAmount(&candidates.leadDays, c, word0);
  const double days = drawAmount(&candidates.installDays, c, word1);

  changeFuel(t, candidates.fuelPerHour[c]);
  draw(h.set, WHOLE_SET, 0, FOR_NEW_SET, 0);
  h.kappa = exp(h.boatLog + model.setLogSd * normalFrom(word0));
  h.partPriceFactor = candidates.partPriceFactor[c];
  h.labourFactor = candidates.labourFactor[c];
  h.lowLoadShare = candidates.lowLoadShare[c];
  h.guaranteeUntil = t + candidates.guaranteeYears[c];
  h.setBorn = t - candidates.usedYears[c];
  goDown(t, (planned ? 0 : lead) + days, 0, isStop);
  memset(h.jobs, 0, (size_t)parts.count * sizeof h.jobs[0]);
  memset(h.supplies, 0, (size_t)parts.count * sizeof h.supplies[0]);
  memset(h.services, 0, (size_t)parts.count * sizeof h.services[0]);
  startCandidate(t);
  plantInfantFaults(t, candidates.infantFaults[c]);
}

/* What the set in place would fetch. */
static double resaleValue(double t, bool standsFailed) {
  const int row = h.candidate + 1;
  if (resale.share[row] < 0) return 0;
  const double age = larger(0, t - h.setBorn);
  const double worth = resale.newPrice[row] * resale.share[row] * exp(-resale.fallPerYear[row] * age);
  const double running = larger(resale.least[row], worth);
  return standsFailed ? running * resale.deadShare[row] : running;
}

/* An outage under way ends as the set is given up. */
static void endOutage(double t) {
  if (t >= h.downUntil) return;
  h.downUntil = t;
  bookPower();
}

/* Lives on without a set from t: sells it, pays what stands in for it, and does without the rest. */
static void giveUp(double t, bool standsFailed) {
  const double horizon = model.horizonYears;
  draw(h.set, WHOLE_SET, 0, FOR_GIVE_UP, 0);
  pay(GIVING_UP, t, drawAmount(&model.giveUpCost, 0, word0));
  h.sums[RESALE] -= resaleValue(t, standsFailed) * discount(t);
  staysStopped(t);
  h.gaveUpAt = t;
  clearQueue();
  const double annuity = discountedYears(model.interest, t, horizon);
  h.sums[GIVING_UP] += model.giveUpPerYear * annuity;
  for (int y = (int)t; y < horizon; y++) {
    h.years[y] += model.giveUpPerYear * (smaller(y + 1, horizon) - larger(y, t));
  }
  double byMonth = 0;
  for (int month = 0; month < 12; month++) byMonth += model.powerByMonth[month];
  h.sums[DAYS_WITHOUT] += model.giveUpDaysPerYear * (horizon - t);
  h.sums[POWER] += model.giveUpDaysPerYear * model.lastSlope * (byMonth / 12) * annuity;
  h.sums[FUEL] -= hoursAhead(t) * h.fuelPrice;
  endOutage(t);
  h.sums[UPKEEP] -= model.upkeepPerYear * annuity;
}

#endif
