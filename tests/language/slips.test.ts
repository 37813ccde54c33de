// What the parser says when it cannot follow: plain words, at the right spot, once for one slip.

import { describe, expect, it } from 'vitest';
import { parseText } from '../../src/language/parse.js';
import { readSheet } from '../../src/language/read.js';
import { conveyor, inspect, machine, plant, problemsOf, read, specifications } from './read.js';

/** The messages, each after the words it points at. */
function slipsOf(text: string): readonly string[] {
  return parseText(text).slips.map(({ start, end, message }) => `${text.slice(start, end)}: ${message}`);
}
const lineOf = (text: string, at: number): number => text.slice(0, at).split('\n').length;
const body = (facts: string): string => conveyor('DG1', facts);

describe('a word that does not belong', () => {
  it('is put beside the word that was meant', () => {
    expect(slipsOf(body('lenght 3 m'))).toEqual([
      'lenght: `lenght` is not something a conveyor says. Did you mean `length`?',
    ]);
  });
  it('inside a fact is told with what should stand there', () => {
    expect(slipsOf('screw S { flight 80 mm bye 25 mm }')).toEqual([
      'bye: `bye` cannot stand here: after `80 mm` comes `by`, `x` or `×`. Did you mean `by`?',
    ]);
  });
  it('where a block begins is put beside the block that was meant, or else lists the blocks', () => {
    expect(slipsOf('gearing A { }')[0]).toMatch(/A block starts with `plant`, `liner`, .* or `job`\.$/);
    expect(slipsOf('plnt A { }')[0]).toMatch(/^plnt: `plnt` begins no block\. Did you mean `plant`\?/);
  });
  it('in a row of an inspection is put beside what can follow a point', () => {
    const slips = slipsOf(inspect('P1 thicknes 8.4 mm'));
    expect(slips).toHaveLength(1);
    expect(slips[0]).toMatch(
      /^thicknes: `thicknes` cannot stand here: after `P1` comes `thickness`, .* or `not seen`\. Did you mean `thickness`\?$/,
    );
  });
  it('is not told for a `colour` without a layer: that is told on its own line, and the rows below are read', () => {
    const rows =
      'P1 colour\n P2 thickness 8 mm\n at 3 m clock 6:00 colour // ?\n by "me"\n P3 colour teal\n P4 color\n}\n';
    const text = `inspection A 2026-01-01 meter 1 h {\n ${rows}`;
    expect(parseText(text).slips.map(({ start, message }) => [lineOf(text, start), message])).toEqual([
      [2, '`colour` names no layer here: write the one that shows behind it, such as `colour teal`.'],
      [4, '`colour` names no layer here: write the one that shows behind it, such as `colour teal`.'],
      [7, '`color` names no layer here: write the one that shows behind it, such as `color teal`.'],
    ]);
    expect(readSheet(text, 0, 'a').rows.count).toBe(2);
  });
  it('at the start of a row, though the parser takes it for a point, is told itself', () => {
    expect(slipsOf('reline C 2026-01-01 meter 5 h { qcope run 1 }')).toEqual([
      'qcope: `qcope` is not something a reline says. Did you mean `scope`?',
    ]);
    expect(slipsOf(inspect('vieww upstream'))).toEqual([
      'vieww: `vieww` is not something an inspection says. Did you mean `view`?',
    ]);
  });
  it('comes with its mend', () => {
    expect(parseText(body('lenght 3 m')).slips[0]?.mend?.text).toBe('length');
    expect(parseText(inspect('P1 thicknes 8.4 mm')).slips[0]?.mend?.text).toBe('thickness');
    expect(parseText(body('foobar 3 m')).slips[0]?.mend?.text).toBeUndefined();
  });
  it('as a step of an order is the word and not what follows', () => {
    expect(slipsOf('job J { conveyor C order { stripp run 2 } }')).toEqual([
      'stripp: `stripp` is not something an order says next. Did you mean `strip`?',
    ]);
  });
  it('that is one of the language cannot be a name', () => {
    expect(slipsOf('liner fit { }')).toEqual([
      'fit: `fit` is a word of the language and cannot be a name; write `Fit` or `Fit1`, say.',
    ]);
  });
});

