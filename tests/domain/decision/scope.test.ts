// How much is relined: no point is left in that is as near its limit as the one that goes, and no panel goes that could stay. The
// scope is held against brute force: every set of panels put to the planner, and the fewest panels after which the rest lasts.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { decideConveyor, type ConveyorDecision } from '../../../src/domain/decision/conveyor-decision.js';
import { breachOf } from '../../../src/domain/decision/programme-formulation.js';
import { programmeProblem, type Candidate } from '../../../src/domain/decision/programme-problem.js';
import { workOf, type RunPart } from '../../../src/domain/decision/trial-work.js';
import type { PanelOutlook } from '../../../src/domain/decision/wear-outlook.js';
import { outlook, type Place } from './kit.js';

/** One run of eight panels that closes at either end. */
const text = `
plant Tarnholt {
  duty 112 h/week
  risk 5 %
  outage Winter27 2027-01-18 to 2027-01-22
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people
  shift 07:00 to 17:00 on mon, tue, wed, thu, fri
  lead time liner 4 weeks
}
liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm
  condemn at 3 mm
  bolt M10 rows 2 pitch 300 mm countersink 4 mm
  joint butted
}
screw Spiral300 {
  shaftless
  outside diameter 300 mm
  pitch 300 mm
  flight 60 mm by 20 mm
}
conveyor DG1 {
  plant Tarnholt
  length 10.2 m
  incline 5 deg
  trough inside radius 175 mm side height 150 mm plate 4 mm
  screw Spiral300
  liner TwoLayer12
  drive at head power 4 kW speed 18 rpm
  break Feed at 0 m to 0.3 m inlet allowance 40 mm
  break Gate at 9.9 m to 10.2 m slide gate allowance 40 mm
  access Floor at 0 m to 10.2 m ground
}
`;
const { estate } = analyse([{ uri: 'a.trough', text }]);
const [conveyor] = estate.conveyors;
if (!conveyor) throw new Error('the estate was not read');

function decided(places: readonly Place[]): ConveyorDecision {
  if (!conveyor) throw new Error('no conveyor');
  return decideConveyor({
    estate,
    conveyor,
    liner: conveyor.liner,
    outlook: outlook(places),
    newLife: 9000,
    gauge: 0.3,
  });
}

const slow = (panel: number): Place => ({ panel, median: 30_000, spread: 0.1, now: 7600 });
/** Reaches its limit soon after the winter: hardly before it, surely before the spring. */
const soon = (panel: number, more = 0): Place => ({ panel, median: 10_000 + more, spread: 0.02, now: 7600 });
const machine = (...fast: readonly Place[]): readonly Place[] => [
  ...[1, 2, 3, 4, 5, 6, 7, 8].filter((n) => fast.every(({ panel }) => panel !== n)).map(slow),
  ...fast,
];

const candidatesAt = (decision: ConveyorDecision, outage: string): readonly Candidate[] => {
  const problem = programmeProblem(decision.conveyor.plant, [decision], []);
  const index = problem?.outages.findIndex(({ name }) => name === outage);
  return problem?.conveyors[0]?.candidates.filter((each) => each.outage === index) ?? [];
};

describe('a point as near its limit as the one that is relined', () => {
  const decision = decided(machine(soon(1, 20), soon(7)));
  const parts = decision.options.filter(
    ({ kind, outage }) => kind === 'part at an outage' && outage === 'Winter27',
  );
  const alone = parts.find(({ stays }) => stays?.keeps === false);
  const both = parts.find(({ stays }) => stays?.keeps);

  it('is not left in: a part without it does not keep the risks, and says which point does not last, and until when', () => {
    expect(alone?.within).toBe(false);
    expect(alone?.stays?.first?.place).toBe('P1');
    expect(alone?.needs[0]).toMatch(/^what stays does not last until Spring27: limit 82 % \(P1 first\)/);
    expect(both?.within).toBe(true);
    expect(both?.needs[0]).toBe('what stays lasts until Spring27 (limit < 0.1 %)');
    expect(decision.options.indexOf(both as never)).toBeLessThan(decision.options.indexOf(alone as never));
  });

  it('goes in a part of its own where good panels lie between', () => {
    expect(both?.scope).toBe('panel 1 of run 1 and panels 7 to 8 of run 1');
  });

  it('weighs in the programme as much as one that is reached before the work', () => {
    const winter = candidatesAt(decision, 'Winter27');
    const short = winter.find(({ scope }) => scope === alone?.scope);
    const right = winter.find(({ scope }) => scope === both?.scope);
    expect(right && breachOf(right)).toBe(0);
    expect(short && breachOf(short)).toBeGreaterThan(1.8);
  });
});

