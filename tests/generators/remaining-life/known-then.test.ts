// Whatever looks back knows what was known on that day: a report as of it or since it, a sheet and a pack are those that the same
// texts give without every later record. The second road takes the records out of the texts before they are read.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { addDays, formatDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import type { Estate } from '../../../src/domain/model/estate.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { changesSince } from '../../../src/generators/remaining-life/parts/since.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, works } from './story.js';

const head =
  /^(inspection|reline|screw change|meter change|patch|duty|panels moved|serviced|correction)\b[^{\n]*?(\d{4}-\d\d-\d\d)/;

/** A duty dated ahead is a plan, known to a report that does not look back. */
function looksBack(texts: readonly string[], until: string): boolean {
  return texts.some((text) =>
    text.split('\n').some((line) => {
      const [, kind, on = ''] = head.exec(line) ?? [];
      return kind !== undefined && kind !== 'duty' && on > until;
    }),
  );
}

/** The text without the records dated after a day, each from its head to its closing brace. */
function known(text: string, until: string, plans: boolean): string {
  let inside = false;
  return text
    .split('\n')
    .filter((line) => {
      if (inside) {
        inside = !line.startsWith('}');
        return false;
      }
      const [, kind, on] = head.exec(line) ?? [];
      if (on === undefined || on <= until || (plans && kind === 'duty')) return true;
      inside = line.trimEnd().endsWith('{');
      return false;
    })
    .join('\n');
}

/** Everything that is said of the conveyors, as data and as a comment; not how many later records were passed over. */
function said(texts: readonly string[], asOf: CalendarDay, depth: 'hand' | 'model'): readonly string[] {
  const estate = estateFrom(texts);
  const report = remainingLife(estate, { asOf, depth, track: false });
  const { conveyors, fits } = JSON.parse(remainingLifeJson(report)) as { conveyors: unknown; fits: unknown };
  const comment = remainingLifeMarkdown(report).replace(
    / \d+ inspections? dated after .* not looked at\./,
    '',
  );
  return [...JSON.stringify([conveyors, fits], null, 1).split('\n'), ...comment.split('\n')];
}

/** What the estate holds, but for where it was written. */
function held({
  inspections,
  readings,
  corrections,
  places,
  relines,
  panelsMoved,
  screwChanges,
  meterChanges,
  dutyChanges,
  patches,
  services,
  jobs,
}: Estate): unknown {
  const of = (row: number): unknown => [
    inspections[readings.inspection[row] ?? -1]?.date.day ?? readings.bench.get(row)?.date.day,
    places[readings.place[row] ?? -1]?.name,
    readings.kind[row],
    readings.value[row],
    readings.error[row],
    readings.notes.get(row),
    readings.corrected.get(row)?.versions.map(({ words }) => words),
  ];
  const dated = [relines, panelsMoved, screwChanges, meterChanges, patches, services];
  return {
    looks: inspections.map(({ date, firstRow, endRow }) => [
      date.day,
      Array.from({ length: endRow - firstRow }, (_, i) => of(firstRow + i)),
    ]),
    rows: Array.from({ length: readings.count }, (_, row) => of(row)),
    corrections: corrections.map(({ date, row }) => [date.day, row === undefined ? undefined : of(row)]),
    places: places.map(({ name }) => name),
    dated: dated.map((records) => records.map(({ date }) => date.day)),
    duties: dutyChanges.map(({ from }) => from.day),
    jobs: jobs.map(({ name, relines, screwLying, screwChange }) => [
      name,
      relines.map(({ liner }) => liner.name),
      screwLying?.name,
      screwChange?.screw.name,
    ]),
  };
}

function estateFrom(texts: readonly string[]): Estate {
  const { estate, findings } = analyse(texts.map((text, i) => ({ uri: `file${i}.trough`, text })));
  expect(findings.filter(({ code }) => code.startsWith('TL1'))).toEqual([]);
  return estate;
}

function withoutLater(texts: readonly string[], asOf: CalendarDay): readonly string[] {
  const until = formatDay(asOf);
  const plans = !looksBack(texts, until);
  return texts.map((text) => known(text, until, plans));
}

/** A report since a day sets beside itself what the texts of that day make. */
function sameSince(texts: readonly string[], asOf: CalendarDay, depth: 'hand' | 'model'): void {
  const options = { depth, track: false } as const;
  const now = remainingLife(estateFrom(texts), { ...options, since: asOf });
  if (now.asOf === undefined || now.asOf < asOf) return;
  const then = remainingLife(estateFrom(withoutLater(texts, asOf)), { ...options, asOf });
  const conveyors = then.conveyors.flatMap((life) => {
    const { conveyor } = now.conveyors.find((each) => each.conveyor.name === life.conveyor.name) ?? life;
    return { ...life, conveyor };
  });
  expect(now.since).toEqual(changesSince(asOf, { conveyors }, now));
}

function sameEstate(texts: readonly string[], asOf: CalendarDay): void {
  expect(held(knownOn(estateFrom(texts), asOf))).toEqual(held(estateFrom(withoutLater(texts, asOf))));
}

/** On paper, but for the drawings, which say no more. */
function sameOnPaper(texts: readonly string[], asOf: CalendarDay): void {
  const [whole, part] = [estateFrom(texts), estateFrom(withoutLater(texts, asOf))].map((estate) => ({
    sheets: estate.conveyors.map((conveyor) => told(inspectionSheet(estate, conveyor, { asOf }))),
    packs: estate.jobs.map((job) => workPackMarkdown(workPack(estate, job, { asOf }))),
  }));
  expect(whole).toEqual(part);
}

/** Of a value what is said, not where it was written. */
function told(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (key, each: unknown) => (/origin|drawings/i.test(key) ? undefined : each)),
  );
}

