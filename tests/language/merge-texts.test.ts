import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blockKinds } from '../../src/domain/model/ledger.js';
import { blocksOf, valueOfWords } from '../../src/language/blocks.js';
import { mergeTexts } from '../../src/language/merge-texts.js';
import { concurrentEdits } from '../kit/concurrent-edits.js';
import { wrongWith } from '../kit/merge-judge.js';

const look = (date: string, rows: readonly string[], meter = 100): string =>
  `inspection DG1 ${date} meter ${meter} h {\n${rows.map((row) => `  ${row}\n`).join('')}}\n`;
const base = look('2026-01-05', ['view downstream', 'P1 thickness 9 mm', 'P2 thickness 8 mm']);

describe('a merge by facts', () => {
  test('of two inspections added to one file has both, whatever the order', () => {
    const [ours, theirs] = [
      `${base}\n${look('2026-02-02', ['P1 thickness 8 mm'])}`,
      `${base}\n${look('2026-03-02', ['P1 thickness 7 mm'])}`,
    ];
    const { text, conflicts } = mergeTexts(base, ours, theirs);
    expect(conflicts).toBe(0);
    expect(
      blocksOf(text)
        ?.map(({ identity }) => identity)
        .sort(),
    ).toEqual(['2026-01-05', '2026-02-02', '2026-03-02'].map((day) => `inspection DG1 ${day}`));
  });

  test('of readings added and changed in one block has all of them, with their comments', () => {
    const ours = base.replace('9 mm', '8.9 mm // read again').replace('}', '  P3 thickness 7 mm\n}');
    const theirs = base.replace(
      '  P2 thickness 8 mm\n',
      '  // behind the gate\n  P2 thickness 7.5 mm\n  P4 colour teal\n',
    );
    const { text, conflicts } = mergeTexts(base, ours, theirs);
    expect(conflicts).toBe(0);
    expect(text).toBe(
      look('2026-01-05', [
        'view downstream',
        'P1 thickness 8.9 mm // read again',
        '// behind the gate',
        'P2 thickness 7.5 mm',
        'P4 colour teal',
        'P3 thickness 7 mm',
      ]),
    );
  });

  test('takes the same change of both sides once', () => {
    const both = `${base}${look('2026-02-02', ['P1 thickness 8 mm'])}`;
    expect(mergeTexts(base, both, `${base}\n\n${look('2026-02-02', ['P1   thickness 8 mm'])}`)).toEqual({
      text: both,
      conflicts: 0,
    });
  });

  test('puts the usual markers around one fact that both changed, and nothing else', () => {
    const { text, conflicts } = mergeTexts(
      base,
      base.replace('9 mm', '8.7 mm'),
      base.replace('9 mm', '8.5 mm').replace('8 mm', '7 mm'),
    );
    expect(conflicts).toBe(1);
    expect(text).toBe(
      'inspection DG1 2026-01-05 meter 100 h {\n  view downstream\n<<<<<<< ours\n  P1 thickness 8.7 mm\n||||||| base\n  P1 thickness 9 mm\n=======\n  P1 thickness 8.5 mm\n>>>>>>> theirs\n  P2 thickness 7 mm\n}\n',
    );
  });

  test('asks where one side takes out what the other changed', () => {
    const { text, conflicts } = mergeTexts(
      base,
      base.replace('  P1 thickness 9 mm\n', ''),
      base.replace('9 mm', '8.5 mm'),
    );
    expect([conflicts, text]).toEqual([1, expect.stringContaining('8.5 mm')]);
    expect(mergeTexts(base, '', base.replace('9 mm', '8.5 mm')).conflicts).toBe(1);
  });

  test.each([
    [
      'a view, and a reading written under the other',
      base.replace('downstream', 'upstream'),
      base.replace('}', '  at 3 m clock 5:00 thickness 7 mm\n}'),
    ],
    [
      'a reading that one side wrote twice',
      base.replace('}', '  P1 thickness 7 mm\n}'),
      base.replace('9 mm', '8 mm'),
    ],
    ['the meter of one look', base.replace('100 h', '110 h'), base.replace('100 h', '120 h')],
  ])('leaves %s to people, as one block', (_, ours, theirs) => {
    const { text, conflicts } = mergeTexts(base, ours, theirs);
    expect(conflicts).toBe(1);
    expect(text.startsWith('<<<<<<< ours\ninspection')).toBe(true);
    for (const side of [ours, theirs]) expect(text).toContain(side);
  });

  test('leaves layers that both rearranged, and steps of an order, to people', () => {
    const liner = 'liner L {\n  layer grey 5 mm\n  layer teal 5 mm\n}\n';
    expect(
      mergeTexts(
        liner,
        liner.replace('}', '  layer blue 2 mm\n}'),
        liner.replace('  layer grey', '  layer ivory 1 mm\n  layer grey'),
      ).conflicts,
    ).toBe(1);
    const job = 'job J {\n  conveyor DG1\n  order {\n    isolate\n    strip run 1\n  }\n}\n';
    expect(
      mergeTexts(
        job,
        job.replace('strip run 1', 'strip run 2'),
        job.replace('isolate\n', 'isolate\n    prove dead\n'),
      ).conflicts,
    ).toBe(1);
    expect(
      mergeTexts(
        job,
        job.replace('strip run 1', 'strip run 2'),
        job.replace('conveyor DG1', 'conveyor DG1\n  crews A'),
      ).conflicts,
    ).toBe(0);
  });

  test('gives a text that does not parse, or has conflicts already, back whole in both versions', () => {
    for (const bad of ['inspection DG1 2026-02-02 meter {{{', '<<<<<<< a\n=======\n>>>>>>> b\n']) {
      const [ours, theirs] = [`${base}${bad}`, base.replace('9 mm', '8 mm')];
      const { text, conflicts } = mergeTexts(base, ours, theirs);
      expect(conflicts).toBe(1);
      for (const side of [ours, theirs]) expect(text).toContain(side);
    }
  });

  test('keeps the line ends of our side', () => {
    const ours = `${base}${look('2026-02-02', ['P1 thickness 8 mm'])}`.replaceAll('\n', '\r\n');
    const { text } = mergeTexts(base, ours, `${base}${look('2026-03-02', ['P1 thickness 7 mm'])}`);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('loses and doubles nothing, whatever two sides do', () => {
    fc.assert(
      fc.property(concurrentEdits, (edits) => {
        const merged = mergeTexts(edits.base.text, edits.ours.text, edits.theirs.text);
        expect(wrongWith(edits, merged)).toBe(undefined);
        // Nobody gains by being second.
        expect(mergeTexts(edits.base.text, edits.theirs.text, edits.ours.text).conflicts > 0).toBe(
          merged.conflicts > 0,
        );
      }),
      { numRuns: 300 },
    );
  });
});

describe('the blocks of a text', () => {
  test('are all that the grammar has: a kind that is not known would be lost', () => {
    const grammar = readFileSync(new URL('../../src/language/troughline.langium', import.meta.url), 'utf8');
    const rules =
      /\nBlock:\s*([^;]+);/
        .exec(grammar)?.[1]
        ?.split('|')
        .map((name) => name.trim()) ?? [];
    const keywords = rules.map((rule) => new RegExp(`\\n${rule}:\\s*'([^']+)'`).exec(grammar)?.[1]);
    expect([...keywords].sort()).toEqual([...blockKinds].sort());
  });

  test('compare by what they say and not by how it is spelled', () => {
    expect(valueOfWords('P1 thickness 0.84 cm')).toBe(valueOfWords('P1   thickness 8.4 mm "seen well"'));
    expect(valueOfWords('P1 thickness 8.4 mm')).not.toBe(valueOfWords('P1 thickness 8.41 mm'));
    expect(valueOfWords('at 12 m clock 05:00 color teal')).toBe(
      valueOfWords('at 12.00 m clock 5:00 colour teal'),
    );
    expect(blocksOf('plant A { risk }')).toBe(undefined);
  });
});
