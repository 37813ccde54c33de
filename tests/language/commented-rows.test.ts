// A reading that stands in a comment was not made: neither lifted off the text nor parsed. And a mark of a comment inside a
// text, or behind two strokes, opens none.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';

const machine = `
plant Tarnholt { }
liner TwoLayer12 { layer ivory 6 mm layer teal 6 mm panel length 1200 mm condemn at 3 mm }
screw Spiral400 { shaftless outside diameter 400 mm pitch 350 mm }
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 220 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-01 meter 0 h
  point P1 at 2 m clock 5:00
  point P2 at 4 m clock 5:00
  point P3 at 6 m clock 5:00
}
`;

/** Thicknesses in mm by point, as the estate has them. */
function readIn(records: string): Readonly<Record<string, number>> {
  const { estate } = analyse([
    { uri: 'plant.trough', text: machine },
    { uri: 'records.trough', text: records },
  ]);
  const { readings, places } = estate;
  return Object.fromEntries(
    Array.from({ length: readings.count }, (_, row) => [
      places[readings.place[row] ?? -1]?.name ?? '?',
      readings.value[row] ?? NaN,
    ]),
  );
}
const inspection = (lines: string, head = ''): string =>
  `inspection DG1 2025-03-14 meter 5000 h {${head}\n${lines}\n}\n`;
const p1 = '  P1 thickness 8.1 mm';
const p2 = '  P2 thickness 8.2 mm';
const p3 = '  P3 thickness 8.3 mm';

test.each([
  ['no comment', inspection(`${p1}\n${p2}\n${p3}`), { P1: 8.1, P2: 8.2, P3: 8.3 }],
  ['around one row', inspection(`${p1}\n  /*\n${p2}\n  */\n${p3}`), { P1: 8.1, P3: 8.3 }],
  ['around the first row', inspection(`  /*\n${p1}\n  */\n${p2}\n${p3}`), { P2: 8.2, P3: 8.3 }],
  ['around the last row', inspection(`${p1}\n${p2}\n  /*\n${p3}\n  */`), { P1: 8.1, P2: 8.2 }],
  ['around all rows', inspection(`  /*\n${p1}\n${p2}\n${p3}\n  */`), {}],
  ['of a block that describes', inspection(`  /**\n${p1}\n  */\n${p2}`), { P2: 8.2 }],
  ['opened at the left edge', inspection(`/*\n${p1}\n*/\n${p2}`), { P2: 8.2 }],
  ['opened behind a row', inspection(`${p1} /* not sure:\n${p2}\n  */\n${p3}`), { P1: 8.1, P3: 8.3 }],
  [
    'opened behind a finished line',
    inspection(`  finding "cracked" /* was "bad"\n${p1}\n  */\n${p2}`),
    { P2: 8.2 },
  ],
  ['opened behind the head', inspection(`${p1}\n  */\n${p2}`, ' /* copied'), { P2: 8.2 }],
  [
    'closed before a row of the same line',
    inspection(`  /*\n${p1}\n  */ ${p2.trim()}\n${p3}`),
    { P2: 8.2, P3: 8.3 },
  ],
  ['of one line before a row', inspection(`  /* again */ ${p1.trim()}\n${p2}`), { P1: 8.1, P2: 8.2 }],
  ['of one line around a row', inspection(`  /* ${p1.trim()} */\n${p2}`), { P2: 8.2 }],
  ['two, with a row between', inspection(`  /*\n${p1}\n  */\n${p2}\n  /*\n${p3}\n  */`), { P2: 8.2 }],
  [
    'with an end of the block in it',
    inspection(`${p1}\n  /*\n  }\n${p2}\n  */\n${p3}`),
    { P1: 8.1, P3: 8.3 },
  ],
  ['with two strokes in it', inspection(`  /* // */\n${p1}\n  /*\n  // */\n${p2}`), { P1: 8.1, P2: 8.2 }],
  ['two strokes before a row', inspection(`${p1}\n  // ${p2.trim()}\n${p3}`), { P1: 8.1, P3: 8.3 }],
  ['two strokes with an opening mark', inspection(`  // see /* there\n${p1}\n${p2}`), { P1: 8.1, P2: 8.2 }],
  [
    'an opening mark in a note',
    inspection(`${p1} "/* wet"\n${p2}\n${p3} "*/"`),
    { P1: 8.1, P2: 8.2, P3: 8.3 },
  ],
  ['a whole inspection', `/*\n${inspection(p1)}*/\n${inspection(p2)}`, { P2: 8.2 }],
  ['the end of one and the start of the next', `${inspection(`${p1}\n/*`)}${inspection('*/')}`, { P1: 8.1 }],
])('%s', (_, records, expected) => {
  expect(readIn(records)).toEqual(expected);
  // As files come from other systems.
  expect(readIn(records.replaceAll('\n', '\r\n'))).toEqual(expected);
});

test('a thickness as fitted is not lost, though the head of an inspection stands in a comment above it', () => {
  const { estate } = analyse([
    { uri: 'plant.trough', text: machine },
    {
      uri: 'records.trough',
      text: `reline DG1 2025-01-01 meter 4000 h {\n  liner TwoLayer12\n  /*\ninspection DG1 2025-03-14 meter 5000 h {\n  */\n${p1}\n}\n`,
    },
  ]);
  expect(estate.relines[0]?.asFitted.map((row) => [row.point.name, row.thickness.value])).toEqual([
    ['P1', 8.1],
  ]);
  expect(estate.readings.count).toBe(0);
});