function sameBothWays(texts: readonly string[], asOf: CalendarDay, depth: 'hand' | 'model'): void {
  expect(said(texts, asOf, depth)).toEqual(said(withoutLater(texts, asOf), asOf, depth));
}

/** Another liner and spiral, two jobs that name neither, and another machine whose readings stand behind those of the first. */
const others = `${works.slice(works.indexOf('conveyor')).replace('DG1', 'DG2')}
inspection DG2 2025-02-03 meter 700 h {
  view downstream
  P1 thickness 11.4 mm
}
correction DG2 2025-02-10 P1 read on 2025-02-03 thickness 11.1 mm by "day shift" "misread"
liner Thick15 { layer ivory 7 mm layer teal 8 mm panel length 1200 mm condemn at 4 mm }
screw Spiral380 { shaftless outside diameter 380 mm pitch 350 mm }
job Next {
  conveyor DG1
  outage Spring26
  reline run 1
}
job Spiral {
  conveyor DG1
  outage Autumn27
  reline run 1
  change screw
}
`;

const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));

function textsOf(example: string): readonly string[] {
  return readdirSync(path.join(examples, example), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.trough'))
    .sort()
    .map((name) => readFileSync(path.join(examples, example, name), 'utf8'));
}

describe('a report as of a day in the past', () => {
  it.each(['4-tarnholt', '7-five-years', '6-screw-change'])(
    'of example %s, by hand on any day',
    (example) => {
      const texts = textsOf(example);
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 1600 }), (days) =>
          sameBothWays(texts, addDays(day('2022-06-01'), days), 'hand'),
        ),
        { numRuns: 5 },
      );
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 1600 }), (days) => {
          sameEstate(texts, addDays(day('2022-06-01'), days));
          sameSince(texts, addDays(day('2022-06-01'), days), 'hand');
        }),
        { numRuns: 5 },
      );
    },
  );

  it('of five rough years, with the model', () => {
    sameBothWays(textsOf('7-five-years'), day('2024-10-20'), 'model');
    sameOnPaper(textsOf('7-five-years'), day('2024-10-20'));
  });

  const dated = fc.integer({ min: 0, max: 700 });
  const kinds = [
    'reline',
    'other',
    'part',
    'screw',
    'meter',
    'duty',
    'patch',
    'plate',
    'torn',
    'turned',
    'oil',
  ];
  const record = fc.oneof(
    fc.record({
      kind: fc.constantFrom('P1', 'P2', 'at 2.4 m clock 5:00', 'at 4.8 m clock 4:00'),
      on: dated,
      left: fc.integer({ min: 45, max: 119 }),
    }),
    fc.record({
      kind: fc.constantFrom(...kinds),
      on: dated,
      left: fc.constant(0),
    }),
  );
  const textOf = ({ kind, on, left }: { kind: string; on: number; left: number }): string => {
    const date = formatDay(addDays(day('2025-01-01'), on));
    const meter = `${date} meter ${on * 20} h`;
    switch (kind) {
      case 'reline':
        return `reline DG1 ${meter} {\n  liner TwoLayer12\n}`;
      case 'other':
        return `reline DG1 ${meter} {\n  liner Thick15\n  old panel at P1 thickness 5.1 mm\n}`;
      case 'turned':
        return `panels moved DG1 ${meter} {\n  panel 1 of run 1 turned end for end\n  P1 thickness 7 mm\n}`;
      case 'oil':
        return `serviced DG1 ${date} gearbox oil changed`;
      case 'part':
        return `reline DG1 ${meter} {\n  liner TwoLayer12\n  scope from 0 m to 2.4 m\n}`;
      case 'screw':
        return `screw change DG1 ${meter} {\n  screw Spiral380\n}`;
      case 'meter':
        return `meter change DG1 ${date} from ${on * 20} h to ${on * 20} h`;
      case 'duty':
        return `duty DG1 from ${date} 18 h/d "less to carry"`;
      case 'patch':
        return `patch DG1 ${date} at 3 m to 3.5 m thickness 4 mm welded by "coded welder"`;
      case 'plate':
        return `inspection DG1 ${meter} {\n  view downstream\n  plate at 3.2 m thickness 3.6 mm\n}`;
      case 'torn':
        return `inspection DG1 ${meter} {\n  view downstream\n  panel torn at 3 m serious\n  current loaded 11 A\n}`;
      default:
        return looked(kind, date, meter, left);
    }
  };

  /** Every third is corrected ten days later. */
  const looked = (spot: string, date: string, meter: string, left: number): string => {
    const later = formatDay(addDays(day(date), 10));
    return [
      `inspection DG1 ${meter} {\n  view downstream\n  ${spot} thickness ${(left / 10).toFixed(1)} mm\n}`,
      ...(left % 3 === 0
        ? [`correction DG1 ${later} ${spot} read on ${date} thickness 6.5 mm by "day shift" "misread"`]
        : []),
    ].join('\n');
  };

  const histories = (numRuns: number, same: (texts: readonly string[], asOf: CalendarDay) => void): void =>
    fc.assert(
      fc.property(fc.array(record, { minLength: 2, maxLength: 12 }), dated, (records, days) =>
        same([works, others, records.map(textOf).join('\n')], addDays(day('2025-01-01'), days)),
      ),
      { numRuns },
    );

  it.each([
    ['hand', 50],
    ['model', 3],
  ] as const)('of histories drawn at random, by %s', (depth, numRuns) => {
    histories(numRuns, (texts, asOf) => sameBothWays(texts, asOf, depth));
  });

  it('of histories drawn at random: what the estate holds, and what changed since', () => {
    histories(60, sameEstate);
    histories(25, (texts, asOf) => sameSince(texts, asOf, 'hand'));
  });

  it('of a history of every kind of record, on a sheet and in a pack', () => {
    const before = [30, 60, 90].map((on) => textOf({ kind: 'P1', on, left: 119 - on / 3 }));
    const after = kinds.map((kind, i) => textOf({ kind, on: 150 + 10 * i, left: 0 }));
    const texts = [works, others, [...before, ...after].join('\n')];
    for (const asOf of ['2025-04-05', '2025-07-05']) sameOnPaper(texts, day(asOf));
  });
});
