// A line that cannot be read is told; what only follows from it is not. The rest of its block is read and judged.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { withoutConsequences, type WhatIsUnread } from '../../src/analysis/consequences.js';
import type { Problem } from '../../src/domain/model/problem.js';
import type { Origin } from '../../src/domain/model/origin.js';
import { inSoundEstate } from '../../src/validation/example.js';
import { historyOf } from '../../src/domain/model/history.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { unreadIn } from '../../src/generators/remaining-life/unread-words.js';

const folder = 'examples/7-five-years';
const sound = ['history', 'plant'].map((name) => ({
  uri: `${name}.trough`,
  text: readFileSync(`${folder}/${name}.trough`, 'utf8'),
}));
const job = { uri: 'compost.trough', text: readFileSync('examples/6-screw-change/compost.trough', 'utf8') };

/** The sound texts with one piece changed, which must be there. */
function changed(from: string, to: string, texts = sound): Analysis {
  const found = texts.filter(({ text }) => text.includes(from));
  expect(found, from).toHaveLength(1);
  return analyse(texts.map(({ uri, text }) => ({ uri, text: text.replace(from, to) })));
}
const before = analyse(sound);
const told = (analysis: Analysis): readonly string[] =>
  analysis.findings.map(({ code, origin }) => `${code} line ${analysis.locate(origin).line}`);
const relines = (analysis: Analysis): number => analysis.estate.relines.length;

describe('a reline with a line that cannot be read', () => {
  const errors = (analysis: Analysis): readonly string[] =>
    analysis.findings.filter(({ severity }) => severity === 'error').map(({ code }) => code);

  it('is left out where its liner is lost, and nothing else is told', () => {
    const analysis = changed('  liner Thick12\n  scope run 2', '  linr Thick12\n  scope run 2');
    expect(told(analysis)).toEqual([...told(before), 'TL101 line 95']);
    expect(relines(analysis)).toBe(relines(before) - 1);
    expect(errors(analysis)).toEqual(['TL101']);
  });
  it('is left out where its scope is lost: it must not become the whole liner', () => {
    const analysis = changed('  scope run 2', '  scope run');
    expect(relines(analysis)).toBe(relines(before) - 1);
    expect(errors(analysis)).toEqual(['TL101']);
  });
  it('does not call a colour of the new liner wrong while the reline is not read', () => {
    const colours = (reline: string): readonly string[] =>
      analyse([
        {
          uri: 'a.trough',
          text:
            inSoundEstate('conveyor', '') +
            'liner New10 {\n  material "PE-UHMW"\n  layer yellow 5 mm\n  layer black 5 mm\n  condemn at 2 mm\n' +
            '  bolt M8 pitch 300 mm\n  panel length 1500 mm ± 2 mm\n}\n' +
            `reline DG1 2024-03-11 meter 2000 h {\n  liner New10\n  scope all\n${reline}}\n` +
            'inspection DG1 2026-01-01 meter 8000 h {\n  P1 colour yellow\n}\n',
        },
      ]).findings.flatMap(({ code }) => (['TL101', 'TL117'].includes(code) ? [code] : []));
    expect(colours('')).toEqual([]);
    expect(colours('  wheelbarrow 10 mm\n')).toEqual(['TL101']);
  });
  it('tells what stands open though a colour of the look is none of the liner', () => {
    const codes = (colour: string): readonly string[] =>
      analyse([
        {
          uri: 'a.trough',
          text:
            inSoundEstate('conveyor', '') +
            'inspection DG1 2026-01-01 meter 8000 h {\n  pull cord dead at 6 m urgent\n  panel torn at 4.2 m serious\n}\n' +
            `inspection DG1 2026-03-01 meter 8600 h {\n  P1 colour ${colour}\n  closed brace bent at 2.4 m\n}\n`,
        },
      ]).findings.flatMap(({ code }) => (['TL117', 'TL268', 'TL350', 'TL351'].includes(code) ? [code] : []));
    expect(codes('ivory')).toEqual(['TL268', 'TL350', 'TL351']);
    expect(codes('green')).toEqual(['TL268', 'TL350', 'TL117', 'TL351']);
  });
  it.each([
    // A line of the record, what it becomes, and whether the record stands.
    ['  scope run 2', '  scope run 2\n  wheelbarrow wheel 10 mm', true],
    ['  scope run 2', '  scope run 2\n  P1 thicknes 11.9 mm', true],
    ['  scope run 2', '  scope run 2\n  scpe run 1', true],
    ['  scope run 2', '  scope run 2\n  linr Thick12', true],
    ['  scope run 2', '  scpe run 2', false],
    ['  scope run 2', '  run 2 scpe', false],
    ['  liner Thick12\n  scope run 2', '  linr Thick12\n  scope run 2', false],
    ['  liner Thick12\n  scope run 2', '  liner Thik12\n  scope run 2', false],
  ])('where %j is written %j: stands %s, and the conveyor is in doubt', (from, to, stands) => {
    const analysis = changed(from, to);
    expect(relines(analysis)).toBe(relines(before) - (stands ? 0 : 1));
    expect(errors(analysis)).toHaveLength(1);
    expect(told(analysis).filter((one) => !told(before).includes(one))).toHaveLength(1);
    expect([...(analysis.estate.unread?.partly ?? [])].map(({ name }) => name)).toEqual(['KB7']);
  });
  it('stands without who did it', () => {
    const analysis = changed('  by "Bravo"\n}\n\nreline', '  by Bravo\n}\n\nreline');
    expect(relines(analysis)).toBe(relines(before));
    expect(told(analysis)).toEqual([...told(before), 'TL101 line 99']);
  });
  it('stands beside a line of another block', () => {
    const analysis = changed('  scope run 2', '  scope run 2\n  section S2 6 m');
    expect(relines(analysis)).toBe(relines(before));
  });
  it('and a heading that cannot be read is told alone', () => {
    const analysis = changed('reline KB7 2025-01-13 meter 4120 h {', 'reline KB7 2025-01-13 mter 4120 h {');
    expect(told(analysis)).toEqual([...told(before), 'TL101 line 94']);
  });
});

