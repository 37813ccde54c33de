// A report as of a day knows what was known on that day: it is the report that the same texts give without every later record.
// The second road takes the records out of the texts before they are read.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { addDays, formatDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, works } from './story.js';

const head =
  /^(inspection|reline|screw change|meter change|patch|duty|turned|exchanged|serviced)\b[^{\n]*?(\d{4}-\d\d-\d\d)/;

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
  const { estate } = analyse(texts.map((text, i) => ({ uri: `file${i}.trough`, text })));
  const report = remainingLife(estate, { asOf, depth, track: false });
  const { conveyors, fits } = JSON.parse(remainingLifeJson(report)) as { conveyors: unknown; fits: unknown };
  const comment = remainingLifeMarkdown(report).replace(
    / \d+ inspections? dated after .* not looked at\./,
    '',
  );
  return [...JSON.stringify([conveyors, fits], null, 1).split('\n'), ...comment.split('\n')];
}

function sameBothWays(texts: readonly string[], asOf: CalendarDay, depth: 'hand' | 'model'): void {
  const until = formatDay(asOf);
  const plans = !looksBack(texts, until);
  expect(said(texts, asOf, depth)).toEqual(
    said(
      texts.map((text) => known(text, until, plans)),
      asOf,
      depth,
    ),
  );
}

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
    },
  );

  it('of five rough years, with the model', () => {
    sameBothWays(textsOf('7-five-years'), day('2024-10-20'), 'model');
  });

  const dated = fc.integer({ min: 0, max: 700 });
  const record = fc.oneof(
    fc.record({
      kind: fc.constantFrom('P1', 'P2', 'at 2.4 m clock 5:00', 'at 4.8 m clock 4:00'),
      on: dated,
      left: fc.integer({ min: 45, max: 119 }),
    }),
    fc.record({
      kind: fc.constantFrom('reline', 'part', 'screw', 'meter', 'duty', 'patch', 'plate', 'torn'),
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
      case 'part':
        return `reline DG1 ${meter} {\n  liner TwoLayer12\n  scope from 0 m to 2.4 m\n}`;
      case 'screw':
        return `screw change DG1 ${meter} {\n  screw Spiral400\n}`;
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
        return `inspection DG1 ${meter} {\n  view downstream\n  ${kind} thickness ${(left / 10).toFixed(1)} mm\n}`;
    }
  };

  it.each([
    ['hand', 100],
    ['model', 3],
  ] as const)('of histories drawn at random, by %s', (depth, numRuns) => {
    fc.assert(
      fc.property(fc.array(record, { minLength: 2, maxLength: 12 }), dated, (records, days) =>
        sameBothWays([works, records.map(textOf).join('\n')], addDays(day('2025-01-01'), days), depth),
      ),
      { numRuns },
    );
  });
});