describe('a line of a new user', () => {
  const job = (lines: string): string => `job J {\n  conveyor C\n  ${lines}\n}`;
  it.each([
    [
      'liner L {\n  bolts M10 every 400 mm\n}',
      'bolts: `bolts` is not something a liner says. Did you mean `bolt M10 pitch 400 mm`?',
    ],
    [
      'plant A {\n  crew Bravo 3 people skills fitting rate 48 EUR/h\n}',
      'rate: `rate` cannot stand here: after `fitting` comes `,` or `cost`, or the line ends. Did you mean `cost`?',
    ],
    [
      inspect('finding "belt"\n  observer "shift fitter"'),
      'observer: `observer` is not something an inspection says. Did you mean `by`?',
    ],
    [
      'plant A {\n  outage Spring27\n  duty 5 h/d\n}',
      'Spring27: This line ends too soon: after `Spring27` comes a date (such as `2026-03-14`). Such a line reads `outage Spring27 2027-04-12 to 2027-04-23 "what for"`.',
    ],
    [
      job('reline all\n  liner TwoLayer10\n  crews Alpha'),
      'liner: A job names the liner behind what is relined: `reline all with TwoLayer10`.',
    ],
    [
      job('order {\n    isolate\n    pove dead\n    off braces all\n  }'),
      'pove: `pove` is not something an order says next. Did you mean `prove dead`?',
      'off: `off` is not something an order says next. Did you mean `braces off all`?',
    ],
    [
      inspect('P1 thickness mm 8.4'),
      'mm: `mm` cannot stand here: after `thickness` comes a number with its unit (such as `8.4 mm`). Did you mean `P1 thickness 8.4 mm`?',
    ],
    [
      inspect('by "me" again'),
      'again: `again` is too much: the line is over with `"me"`. Did you mean `by "me"`?',
    ],
    [
      job('order {\n    patch hot work shielded from 9 m to 10 m by Alpha, Bravo takes 3 h\n  }'),
      'from: The parts of this line stand in another order: `patch from 9 m to 10 m hot work shielded by Alpha, Bravo takes 3 h`.',
    ],
    [
      body('break Gate at 8 m to 9 m allowance 20 mm slide gate "new"'),
      'allowance: The parts of this line stand in another order: `break Gate at 8 m to 9 m slide gate allowance 20 mm "new"`.',
    ],
    [
      inspect('worn clock 4:30 to 7:30 "edge" at 9 m'),
      'clock: The parts of this line stand in another order: `worn at 9 m clock 4:30 to 7:30 "edge"`.',
    ],
    [inspect('P1 P1 colour teal'), 'P1: `P1` stands here twice. Did you mean `P1 colour teal`?'],
  ])('%s', (text, ...told) => {
    expect(slipsOf(text)).toEqual(told);
  });
  it('that nobody can guess is told with what kinds of things the block says, and never with sixty words', () => {
    const [slip = ''] = slipsOf(body('lubricate weekly'));
    expect(slip).toMatch(
      /^lubricate: `lubricate` is not something a conveyor says\. It can say what it is \(`length`, .*`explain words` lists every word\./,
    );
    expect(slip.match(/`incline`/g)).toHaveLength(1);
    for (const line of [
      'closed lamp',
      'serviced lamp 5 m of',
      'lubricate',
      'panel torn lamp lamp',
      'finding lamp lamp',
    ])
      for (const [told = ''] of [slipsOf(inspect(line)), slipsOf(body(line)), slipsOf(job(line))])
        expect(told.match(/`[^`]*`/g)?.length ?? 0, told).toBeLessThan(18);
  });
  it('is mended by its fix', () => {
    for (const [wrong, right] of [
      ['bolts M10 every 400 mm', 'bolt M10 pitch 400 mm'],
      ['bolt M10 M10 pitch 300 mm', 'bolt M10 pitch 300 mm'],
      ['bolt pitch M10 300 mm', 'bolt M10 pitch 300 mm'],
      ['bolt M10 pich 300 mm', 'bolt M10 pitch 300 mm'],
    ]) {
      const text = `liner L {\n  ${wrong ?? ''}\n}`;
      const { start = 0, end = 0, text: put = '' } = parseText(text).slips[0]?.mend ?? {};
      expect(text.slice(0, start) + put + text.slice(end)).toBe(`liner L {\n  ${right ?? ''}\n}`);
    }
  });
});

describe('parts of a line in another order', () => {
  const step = (words: string): string => `job J {\n  conveyor C\n  order {\n    ${words}\n  }\n}`;
  const mended = (text: string): string => {
    const { start = 0, end = 0, text: put = '', isSure } = parseText(text).slips[0]?.mend ?? {};
    expect(isSure).toBe(true);
    return text.slice(0, start) + put + text.slice(end);
  };
  it('come with a fix that guesses nothing', () => {
    expect(mended(step('patch hot work shielded run 1 by Alpha, Bravo takes 3 h after a "at last"'))).toBe(
      step('patch run 1 hot work shielded by Alpha, Bravo takes 3 h after a "at last"'),
    );
    expect(mended(body('drive at head speed 18 rpm power 5.5 kW'))).toBe(
      body('drive at head power 5.5 kW speed 18 rpm'),
    );
  });
  it('leave with whoever did it the text behind `by`', () => {
    const record = 'patch C 2023-10-16 at 3 m to 4 m welded by "a" "b" thickness 4 mm';
    expect(mended(record)).toBe('patch C 2023-10-16 at 3 m to 4 m thickness 4 mm welded by "a" "b"');
  });
  it.each([
    ['patch cold work by Osprey run 1', 'patch run 1 cold work by Osprey'],
    ['patch hot work shielded wet by Osprey run 1', 'patch run 1 hot work shielded wet by Osprey'],
    ['strip cold work run 1 attended by B by A', 'strip run 1 cold work attended by B by A'],
    [
      'patch hot work shielded fire watch 60 min run 1 by A',
      'patch run 1 hot work shielded fire watch 60 min by A',
    ],
  ])('lose no word that keeps people safe: %s', (written, right) => {
    expect(slipsOf(step(written))).toEqual([
      expect.stringContaining(`The parts of this line stand in another order: \`${right}\`.`),
    ]);
    expect(mended(step(written))).toBe(step(right));
  });
  it.each([
    ['patch run 1 coldwork by Osprey', /cold ?work/],
    ['patch run 1 cold wrok by Osprey', /cold/],
    ['patch run 1 shielded by Osprey', /shielded/],
    ['patch run 1 cold work takes Osprey', /cold work/],
  ])('are proposed with what keeps people safe, or not at all: %s', (written, safe) => {
    const slips = slipsOf(step(written)).filter((text) => text.includes('Did you mean'));
    for (const slip of slips) expect(slip.slice(slip.indexOf('Did you mean'))).toMatch(safe);
    for (const { mend } of parseText(step(written)).slips) {
      const text = step(written);
      if (mend) expect(text.slice(0, mend.start) + mend.text + text.slice(mend.end)).toMatch(safe);
    }
  });
  it('of which one is wrong are not put in order', () => {
    expect(slipsOf(step('patch run 1 hot work by Alpha takes'))[0]).not.toContain('another order');
  });
});