describe('other records with a line that cannot be read', () => {
  const read = (records: string): ReturnType<typeof analyse> =>
    analyse([
      {
        uri: 'a.trough',
        text: inSoundEstate('estate', records, { liner: 'may be turned end for end' }),
      },
    ]);
  const moved = (lines: string): Analysis =>
    read(`panels moved DG1 2024-10-07 meter 3900 h {\n${lines}\n}\n`);
  it('keep the moves that were read', () => {
    const two = '  panel 3 of run 2 turned end for end\n  P1 thickness 11.4 mm';
    expect(moved(two).findings).toEqual([]);
    const analysis = moved(`${two}\n  panel 4 of run 2 tuned end for end`);
    expect(analysis.estate.panelsMoved.map(({ moves }) => moves.length)).toEqual([1]);
    expect(analysis.findings.map(({ code }) => code)).toEqual(['TL101']);
    expect(analysis.estate.unread?.partly.size).toBe(1);
    // Of a thickness that is lost nobody says that nothing was measured.
    const unmeasured = moved(two.replace('thickness', 'thicknes'));
    expect(unmeasured.estate.panelsMoved).toHaveLength(1);
    expect(unmeasured.findings.map(({ code }) => code)).toEqual(['TL101']);
  });
  it('are left out where nothing is left that happened', () => {
    expect(moved('  panel 3 of run 2 tuned end for end').estate.panelsMoved).toEqual([]);
    const change = (line: string): number =>
      read(`screw change DG1 2024-10-07 meter 3900 h {\n${line}\n}\n`).estate.screwChanges.length;
    expect([change('  screw Spiral400'), change('  scrw Spiral400'), change('  screw Spiral40')]).toEqual([
      1, 0, 0,
    ]);
    expect(change('  screw Spiral400\n  flight 3 m 69 mm')).toBe(1);
  });
});

