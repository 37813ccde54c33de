// Faults in src/language that no test can see (see survivors.mjs).

const patterns = 'src/language/recovery/pattern.ts';
const forTheCompiler = 'the place exists whenever it is asked for: the rest is for the compiler';
const notInTheGrammar = 'the grammar has nothing of the kind: no empty group, no action, no `+`';
const otherNumbers =
  'only the numbers of the places are others, or are worked out again: the same words can follow';

/** @type {readonly import('../survivors.mjs').Survivor[]} */
export const inLanguage = [
  // src/language/lifting.ts
  ...[
    [
      "const image = line.exec(text)?.[0] ?? '';",
      'the pattern matches everywhere, if only nothing: the rest is for the compiler',
    ],
    [
      "const chainage = (at = '', clock = ''): number | undefined => {",
      'both are there whenever it is called: the rest is for the compiler',
    ],
    [
      "const [image, body = '', point, whole = '', at, clock, thickness, spread, colour, trough, note] = match;",
      'the pattern always captures them: the rest is for the compiler',
    ],
    ['while ((comments[next]?.end ?? Infinity) <= at) next++;', 'no comment ends where a line begins'],
    [
      'if (!known.has(text)) known.set(text, read());',
      'reading the same text again gives the same, only later',
    ],
  ].map(([line, why]) => ({ file: 'src/language/lifting.ts', line, why })),
  {
    file: 'src/language/comments.ts',
    line: ".map((line) => line.replace(/^\\s*\\*?[ \\t]?/, '').trimEnd())",
    becomes: '/\\s*\\*?[ \\t]?/',
    why: 'it matches nothing at the beginning where nothing else is there',
  },
  ...[
    'const ways = all.flatMap((one) => places[one]?.ways ?? []);',
    'const free = (from: number, to: number): void => void places[from]?.free.push(to);',
    "places[from]?.ways.push({ token: element.value, ...where, to: element.value === '{' ? end : to });",
    '} else if (called) places[from]?.ways.push({ token: called.name, ...where, to });',
    'for (const one of found) for (const other of places[one]?.free ?? []) found.add(other);',
    'if (element.terminal) compile(element.terminal, from, to, where);',
  ].map((line) => ({ file: patterns, line, why: forTheCompiler })),
  ...[
    'if (element.elements.length === 0) free(from, to);',
    '} else free(from, to);',
    '} else if (GrammarAST.isGroup(element)) {',
    "if (cardinality !== '+') free(before, after);",
  ].map((line) => ({ file: patterns, line, why: notInTheGrammar })),
  ...[
    'const add = (): number => places.push({ ways: [], free: [] }) - 1;',
    'const steps: Step[] = [];',
    'const all = [...new Set(each.flatMap((one) => closure(places, one)))].sort((a, b) => a - b);',
    'if (before !== undefined) return before;',
    'known.set(key, standing);',
    'step.next.set(token, next);',
  ].map((line) => ({ file: patterns, line, why: otherNumbers })),
  ...[
    "inside: (block: string | undefined) => patternOf(contents.get(block ?? '') ?? 'Block'),",
    "hasLines: (block: string | undefined) => contents.has(block ?? ''),",
  ].map((line) => ({
    file: patterns,
    line,
    becomes: '"Stryker was here!"',
    why: 'no block is called so either',
  })),
  {
    file: patterns,
    line: 'const unions = /^(?:Block|InspectionRow|[A-Z][A-Za-z]*Fact)$/;',
    why: 'no rule of the grammar holds these words in its middle',
  },
  ...[
    ['if (conveyors.size === 0) return [];', 'false'],
    ["(code.startsWith('TL1') || misread.size === 0 || !misread.has(lineAt(origin))),", 'false'],
  ].map(([line, becomes]) => ({
    file: 'src/analysis/consequences.ts',
    line,
    becomes,
    why: 'saves time where nothing is held back: without it the same is found',
  })),
  {
    file: 'src/analysis/consequences.ts',
    line: 'if (conveyors.size === 0) return [];',
    becomes: '["Stryker was here"]',
    why: 'a text is no place in an estate, and holds nothing back',
  },
  {
    file: 'src/analysis/consequences.ts',
    line: '...records.flatMap(({ conveyor, origin }) => (conveyors.has(conveyor) ? [origin] : [])),',
    becomes: '["Stryker was here"]',
    why: 'a text is no place in an estate, and holds nothing back',
  },
];
