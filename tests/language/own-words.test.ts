// People write a part, what is wrong with it or was done to it, and a place, in words of their own. Whatever they write and wherever:
// the line is read, or the answer offers one that reads in that place (or says in which block), with everything in it that was said,
// about the same part. The lines are put together from lists of the trade, not from our grammar.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseText } from '../../src/language/parse.js';
import { readSheet } from '../../src/language/read.js';

/** As people call them; the name that the language has for the part, where it is another one. */
const parts: Readonly<Record<string, string>> = {
  panel: 'panel',
  panels: 'panel',
  liner: 'liner',
  bolts: 'bolts',
  bolt: 'bolts',
  spiral: 'spiral',
  flight: 'flight',
  'hold-down': 'hold-down',
  'hold-down block': 'hold-down',
  brace: 'brace',
  cover: 'cover',
  covers: 'cover',
  'cover bolts': 'cover',
  hatch: 'hatch',
  'hatch hinge': 'hatch',
  gate: 'gate',
  'gate seal': 'gate',
  trough: 'trough',
  'trough flange': 'trough',
  drive: 'drive',
  'drive plate': 'drive plate',
  'drive plate bolts': 'drive plate',
  gearbox: 'gearbox',
  'gearbox breather': 'gearbox',
  motor: 'motor',
  'motor bearings': 'motor',
  coupling: 'coupling',
  guard: 'guard',
  'emergency stop': 'emergency stop',
  'pull cord': 'pull cord',
  interlock: 'interlock',
  'zero-speed sensor': 'zero-speed sensor',
  'level probe': 'level probe',
  'blockage switch': 'blockage switch',
  cable: 'cable',
  walkway: 'walkway',
  sign: 'sign',
  'coupling guard': 'guard',
  'tail bearing': 'tail bearing',
  'thrust bearing': 'thrust bearing',
  'spiral weld': 'spiral',
};

const seen = (
  'bent loose worn rubbing leaking noisy tightened cracked corroded missing blocked broken rusted scored vibrating hot ' +
  'jammed seized dented buckled torn chipped frayed squeaking dirty wet overheating misaligned sagging perforated ' +
  'shifted lifted gone stuck damaged ovalised pitted knocking rattling out-of-round'
).split(' ');
const done =
  'renewed replaced greased aligned tightened welded repaired cleaned straightened adjusted changed lubricated freed refitted'.split(
    ' ',
  );

const places: readonly string[] = [
  '',
  'at 9.5 m',
  'at H2',
  'at Gate',
  'at panel 2 of run 2',
  'on panel 2 of run 2',
  'panel 2 of run 2',
  'from 18 m to 19.5 m',
  'at 18 m to 19.5 m',
  'clock 5:00',
  'at 9.5 m clock 5:00',
  'at 9.5 m left side',
  'on the left',
  'upstream',
  'at the head',
  'near the gate at 31 ft',
  'between 3 m and 4 m',
];
const measures: readonly string[] = ['', '2', '3 mm', '25 %', 'by 12 mm'];
const ends: readonly string[] = [
  '',
  'slight',
  'serious',
  '"as found by the crew"',
  'urgent "photographed"',
  'by "fitter"',
  'by "fitter" "300 N·m"',
  'again',
];

interface Where {
  readonly head: string;
  readonly tail: string;
}

const contexts: Readonly<Record<string, Where>> = {
  'a look': { head: 'inspection DG1 2026-03-14 meter 8120 h {\n', tail: '\n}\n' },
  'a reline': { head: 'reline DG1 2026-03-14 meter 8120 h {\n', tail: '\n}\n' },
  'a screw change': { head: 'screw change DG1 2026-03-14 meter 8120 h {\n', tail: '\n}\n' },
  'a record of work': { head: 'serviced DG1 2026-03-14 ', tail: '\n' },
  'no block': { head: '', tail: '\n' },
  'a job': { head: 'job J1 {\n', tail: '\n}\n' },
};

/** What is wrong with the answer; undefined where nothing is. */
function fault(line: string, part: string, { head, tail }: Where): string | undefined {
  const text = head + line + tail;
  const { slips } = parseText(text);
  if (slips.length === 0) return undefined;
  const [slip, ...more] = slips;
  if (!slip || more.length > 0) return `told ${slips.length} times`;
  if (!slip.mend && isOfALook(slip.message, line)) return undefined;
  const offered = slip.mend
    ? text.slice(0, slip.mend.start) + slip.mend.text + text.slice(slip.mend.end)
    : inItsBlock(slip.message);
  if (offered === undefined) return `offers nothing: ${slip.message}`;
  const isBlock = head.endsWith('{\n');
  const own = slip.mend ? offered.slice(isBlock ? head.length : 0, offered.length - tail.length) : offered;
  const problems = readSheet(offered, 0, 'a').problems;
  if (problems.length > readSheet(isBlock ? head + tail : '', 0, 'a').problems.length)
    return `offers what does not read: ${own}`;
  const lost = lostIn(isBlock ? line : head + line, own);
  // A liner is torn where one of its panels is, and a flight is the spiral.
  const wider: Readonly<Record<string, string>> = { liner: 'panel', flight: 'spiral' };
  const names = [part, ...(wider[part] === undefined ? [] : [wider[part]])];
  const plain = own.replace(/"[^"]*"/g, '');
  if (!own.startsWith('//') && !names.some((each) => plain.includes(each))) return `is not about it: ${own}`;
  return lost.length > 0 ? `loses ${lost.join(', ')}: ${own}` : undefined;
}

