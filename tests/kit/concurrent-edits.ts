// Two people edit one file of records at once, at random: what each did is kept as a model, so that what a merge must hold is
// reckoned without looking at any text.

import fc from 'fast-check';

/** A file as what it says: by block, by fact. */
export type Said = ReadonlyMap<string, ReadonlyMap<string, string>>;

export interface Edited {
  readonly said: Said;
  readonly text: string;
}

export interface Concurrent {
  readonly base: Edited;
  readonly ours: Edited;
  readonly theirs: Edited;
  /** How many edits both sides made. */
  readonly edits: number;
}

type Edit =
  | { readonly kind: 'reading'; readonly block: number; readonly fact: number; readonly value: number }
  | { readonly kind: 'take out'; readonly block: number; readonly fact: number }
  | { readonly kind: 'look'; readonly day: number; readonly readings: number; readonly value: number }
  | { readonly kind: 'drop look'; readonly block: number }
  | { readonly kind: 'meter'; readonly block: number; readonly value: number }
  | { readonly kind: 'view'; readonly block: number }
  | { readonly kind: 'remark'; readonly block: number; readonly value: number };

const small = fc.nat({ max: 11 });
const edit: fc.Arbitrary<Edit> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('reading' as const),
      block: small,
      fact: small,
      value: fc.nat({ max: 99 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('take out' as const), block: small, fact: small }) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('look' as const),
      day: small,
      readings: fc.nat({ max: 3 }),
      value: fc.nat({ max: 99 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('drop look' as const), block: small }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('meter' as const), block: small, value: fc.nat({ max: 9 }) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('view' as const), block: small }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('remark' as const), block: small, value: fc.nat({ max: 9 }) }),
  },
);

const layout = fc.record({
  indent: fc.constantFrom('  ', '\t', '', '    '),
  eol: fc.constantFrom('\n', '\n', '\n', '\r\n'),
  gap: fc.nat({ max: 2 }),
  comments: fc.boolean(),
  last: fc.boolean(),
  reversed: fc.boolean(),
});
type Layout = typeof layout extends fc.Arbitrary<infer T> ? T : never;

export const concurrentEdits: fc.Arbitrary<Concurrent> = fc
  .record({
    begin: fc.array(edit, { maxLength: 8 }),
    ours: fc.array(edit, { minLength: 1, maxLength: 6 }),
    theirs: fc.array(edit, { minLength: 1, maxLength: 6 }),
    layouts: fc.tuple(layout, fc.option(layout), fc.option(layout)),
  })
  .map(({ begin, ours, theirs, layouts: [own, one, other] }) => {
    const base = begin.reduce(applied, start());
    const [o, t] = [ours.reduce(applied, base), theirs.reduce(applied, base)];
    return {
      base: { said: base, text: written(base, own) },
      ours: { said: o, text: written(o, one ?? own) },
      theirs: { said: t, text: written(t, other ?? own) },
      edits: ours.length + theirs.length,
    };
  });

function start(): Said {
  const look = (day: number): readonly [string, ReadonlyMap<string, string>] => [
    `inspection DG1 ${dayText(day)}`,
    new Map([
      ['meter', `meter ${1000 + day} h`],
      ['view', 'view downstream'],
      ['P1', 'P1 thickness 9.1 mm'],
      ['P2', 'P2 thickness 8.2 mm'],
    ]),
  ];
  return new Map([look(0), look(1)]);
}

function dayText(day: number): string {
  return `2026-01-${String(day + 1).padStart(2, '0')}`;
}

function applied(said: Said, edit: Edit): Said {
  const names = [...said.keys()];
  if (edit.kind === 'look') {
    const name = `inspection DG1 ${dayText(edit.day)}`;
    if (said.has(name)) return said;
    const facts = Array.from({ length: edit.readings + 1 }, (_, i): [string, string] => [
      `P${i + 1}`,
      `P${i + 1} thickness ${edit.value / 10 + i} mm`,
    ]);
    return new Map([
      ...said,
      [name, new Map([['meter', `meter ${2000 + edit.value} h`], ['view', 'view downstream'], ...facts])],
    ]);
  }
  const name = names[edit.block % Math.max(1, names.length)];
  const facts = name === undefined ? undefined : said.get(name);
  if (name === undefined || !facts) return said;
  if (edit.kind === 'drop look') return new Map([...said].filter(([each]) => each !== name));
  return new Map([...said, [name, editedFacts(facts, edit)]]);
}

function editedFacts(
  facts: ReadonlyMap<string, string>,
  edit: Exclude<Edit, { kind: 'look' | 'drop look' }>,
): ReadonlyMap<string, string> {
  switch (edit.kind) {
    case 'meter':
      return new Map([...facts, ['meter', `meter ${3000 + edit.value} h`]]);
    case 'view':
      return new Map([...facts, ['view', 'view upstream']]);
    case 'remark':
      return new Map([...facts, [`finding "seen ${edit.value}"`, `finding "seen ${edit.value}"`]]);
    case 'reading': {
      const point = `P${edit.fact + 1}`;
      return new Map([...facts, [point, `${point} thickness ${edit.value / 10} mm`]]);
    }
    case 'take out': {
      const points = [...facts.keys()].filter((key) => key.startsWith('P'));
      const gone = points[edit.fact % Math.max(1, points.length)];
      return new Map([...facts].filter(([key]) => key !== gone));
    }
  }
}

function written(said: Said, { indent, eol, gap, comments, last, reversed }: Layout): string {
  const blocks = [...said].map(([name, facts]) => {
    const rows = [...facts]
      .filter(([key]) => key !== 'meter')
      .map(([key, words]) => `${indent}${words}${comments && key === 'P1' ? ' // as always' : ''}`);
    return [
      `${comments ? `// of ${name}${eol}` : ''}${name} ${facts.get('meter') ?? ''} {`,
      ...rows,
      '}',
    ].join(eol);
  });
  return (reversed ? blocks.reverse() : blocks).join(eol.repeat(gap + 1)) + (last ? eol : '');
}