it('every block of the language has lines that are known, and a name in messages', () => {
  for (const block of ['plant', 'liner', 'screw', 'conveyor', 'job'])
    expect(slipsOf(`${block} X {\n  lubricate 5\n}`)[0]).toContain(
      `is not something a ${block} says. It can say `,
    );
  for (const record of ['inspection', 'reline', 'screw change', 'panels moved']) {
    const article = record === 'inspection' ? 'an' : 'a';
    const [slip] = slipsOf(`${record} C 2026-01-01 meter 5 h {\n  lubricate 5\n}`);
    expect(slip).toContain(`is not something ${article} ${record} says. It can say `);
  }
});

describe('braces and quotes', () => {
  it('are not told as missing where a line of another block stands', () => {
    const slips = slipsOf('plant A {\n  liner X\n  duty 5 h/d\n}\nplant B { }');
    expect(slips).toHaveLength(1);
    expect(slips[0]).toMatch(
      /^liner: `liner` is not something a plant says\. `liner` is something a conveyor or a reline says\.$/,
    );
  });
  it('an opening brace that is missing: the block is read', () => {
    const text = plant.replace(' {', '');
    expect(slipsOf(text)).toEqual(['": The opening `{` of the plant is missing at the end of this line.']);
    expect(read(text).estate.plants[0]?.crews).toHaveLength(1);
  });
  it('an order without its brace, or without its word', () => {
    const order = (words: string): string =>
      `job J {\n  conveyor C\n  ${words}\n    isolate\n    prove dead\n  }\n}\n`;
    expect(slipsOf(order('order'))).toEqual([
      'r: The opening `{` of the order is missing at the end of this line.',
    ]);
    expect(slipsOf(order('{'))).toEqual([
      '{: The word `order` is missing before this `{`: steps of an order follow.',
    ]);
  });
  it('an order that is not closed ends where the job goes on', () => {
    const text = 'job J {\n  order {\n    isolate\n  tool "torch"\n}\n';
    expect(slipsOf(text)).toEqual(['e: An order is not closed before `tool`: a closing `}` is missing.']);
    const last = 'job J {\n  conveyor C\n  order {\n    isolate\n}\n';
    expect(slipsOf(last)).toEqual(['e: An order is not closed: a closing `}` is missing.']);
  });
  it('a closing brace too many: what follows still belongs to the block', () => {
    const text = plant.replace('  crew', '}\n  crew');
    expect(slipsOf(text)).toEqual(['}: This `}` closes the plant too soon: what follows belongs to it.']);
    expect(read(text).estate.plants[0]?.crews).toHaveLength(1);
  });
  it('a fact behind the last block is no reason to open it again', () => {
    const [slip, ...others] = slipsOf('plant A {\n  duty 5 h/d\n}\n  crew Bravo 3 people\n');
    expect([slip?.startsWith('crew: `crew` begins no block.'), others]).toEqual([true, []]);
  });
  it('a closing brace that is missing keeps the rows that were read off the text', () => {
    const text = inspect('by "me"\n  P1 thickness 8 mm\n  P2 thickness 7 mm').replace('}', '');
    const { rows, problems } = readSheet(text, 0, 'a');
    expect([rows.count, problems.map(({ origin }) => text.slice(0, origin.end).split('\n').length)]).toEqual([
      2,
      [4],
    ]);
  });

  it('a block that is not closed before the next', () => {
    expect(slipsOf(`plant A {\n  duty 5 h/d\n${inspect('P1 colour ivory')}`)).toEqual([
      'd: A plant is not closed before `inspection`: a closing `}` is missing.',
    ]);
  });
  it('a file that ends inside a block', () => {
    expect(slipsOf('plant A {\n  duty 5 h/d')).toEqual([
      'd: The file ends inside a plant: a closing `}` is missing.',
    ]);
  });
  it('a brace too many', () =>
    expect(slipsOf('plant A { } }')).toEqual([
      '}: This `}` closes nothing: the block before it is closed already.',
    ]));
  it('a text without its closing quote', () => {
    expect(slipsOf(inspect('by "day shift\n  P1 colour ivory'))[0]).toBe(
      '": This text has no closing quote on its line: write `"` where it ends.',
    );
  });
  it('feet and inches in one length', () =>
    expect(slipsOf('patch C 2023-10-16 at 21 ft 6 in to 23 ft thickness 4 mm')[0]).toContain(
      'write `258 in` for 21 ft 6 in',
    ));
  it('a comment without its end', () =>
    expect(slipsOf('plant A { } /* so on')[0]).toContain('a closing `*/` is missing'));
  it('letters from elsewhere', () => expect(slipsOf('plant Grünhof { }')[0]).toMatch(/^ü: .*letters A to Z/));
  it('curly quotes', () =>
    expect(slipsOf('plant A “Tarnholt” { }')[0]).toMatch(/^“: Text stands between straight quotes/));
});

