import { between, positive } from '../working/inputs';

/** Lanczos' approximation with g 7 and nine terms (from memory); good to 15 digits for arguments above 0.5. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function logGamma(z: number): number {
  const x = z - 1;
  const [first = 0, ...others] = LANCZOS;
  const sum = others.reduce((all, term, index) => all + term / (x + index + 1), first);
  const t = x + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (x + 0.5) * Math.log(t) - t + Math.log(sum);
}

const TINY = 1e-300;
const FAR_FROM_ZERO = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

/** The continued fraction of the incomplete beta function, by Lentz' method (from memory). */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / FAR_FROM_ZERO(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 500; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    for (const term of [even, odd]) {
      d = 1 / FAR_FROM_ZERO(1 + term * d);
      c = FAR_FROM_ZERO(1 + term / c);
      fraction *= d * c;
    }
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return fraction;
}

/** Regularised incomplete beta function. */
function betaShare(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** Probability that Student's t with so many degrees of freedom lies below `t`. */
export function studentBelow(t: number, degrees: number): number {
  const tail = betaShare(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;
  return t > 0 ? 1 - tail : tail;
}

/**
 * Student's t that is passed with probability 1 − `probability`.
 *
 * @param probability one-sided, between 0 and 1, both left out
 * @param degrees degrees of freedom, 1 or more
 * @throws Problem `invalid-input`
 */
export function studentQuantile(probability: number, degrees: number): number {
  between(probability, 0.0001, 0.9999, 'Confidence as a fraction');
  positive(degrees, 'Degrees of freedom');
  if (probability === 0.5) return 0;
  if (probability < 0.5) return -studentQuantile(1 - probability, degrees);
  let low = 0;
  let high = 1;
  while (studentBelow(high, degrees) < probability) high *= 2;
  for (let halving = 0; halving < 200 && high - low > 1e-14 * high; halving += 1) {
    const middle = (low + high) / 2;
    if (studentBelow(middle, degrees) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
