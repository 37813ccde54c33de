// Small blocks of every kind, each line of them damaged in some of the ten ways: what is told of it, which words it points at,
// what is proposed, and which lines are left out. The whole list stands in one-line-off.txt and is read before it is accepted;
// TROUGHLINE_RENEW=1 writes it anew. How often a damage is told once and alone is counted in damaged-lines.test.ts and in
// tests/bench/damaged-lines.ts; here it is what is said.

import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createTroughlineServices } from '../../src/language/module.js';
import { recover } from '../../src/language/recover.js';
import { damageLine, drawer, linesOf, ways } from './damage.js';

const services = createTroughlineServices().troughline;

const texts: Readonly<Record<string, string>> = {
  'a plant and its liner': `plant Mireford "Mireford works" {
  duty 110 h/week
  crew Alpha 4 people skills fitting, welding cost 48 EUR/h
  outage Spring27 2027-04-12 to 2027-04-23 "yearly stop"
}

liner Thick12 "two colours" {
  layer ivory 6 mm
  layer teal 6 mm
  bolt M10 pitch 400 mm
  condemn at 4 mm
}
`,
  'a screw and a conveyor': `screw Sp350 {
  pitch 350 mm
  flight 80 mm by 25 mm
}

conveyor KB7 "bark to the store" {
  plant Mireford
  length 14 m
  incline 20 deg
  drive at head power 5.5 kW speed 18 rpm
  break Gate at 8 m to 9 m slide gate allowance 20 mm "new"
  hold-down H1 at 3 m
  point P1 at 3.2 m clock 6:00
}
`,
  'records of a machine': `inspection KB7 2023-03-20 meter 1200 h {
  gauge depth gauge ± 0.5 mm
  P1 thickness 8.6 mm
  at 3.2 m clock 7:30 colour teal "scratched"
  P2 not seen "covers on"
  panel torn at 4 m serious "edge"
  by "Bravo"
}

reline KB7 2025-01-13 meter 4120 h {
  liner Thick12
  scope run 2
}
patch KB7 2025-03-10 at 3 m to 4 m thickness 4 mm welded by "Alpha"
`,
  'a job with its order': `job Spring {
  conveyor KB7
  reline all with Thick12
  order {
    isolate by Alpha
    prove dead
    g: gate shut Gate by Alpha
    strip run 1 by Alpha after g takes 3 h
    patch run 1 by Alpha, Bravo hot work shielded wet
  }
  lift limit 150 kg
}

plant Other "other" {
  duty 5 h/d
}
`,
};

/** A list of more than six words: which words a block has is held elsewhere, and a new one is no change of this. */
const allTheWords = /(`[a-z][^`]*`)(?:, `[^`]*`){5,} or (`[^`]*`|the name of \w+ \w+|a name)/g;

/** What is told, and every line that is read otherwise than it stands. */
function told(text: string): readonly string[] {
  const lexed = services.parser.Lexer.tokenize(text);
  const { slips, left, names, text: kept } = recover(text, lexed, services.Grammar);
  const numberOf = (at: number): number => text.slice(0, at).split('\n').length;
  const [before, after] = [text, kept].map((of) => of.split('\n').map((line) => line.trim()));
  const gone = (before ?? []).flatMap((line, i) => (line !== '' && after?.[i] === '' ? [i + 1] : []));
  return [
    ...slips.flatMap(({ start, end, message, mend }) => [
      `  ${numberOf(start)} «${text.slice(start, end)}» ${message.replace(allTheWords, '$1 … $2')}`,
      ...(mend
        ? [`    «${text.slice(mend.start, mend.end)}» → «${mend.text}»${mend.isSure ? ', sure' : ''}`]
        : []),
    ]),
    ...(after ?? []).flatMap((line, i) =>
      line === before?.[i] || line === '' ? [] : [`  reads ${i + 1}: ${line}`],
    ),
    ...(gone.length > 0 ? [`  does not read ${gone.join(' ')}`] : []),
    ...left.map(
      (line) =>
        `  without «${text.slice(line.start, line.end)}» of ${line.block}: ${line.isForeign ? 'foreign' : line.first.join('|')}; ${line.names.join(' ')}`,
    ),
    ...names.map(
      ({ block, name, start, end }) => `  half ${block ?? '?'} ${name} «${text.slice(start, end)}»`,
    ),
  ];
}

/** What else goes wrong with braces, line ends and signs of other keyboards around a line. */
function misplaced(lines: readonly string[], at: number): readonly (readonly [string, readonly string[]])[] {
  const [line = '', next = ''] = lines.slice(at, at + 2);
  const rest = [lines.slice(0, at), lines.slice(at + 1)] as const;
  const put = (...here: readonly string[]): readonly string[] => [...rest[0], ...here, ...rest[1]];
  const joined = [...rest[0], `${line} ${next.trim()}`, ...rest[1].slice(1)];
  return [
    ['a brace closed behind it', put(line, '}')],
    ['a brace closed behind it on its line', put(`${line} }`)],
    ['a brace opened behind it', put(line, '  {')],
    ['a heading that nobody knows behind it', put(line, '  somewhere else {', '    said 5 mm', '  }')],
    ['another block in the middle, outside', put(line, 'plant', 'plant Far {', '  duty 5 h/d')],
    ['two lines on one', joined],
    ['two lines on one, the first with a slip', joined.with(at, (joined[at] ?? '').replace(/[aeiou]/, ''))],
    ['two lines on one, the second with a slip', joined.with(at, `${line} ${next.trim().slice(1)}`)],
    ['a sign that means nothing', put(line.replace(/ (?=\S+$)/, ' § '))],
    ['two such signs at its ends', put(`§ ${line.trim()} ¤`)],
    ['no indent and a slip', put(line.trim().replace(/[aeiou]/, ''))],
  ];
}

const others = ['  fill 0.4', '  scope all', '  section S2 6 m', '  lift limit 80 kg'];
const file = 'tests/language/one-line-off.txt';
const written = readFileSync(file, 'utf8');
const fresh: string[] = [];

for (const [name, text] of Object.entries(texts))
  test(name, () => {
    expect(told(text)).toEqual([]);
    // The same damages whatever the seed of the run: the list is of these.
    const draw = drawer(1200);
    const lines = text.split('\n');
    const parts = linesOf(text).flatMap((at) =>
      ways.flatMap((way) => {
        const line = lines[at] ?? '';
        const damaged = damageLine(line, way, draw, others);
        if (damaged === undefined || damaged === line) return [];
        const now = lines.with(at, damaged).join('\n');
        return [`# ${name}, line ${at + 1}, ${way}: ${damaged.trim().replace('\n', ' ⏎')}`, ...told(now)];
      }),
    );
    const more = linesOf(text).flatMap((at) =>
      misplaced(lines, at)
        .filter((_, way) => (way + at) % 3 === 0)
        .flatMap(([way, now]) => [`# ${name}, line ${at + 1}, ${way}`, ...told(now.join('\n'))]),
    );
    const all = `${[...parts, ...more].join('\n')}\n`;
    fresh.push(all);
    if (!process.env['TROUGHLINE_RENEW']) expect(written).toContain(all);
  });

test('every part of the list is of a text that is damaged', () => {
  if (process.env['TROUGHLINE_RENEW']) writeFileSync(file, fresh.join('\n'));
  else expect(written).toBe(fresh.join('\n'));
});
