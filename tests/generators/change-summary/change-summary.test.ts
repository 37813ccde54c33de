import Ajv from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { estateSide } from '../../../src/cli/compared-sides.js';
import type { LedgerBlock } from '../../../src/domain/model/ledger.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { percent } from '../../../src/domain/decision/option-setting.js';
import { formatDay, parseDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import {
  changeSummary,
  type ChangeSummary,
  type ComparedSide,
} from '../../../src/generators/change-summary/change-summary.js';
import { changeSummaryHtml } from '../../../src/generators/change-summary/html.js';
import { changeSummaryJson } from '../../../src/generators/change-summary/json.js';
import { changeSummarySchema } from '../../../src/generators/change-summary/json-schema.js';
import { changeSummaryMarkdown } from '../../../src/generators/change-summary/markdown.js';
import { ledgerChanges } from '../../../src/generators/change-summary/parts/ledger-changes.js';
import { splitHistory } from '../../../src/generators/change-summary/parts/history.js';
import { readSavedReport } from '../../../src/generators/change-summary/saved-report.js';
import { changeSummaryText } from '../../../src/generators/change-summary/text.js';
import { changesBeside } from '../../../src/generators/remaining-life/changes-beside.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { valueOfWords } from '../../../src/language/blocks.js';
import { formatText } from '../../../src/language/format.js';
import { ledgerOf } from '../../../src/language/ledger.js';
import { estateTexts, nextLook } from '../../kit/small-estate.js';

type Texts = Readonly<Record<string, string>>;

function side(texts: Texts, name = 'a'): ReturnType<typeof estateSide> {
  return estateSide(
    name,
    Object.entries(texts).map(([uri, text]) => ({ uri, text })),
  );
}

function compared(before: ComparedSide, after: ComparedSide, asOf?: CalendarDay): ChangeSummary {
  const made = changeSummary(before, after, { asOf });
  if (!made.ok) throw new Error(made.message);
  return made.summary;
}

/** The small works, changed by an edit of one text. */
function edited(file: string, from: string | RegExp, to: string): Texts {
  const text = estateTexts[file] ?? '';
  const changed = text.replace(from, to);
  expect(changed, `${file} has ${String(from)}`).not.toBe(text);
  return { ...estateTexts, [file]: changed };
}

function on(text: string): CalendarDay {
  return parseDay(text) ?? (0 as CalendarDay);
}

function ledger(texts: Texts): readonly LedgerBlock[] {
  return Object.entries(texts).flatMap(([uri, text]) => ledgerOf(text, uri) ?? []);
}

const before = side(estateTexts, 'main');

/** Without any forecast. */
function split(texts: Texts): ReturnType<typeof splitHistory> {
  const uses = ['BR1', 'BR2'].map((conveyor) => ({ liner: 'TwoLayer12', conveyor, former: false }));
  return splitHistory(ledgerChanges(before.ledger, ledger(texts)), before.ledger, uses, undefined);
}

const change = (texts: Texts): ChangeSummary => compared(before, side(texts, 'branch'));
const added = change({ ...estateTexts, 'looks/BR1-2026-11.trough': nextLook });

/** An edit of the past, a new look and another machine at once. */
const whole = change({
  ...edited('looks/BR1-2025-09.trough', '8.4', '7.4'),
  'looks/BR1-2026-11.trough': nextLook,
  'machine.trough': (estateTexts['machine.trough'] ?? '').replace(
    'Gate at 6 m to 6.4 m',
    'Gate at 5 m to 5.4 m',
  ),
});

describe('a comparison', () => {
  test('with itself is empty, however the texts are laid out, ordered and spelled', () => {
    const respelled = Object.fromEntries(
      Object.entries(estateTexts)
        .reverse()
        .map(([uri, text]) => [
          uri,
          formatText(
            text.replaceAll('thickness 9.9 mm', 'thickness   0.99 cm').replaceAll('\n  ', '\n\n      '),
          ),
        ]),
    );
    const summary = change(respelled);
    expect(summary).toMatchObject({ same: true, history: [], records: [], calendar: undefined });
    expect(summary.forecasts.told).toEqual([]);
    expect(changeSummaryText(summary)).toContain('nothing differs');
  });

  test('of two works that share no conveyor is refused in words, and a rename is no such thing', () => {
    const first = readFileSync(
      new URL('../../../examples/1-first-conveyor/first.trough', import.meta.url),
      'utf8',
    );
    const other = side({ 'first.trough': first.replaceAll('BR1', 'ZZ9') }, 'other');
    expect(changeSummary(before, other)).toMatchObject({
      ok: false,
      message: expect.stringContaining('no conveyor in common'),
    });
    expect(changeSummary(before, before)).toMatchObject({ ok: true });
  });

  test('with nothing says that everything is new or gone', () => {
    const nothing = side({}, 'nothing');
    expect(compared(nothing, before).come.map(({ name }) => name)).toContain('BR1');
    expect(compared(before, nothing).history.map(({ kind }) => kind)).toContain('record removed');
  });
});

describe('a new inspection', () => {
  test('is told with what it did to its own forecast, the others in one line', () => {
    expect(added).toMatchObject({ same: false, history: [] });
    expect(added.records).toMatchObject([
      { kind: 'inspection', conveyor: 'BR1', readings: 2, late: false, words: 'meter 8900 h, 2 readings' },
    ]);
    const [own] = added.forecasts.told;
    expect(own).toMatchObject({ conveyor: 'BR1', because: ['inspected'] });
    expect(added.forecasts.told.length + added.forecasts.rest.count).toBe(2);
  });

  test('takes fewer than ten lines of a comment', () => {
    expect(changeSummaryMarkdown(added).trimEnd().split('\n').length).toBeLessThan(10);
  });

  test('is compared on one day; what the days between do by themselves stands apart', () => {
    expect(formatDay(added.asOf ?? (0 as CalendarDay))).toBe('2026-11-02');
    expect(added.calendar).toMatchObject({ from: parseDay('2026-06-08'), to: parseDay('2026-11-02') });
    // Second road: the earlier state, reported on both days.
    const [then, now] = ['2026-06-08', '2026-11-02'].map((text) =>
      remainingLife(before.estate, { asOf: parseDay(text), track: false }),
    );
    for (const moved of [...(added.calendar?.told ?? [])]) {
      const at = (report: typeof then): number | undefined =>
        report?.conveyors
          .find(({ conveyor }) => conveyor.name === moved.conveyor)
          ?.decision?.outages.find(({ name }) => name === moved.by)?.condemn;
      expect(moved.chances?.before.condemn).toBe(at(then));
      expect(moved.chances?.after.condemn).toBe(at(now));
    }
    expect(compared(before, before, parseDay('2027-03-01'))).toMatchObject({ same: true });
    expect(compared(before, before, parseDay('2027-03-01')).calendar?.told.length).toBeGreaterThan(0);
  });

  test('dated before newer ones is added late', () => {
    const late = nextLook.replace('2026-11-02', '2026-03-02').replace('8900', '6800');
    expect(split({ ...estateTexts, 'late.trough': late }).records).toMatchObject([{ late: true }]);
  });
});

describe('history edited after the fact', () => {
  const cases: readonly [string, Texts, object][] = [
    [
      'a reading',
      edited('looks/BR1-2025-09.trough', '8.4', '7.4'),
      {
        kind: 'record changed',
        before: 'P1 thickness 8.4 mm',
        after: 'P1 thickness 7.4 mm',
        where: 'inspection of 2025-09-15',
      },
    ],
    [
      'a reading taken out',
      edited('looks/BR1-2025-09.trough', '  P2 thickness 9.2 mm\n', ''),
      { before: 'P2 thickness 9.2 mm', after: undefined },
    ],
    [
      'a reading put in',
      edited('looks/BR1-2025-09.trough', '  P2', '  at 2 m clock 5:00 thickness 9 mm\n  P2'),
      { before: undefined, after: 'at 2 m clock 5:00 thickness 9 mm' },
    ],
    [
      'a date',
      edited('looks/BR1-2025-09.trough', '2025-09-15', '2025-08-15'),
      { before: '2025-09-15', after: '2025-08-15', reach: '2 readings of it stand at another age' },
    ],
    [
      'a meter',
      edited('looks/BR1-2025-09.trough', '5300', '4300'),
      { before: 'meter 5300 h', after: 'meter 4300 h' },
    ],
    [
      'the side it was seen from',
      edited('looks/BR1-2026-06.trough', 'downstream', 'upstream'),
      { before: 'view downstream', after: 'view upstream' },
    ],
    [
      'a gauge',
      edited('looks/BR1-2026-06.trough', '± 0.2', '± 0.9'),
      { before: 'gauge ultrasonic ± 0.2 mm' },
    ],
    [
      'a whole look',
      { ...estateTexts, 'looks/BR1-2025-09.trough': '// gone\n' },
      { kind: 'record removed', where: 'inspection of 2025-09-15', before: 'meter 5300 h, 2 readings' },
    ],
    [
      'a reline put in before looks',
      { ...estateTexts, 'r.trough': 'reline BR1 2025-11-03 meter 5700 h {\n  liner TwoLayer12\n}\n' },
      { kind: 'record put in', where: 'reline of 2025-11-03' },
    ],
    [
      'layers of a liner that lies there',
      edited('machine.trough', 'layer grey 6 mm', 'layer grey 4 mm'),
      {
        kind: 'described anew',
        where: 'liner TwoLayer12',
        conveyors: ['BR1', 'BR2'],
        reach: 'reaches back into 2 sets that lie there',
      },
    ],
    [
      'layers in another order',
      edited(
        'machine.trough',
        '  layer grey 6 mm\n  layer orange 6 mm\n',
        '  layer orange 6 mm\n  layer grey 6 mm\n',
      ),
      { kind: 'described anew', before: 'order of layers grey, orange' },
    ],
    [
      'a point that has readings',
      edited('machine.trough', 'P2 at 9 m', 'P2 at 10 m'),
      { kind: 'described anew', reach: '3 readings of it were made at the former place' },
    ],
    [
      'when it was commissioned',
      edited(
        'machine.trough',
        'commissioned 2024-01-01 meter 0 h\n  break',
        'commissioned 2023-01-01 meter 0 h\n  break',
      ),
      { kind: 'described anew', where: 'conveyor BR1' },
    ],
    [
      'a duty long past',
      edited('history.trough', '66 h/week', '86 h/week'),
      { before: '66 h/week', after: '86 h/week' },
    ],
  ];
  test.each(cases)('%s is seen', (_, texts, expected) => {
    expect(split(texts).edits).toMatchObject([{ counts: true, ...expected }]);
  });

  test('is told before anything else', () => {
    const text = changeSummaryText(whole);
    for (const form of [text, changeSummaryMarkdown(whole)])
      expect(form.split('\n').slice(0, 4).join('\n')).toContain('HISTORY EDITED in 1 place');
    expect(text.indexOf('HISTORY EDITED: ')).toBeGreaterThan(0);
    expect(text.indexOf('HISTORY EDITED: ')).toBeLessThan(text.indexOf('New records'));
    expect(text.indexOf('New records')).toBeLessThan(text.indexOf('Forecasts'));
  });

  test('reaches into former sets of a liner', () => {
    const relined: Texts = {
      ...estateTexts,
      'r.trough': 'reline BR1 2026-07-06 meter 7900 h {\n  liner TwoLayer12\n}\n',
    };
    const thinner = {
      ...relined,
      'machine.trough': (relined['machine.trough'] ?? '').replace('grey 6 mm', 'grey 5 mm'),
    };
    expect(compared(side(relined), side(thinner)).history).toMatchObject([
      { reach: 'reaches back into 1 former set and 2 sets that lie there' },
    ]);
  });

  test('of a photo is told by its name, whether it comes, goes or changes, and does not count', () => {
    const look = 'looks/BR1-2026-06.trough';
    const photo = (name: string): Texts =>
      edited(look, 'P2 thickness 7.9 mm', `P2 thickness 7.9 mm photo "${name}"`);
    const told = (before: Texts, after: Texts): readonly string[] => {
      const summary = compared(side(before), side(after));
      expect(summary.history).toMatchObject([{ counts: false }]);
      return changeSummaryText(summary)
        .split('\n')
        .filter((line) => line.includes('.png'));
    };
    expect(told(estateTexts, photo('a.png'))).toEqual([
      expect.stringContaining('→ P2 thickness 7.9 mm photo "a.png"'),
    ]);
    expect(told(photo('a.png'), photo('b.png'))).toEqual([expect.stringMatching(/"a\.png".*→.*"b\.png"/)]);
    expect(told(photo('a.png'), estateTexts)).toEqual([
      expect.stringMatching(/photo "a\.png".*→ P2 thickness 7\.9 mm$/),
    ]);
  });

  test('of a remark or a name is told, and does not count', () => {
    for (const texts of [
      edited('looks/BR1-2026-06.trough', 'by the seam', 'at the seam'),
      edited('looks/BR1-2025-01.trough', 'first shift', 'second shift'),
    ]) {
      const { edits } = split(texts);
      expect(edits).toMatchObject([{ counts: false }]);
      expect(changeSummaryText({ ...added, history: edits })).not.toContain('HISTORY EDITED');
    }
  });

  test('no digit of any record of the demo can change unseen', () => {
    const folder = fileURLToPath(new URL('../../../examples/4-tarnholt', import.meta.url));
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /^(inspections|history)\/.*\.trough$/.test(name))
      .map((name) => ({ uri: name, text: readFileSync(path.join(folder, name), 'utf8') }));
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 9 }), (which, where, by) => {
        const { uri, text } = files[which % files.length]!; // below its length
        const digits = [...text.matchAll(/\d/g)].map(({ index }) => index);
        const at = digits[where % digits.length]!; // below its length, and every record has digits
        const changed = text.slice(0, at) + ((Number(text[at]) + by) % 10) + text.slice(at + 1);
        const [old, now] = [ledgerOf(text, uri), ledgerOf(changed, uri)];
        if (!old || !now) return;
        const line = text.slice(0, at).split('\n').at(-1) ?? '';
        const inWords = /"[^"]*$|\/\/|^ *(by|finding|photo)\b/.test(line);
        const { edits } = splitHistory(ledgerChanges(old, now), old, [], undefined);
        expect(edits.length).toBeGreaterThan(0);
        // A look on another day is a look gone and one added, where too little else is the same.
        if (!inWords) expect(edits.some(({ counts }) => counts)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});

describe('what is no change of what is said', () => {
  test('a point, a conveyor, a liner and an outage that were only renamed are one line each', () => {
    const texts = Object.fromEntries(
      Object.entries(estateTexts).map(([uri, text]) => [
        uri,
        text
          .replaceAll('BR2', 'BR7')
          .replaceAll('TwoLayer12', 'GreyOrange')
          .replaceAll('Spring27', 'April27')
          .replaceAll('Gate', 'SlideGate'),
      ]),
    );
    const summary = change(texts);
    expect(summary.history).toEqual([]);
    expect(summary.machine).toEqual([]);
    expect(summary.settings).toEqual([]);
    expect(summary.renames.map(({ what, from, to }) => `${what} ${from} ${to}`).sort()).toEqual([
      'break Gate SlideGate',
      'conveyor BR2 BR7',
      'liner TwoLayer12 GreyOrange',
      'outage Spring27 April27',
    ]);
    const point = ledgerChanges(
      before.ledger,
      ledger(
        Object.fromEntries(
          Object.entries(estateTexts).map(([uri, text]) => [uri, text.replaceAll(/\bP2\b/g, 'Head1')]),
        ),
      ),
    );
    expect(point.changed).toEqual([]);
    expect(point.renames).toMatchObject([{ what: 'point', from: 'P2', to: 'Head1' }]);
  });

  test('a text that was moved or put together with others', () => {
    const { 'looks/BR1-2025-01.trough': one, 'looks/BR1-2025-09.trough': two, ...others } = estateTexts;
    const summary = ledgerChanges(before.ledger, ledger({ ...others, 'looks/BR1.trough': `${one}\n${two}` }));
    expect(summary).toMatchObject({ added: [], removed: [], changed: [] });
    expect(summary.moves.map(({ from, to }) => `${from} ${to}`)).toEqual([
      'looks/BR1-2025-01.trough looks/BR1.trough',
      'looks/BR1-2025-09.trough looks/BR1.trough',
    ]);
  });
});

describe('the machine', () => {
  test('a break that moves is told with runs, panels, cut list and the open job', () => {
    const summary = change(edited('machine.trough', 'Gate at 6 m to 6.4 m', 'Gate at 5 m to 5.4 m'));
    expect(summary.machine).toHaveLength(1);
    const effects = summary.effects.map(
      ({ on, before: was, after }) => `${on}: ${was ?? ''} → ${after ?? ''}`,
    );
    // 12 m with a gate of 0.4 m leaves runs of 6 m and 5.6 m, and of 5 m and 6.6 m.
    expect(effects.find((line) => line.startsWith('BR1, run 1'))).toMatch(/6\.00 m long.*→ 5\.00 m long/);
    expect(effects.find((line) => line.startsWith('BR1, run 2'))).toMatch(/5\.60 m long.*→ 6\.60 m long/);
    expect(effects.find((line) => line.startsWith('job BR1_Spring, panels'))).toBeDefined();
    expect(summary.history).toEqual([]);
  });

  test('a limit, a lead time and a job are what forecasts and plans rest on', () => {
    const summary = change(edited('machine.trough', 'condemn at 3 mm', 'condemn at 5 mm'));
    expect(summary.settings).toMatchObject([{ facts: [{ identity: 'condemn at' }] }]);
    expect(summary.forecasts.told.map(({ because }) => because)).toContainEqual(['liner TwoLayer12']);
    expect(
      change(edited('machine.trough', 'reline all', 'reline run 1')).effects.map(({ on }) => on),
    ).toContain('job BR1_Spring, panels of TwoLayer12');
  });
});

describe('a warning that an edit removes', () => {
  test('is told beside the risk that rises', () => {
    const thin = edited('looks/BR1-2026-06.trough', 'P1 thickness 6.9 mm', 'P1 thickness 9.4 mm');
    const summary = compared(side(thin), side(estateTexts));
    expect(summary.findings.gone.map(({ code }) => code)).toContain('TL306');
    expect(summary.history).toHaveLength(1);
    const [own] = summary.forecasts.told;
    expect(own?.chances?.after.condemn).toBeGreaterThan(own?.chances?.before.condemn ?? 1);
  });
});

describe('against a saved report', () => {
  const saved = (texts: Texts, withRecords: boolean): ComparedSide => {
    const { estate, ledger } = side(texts);
    const read = readSavedReport(
      remainingLifeJson(remainingLife(estate), withRecords ? ledger : undefined),
      valueOfWords,
    );
    if (!read.ok) throw new Error(read.message);
    return { kind: 'saved report', name: 'report.json', saved: read.saved };
  };

  const report = saved(estateTexts, true);
  const old = saved(estateTexts, false);

  test.each([true, false])(
    'nothing differs where nothing was touched (its records kept: %s)',
    (withRecords) => {
      const summary = compared(withRecords ? report : old, before);
      expect(summary).toMatchObject({ same: true, history: [], records: [] });
      expect(summary.rewritten?.told).toEqual([]);
    },
  );

  test.each([true, false])(
    'an old reading, a meter and a look taken out are seen (its records kept: %s)',
    (withRecords) => {
      const touched = edited('looks/BR1-2025-09.trough', '8.4', '7.4');
      const summary = compared(
        withRecords ? report : old,
        side({ ...touched, 'looks/BR1-2025-01.trough': '', 'new.trough': nextLook }),
      );
      expect(summary.history.map(({ where }) => where)).toEqual(
        withRecords
          ? ['inspection of 2025-09-15', 'inspection of 2025-01-13']
          : ['inspection of 2025-09-15', 'inspection of 2025-01-13', 'inspection of 2025-01-13'],
      );
      expect(summary.history.every(({ counts }) => counts)).toBe(true);
      expect(summary.records).toMatchObject([{ kind: 'inspection', conveyor: 'BR1', late: false }]);
      expect(summary.rewritten).toBeDefined();
      if (!withRecords) expect(summary.remarks.join()).toContain('holds no records of its own');
    },
  );

  test('what was seen since, and what the days brought, stand apart', () => {
    const summary = compared(report, side({ ...estateTexts, 'new.trough': nextLook }));
    // The same as between the two states themselves.
    const chances = (of: ChangeSummary): unknown =>
      of.forecasts.told.map((moved) => [moved.conveyor, moved.chances]);
    expect(chances(summary)).toEqual(chances(added));
    expect(summary.history).toEqual([]);
    expect(changeSummary(before, report)).toMatchObject({ ok: false });
  });

  test.each([
    ['no JSON', 'is no JSON'],
    ['{"kind":"work pack"}', 'is no remaining-life report'],
    ['{"kind":"remaining life","formatVersion":9}', 'has format 9'],
    ['{"kind":"remaining life","formatVersion":2}', 'names no day'],
  ])('%s is refused', (text, reason) => {
    expect(readSavedReport(text, valueOfWords)).toMatchObject({
      ok: false,
      message: expect.stringContaining(reason),
    });
  });
});

describe('the forms', () => {
  test('tell the same: every edit, record and chance stands in each', () => {
    const forms = [
      changeSummaryText(whole),
      changeSummaryMarkdown(whole).replaceAll('\\', ''),
      changeSummaryHtml(whole),
      changeSummaryJson(whole),
    ].map((form) => form.replaceAll('&lt;', '<'));
    for (const form of forms) {
      expect(form).toContain('HISTORY EDITED in 1 place');
      for (const { before: was, after } of whole.history)
        for (const words of [was, after]) expect(form).toContain(words);
      for (const { conveyor } of whole.records) expect(form).toContain(conveyor);
      for (const { on } of whole.effects) expect(form).toContain(on);
    }
    for (const form of forms.slice(0, 3))
      for (const { chances } of whole.forecasts.told)
        for (const chance of [
          chances?.before.condemn,
          chances?.after.condemn,
          chances?.before.contact,
          chances?.after.contact,
        ])
          expect(form).toContain(percent(chance ?? NaN));
  });

  test('the data holds to its schema', () => {
    const validate = new Ajv.default({ strict: false }).compile(changeSummarySchema);
    for (const summary of [whole, added, change(estateTexts), compared(side({}), before)])
      expect(validate(JSON.parse(changeSummaryJson(summary))), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...JSON.parse(changeSummaryJson(whole)), more: 1 })).toBe(false);
  });

  test('a comment holds any change', () => {
    const many = Object.fromEntries(
      Array.from({ length: 900 }, (_, i) => [
        `n${i}.trough`,
        nextLook
          .replace('2026-11-02', formatDay((20_800 + i) as CalendarDay))
          .replace('8900', String(9000 + i)),
      ]),
    );
    const rewritten = Object.fromEntries(
      Object.entries(many).map(([uri, text]) => [uri, text.replace('7.0', '6.0')]),
    );
    const [old, now] = [
      ledgerOf(Object.values(many).join('\n'), 'x') ?? [],
      ledgerOf(Object.values(rewritten).join('\n'), 'x') ?? [],
    ];
    const { edits } = splitHistory(ledgerChanges(old, now), old, [], undefined);
    expect(edits).toHaveLength(900);
    const markdown = changeSummaryMarkdown({
      ...whole,
      history: edits,
      remarks: Array.from({ length: 2000 }, () => 'x'.repeat(100)),
    });
    expect(markdown.length).toBeLessThanOrEqual(65_536);
    expect(markdown).toContain('HISTORY EDITED in 900 places');
  });

  test('nothing that was typed becomes markup or hides', () => {
    const summary = change(edited('looks/BR1-2026-06.trough', 'by the seam', '<img src=x>\u202e@all'));
    expect(changeSummaryHtml(summary)).not.toContain('<img');
    for (const form of [
      changeSummaryText(summary),
      changeSummaryMarkdown(summary),
      changeSummaryHtml(summary),
    ])
      expect(form).not.toContain('\u202e');
  });
});

