/**
 * The normal distribution, for what is left of a lognormal delay.
 *
 * Sources: Cody, "Rational Chebyshev approximation for the error function", Mathematics of Computation 23 (1969);
 * Wichura, "The percentage points of the normal distribution", algorithm AS 241 (PPND16), Applied Statistics 37 (1988);
 * coefficients recalled, and held to the forecast's own functions in the test.
 *
 * @module
 */

/** Chance that a standard normal draw is at most z. */
export function normalCdf(z: f64): f64 {
  const t = Math.abs(z) * Math.SQRT1_2
  if (t < 0.46875) return 0.5 + 0.5 * erfNearZero(z * Math.SQRT1_2)
  if (t > 30) return z > 0 ? 1 : 0
  const tail = 0.5 * scaledErfc(t) * Math.exp(-0.5 * z * z)
  return z < 0 ? tail : 1 - tail
}

/** The z below which a standard normal draw falls with a chance between 0 and 1. */
export function normalQuantile(chance: f64): f64 {
  const q = chance - 0.5
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q
    return (q * polynomial(centre, r)) / polynomial(centreBelow, r)
  }
  const r = Math.sqrt(-Math.log(q < 0 ? chance : 1 - chance))
  const z =
    r <= 5
      ? polynomial(shoulder, r - 1.6) / polynomial(shoulderBelow, r - 1.6)
      : polynomial(far, r - 5) / polynomial(farBelow, r - 5)
  return q < 0 ? -z : z
}

/** erf(t) for |t| under 0.46875. */
function erfNearZero(t: f64): f64 {
  const s = t * t
  const above =
    (((0.18577770618460315 * s + 3.1611237438705655) * s + 113.86415415105016) * s + 377.485237685302) * s +
    3209.3775891384694
  const below =
    (((s + 23.601290952344122) * s + 244.02463793444417) * s + 1282.6165260773723) * s + 2844.236833439171
  return (t * above) / below
}

/** e^(t²) erfc(t) for t of 0.46875 or more. */
function scaledErfc(t: f64): f64 {
  if (t <= 4) {
    const above =
      (((((((2.1531153547440383e-8 * t + 0.5641884969886701) * t + 8.883149794388377) * t +
        66.11919063714163) *
        t +
        298.6351381974001) *
        t +
        881.952221241769) *
        t +
        1712.0476126340707) *
        t +
        2051.0783778260716) *
        t +
      1230.3393547979972
    const below =
      (((((((t + 15.744926110709835) * t + 117.6939508913125) * t + 537.1811018620099) * t +
        1621.3895745666903) *
        t +
        3290.7992357334597) *
        t +
        4362.619090143247) *
        t +
        3439.3676741437216) *
        t +
      1230.3393548037495
    return above / below
  }
  const s = 1 / (t * t)
  const above =
    ((((0.016315387137302097 * s + 0.30532663496123236) * s + 0.36034489994980445) * s +
      0.12578172611122926) *
      s +
      0.016083785148742275) *
      s +
    0.0006587491615298378
  const below =
    ((((s + 2.568520192289822) * s + 1.8729528499234604) * s + 0.5279051029514285) * s +
      0.06051834131244132) *
      s +
    0.0023352049762686918
  return (0.5641895835477563 - (s * above) / below) / t
}

/** Polynomial with its constant first. */
function polynomial(coefficients: StaticArray<f64>, x: f64): f64 {
  let sum: f64 = 0
  for (let i = 7; i >= 0; i--) sum = sum * x + coefficients[i]
  return sum
}

const centre: StaticArray<f64> = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
]
const centreBelow: StaticArray<f64> = [
  1.0, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
]
const shoulder: StaticArray<f64> = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
]
const shoulderBelow: StaticArray<f64> = [
  1.0, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
]
const far: StaticArray<f64> = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
]
const farBelow: StaticArray<f64> = [
  1.0, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
]