// The second road: every set of panels is put to the planner, and what stays is multiplied out, panel by panel.
describe('the smallest scope after which the rest lasts', () => {
  it('is the fewest panels of all sets that an order of work can close', () => {
    const place = (panel: number): fc.Arbitrary<Place> =>
      fc.constantFrom(slow(panel), slow(panel), slow(panel), soon(panel), soon(panel, 900));
    const places = fc.tuple(...[1, 2, 3, 4, 5, 6, 7, 8].map(place));
    fc.assert(
      fc.property(places, (drawn) => {
        const { scopes, accepted } = decided(drawn);
        if (!scopes || scopes.governing.length === 0) return;
        const lasts = (relined: readonly number[]): boolean =>
          drawn
            .map((each) => outlookOf(each))
            .filter(({ panel }) => !relined.includes(panel))
            .reduce((left, each) => left * (1 - each.condemnBy(scopes.until)), 1) >=
          1 - accepted.condemn;
        const least = Math.min(
          ...everySet().flatMap(({ relined, panels }) => (lasts(relined) ? [panels] : [])),
        );
        const enough = scopes.works.filter(({ relined }) => lasts(relined.map(({ panel }) => panel)));
        expect(Math.min(...enough.map(({ work }) => work.panels))).toBe(least);
      }),
      { numRuns: 40 },
    );
  });
});

function outlookOf(place: Place): PanelOutlook {
  const [only] = outlook([place]).panels;
  if (!only) throw new Error('no panel');
  return only;
}

let sets: readonly { readonly relined: readonly number[]; readonly panels: number }[] | undefined;
/** What the planner takes off for each set of eight panels; those that cannot be built are left out. */
function everySet(): NonNullable<typeof sets> {
  return (sets ??= Array.from({ length: 255 }, (_, k) => k + 1).flatMap((mask) => {
    if (!conveyor) return [];
    const asked = [1, 2, 3, 4, 5, 6, 7, 8]
      .filter((panel) => mask & (1 << (panel - 1)))
      .map((panel): RunPart => ({ run: 1, first: panel, last: panel }));
    const { buildable, parts, panels } = workOf(conveyor, () => conveyor.liner, asked, estate);
    const relined = parts.flatMap(({ first, last }) =>
      Array.from({ length: last - first + 1 }, (_, i) => first + i),
    );
    return buildable ? [{ relined, panels }] : [];
  }));
}

it.each([
  ['whoever says that they fit, and whoever says nothing', ['Alpha', 'Gang'], 'skills fitting, welding', ''],
  ['anybody, where nobody says so', ['Alpha', 'Sparks', 'Gang'], '', ''],
  [
    'no crew of one person',
    ['Alpha', 'Gang'],
    'skills fitting',
    'skills fitting\n  crew Single 1 person skills fitting',
  ],
])('a crew is asked to reline by itself: %s', (_, asked, first, second) => {
  const { estate: plant } = analyse([
    {
      uri: 'a.trough',
      text: text.replace(
        'crew Alpha 4 people',
        `crew Alpha 4 people ${first}\n  crew Sparks 2 people skills electrical\n  crew Gang 3 people ${second}`,
      ),
    },
  ]);
  const [machineOf] = plant.conveyors;
  if (!machineOf) throw new Error('the estate was not read');
  const { others } = workOf(machineOf, () => machineOf.liner, 'whole', plant);
  expect(others().map(({ crews }) => crews.join())).toEqual(asked);
});

it('where every panel was seen no way asks for a look at what nobody has seen', () => {
  const needs = JSON.stringify(decided(machine(soon(3), soon(4))));
  expect(needs).not.toContain('0 panels');
});
