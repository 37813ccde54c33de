// Nodes and weights to integrate a smooth function on an interval (Gauss–Legendre) and against a normal density (Gauss–Hermite).
// Both are found by Newton on the three-term recurrence (Abramowitz & Stegun 25.4.30 and 25.4.46) once, then kept.

export interface QuadratureRule {
  readonly node: Float64Array;
  readonly weight: Float64Array;
}

const legendre = new Map<number, QuadratureRule>();
const hermite = new Map<number, QuadratureRule>();

/** `count` nodes on [−1, 1]; the weights sum to 2. Exact for polynomials up to degree 2·count − 1. */
export function gaussLegendre(count: number): QuadratureRule {
  let rule = legendre.get(count);
  if (!rule) legendre.set(count, (rule = makeLegendre(count)));
  return rule;
}

/** `count` nodes for a standard normal weight: Σ weight·f(node) is the mean of f. The weights sum to 1. */
export function gaussNormal(count: number): QuadratureRule {
  let rule = hermite.get(count);
  if (!rule) hermite.set(count, (rule = makeNormal(count)));
  return rule;
}

function makeLegendre(count: number): QuadratureRule {
  const node = new Float64Array(count);
  const weight = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let p0 = 1;
      let p1 = x;
      for (let k = 2; k <= count; k++) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
      slope = (count * (x * p1 - p0)) / (x * x - 1);
      const change = p1 / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    node[i] = x;
    weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { node, weight };
}

function makeNormal(count: number): QuadratureRule {
  const node = new Float64Array(count);
  const weight = new Float64Array(count);
  // Orthonormal recurrence, so that nothing overflows; each root starts where the ones before it point.
  const value = (x: number): { top: number; below: number } => {
    let below = 0;
    let top = 1;
    for (let k = 1; k <= count; k++)
      [below, top] = [top, (x * top - Math.sqrt(k - 1) * below) / Math.sqrt(k)];
    return { top, below };
  };
  // The roots are the sign changes on a fine walk, then bisection and Newton: counts here are small and made once.
  const edge = Math.sqrt(4 * count + 2);
  const walk = 400 * count;
  let found = 0;
  let last = value(-edge).top;
  for (let i = 1; i <= walk && found < count; i++) {
    const right = -edge + (2 * edge * i) / walk;
    const here = value(right).top;
    if (last < 0 !== here < 0) {
      let x = right - edge / walk;
      for (let step = 0; step < 60; step++) {
        const { top, below } = value(x);
        const change = top / (Math.sqrt(count) * below);
        x -= change;
        if (Math.abs(change) < 1e-15) break;
      }
      const { below } = value(x);
      node[found] = x;
      weight[found] = 1 / (count * below * below);
      found++;
    }
    last = here;
  }
  return { node, weight };
}
