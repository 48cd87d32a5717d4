/* As kernel/use.ts: use of the boat ahead, running totals at the ends of months, straight within a month. */
#ifndef USE_H
#define USE_H

#include "model.h"

#define DAYS_PER_YEAR 365.25

#define USE_COLUMNS(X) \
  X(double, time) X(double, hours) X(double, starts) X(double, neededDays) X(double, discountedHours) \
  X(u8, monthOfYear) X(u8, laidUp) X(i32, hourMonth) X(i32, startMonth)
static struct {
  USE_COLUMNS(FIELD)
  double hourMonthsPerUnit, startMonthsPerUnit, hoursPerYear;
  /* By the first end of a month at or past the horizon. */
  double hoursToHorizon, startsToHorizon;
  int last;
} use;

#define READ_USE(type, name) READ(use, "use", name)

static void readUse(void) {
  USE_COLUMNS(READ_USE)
  use.hourMonthsPerUnit = number("use.hourMonthsPerUnit");
  use.startMonthsPerUnit = number("use.startMonthsPerUnit");
  use.hoursPerYear = number("use.hoursPerYear");
  use.last = countOf("use.time") - 1;
  const int horizonMonth = (int)number("use.horizonMonth");
  use.hoursToHorizon = use.hours[horizonMonth];
  use.startsToHorizon = use.starts[horizonMonth];
}

static double discountedYears(double interest, double from, double to) {
  if (to <= from) return 0;
  if (interest == 0) return to - from;
  return (-exp(-interest * from) * expm1(-interest * (to - from))) / interest;
}

static int monthAt(double t) {
  if (t >= use.time[use.last]) return use.last;
  if (t < use.time[1]) return 0;
  int k = 1 + (int)((t - use.time[1]) * 12);
  if (k > use.last) k = use.last;
  while (k > 0 && use.time[k] > t) k--;
  while (k < use.last && use.time[k + 1] <= t) k++;
  return k;
}

static double totalAt(const double *total, double t) {
  const int k = monthAt(t);
  if (k >= use.last) return total[use.last];
  const double from = use.time[k];
  return total[k] + ((total[k + 1] - total[k]) * (t - from)) / (use.time[k + 1] - from);
}

static double timeOfTotal(const double *total, const i32 *month, double perUnit, double value) {
  if (value <= 0) return 0;
  if (!(value <= total[use.last])) return INFINITY;
  int k = month[(int)(value * perUnit)];
  while (k > 0 && total[k - 1] >= value) k--;
  while (total[k] < value) k++;
  if (k == 0) return 0;
  const double from = use.time[k - 1];
  return from + ((use.time[k] - from) * (value - total[k - 1])) / (total[k] - total[k - 1]);
}

static double timeOfHours(double value) {
  return timeOfTotal(use.hours, use.hourMonth, use.hourMonthsPerUnit, value);
}

static double timeOfStarts(double value) {
  return timeOfTotal(use.starts, use.startMonth, use.startMonthsPerUnit, value);
}

/* Start of the next month with running hours, t itself if the set is in use. */
static double nextUse(double t) {
  int k = monthAt(t);
  if (!use.laidUp[k]) return t;
  while (k <= use.last && use.laidUp[k]) k++;
  return k > use.last ? INFINITY : use.time[k];
}

#endif