describe('the report', () => {
  it('says on its first page, in every form, that something of a conveyor is left out', () => {
    const said = 'Something written of KB7 cannot be read and is left out of what stands here.';
    const { estate } = changed('  liner Thick12\n  scope run 2', '  linr Thick12\n  scope run 2');
    const value = remainingLife(estate);
    expect(remainingLifeMarkdown(value)).toContain(said);
    expect(remainingLifeHtml(value)).toContain(said);
    expect(historyOf(estate, estate.conveyors[0]!).remarks[0]).toContain('cannot be read'); // KB7 is there
  });
  it.each([
    ['  P1 thickness 8.6 mm', '  P1 thicknes 8.6 mm'],
    ['  P1 thickness 8.6 mm', '  P1 thickness 8.6'],
    ['  conveys ', '  convys '],
    ['inspection KB7 2023-03-20 meter', 'inspection KB7 2023-03-20 metr'],
    ['inspection KB7 2023-03-20 meter', 'inspection 2023-03-20 meter'],
  ])('is told of %s as %s', (from, to) => {
    const { estate } = changed(from, to);
    expect([...(estate.unread?.partly ?? [])].map(({ name }) => name)).toEqual(['KB7']);
  });
  it('is told nothing where all is read', () => {
    expect(before.estate.unread).toBeUndefined();
    expect(unreadIn({ estate: before.estate, conveyors: [] })).toBeUndefined();
  });
  it('says that a machine is missing', () => {
    const { estate } = changed('  length 14', '  lenght 14');
    expect(unreadIn({ estate, conveyors: [] })).toBe(
      'KB7 is left out: what describes the machine cannot be used.',
    );
  });
});

describe('later errors of the same block', () => {
  it('are all told', () => {
    const analysis = changed(
      '  gauge depth gauge ± 0.5 mm\n  P1 thickness 8.6 mm\n  P2 thickness 9.2 mm\n  P3 thickness 9.4 mm',
      '  gaug depth gauge ± 0.5 mm\n  P1 thickness 8.6\n  P2 thicknes 9.2 mm\n  P33 thickness 9.4 mm',
    );
    const errors = told(analysis).filter((one) => !told(before).includes(one));
    expect(errors).toEqual(['TL101 line 16', 'TL102 line 17', 'TL101 line 18', 'TL116 line 19']);
  });
});

describe('what nobody can do without', () => {
  it('takes its block out, and its name stays known', () => {
    const analysis = changed('  length 14', '  lenght 14');
    expect(analysis.findings.map(({ code }) => code)).toEqual(['TL101']);
    expect(analysis.estate.conveyors).toEqual([]);
  });
  it('may stand in a line that nobody can make out', () => {
    // `layer` left out: half the liner is lost, and a forecast of the other half would be wrong.
    const analysis = changed('  layer teal 4 mm', '  teal 4 mm');
    expect(analysis.findings.map(({ code }) => code)).toEqual(['TL101']);
    expect(analysis.estate.liners.length).toBe(before.estate.liners.length - 1);
  });
  it('is not what a conveyor conveys', () => {
    const analysis = changed('  conveys ', '  carries ');
    expect(analysis.estate.conveyors).toHaveLength(1);
    expect(analysis.findings.filter(({ severity }) => severity === 'error')).toHaveLength(1);
  });
  it('of a job is a step, and is not a tool', () => {
    const tool = changed('  lift limit 150 kg', '  tol "torch"\n  lift limit 150 kg', [job]);
    expect([tool.findings.map(({ code }) => code), tool.estate.jobs.length]).toEqual([['TL101'], 1]);
    const order = '  lift limit 150 kg\n  order {\n    isolate\n    pove dead\n  }';
    const step = changed('  lift limit 150 kg', order, [job]);
    expect([step.findings.map(({ code }) => code), step.estate.jobs.length]).toEqual([['TL101'], 0]);
  });
  it('of a plant may be what its heading declares: its jobs are not told what it lacks', () => {
    const analysis = changed('plant Mireford "', 'plant plant Mireford "', [job]);
    expect(analysis.findings.map(({ code }) => code)).toEqual(['TL101']);
  });
  it('may be a heading without a name: nothing is told of those who use the name', () => {
    for (const [from, to] of [
      ['liner Thick12 ', 'liner '],
      ['conveyor KB7 ', 'conveyor '],
    ] as const)
      expect(changed(from, to).findings.map(({ code }) => code)).toEqual(['TL101']);
  });
  it('keeps the names of points that may stand in a lost line', () => {
    const analysis = changed('  point P1 ', '  pint P1 ');
    expect(analysis.findings.map(({ code }) => code)).toEqual(['TL101']);
  });
});

