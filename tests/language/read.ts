// Texts for tests of the language, and the shortest ways from text to what it was understood as.

import { assemble, type Assembled } from '../../src/language/assemble.js';
import { readSheet } from '../../src/language/read.js';
import type { Sheet } from '../../src/language/sheet.js';
import type { Problem, ProblemKind } from '../../src/domain/model/problem.js';

export const plant = `plant Tarnholt "Tarnholt Organics" {
  duty 110 h/week ± 15 %
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people skills fitting
  access unit MP1 reach 12 m
}
`;
export const liner = `liner TwoLayer12 {
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm
  condemn at 3 mm
}
`;
export const screw = `screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}
`;
const needed = {
  plant: 'plant Tarnholt',
  length: 'length 22.4 m',
  incline: 'incline 24 deg',
  trough: 'trough inside radius 226 mm side height 260 mm plate 4 mm',
  screw: 'screw Spiral400',
  liner: 'liner TwoLayer12',
};

/** A conveyor with all it needs, `facts` besides; a needed fact is changed or, by '', left out through `instead`. */
export function conveyor(name: string, facts = '', instead: Partial<typeof needed> = {}): string {
  return `conveyor ${name} {\n  ${Object.values({ ...needed, ...instead }).join('\n  ')}\n  ${facts}\n}\n`;
}

export const specifications = plant + liner + screw;
/** Everything for one conveyor, DG1, with points P1 and P2 and a break Gate. */
export const machine =
  specifications +
  conveyor(
    'DG1',
    'break Gate at 12.4 m to 12.9 m slide gate allowance 12 mm\n  point P1 at 6.2 m clock 7:30\n  point P2 at 8 m clock 6:00',
  );

export const inspect = (rows: string, head = 'DG1 2026-03-14 meter 8120 h'): string =>
  `inspection ${head} {\n  ${rows}\n}\n`;

export function sheetOf(text: string, source = 0, uri = `text${source}.trough`): Sheet {
  return readSheet(text, source, uri);
}

export function read(...texts: readonly string[]): Assembled {
  return assemble(texts.map((text, source) => sheetOf(text, source)));
}

/** Problems of the texts taken together, each with the words it points at. */
export function problemsOf(...texts: readonly string[]): readonly (Problem & { readonly at: string })[] {
  return read(...texts).problems.map((problem) => ({
    ...problem,
    at: texts[problem.origin.source]?.slice(problem.origin.start, problem.origin.end) ?? '',
  }));
}

/** The only problem, which must be of this kind. */
export function only<K extends ProblemKind>(
  kind: K,
  ...texts: readonly string[]
): Extract<Problem, { kind: K }> & { readonly at: string } {
  const problems = problemsOf(...texts);
  const [first] = problems;
  if (problems.length !== 1 || first?.kind !== kind)
    throw new Error(`Expected one problem "${kind}", got ${JSON.stringify(problems, null, 1)}`);
  return first as Extract<Problem, { kind: K }> & { readonly at: string }; // its kind has just been compared
}
