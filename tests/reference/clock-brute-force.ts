// Two points, two looks, by brute force: everything that is uncertain is drawn from its prior and weighed by the readings. Prints the
// numbers that tests/domain/wear/clock-brute-force.test.ts holds the model to: npx tsx tests/reference/clock-brute-force.ts [draws]
import { area } from '../../src/domain/wear/numeric/normal.js';
import { seeded } from '../domain/wear/fleet.js';

const gauge = 0.4;
const limit = 9;

interface Case {
  readonly name: string;
  readonly read: readonly (readonly number[])[];
  /** The first point is seen at this age with a layer that begins at this depth (and a spread, mm) showing. */
  readonly shows?: { readonly age: number; readonly depth: number; readonly spread: number };
}

const cases: readonly Case[] = [
  {
    name: 'steady',
    read: [
      [1.6, 3.1],
      [1.2, 2.6],
    ],
  },
  {
    name: 'a doubling',
    read: [
      [1.5, 4.7],
      [1.3, 3.9],
    ],
  },
  {
    name: 'a colour sooner than the thicknesses say',
    read: [
      [1.6, 3.1],
      [1.2, 2.6],
    ],
    shows: { age: 5000, depth: 6, spread: 0.3 },
  },
];

/** The same by weighing draws from the priors as the developers' guide states them. */
function byBruteForce({ read, shows }: Case, count: number, seed: number) {
  const random = seeded(seed);
  const z = random.normal;
  const times = Float64Array.from({ length: 60 }, (_, k) => 3000 * Math.exp((k + 1) * 0.05));
  const reached = new Float64Array(times.length);
  let total = 0;
  let squares = 0;
  let changed = 0;
  for (let draw = 0; draw < count; draw++) {
    const tau = Math.exp(Math.log(0.3) + 0.5 * z());
    const factor = Math.exp(0.35 * z());
    const own = Math.exp(Math.log(0.15) + 0.5 * z());
    const shared = Math.exp(Math.log(0.03) + 0.7 * z());
    const omega = Math.exp(Math.log(0.15) + 0.5 * z());
    const power = random.uniform() < 0.6 ? 1 : Math.min(3, Math.max(0.25, 1.1 + 0.25 * z()));
    const clock = (x: number): number => (x / 3000) ** power * (3000 / power);
    const jump = random.uniform() < 0.09;
    const level = Math.log(9 / clock(9000)) + 0.4 * z() + omega * z();
    const factorAfter = jump ? 0.35 + 0.45 * z() : 0;
    const paces = [level + shared * z(), level + factorAfter + shared * z()];
    const hours = [clock(1500), clock(3000) - clock(1500)];
    const lastOff = !jump && random.uniform() < 0.12;
    const bias = [0.45 * gauge * z(), (lastOff ? 1 : 0.45) * gauge * z()];
    let log = 0;
    let state = 0;
    let rate = 0;
    for (let point = 0; point < 2; point++) {
      const u = tau * z();
      const crude = (read[point]![0]! * 1500 + read[point]![1]! * 3000) / (1500 ** 2 + 3000 ** 2);
      let wear = 0;
      let walk = 0;
      for (let k = 0; k < 2; k++) {
        wear += Math.exp(u + paces[k]!) * hours[k]!;
        walk += own * crude * 1500 * z(); // variance own²·h·crude² an hour, over an interval h
        const miss = (read[point]![k]! - wear - walk - bias[k]!) / (factor * gauge);
        log -= 0.5 * miss * miss + Math.log(factor);
      }
      if (point === 0) {
        state = wear + walk;
        rate = Math.exp(u + level + factorAfter);
      }
    }
    const wander = 1500 * (own * own + shared * shared);
    let from = 3000;
    if (shows) {
      const ahead = rate * (clock(shows.age) - clock(from));
      state += ahead * (1 + Math.sqrt(wander / (shows.age - from)) * z());
      log += Math.log(Math.max(area((state - shows.depth) / shows.spread), 1e-300));
      from = shows.age;
    }
    const weight = Math.exp(log);
    total += weight;
    squares += weight * weight;
    if (jump) changed += weight;
    if (weight < 1e-9) continue;
    for (let k = 0; k < times.length; k++) {
      // Between the thicknesses and a colour the path is not asked: lives that end there are counted as ended at the colour.
      if (times[k]! <= from) continue;
      const ahead = rate * (clock(times[k]!) - clock(from));
      const spread = ahead * Math.sqrt(wander / (times[k]! - from));
      reached[k]! += weight * area((state + ahead - limit) / Math.max(spread, 1e-9));
    }
  }
  const at = (level: number): number => {
    const k = reached.findIndex((r) => r / total >= level);
    const [low, high] = [reached[k - 1]! / total, reached[k]! / total];
    return Math.exp(
      Math.log(times[k - 1]!) + ((level - low) / (high - low)) * Math.log(times[k]! / times[k - 1]!),
    );
  };
  return {
    changed: changed / total,
    q10: at(0.1),
    q50: at(0.5),
    q90: at(0.9),
    effective: total ** 2 / squares,
  };
}

for (const example of cases)
  console.log(example.name, byBruteForce(example, Number(process.argv[2] ?? 6_000_000), 99));
