// A day that nobody knows exactly is not read as a sure one: each way of writing it is answered with what to write, and where the
// doubt is noted; what the repair writes reads, and says the doubt on the report.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Finding } from '../../src/validation/finding.js';
import { inSoundEstate } from '../../src/validation/example.js';

const look = (day: string): string =>
  `inspection DG1 ${day} meter 3600 h {\n  view downstream\n  flight at 3 m depth 70 mm\n}`;
const estate = (records: string): string => inSoundEstate('estate', records);

function told(text: string): readonly Finding[] {
  return analyse([{ uri: 'estate.trough', text }]).findings.filter(({ code }) => code === 'TL101');
}

describe('a day in doubt', () => {
  test.each([
    ['~2024-09-09', '2024-09-09'],
    ['≈ 2024-09-09', '2024-09-09'],
    ['2024-09-09?', '2024-09-09'],
    ['about 2024-09-09', '2024-09-09'],
    ['ca. 2024-09-09', '2024-09-09'],
    ['2024-09-09 ± 7 d', '2024-09-09'],
    ['2024-09', '2024-09-15'],
    ['2024-09-??', 'of a month its middle'],
    ['September 2024', 'of a month its middle'],
    ['summer 2024', 'of a month its middle'],
    ['early September 2024', 'of a month its middle'],
  ])('%s', (written, likeliest) => {
    const [first] = told(estate(look(written)));
    expect(first?.message).toContain('write the likeliest');
    expect(first?.message).toContain(likeliest);
    expect(first?.message).toContain('finding "the day is not certain"');
  });

  test.each([
    look('about 2024-09-09'),
    'patch DG1 around 2024-09-09 at 1 m to 2 m thickness 4 mm',
    'serviced DG1 ca. 2024-09-09 gearbox oil changed',
    'serviced DG1 ca. 2024-09-09 gearbox oil changed by "fitter"',
  ])('%s: the repair keeps the doubt', (records) => {
    const text = estate(records);
    const [edit] = told(text)[0]?.fixes?.[0]?.edits ?? [];
    if (!edit) throw new Error('a repair is offered');
    const mended = text.slice(0, edit.origin.start) + edit.text + text.slice(edit.origin.end);
    expect(told(mended)).toEqual([]);
    expect(mended).toContain('"day not certain: about 2024-09-09"');
  });

  test('no line is offered that does not read either', () => {
    for (const record of ['gearbox 7 oil changed', 'spiral at 1 m "welded"'])
      expect(told(estate(`serviced DG1 ca. 2024-09-09 ${record}`))[0]?.fixes ?? []).toEqual([]);
  });

  test('nothing is made up where no day is written', () => {
    expect(told(estate(look('summer 2024')))[0]?.fixes ?? []).toEqual([]);
    expect(told(estate(look('2024-09')))[0]?.fixes ?? []).toEqual([]);
  });

  test('a question mark elsewhere is not a day in doubt', () => {
    const text = estate(look('2024-09-09').replace('70 mm', '70 mm?'));
    expect(told(text).map(({ message }) => message)).toEqual([
      '`?` has no meaning here. In quotes it can: `flight at 3 m depth 70 mm "?"`.',
    ]);
  });
});
