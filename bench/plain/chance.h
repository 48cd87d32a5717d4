/* Chance as a plain program draws it: an ordinary generator, continuous laws, no tables. */
#ifndef CHANCE_H
#define CHANCE_H

#include <math.h>
#include <stdbool.h>

#include "../flat.h"

/* xoshiro256++ (Blackman and Vigna, 2019; recalled), one stream for each history of each alternative. */
static u64 stream[4];
/* The second normal of a pair that was drawn together. */
static double spareNormal;
static bool hasSpare;

static u64 turned(u64 word, int by) {
  return (word << by) | (word >> (64 - by));
}

/* splitmix64 spreads a seed over the state; the authors' advice. */
static void beginStream(u32 seed, u32 history, int alternative) {
  u64 x = ((u64)seed << 40) ^ ((u64)(u32)alternative << 32) ^ history;
  for (int i = 0; i < 4; i++) {
    u64 z = (x += 0x9e3779b97f4a7c15u);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    stream[i] = z ^ (z >> 31);
  }
  hasSpare = false;
}

/* Strictly between 0 and 1. */
static double uniform(void) {
  const u64 word = turned(stream[0] + stream[3], 23) + stream[0];
  const u64 t = stream[1] << 17;
  stream[2] ^= stream[0];
  stream[3] ^= stream[1];
  stream[1] ^= stream[2];
  stream[0] ^= stream[3];
  stream[2] ^= t;
  stream[3] = turned(stream[3], 45);
  return ((double)(word >> 11) + 0.5) * 0x1p-53;
}

static bool happens(double chance) {
  return uniform() < chance;
}

/* One of `count`, evenly. */
static int pick(int count) {
  return (int)(uniform() * count);
}

static double exponential(void) {
  return -log(uniform());
}

/* Box and Muller's pair. */
static double normal(void) {
  if (hasSpare) {
    hasSpare = false;
    return spareNormal;
  }
  const double radius = sqrt(2 * exponential());
  const double angle = 2 * M_PI * uniform();
  spareNormal = radius * sin(angle);
  hasSpare = true;
  return radius * cos(angle);
}

/* Standard normal given that it exceeds `least` (Robert, Statistics and Computing 5 (1995); recalled). */
static double normalBeyond(double least) {
  double z;
  if (least <= 0) {
    do z = normal();
    while (z < least);
    return z;
  }
  const double rate = (least + sqrt(least * least + 4)) / 2;
  do z = least + exponential() / rate;
  while (uniform() > exp(-(z - rate) * (z - rate) / 2));
  return z;
}

static double lognormal(double median, double logSd) {
  return median * exp(logSd * normal());
}

static double weibull(double scale, double shape) {
  return scale * pow(exponential(), 1 / shape);
}

/* The number of unit-exponential gaps that fit into the mean. */
static int poisson(double mean) {
  int count = 0;
  for (double sum = exponential(); sum < mean; sum += exponential()) count++;
  return count;
}

/* Beta(2m, 2(1 - m)), m itself where it is 0 or 1 (Jöhnk, Metrika 8 (1964); recalled). */
static double betaAbout(double mean) {
  if (mean <= 0 || mean >= 1) return mean;
  double x, y;
  do {
    x = pow(uniform(), 1 / (2 * mean));
    y = pow(uniform(), 1 / (2 * (1 - mean)));
  } while (x + y > 1);
  return x / (x + y);
}

/* Chance that the same law gives at most x: a series in x, mirrored above the middle. */
static double betaChance(double mean, double x) {
  if (x > 0.5) return 1 - betaChance(1 - mean, 1 - x);
  const double a = 2 * mean;
  const double b = 2 * (1 - mean);
  double factor = 1;
  double sum = 1 / a;
  for (int n = 1; n < 60; n++) {
    factor *= ((n - b) * x) / n;
    sum += factor / (a + n);
  }
  return pow(x, a) * sum / (tgamma(a) * tgamma(b));
}

/* What stands at the same quantile of the law about another mean, by halving. */
static double betaMoved(double mean, double x, double other) {
  if (other <= 0 || other >= 1) return other;
  const double wanted = mean <= 0 || mean >= 1 ? uniform() : betaChance(mean, x);
  double low = 0;
  double high = 1;
  for (int step = 0; step < 50; step++) {
    const double middle = (low + high) / 2;
    if (betaChance(other, middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

#endif
