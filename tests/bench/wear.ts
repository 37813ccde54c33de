// One million readings on twenty thousand points: columns reduced and fitted, against JSON.parse of the same readings.
// Run from the project's top folder: npx tsx tests/bench/wear.ts [readings a point]. Prints ratios and memory; asserts nothing.
import { fitWear } from '../../src/domain/wear/fit.js';
import { forecastUnit } from '../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../src/domain/wear/reduce.js';
import { seeded } from '../domain/wear/fleet.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

const points = 20_000;
const each = Number(process.argv[2] ?? 50);
const rows = points * each;
const random = seeded(1);
const unit = new Int32Array(rows);
const exposure = new Float64Array(rows);
const kind = new Uint8Array(rows);
const value = new Float64Array(rows);
const run = new Int32Array(points);
let row = 0;
for (let point = 0; point < points; point++) {
  run[point] = point % 200;
  const rate = 1e-3 * Math.exp(0.25 * random.normal() + 0.1 * Math.sin(run[point] ?? 0));
  for (let k = 0; k < each; k++, row++) {
    const x = (9000 / each) * (k + 1);
    const wear = rate * x;
    unit[row] = point;
    exposure[row] = Math.round(x);
    if (k % 10 < 3 || wear >= 12) {
      kind[row] = wear >= 12 ? ReadingKind.trough : ReadingKind.colour;
      value[row] = wear >= 6 ? 1 : 0;
    } else {
      kind[row] = ReadingKind.thickness;
      value[row] = Math.max(0.1, Math.round(10 * (12 - wear + 0.4 * random.normal())) / 10);
    }
  }
}
const text = JSON.stringify(
  Array.from({ length: rows }, (_, i) => ({
    point: unit[i],
    hours: exposure[i],
    kind: kind[i],
    value: value[i],
  })),
);

const heap = (): number => process.memoryUsage().heapUsed + process.memoryUsage().arrayBuffers;
function timed<T>(name: string, work: () => T): { readonly result: T; readonly ms: number } {
  globalThis.gc?.();
  const before = heap();
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  const ms = (user + system) / 1000;
  console.log(
    `${name.padEnd(46)} ${ms.toFixed(0).padStart(6)} ms of processor   ${((heap() - before) / 2 ** 20).toFixed(0).padStart(5)} MB held`,
  );
  return { result, ms };
}

const columns = { unit, exposure, kind, value };
const units = {
  count: points,
  fitted: new Float64Array(points).fill(12),
  build: new Int32Array(points),
  builds: [{ depths: [6, 12] }],
};
console.log(
  `${rows.toLocaleString('en-GB')} readings on ${points.toLocaleString('en-GB')} points, ${(text.length / 2 ** 20).toFixed(0)} MB of JSON\n`,
);
const parse = timed('JSON.parse of the readings', () => JSON.parse(text) as unknown[]);
const reduce = timed('reduce', () => reduceReadings(columns, units));
const again = timed('reduce, warm', () => reduceReadings(columns, units));
const even = timed('fit, duty even', () => fitWear(again.result, [], { dutyNoise: 'none' }));
const uneven = timed('fit, duty noise estimated', () => fitWear(again.result, [], {}));
const pooled = timed('fit, 200 runs as pools', () =>
  fitWear(again.result, [{ name: 'run', level: run }], { dutyNoise: 'none' }),
);
const ratio = (ms: number): string => (ms / parse.ms).toFixed(2);
console.log(
  `\nreduce + fit over JSON.parse: ${ratio(reduce.ms + even.ms)} duty even, ${ratio(again.ms + uneven.ms)} duty noise, ${ratio(again.ms + pooled.ms)} with pools`,
);
const fit = uneven.result;
if (fit.kind === 'fitted') {
  const forecasts = timed('1,000 forecasts', () =>
    Array.from({ length: 1000 }, (_, k) => forecastUnit(fit, k * 20, 9)),
  );
  console.log(
    `${(forecasts.ms / 1000).toFixed(2)} ms a forecast; σ ${fit.readingError.toFixed(3)} mm, τ ${fit.rate.spread.toFixed(3)}, iterations ${fit.convergence.iterations}, converged ${fit.convergence.converged}`,
  );
}
console.log(`peak resident ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);