describe('after a slip', () => {
  it('the rows of an inspection and the facts of a plant are still read: each stands alone', () => {
    expect(read(machine, inspect('P1 thicknes 8.4 mm\n  P2 thickness 8 mm')).estate.readings.count).toBe(1);
    expect(read('plant A {\n  dutty 5 h/d\n  crew Alpha 4 people\n}').estate.plants[0]?.crews).toHaveLength(
      1,
    );
  });
  it('a machine, a specification or a reline is left out: what is lost may change all the rest', () => {
    expect(read(specifications, body('brake Gate at 12 m slide gate')).estate.conveyors).toEqual([]);
    expect(
      read('liner L { layer ivory 6 mm layr teal 6 mm panel length 1200 mm condemn at 3 mm }').estate.liners,
    ).toEqual([]);
    expect(read(machine, 'reline DG1 2025-01-01 meter 5 h { scop run 1 }').estate.relines).toEqual([]);
  });
  it('behind a closed block, the block is not touched', () => {
    expect(read(specifications, body('') + 'so much for DG1').estate.conveyors).toHaveLength(1);
  });
  it('that leaves facts without their block, nothing is declared twice', () => {
    const headless = conveyor('DG1').replace('conveyor DG1 {', '{');
    expect(problemsOf(specifications, headless).map((problem) => problem.kind)).toEqual(['syntax']);
  });
  it('in a header that is being typed, its name is known', () => {
    expect(
      problemsOf(machine, 'conveyor DG2', inspect('P1 colour ivory', 'DG2 2026-03-14 meter 8120 h')).map(
        (problem) => problem.kind,
      ),
    ).toEqual(['syntax']);
  });
  it('the next block is still read', () => {
    expect(read('plant A { duty\n}\nplant B { }').estate.plants.map((one) => one.name)).toEqual(['A', 'B']);
  });
  it('what only follows from it is not told', () => {
    expect(slipsOf(inspect('P1 thicknes 8.4 mm\n  P2 thickness 8 mm'))).toHaveLength(1);
    expect(slipsOf('this is no text of ours at all, it is a letter to somebody else')).toHaveLength(1);
    // A brace too many in the middle of a block makes nonsense of every fact behind it.
    expect(slipsOf(plant.replace('  crew', '}\n  crew'))).toHaveLength(1);
  });
  it('a second slip, behind facts that were understood, is', () => {
    expect(slipsOf(body('lenght 3 m\n  fill 0.4\n  risck 5 %\n  fill 0.4'))).toHaveLength(2);
  });
  it('three hundred are enough', () => {
    const many = slipsOf(body('lenght 3 m\n  fill 0.4\n  '.repeat(2000)));
    expect(many).toHaveLength(301);
    expect(many.at(-1)).toContain('what follows is not read until those above are mended');
  });
});

