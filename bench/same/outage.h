/* As kernel/outage.ts: outages as a union of days, their price, and the clocks that stand still meanwhile. */
#ifndef OUTAGE_H
#define OUTAGE_H

#include "history.h"

static void loseUse(double from, double to) {
  if (to <= from) return;
  h.pauses++;
  h.lostHours += totalAt(use.hours, to) - totalAt(use.hours, from);
  h.lostStarts += totalAt(use.starts, to) - totalAt(use.starts, from);
  const double ends = smaller(to, model.horizonYears);
  if (from < ends) {
    const double saved = totalAt(use.discountedHours, ends) - totalAt(use.discountedHours, from);
    h.sums[FUEL] -= saved * h.fuelPrice;
  }
}

/* Straight between the points of the curve; before the first in proportion, after the last at its slope. */
static double priceOfDays(double days) {
  if (days <= 0) return 0;
  double daysBefore = 0;
  double costBefore = 0;
  for (int i = 0; i < model.curvePoints; i++) {
    const double daysHere = model.curveDays[i];
    const double costHere = model.curveCost[i];
    if (days <= daysHere) return costBefore + ((costHere - costBefore) * (days - daysBefore)) / (daysHere - daysBefore);
    daysBefore = daysHere;
    costBefore = costHere;
  }
  return costBefore + model.lastSlope * (days - daysBefore);
}

/* The price of the outage as it stands now replaces what was booked for it before. */
static void bookPower(void) {
  const double end = smaller(h.downUntil, model.horizonYears);
  const double days = totalAt(use.neededDays, end) - totalAt(use.neededDays, h.downFrom);
  h.sums[DAYS_WITHOUT] += days - h.downDays;
  h.downDays = days;
  const int month = use.monthOfYear[monthAt(h.downFrom)];
  const double cost = priceOfDays(days) * model.powerByMonth[month] * discount((h.downFrom + end) / 2);
  h.sums[POWER] += cost - h.downPrice;
  h.downPrice = cost;
}

static void lastsLonger(void) {
  h.downIsSameDay = false;
  h.sums[SAME_DAY_STOPS] -= 1;
  h.sums[STOPS] += 1;
}

/* A stop counts once; as a same-day stop while its outage is under a day. */
static void countStop(bool begins) {
  const bool isShort = h.downUntil - h.downFrom < 1 / DAYS_PER_YEAR;
  if (begins) {
    h.downIsStop = true;
    h.downIsSameDay = isShort;
    h.sums[isShort ? SAME_DAY_STOPS : STOPS] += 1;
  } else if (h.downIsStop && h.downIsSameDay && !isShort) {
    lastsLonger();
  }
}

/* The set is given up: a stop under way will not be over the same day. */
static void staysStopped(double t) {
  if (h.downIsStop && h.downIsSameDay && t <= h.downUntil) lastsLonger();
}

/* At its very end the set is still down: a piece that was waited for is fitted before it is up again. */
static bool isDown(double t) {
  return t < h.downUntil || (t == h.downUntil && h.downUntil > h.downFrom);
}

/* Puts the set out from t: a wait, then work; an outage under way is joined. */
static void goDown(double t, double waitDays, double workDays, bool isStop) {
  const bool joined = isDown(t);
  const double ready = t + waitDays / DAYS_PER_YEAR;
  const double end = (joined ? larger(h.downUntil, ready) : ready) + workDays / DAYS_PER_YEAR;
  if (!joined) {
    h.downFrom = t;
    h.downPrice = 0;
    h.downDays = 0;
    h.downIsStop = false;
  }
  loseUse(joined ? h.downUntil : t, end);
  h.downUntil = end;
  bookPower();
  countStop(isStop && !joined);
}

#endif