describe('an estate without its newest records', () => {
  test('is the estate that the older texts make', () => {
    const day = parseDay('2025-12-31') ?? (0 as CalendarDay);
    const older = Object.entries(estateTexts).filter(([uri]) => !uri.includes('2026'));
    const [whole, part] = [Object.entries(estateTexts), older].map(
      (texts) => analyse(texts.map(([uri, text]) => ({ uri, text }))).estate,
    );
    if (!whole || !part) throw new Error('both are there');
    const cut = knownOn(whole, day);
    const rows = ({ inspections, readings, places }: typeof cut): unknown =>
      inspections.map(({ date, firstRow, endRow }, i) => [
        date.day,
        Array.from({ length: endRow - firstRow }, (_, k) => firstRow + k).map((row) => [
          readings.inspection[row] === i,
          places[readings.place[row] ?? -1]?.name,
          readings.kind[row],
          readings.value[row],
        ]),
      ]);
    expect(rows(cut)).toEqual(rows(part));
    expect(cut.readings.count).toBe(4);
    const lives = (estate: typeof cut): unknown =>
      remainingLife(estate, { asOf: day, track: false }).conveyors.map(({ points }) =>
        points.filter(({ readings }) => readings.length > 0).map(({ model }) => model?.rate),
      );
    expect(lives(cut)).toEqual(lives(part));
  });
});