it('never names a token or a rule', () => {
  const wrong = [
    'plant',
    'plant A',
    'plant A {',
    'plant A { duty',
    'plant A { duty }',
    'plant A { outage }',
    'plant A { outage X',
    'plant A { outage X 2027-01-01',
    'plant A { shift',
    'liner L { layer',
    'liner L { layer teal',
    'liner L { joint',
    'screw S { flight 3 mm',
    'conveyor C { drive at',
    'conveyor C { break B at',
    'conveyor C { break B at 3 m',
    'conveyor C { point P every',
    'conveyor C { isolation Q',
    'inspection',
    'inspection C',
    'inspection C 2026-01-01',
    'inspection C 2026-01-01 meter 3 h { P1',
    'inspection C 2026-01-01 meter 3 h { at 3 m',
    'inspection C 2026-01-01 meter 3 h { hold-down',
    'reline C 2026-01-01 meter 3 h { scope',
    'job J { order {',
    'job J { order { a',
    'job J { reline',
    '{',
    '}',
    '"',
    '3 mm',
  ];
  for (const text of wrong) {
    const slips = slipsOf(text);
    expect(slips, text).not.toEqual([]);
    for (const slip of slips)
      expect(slip, text).not.toMatch(/\b[A-Z]{2,}\b|token|Token|Fact\b|undefined|NaN|rule/);
  }
});
