// Faults in src/language that no test can see (see survivors.mjs).

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
];