describe('beside the wear', () => {
  const look = 'looks/BR1-2026-06.trough';
  const first = 'looks/BR1-2025-09.trough';
  const row = (file: string, text: Texts, line: string): Texts => ({
    ...text,
    [file]: (text[file] ?? '').replace('gauge ultrasonic', `${line}\n  gauge ultrasonic`),
  });
  const old = row(
    first,
    estateTexts,
    'panel torn at 3 m slight\n  joint open 4 mm at 5 m\n  gearbox temperature 55 degC',
  );
  const beside = (before: Texts, after: Texts): readonly string[] => {
    const [one, other] = [before, after].map((texts) => {
      const report = remainingLife(side(texts).estate, { asOf: on('2026-06-30'), depth: 'hand' });
      return report.conveyors.find(({ conveyor }) => conveyor.name === 'BR1');
    });
    return one && other ? changesBeside(one, other) : ['not there'];
  };

  test('every form tells it, and a report since an earlier day', () => {
    const worse = row(look, old, 'panel torn at 3.1 m serious');
    const summary = compared(side(old), side(worse));
    const told = 'panel torn at 3.10 m: slight → serious';
    expect(summary.beside).toEqual([{ conveyor: 'BR1', changes: [told] }]);
    for (const form of [changeSummaryText, changeSummaryMarkdown, changeSummaryHtml, changeSummaryJson])
      expect(form(summary)).toContain(told);
    const { since } = remainingLife(side(worse).estate, { since: on('2026-01-31'), depth: 'hand' });
    expect(since?.conveyors.find(({ name }) => name === 'BR1')?.changes).toContain(told);
  });

  test('a condition that got worse, wider, or is new or gone is told', () => {
    expect(beside(old, row(look, old, 'panel torn at 3.1 m serious'))).toEqual([
      'panel torn at 3.10 m: slight → serious',
    ]);
    expect(beside(old, row(look, old, 'joint open 9 mm at 5 m'))).toEqual([
      'joint open 9 mm at 5.00 m: 4 mm → 9 mm',
    ]);
    expect(beside(old, row(look, old, 'closed panel torn at 3 m'))).toEqual([
      'no longer open: panel torn at 3.00 m',
    ]);
    expect(beside(old, row(look, old, 'bolts missing 2 at 8 m urgent'))).toEqual([
      'new: 2 bolts missing at 8.00 m, urgent',
    ]);
    expect(beside(old, row(look, old, 'panel torn at 3 m slight'))).toEqual([]);
  });

  test('what was measured anew is told with what it was before', () => {
    const read = row(look, old, 'gearbox temperature 63 degC\n  flight at 4 m depth 51 mm');
    const twice = row(first, read, 'flight at 4 m depth 57 mm');
    expect(beside(old, read)).toEqual([
      'flight depth at 4.00 m: 51 mm on 2026-06-08',
      'gearbox temperature: 63 °C on 2026-06-08 (55 °C on 2025-09-15)',
    ]);
    expect(beside(old, twice)).toContain(
      'flight depth at 4.00 m: 51 mm on 2026-06-08 (57 mm on 2025-09-15), 2 new readings',
    );
    expect(beside(old, row(look, old, 'plate at 4 m thickness 3.6 mm'))).toEqual([
      'plate at 4.00 m: 3.6 mm on 2026-06-08',
    ]);
    expect(
      beside(old, row(look, old, 'current loaded 6.2 A\n  speed 17.5 rpm\n  hold-down at 3 m gap 9 mm')),
    ).toEqual([
      'gap of the hold-down at 3.00 m: 9 mm on 2026-06-08',
      'current loaded: 6.2 A on 2026-06-08',
      'counted speed: 17.5 rpm on 2026-06-08',
    ]);
  });
});