/** It names the block that it belongs in, where it reads as it stands. */
function isOfALook(message: string, line: string): boolean {
  const { head, tail } = contexts['a look'] ?? { head: '', tail: '' };
  return /is something an inspection says/.test(message) && parseText(head + line + tail).slips.length === 0;
}

/** `inspection DG1 2026-03-14 meter 8120 h {`, the line, `}`: as one text. */
function inItsBlock(message: string): string | undefined {
  const pieces = [...message.matchAll(/`([^`]*)`/g)].map(([, piece]) => piece ?? '');
  const opens = pieces.findIndex((piece) => piece.endsWith('{'));
  return opens < 0 || pieces[opens + 1] === '}' ? undefined : pieces.slice(opens).join('\n');
}

const joining = new Set('at on the by and near from to between again of'.split(' '));
/** One word for another that has its sense; each by hand. */
const sense: Readonly<Record<string, readonly string[]>> = {
  liner: ['panel'],
  flight: ['spiral'],
  jammed: ['stuck'],
  seized: ['stuck'],
  dented: ['bent'],
  buckled: ['bent'],
  gone: ['missing'],
  noisy: ['noise'],
  replaced: ['renewed'],
  changed: ['renewed'],
  lubricated: ['greased'],
  loose: ['lifted'],
  leaking: ['leak', 'leaking'],
  broken: ['bent'],
  weld: ['weld'],
};

/** Numbers with their units, names and words that are in no part of the offered line. */
function lostIn(written: string, offered: string): readonly string[] {
  const flat = offered
    .toLowerCase()
    .replace(/["`:;,]/g, ' ')
    .replace(/\s+/g, ' ');
  const plain = written.toLowerCase().replace(/["]/g, ' ').replace(/\s+/g, ' ').trim();
  const numbers = plain.match(/(?<![a-z0-9-])\d+(?:\.\d+)?(?: (?:mm|m|ft|%|n·m)(?![a-z]))?/g) ?? [];
  const words = plain.match(/[a-z][a-z0-9-]*/g) ?? [];
  const has = (one: string): boolean =>
    new RegExp(`(?<![a-z0-9.])${one.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![0-9])`).test(flat);
  return [
    ...numbers.filter((one) => !has(one)),
    ...words.filter(
      (one) =>
        !joining.has(one) &&
        !has(one) &&
        !has(one.replace(/s$/, '')) &&
        !(sense[one] ?? []).some((each) => has(each)),
    ),
  ];
}

const lines = fc
  .record({
    part: fc.constantFrom(...Object.keys(parts)),
    word: fc.constantFrom(...seen, ...done),
    measure: fc.constantFrom(...measures, '', ''),
    place: fc.constantFrom(...places),
    end: fc.constantFrom(...ends),
    isBefore: fc.boolean(),
    head: fc.constantFrom('', '', '', 'closed ', 'not seen '),
  })
  .map(({ part, word, measure, place, end, isBefore, head }) => {
    const what = head + (isBefore ? part : `${part} ${word}`);
    const rest = [...(isBefore ? [place, word, measure] : [measure, place]), end].filter(Boolean).join(' ');
    return { part: parts[part] ?? '', what, rest, line: `${what} ${rest}`.trim() };
  });

const rounds = Number(process.env['TROUGHLINE_ROUNDS'] ?? 250);

test.each(Object.entries(contexts))('a line in words of one’s own, in %s', (name, where) => {
  const faults: string[] = [];
  for (const { part, line, what, rest } of fc.sample(lines, { numRuns: rounds, seed: 2702 })) {
    // Outside any block people name the conveyor and the day, behind what it is or first.
    const said = name === 'no block' ? `${what} DG1 2026-03-14 ${rest}`.trim() : line;
    const wrong = fault(said, part, where);
    if (wrong !== undefined) faults.push(`${said}\n      (${part}) ${wrong}`);
  }
  expect(
    faults.length === 0
      ? ''
      : `${faults.length} of ${rounds}\n${faults.slice(0, Number(process.env['SHOW'] ?? 25)).join('\n')}`,
  ).toBe('');
});
