/*
 * As kernel/normal.ts: the normal distribution, after Cody, Mathematics of Computation 23 (1969), and Wichura's
 * algorithm AS 241 (PPND16), Applied Statistics 37 (1988); coefficients recalled.
 */
#ifndef NORMAL_H
#define NORMAL_H

#include <math.h>

static const double centre[8] = {
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
  45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227,
};
static const double centreBelow[8] = {
  1.0, 42.31333070160091, 687.1870074920579, 5394.196021424751,
  21213.794301586597, 39307.89580009271, 28729.085735721943, 5226.495278852854,
};
static const double shoulder[8] = {
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
  1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
};
static const double shoulderBelow[8] = {
  1.0, 2.053191626637759, 1.6763848301838038, 0.6897673349851,
  0.14810397642748008, 0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9,
};
static const double far[8] = {
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
  0.026532189526576124, 0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
};
static const double farBelow[8] = {
  1.0, 0.599832206555888, 0.1369298809227358, 0.014875361290850615,
  0.0007868691311456133, 0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
};

/* Polynomial of eight terms with its constant first. */
static double polynomial(const double *coefficients, double x) {
  double sum = 0;
  for (int i = 7; i >= 0; i--) sum = sum * x + coefficients[i];
  return sum;
}

static double normalQuantile(double chance) {
  const double q = chance - 0.5;
  if (fabs(q) <= 0.425) {
    const double r = 0.180625 - q * q;
    return (q * polynomial(centre, r)) / polynomial(centreBelow, r);
  }
  const double r = sqrt(-log(q < 0 ? chance : 1 - chance));
  const double z = r <= 5 ? polynomial(shoulder, r - 1.6) / polynomial(shoulderBelow, r - 1.6)
                          : polynomial(far, r - 5) / polynomial(farBelow, r - 5);
  return q < 0 ? -z : z;
}

static double normalCdf(double z) {
  return 0.5 * erfc(-z * M_SQRT1_2);
}

#endif