describe('which findings are held back', () => {
  const text = inSoundEstate(
    'estate',
    [
      'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  P1 thickness 9 mm\n}',
      'inspection DG1 2025-05-12 meter 6500 h {\n  view downstream\n  P1 thickness 8.8 mm\n}',
      'reline DG1 2024-03-11 meter 2000 h {\n}',
      'patch DG1 2024-04-08 at 3 m to 4 m thickness 4 mm',
      'inspection DG2 2025-03-10 meter 6000 h {\n  view downstream\n}',
      'job Summer {\n  conveyor DG1\n  reline all\n}',
    ].join('\n'),
    { neighbour: '' },
  );
  const { estate } = analyse([{ uri: 'estate.trough', text }]);
  const [dg1, dg2] = estate.conveyors;
  const [look, next, other] = estate.inspections;
  const [reline] = estate.relines;
  const [job] = estate.jobs;
  const [patch] = estate.patches;
  if (!dg1 || !dg2 || !look || !next || !other || !reline || !job || !patch) throw new Error('not read');

  const at = (source: number, start: number, end: number): Origin => ({ source, start, end });
  const inside = ({ start, end, source }: Origin): Origin => at(source, start + 1, end - 1);
  const lineAt = ({ source, start }: Origin): string =>
    `${source}:${text.slice(0, start).split('\n').length}`;
  const error = { origin: reline.origin, kind: 'syntax', message: '' } as const;
  const none: WhatIsUnread = { doubted: new Set(), unsound: [], problems: [error], lacksJobs: false };
  const isTold = (code: string, origin: Origin, unread: Partial<WhatIsUnread>): boolean =>
    withoutConsequences(
      [{ code, origin, severity: 'warning', message: '', why: '', todo: '' }],
      estate,
      { ...none, ...unread },
      lineAt,
    ).length === 1;

  it('what is reckoned from all records, in every block of a conveyor with a record that is left out', () => {
    const doubted = new Set([dg1]);
    for (const { origin } of [dg1, look, next, reline, patch, job]) {
      expect(isTold('TL306', inside(origin), { doubted })).toBe(false);
      expect(isTold('TL306', origin, { doubted })).toBe(false);
      expect(isTold('TL306', inside(origin), {})).toBe(true);
      // Of another kind, or where nothing is left out.
      expect(isTold('TL303', inside(origin), { doubted })).toBe(true);
      expect(isTold('TL306', inside(origin), { doubted, problems: [] })).toBe(true);
    }
    for (const { origin } of [dg2, other]) expect(isTold('TL306', inside(origin), { doubted })).toBe(true);
  });

  it('not what lies before, behind, around, or in another text', () => {
    const { source, start, end } = look.origin;
    const unread = { unsound: [look.origin] };
    expect(isTold('TL311', at(source, start, end), unread)).toBe(false);
    for (const origin of [
      at(source, start - 1, end),
      at(source, start, end + 1),
      at(source + 1, start, end),
      at(source, start - 9, start - 2),
      at(source, end + 2, end + 9),
    ])
      expect(isTold('TL311', origin, unread)).toBe(true);
  });

  it('what later looks say of one that cannot be read in full, and what a block lacks', () => {
    const unsound = [look.origin];
    // `TL503` speaks of all looks of a conveyor, `TL311` of the block alone.
    for (const { origin } of [dg1, look, next]) expect(isTold('TL503', origin, { unsound })).toBe(false);
    expect(isTold('TL503', other.origin, { unsound })).toBe(true);
    expect([look, next].map(({ origin }) => isTold('TL311', origin, { unsound }))).toEqual([false, true]);
    expect(isTold('TL503', next.origin, {})).toBe(true);
  });

  it('what a job lacks of its conveyor, its plant, its screw or its liner, and a record of its conveyor', () => {
    for (const { origin } of [dg1, dg1.plant, dg1.screw, dg1.liner])
      expect(isTold('TL462', job.origin, { unsound: [inside(origin), origin] })).toBe(false);
    expect(isTold('TL462', job.origin, { unsound: [dg2.origin] })).toBe(true);
    expect(isTold('TL462', job.origin, {})).toBe(true);
    // A plant that nobody can read is stood in for where its conveyor names it.
    const plantless = { ...dg1, plant: { ...dg1.plant, origin: inside(dg1.origin) } };
    const of = (conveyor: typeof dg1): readonly unknown[] =>
      withoutConsequences(
        [{ code: 'TL466', origin: job.origin, severity: 'warning', message: '', why: '', todo: '' }],
        { ...estate, conveyors: [conveyor], jobs: [{ ...job, conveyor }] },
        none,
        lineAt,
      );
    expect([of(dg1).length, of(plantless).length]).toEqual([1, 0]);
    expect(isTold('TL512', look.origin, { unsound: [dg1.origin] })).toBe(false);
    expect(isTold('TL512', other.origin, { unsound: [dg1.origin] })).toBe(true);
    expect(isTold('TL512', look.origin, { unsound: [look.origin] })).toBe(true);
  });

  it('all but what cannot be read on a line with a value that is told itself', () => {
    const kinds =
      'missing unit, unknown unit, wrong dimension, comma decimal, not a number, out of range, date form, no such date, clock form';
    for (const kind of kinds.split(', '))
      expect(
        isTold('TL403', look.origin, {
          problems: [error, { kind, text: '7.30', origin: look.origin } as Problem], // as far as it is asked for
        }),
        kind,
      ).toBe(false);
    const problems: readonly Problem[] = [error, { kind: 'clock form', text: '7.30', origin: look.origin }];
    expect(isTold('TL403', look.origin, { problems })).toBe(false);
    expect(isTold('TL103', look.origin, { problems })).toBe(true);
    expect(isTold('TL403', next.origin, { problems })).toBe(true);
    // A line that cannot be read at all is no such value.
    expect(isTold('TL403', reline.origin, { problems })).toBe(true);
  });
});

