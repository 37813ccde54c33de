// Every formula of the appendix is worked out here by a second road: another formula, a sum or a search by brute force, or a worked
// number that was published. A formula that is added has no second road yet and fails until it has one.
// "published": the worked numbers of design handbooks and of the sources named in the appendix; the others need no source.

import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { axialSpeed, conveyingPower, dragPower, torque } from '../../../src/domain/geometry/drive.js';
import { volumeFlow } from '../../../src/domain/geometry/capacity.js';
import { radialClearance } from '../../../src/domain/geometry/clearance.js';
import { crescentEdge, crescentWear } from '../../../src/domain/geometry/crescent.js';
import { gaugeShows } from '../../../src/domain/geometry/gauge.js';
import {
  downSlopeForce,
  gravity,
  recommendedWeightLimit,
  slopingLegTension,
  teamCapability,
} from '../../../src/domain/geometry/handling.js';
import {
  edgeLength,
  flatBlank,
  flightMassPerMetre,
  flightMassPerTurn,
  ownWeightStretch,
  springStretch,
  type Spring,
} from '../../../src/domain/geometry/helix.js';
import { layPanels } from '../../../src/domain/geometry/panel-layout.js';
import { bucklingPitch, growthAgainst, restrainedStress } from '../../../src/domain/geometry/thermal.js';
import { developedWidth, panelMass, sheetOffset } from '../../../src/domain/geometry/trough.js';
import { addDays, parseDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { ageReplacementWeibull } from '../../../src/domain/wear/age-replacement.js';
import { handArithmetic } from '../../../src/domain/wear/arithmetic.js';
import { colourBounds } from '../../../src/domain/wear/colour-bounds.js';
import { nextInspection } from '../../../src/domain/wear/decision.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { toCalendar } from '../../../src/domain/wear/to-calendar.js';
import { formulas, type FormulaId } from '../../../src/generators/appendix/formulas.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { fitted } from '../../domain/wear/kit.js';
import { liftConveyor, read, theJob } from '../estate.js';

/** A check here, or the test of another file that is the second road: its file and its title. */
type Road = (() => void) | readonly [file: string, title: string];

/** Middle sums; enough steps for six digits. */
function integral(of: (x: number) => number, from: number, to: number, steps = 4000): number {
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += of(from + (i + 0.5) * h);
  return sum * h;
}

const exact = JSON.parse(
  readFileSync(new URL('../../domain/wear/small-pool.fixture.json', import.meta.url), 'utf8'),
) as {
  readonly readings: readonly (readonly (readonly [number, number])[])[];
  readonly depth: number;
  readonly levels: readonly number[];
  readonly lives: readonly (readonly number[])[];
};

const near = (value: number | undefined, other: number, share = 1e-6): void =>
  expect(Math.abs((value ?? NaN) / other - 1)).toBeLessThan(share);

const section = { insideRadius: 175, sideHeight: 150, thickness: 12 };
const shape = { outside: 300, inside: 180, pitch: 300 };
const spiral: Spring = { shape, thickness: 20 };
const dayOf = (text: string): CalendarDay => parseDay(text) ?? (0 as CalendarDay);
const rad = (deg: number): number => (deg * Math.PI) / 180;

/** API 570, 7.2 as it circulates: 7.8, 3.92 and 3.24 mm after 0, 13 and 15; 0.37 mm needed. */
const hand = () => {
  const made = handArithmetic({
    fitted: 7.8,
    least: 0.37,
    readings: [
      { exposure: 13, thickness: 3.92 },
      { exposure: 15, thickness: 3.24 },
    ],
  });
  if (made.kind !== 'rate') throw new Error(made.kind);
  return made;
};

const roads: Readonly<Record<FormulaId, Road>> = {
  // Hour by hour over a meter that was changed at 1500 h and began again at 20 h.
  exposure: () => {
    const { estate } = read(
      liftConveyor({
        conveyor: 'duty 84 h/week',
        more: `meter change DG1 2023-06-05 from 1500 h to 20 h
inspection DG1 2023-04-03 meter 900 h { view downstream P1 thickness 11 mm }
inspection DG1 2023-09-04 meter 640 h { view downstream P1 thickness 10 mm }`,
      }),
    );
    const [life] = remainingLife(estate, { depth: 'hand' }).conveyors;
    let run = 0;
    for (let meter = 0; meter < 1500; meter++) run++;
    for (let meter = 20; meter < 640; meter++) run++;
    expect(life?.points[0]?.readings.map(({ exposure }) => exposure)).toEqual([900, run]);
  },
  'long-term-rate': () => near(hand().longTerm, 0.304),
  'short-term-rate': () => near(hand().shortTerm.kind === 'rate' ? hand().ruling : NaN, 0.34),
  // Published 8.441; and step by step down to what is needed.
  'remaining-life': () => {
    near(hand().remaining, 8.441176, 1e-6);
    let left = 3.24;
    let years = 0;
    for (; left > 0.37; years += 1e-4) left -= 0.34e-4;
    near(hand().remaining, years, 1e-4);
  },
  // Half of the life; and the day on which 1 − exp(−x/θ) passes the risk, −θ·ln(1 − risk).
  'next-inspection': () => {
    const asOf = dayOf('2026-01-05');
    const condemn = toCalendar(
      { reachedBy: (x) => 1 - Math.exp(-x / 20_000) },
      { perDay: 10, spread: 0, from: asOf, now: 0 },
    );
    const risk = Math.floor((-20_000 * Math.log(0.95)) / 10);
    const by = (remainingDays: number): unknown =>
      nextInspection({ condemn, remainingDays, risk: 0.05, asOf });
    expect(by(2000)).toMatchObject({ day: addDays(asOf, risk), because: 'the declared risk' });
    expect(by(150)).toMatchObject({ day: addDays(asOf, 75), because: 'half the remaining life' });
    near(hand().nextInspection, 8.441176 / 2);
  },
  // Published (design figures): 6 + 6 mm, the first colour at 5000 h, the second at 7000 h. All rates tried.
  'colour-bounds': () => {
    const told = colourBounds({
      layers: [6, 6],
      least: 0,
      seen: [
        { exposure: 5000, layer: 0 },
        { exposure: 7000, layer: 1 },
      ],
    });
    const fits = Array.from({ length: 30_000 }, (_, i) => i * 1e-7).filter(
      (r) => r * 5000 < 6 && r * 7000 >= 6 && r * 7000 < 12,
    );
    if (told.kind !== 'between') throw new Error(told.kind);
    expect([told.lowRate, told.highRate].map((r) => (r * 1000).toFixed(3))).toEqual(['0.857', '1.200']);
    near(told.lowRate, fits[0] ?? NaN, 1e-3);
    near(told.highRate, fits.at(-1) ?? NaN, 1e-3);
    expect([told.leastThickness, told.mostThickness].map((t) => t.toFixed(1))).toEqual(['3.6', '6.0']);
  },
  'wear-model': ['domain/wear/mixed-wear.test.ts', 'estimates and ln likelihood within 1e-6 of R'],
  'depth-life': ['domain/wear/mixed-wear.test.ts', 'quantiles of the life to 9 mm within 1e-4 of R'],
  'duty-noise': [
    'domain/wear/duty-noise.test.ts',
    'the likelihood is that of the whole covariance σ²·I + (ψ·eᵘ)²·min(x, x′), integrated over u',
  ],
  // Life lognormal (20 000 h, 30 %), duty lognormal about 10 h a day (15 %): the chance by a day is summed over duties.
  'hours-to-dates': () => {
    const normal = (z: number): number =>
      integral((x) => Math.exp(-(x ** 2) / 2) / Math.sqrt(2 * Math.PI), -8, z, 2000);
    const life = (x: number): number => (x > 0 ? normal(Math.log(x / 20_000) / 0.3) : 0);
    const from = dayOf('2026-01-05');
    const told = toCalendar({ reachedBy: life }, { perDay: 10, spread: 0.15, from, now: 0 });
    if (told.kind !== 'dates') throw new Error(told.kind);
    const s = Math.sqrt(Math.log(1 + 0.15 ** 2));
    for (const days of [1200, 2000, 3000]) {
      const summed = integral(
        (z) =>
          (life(10 * days * Math.exp(s * z - s ** 2 / 2)) * Math.exp(-(z ** 2) / 2)) / Math.sqrt(2 * Math.PI),
        -6,
        6,
        120,
      );
      expect(told.reachedBy(addDays(from, days))).toBeCloseTo(summed, 3);
    }
  },
  // Lives of a pool to 9 mm by brute force outside the project; wear is straight, so the full 12 mm take 12/9 of them.
  'contact-chance': () => {
    const rows = exact.readings.flatMap((unit, k) => unit.map(([at, saw]) => ({ unit: k, at, saw })));
    const fit = fitted([...rows, { unit: 2, at: 4000, saw: 'ivory' }], 5, {
      expectedLife: { depth: 12, exposure: 12_000 },
      gaugeError: 0.5,
      dutyNoise: 'none',
      outliers: 'keep',
    });
    for (const unit of [0, 1, 2, 3]) {
      const told = forecastUnit(fit, unit, 12, { depthSpread: 0 });
      if (told.kind !== 'life') throw new Error(told.kind);
      exact.levels.forEach((level, k) => {
        const at = ((exact.lives[unit]?.[k] ?? NaN) * 12) / exact.depth;
        expect(Math.abs(told.reachedBy(at) - level)).toBeLessThan(0.02);
      });
    }
  },
  // By the calendar of the platform.
  'order-date': () => {
    const analysis = read(liftConveyor());
    const rows = workPack(analysis.estate, theJob(analysis)).materials;
    const day = new Date(Date.UTC(2027, 3, 12) - 70 * 86_400_000).toISOString().slice(0, 10);
    expect(rows.find(({ kind }) => kind === 'liner')?.orderBy).toBe(day);
  },
  // Published check: Weibull 2.5 / 1000, planned 1, failure 5; and every age tried.
  'age-replacement': () => {
    const told = ageReplacementWeibull(2.5, 1000, { planned: 1, failure: 5 });
    if (told.kind !== 'replace at') throw new Error(told.kind);
    near(told.exposure, 493.04696);
    near(told.costRate, 0.00346204274);
    const left = (x: number): number => Math.exp(-((x / 1000) ** 2.5));
    const rate = (t: number): number => (left(t) + 5 * (1 - left(t))) / integral(left, 0, t, 1000);
    const ages = Array.from({ length: 400 }, (_, i) => 300 + i);
    const best = ages.reduce((a, b) => (rate(b) < rate(a) ? b : a));
    expect(Math.abs(best - told.exposure)).toBeLessThan(1);
  },
  // A ray from the liner's centre, and where it leaves the sunken circle of the screw, by halving.
  crescent: () => {
    const [e, r, w0] = [25, 210, 10];
    const wear = (angle: number): number => {
      const inside = (t: number): boolean =>
        Math.hypot(t * Math.sin(rad(angle)), t * Math.cos(rad(angle)) - (e + w0)) <= r;
      let [low, high] = [0, 400];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (inside(middle)) low = middle;
        else high = middle;
      }
      return Math.max(0, low - (r + e));
    };
    for (const angle of [0, 10, 30])
      expect(crescentWear({ e, screwRadius: r }, w0, angle)).toBeCloseTo(wear(angle), 9);
    expect(crescentWear({ e, screwRadius: r }, w0, 30).toFixed(2)).toBe('4.58');
    let edge = 0;
    while (wear(edge) > 1e-9) edge += 0.001;
    expect(crescentEdge({ e, screwRadius: r }, w0)).toBeCloseTo(edge, 2);
  },
  // An echo runs twice through the sheet; the gauge turns its time into a thickness by the velocity it was set to.
  'gauge-velocity': () => {
    const echo = (2 * 0.012) / 2050;
    near(gaugeShows(12, 2050, 2200), (1000 * 2200 * echo) / 2);
  },
  // A half circle as a line of short chords, and two sides.
  'developed-width': () => {
    const chord = 2 * (175 - 6) * Math.sin(Math.PI / 20_000);
    near(developedWidth(section), 10_000 * chord + 2 * 150);
    expect(developedWidth(section).toFixed(1)).toBe('830.9');
  },
  // The area between two half circles and of two sides; published 27.97 kg for 3 m.
  'liner-mass': () => {
    const area = (Math.PI / 2) * (175 ** 2 - 163 ** 2) + 2 * 12 * 150;
    near(panelMass(section, 3000, 935), area * 3000 * 1e-9 * 935);
    expect(panelMass(section, 3000, 935).toFixed(2)).toBe('27.97');
  },
  // Along the bottom in short chords from six to five; published 85.3 mm.
  'clock-to-sheet': () => {
    near(sheetOffset(163, 5), 10_000 * 2 * 163 * Math.sin(rad(30) / 20_000));
    expect(sheetOffset(163, 5)?.toFixed(1)).toBe('85.3');
  },
  // The screw let down onto the liner: what is free above it is twice the clearance.
  'radial-clearance': () => {
    const bottom = -(175 - 12);
    const top = bottom + 300;
    near(radialClearance(175, 12, 300), (175 - 12 - top) / 2);
  },
  // A helix as a line of short chords; published 989.07 and 640.14 mm.
  'edge-length': () => {
    const steps = 2000;
    const chord = Math.hypot(2 * 150 * Math.sin(Math.PI / steps), 300 / steps);
    near(edgeLength(300, 300), steps * chord, 1e-5);
    expect([edgeLength(300, 300).toFixed(2), edgeLength(180, 300).toFixed(2)]).toEqual(['989.07', '640.14']);
  },
  // Both edges of the cut ring are as long as those of the turn; published radii and gap.
  'flat-blank': () => {
    const made = flatBlank(shape);
    const arc = rad(360 - made.gap);
    near(arc * made.outerRadius, edgeLength(300, 300));
    near(arc * made.innerRadius, edgeLength(180, 300));
    expect([made.innerRadius, made.outerRadius, made.gap].map((x) => x.toFixed(2))).toEqual([
      '110.07',
      '170.07',
      '26.79',
    ]);
  },
  // Strips from inside to outside, summed; published 7.654 kg a turn and 25.51 kg/m.
  'flight-mass': () => {
    const area = integral((r) => Math.hypot(2 * Math.PI * r, 300), 90, 150);
    near(flightMassPerTurn(shape, 20, 7850), area * 20 * 7850 * 1e-9);
    expect(flightMassPerTurn(shape, 20, 7850).toFixed(3)).toBe('7.654');
    expect(flightMassPerMetre(shape, 20, 7850).toFixed(2)).toBe('25.51');
  },
  // Energy of twist and bending of a bar of 60 by 20 mm, its torsion constant by Saint-Venant's series; published 1.03 mm a turn and kN.
  spring: () => {
    const [a, b, R] = [60, 20, 120];
    let series = 0;
    for (let n = 1; n < 60; n += 2) series += Math.tanh((n * Math.PI * a) / (2 * b)) / n ** 5;
    const J = ((a * b ** 3) / 3) * (1 - ((192 * b) / (Math.PI ** 5 * a)) * series);
    const I = (b * a ** 3) / 12;
    const turn = edgeLength(2 * R, 300);
    const alpha = Math.atan2(300, 2 * Math.PI * R);
    const energy = (F: number): number =>
      (turn / 2) *
      ((F * R * Math.cos(alpha)) ** 2 / (79_300 * J) + (F * R * Math.sin(alpha)) ** 2 / (206_000 * I));
    near(springStretch(spiral, 1000, 300), (energy(1001) - energy(999)) / 2, 0.005);
    expect(springStretch(spiral, 1000, 300).toFixed(2)).toBe('1.03');
  },
  // What the ring between shaft and screw sweeps in an hour; published 24.43 and 5.089 m³/h.
  capacity: () => {
    const of = (outside: number, core: number, pitch: number): number =>
      volumeFlow({ outside, core, pitch, speed: 60, fill: 0.4 });
    const swept = (D: number, d: number, S: number): number =>
      (Math.PI / 4) * (D ** 2 - d ** 2) * S * 60 * 60 * 0.4;
    near(of(300, 60, 250), swept(0.3, 0.06, 0.25));
    expect([of(300, 60, 250).toFixed(2), of(150, 0, 200).toFixed(3)]).toEqual(['24.43', '5.089']);
  },
  // 20 turns of 0.35 m in a minute.
  'axial-speed': () => near(axialSpeed(350, 20), (20 * 0.35) / 60),
  // Work in an hour: the weight over length and height, g/3600 against the rounded 1/367; published 1.327 kW.
  power: () => {
    const made = conveyingPower({
      massFlow: 10,
      length: 12_000,
      rise: 5000,
      resistanceFactor: 3,
      diameter: 350,
    });
    near(made.material + made.lift, (10 * 1000 * gravity * (3 * 12 + 5)) / 3600 / 1000, 1e-3);
    expect((made.material + made.lift + made.empty).toFixed(3)).toBe('1.327');
  },
  // Friction along the way of the edge in a second; about 1.2 kW on a machine of 34 m.
  'spiral-drag': () => {
    const mass = 34 * 25.51;
    const way = (18 / 60) * Math.PI * 0.4;
    near(
      dragPower({ mass, incline: 24, diameter: 400, speed: 18 }),
      (0.2 * mass * gravity * Math.cos(rad(24)) * way) / 1000,
    );
  },
  // P = T·ω; 9550 is rounded.
  torque: () => near(torque(5.5, 18), 5500 / ((2 * Math.PI * 18) / 60), 1e-4),
  // Millimetre by millimetre; published 48.0 free and 44.2 against stainless steel.
  'free-growth': () => {
    let grown = 0;
    for (let i = 0; i < 12_000; i++) grown += 1 * (200e-6 - 16e-6) * 20;
    near(growthAgainst(12_000, 200e-6, 16e-6, 20), grown);
    expect([growthAgainst(12_000, 200e-6, 0, 20), grown].map((x) => x.toFixed(1))).toEqual(['48.0', '44.2']);
  },
  // Pressed back to its length; published 2.82 MPa.
  'restrained-stress': () => {
    const free = 1000 * (1 + 188e-6 * 20);
    near(restrainedStress(750, 188e-6, 20), (750 * (free - 1000)) / 1000);
    expect(restrainedStress(750, 188e-6, 20).toFixed(2)).toBe('2.82');
  },
  // The strut with clamped ends, 4π²EI/l², bears just the force that the heat makes; published 296 and 355 mm.
  'buckling-pitch': () => {
    for (const [t, told] of [
      [10, '296'],
      [12, '355'],
    ] as const) {
      const l = bucklingPitch(t, 188e-6, 20) ?? NaN;
      near((4 * Math.PI ** 2 * 750 * (t ** 3 / 12)) / l ** 2, t * restrainedStress(750, 188e-6, 20));
      expect(l.toFixed(0)).toBe(told);
    }
  },
  'closing-error': [
    'domain/order/check-order.test.ts',
    'growth against the trough counts where joints are gaps, less what the gaps between the panels take',
  ],
  // All ways to fill a run with whole panels and one cut piece of 200 mm or more, tried: the fewest pieces that fill it.
  'panel-layout': () => {
    for (const length of [5300, 6100, 7000]) {
      const laid = layPanels({
        length,
        panelLengths: [1200, 1000],
        start: 'tail',
        minimumClosingPiece: 200,
        gap: 0,
      });
      let fewest = Infinity;
      for (let long = 0; long <= 7; long++)
        for (let short = 0; short <= 8; short++) {
          const left = length - 1200 * long - 1000 * short;
          if (left === 0) fewest = Math.min(fewest, long + short);
          else if (left >= 200 && left <= 1200) fewest = Math.min(fewest, long + short + 1);
        }
      expect(laid.panels).toHaveLength(fewest);
      expect(laid.panels.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(length, 6);
    }
  },
  // Two pulls that add up to the weight and cancel sideways.
  sling: () => {
    const pull = slopingLegTension(190, 30, 0);
    near(2 * pull * Math.cos(rad(30)), 190 * gravity);
    near(pull / (190 * gravity), 0.57735, 1e-5);
    // On a slope: hooks at both ends, the crane's hook above the middle; two equations for two pulls, solved.
    const [half, high, slope] = [1000, 1000 / Math.tan(rad(30)), rad(25)];
    const legs = [1, -1].map(
      (way) => [way * half * Math.cos(slope), high + way * half * Math.sin(slope)] as const,
    );
    const units = legs.map(([x, y]) => [x / Math.hypot(x, y), y / Math.hypot(x, y)] as const);
    const [[x1, y1], [x2, y2]] = units as [readonly [number, number], readonly [number, number]];
    const [lower, upper] = [-x2, x1].map((cross) => (190 * gravity * cross) / (x1 * y2 - x2 * y1)) as [
      number,
      number,
    ];
    near(lower * x1 + upper * x2 + 1, 1);
    near(lower * y1 + upper * y2, 190 * gravity);
    near(slopingLegTension(190, 30, 25), lower);
  },
  // Worked with the multipliers of the source; published 9.39 kg.
  niosh: () => {
    const limit = recommendedWeightLimit({
      reach: 400,
      height: 400,
      travel: 600,
      twist: 30,
      frequency: 0.95,
      coupling: 0.95,
    });
    const multipliers = [23, 25 / 40, 1 - 0.003 * 35, 0.82 + 4.5 / 60, 1 - 0.0032 * 30, 0.95, 0.95];
    near(limit, Math.exp(multipliers.reduce((sum, m) => sum + Math.log(m), 0)));
    expect(limit.toFixed(2)).toBe('9.39');
  },
  // HSE: two lift two thirds of the sum of what each could, three half of it.
  'team-lift': () =>
    expect([2, 3].map((people) => teamCapability(25, people).toFixed(1))).toEqual(['33.3', '37.5']),
  // The weight along the unit vector of the slope; published 1.27 kN for 12 m at 25°.
  'down-slope': () => {
    const mass = 12 * 25.51;
    const slope = [Math.cos(rad(25)), -Math.sin(rad(25))] as const;
    near(downSlopeForce(mass, 25), 0 * slope[0] + -mass * gravity * slope[1]);
    expect((downSlopeForce(mass, 25) / 1000).toFixed(2)).toBe('1.27');
  },
  // Slice by slice, each stretched by what hangs below it.
  'spring-back': () => {
    const force = downSlopeForce(12 * 25.51, 25);
    const slices = 2000;
    let sum = 0;
    for (let i = 0; i < slices; i++)
      sum += springStretch(spiral, force * ((i + 0.5) / slices), 12_000 / slices);
    near(ownWeightStretch(spiral, force, 12_000), sum);
  },
  'step-time': [
    'domain/plan/work-and-teams.test.ts',
    'in whole minutes, rounded up, at least one; by what the step itself says',
  ],
  'critical-path': [
    'domain/plan/critical-path.test.ts',
    'study text: 16 h, the critical chain, and the slack of the others',
  ],
};

test('every formula has a second road, and no road leads nowhere', () => {
  expect(Object.keys(roads).sort()).toEqual(formulas.map(({ id }) => id).sort());
});

test.each(Object.entries(roads))('%s', (_, road) => {
  if (typeof road === 'function') return road();
  const [file, title] = road;
  const address = new URL(`../../${file}`, import.meta.url);
  expect(existsSync(address)).toBe(true);
  expect(readFileSync(address, 'utf8')).toContain(title);
});
