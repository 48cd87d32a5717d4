/* Use of the boat ahead (1, 2): running totals at the ends of months, straight within a month. */
#ifndef CALENDAR_H
#define CALENDAR_H

#include "model.h"

#define DAYS_PER_YEAR 365.25

static struct {
  int last;
  double hoursPerYear;
  const double *time, *hours, *starts, *neededDays, *discountedHours;
  const u8 *monthOfYear, *laidUp;
} calendar;

static void readCalendar(void) {
  calendar.last = countOf("use.time") - 1;
  calendar.hoursPerYear = number("use.hoursPerYear");
  calendar.time = column("use.time");
  calendar.hours = column("use.hours");
  calendar.starts = column("use.starts");
  calendar.neededDays = column("use.neededDays");
  calendar.discountedHours = column("use.discountedHours");
  calendar.monthOfYear = column("use.monthOfYear");
  calendar.laidUp = column("use.laidUp");
}

/* Number of the month that holds t: the first may be a part of one, the others are equally long. */
static int monthAt(double t) {
  if (t < calendar.time[1]) return 0;
  int k = 1 + (int)((t - calendar.time[1]) * 12);
  if (k > calendar.last) k = calendar.last;
  while (k > 0 && calendar.time[k] > t) k--;
  while (k < calendar.last && calendar.time[k + 1] <= t) k++;
  return k;
}

static double totalAt(const double *total, double t) {
  const int k = monthAt(t);
  if (k >= calendar.last) return total[calendar.last];
  const double share = (t - calendar.time[k]) / (calendar.time[k + 1] - calendar.time[k]);
  return total[k] + share * (total[k + 1] - total[k]);
}

/* The first time at which a total reaches a value: halving over the months. */
static double timeOf(const double *total, double value) {
  if (value <= 0) return 0;
  if (!(value <= total[calendar.last])) return INFINITY;
  int low = 0;
  int high = calendar.last;
  while (high - low > 1) {
    const int middle = (low + high) / 2;
    if (total[middle] < value) low = middle;
    else high = middle;
  }
  const double share = (value - total[low]) / (total[high] - total[low]);
  return calendar.time[low] + share * (calendar.time[high] - calendar.time[low]);
}

static bool isLayUp(double t) {
  return calendar.laidUp[monthAt(t)] == 1;
}

/* The next day of use. */
static double nextUse(double t) {
  for (int k = monthAt(t) + 1; k <= calendar.last; k++) {
    if (!calendar.laidUp[k]) return calendar.time[k];
  }
  return INFINITY;
}

#endif