describe('what holds nothing back', () => {
  const reline = (line: string): Analysis =>
    analyse([
      {
        uri: 'a.trough',
        text: inSoundEstate(
          'estate',
          `reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  scope run 3\n  P1 thickness 12.1 mm\n${line}}\n`,
        ),
      },
    ]);
  const codes = ({ findings }: Analysis): readonly string[] => findings.map(({ code }) => code);
  const plain = codes(reline(''));

  it.each([
    'cost 890 EUR',
    'labour 18 h "2 people 9 h instead of 6 h"',
    'took 9 h',
    'next inspection in 4 weeks',
    'invoice 2025-117 "scaffold too"',
    'weather "frost, minus 4"',
  ])('in a record: %s', (line) => {
    expect(plain).toContain('TL337');
    const analysis = reline(`  ${line}\n`);
    expect(codes(analysis).toSorted()).toEqual([...plain, 'TL101'].toSorted());
    expect(analysis.heldBack).toBe(0);
    expect(analysis.estate.relines.length).toBe(1);
    // A page says all the same that something written is not in it.
    expect(analysis.estate.unread?.partly.size).toBe(1);
  });
  it('but what may have been a fact', () => {
    for (const line of ['took out panel 3 of run 2', 'scop run 2', 'labur 3']) {
      const analysis = reline(`  ${line}\n`);
      expect(codes(analysis)).not.toContain('TL337');
      expect(analysis.heldBack).toBeGreaterThan(0);
    }
  });
  it('in an order and a job', () => {
    const told = (line: string, step: string): readonly string[] =>
      codes(
        analyse([
          {
            uri: 'a.trough',
            text: inSoundEstate(
              'estate',
              `job Winter {\n  conveyor DG1\n  reline run 3\n${line}  crews Alpha\n  order {\n    isolate\n${step}    strip run 3 by Alpha\n  }\n}\n`,
            ),
          },
        ]),
      );
    const before = told('', '');
    expect(before.length).toBeGreaterThan(2);
    expect(told('  cost 4200 EUR\n', '    look again after 100 h\n').toSorted()).toEqual(
      [...before, 'TL101', 'TL101'].toSorted(),
    );
  });
  it('a stop between the records', () => {
    const more = [
      ...sound,
      { uri: 'stop.trough', text: 'stopped DC3 2023-03-20 to 2023-03-21 "motor out"\n' },
    ];
    expect(codes(analyse(more)).toSorted()).toEqual([...codes(before), 'TL101'].toSorted());
    expect(analyse(more).heldBack).toBe(0);
  });
});

describe('a condition that cannot be read', () => {
  const look = (line: string): readonly string[] =>
    analyse([
      {
        uri: 'a.trough',
        text: inSoundEstate(
          'estate',
          `inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 9.8 mm\n  P2 thickness 10.1 mm\n${line}}\n` +
            'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 9.3 mm\n  P2 thickness 9.7 mm\n}\n',
        ),
      },
    ]).findings.map(({ code }) => code);

  it('holds back what is told of conditions, and not what readings tell', () => {
    expect(look('')).toContain('TL526');
    expect(look('  drain blocked at 0.2 m slight "hair"\n')).toContain('TL526');
    expect(look('  P3 thicknes 9.1 mm\n')).not.toContain('TL526');
    expect(look('  panel torn at 4 m worn trough\n')).not.toContain('TL526');
  });
});
