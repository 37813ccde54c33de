// Faults in src/domain/plan that no test can see (see survivors.mjs).

const forTheCompiler = 'the place exists whenever it is asked for: the rest is for the compiler';

/** @type {readonly import('../survivors.mjs').Survivor[]} */
export const inPlan = [
  ...[
    'const shortest = steps.map((_, i) => Math.min(...(ways[i] ?? []).map((way) => way.minutes)));',
    'const begun = Math.max(0, ...(waits[i] ?? []).map(finish));',
    'const stated = tests.flatMap((i) => steps[i]?.every?.value ?? []).filter((hours) => hours > 0);',
  ].map((line) => ({ file: 'src/domain/plan/air-tests.ts', line, why: forTheCompiler })),
  {
    file: 'src/domain/plan/work-axis.ts',
    line: 'const span = spans.findLast(({ from: at }) => at <= work) ?? spans[0];',
    becomes: 'at < work',
    why: 'where one span ends and the next begins both give the same moment',
  },
  {
    file: 'src/domain/plan/work-axis.ts',
    line: 'const out = made.spans.at(-1)?.to ?? 0;',
    why: 'a shift always has a span: the rest is for the compiler',
  },
  ...['if (start ? left < length - 1e-9 : left <= length + 1e-9)', 'if (left <= 1e-9) break;'].map(
    (line) => ({
      file: 'src/domain/plan/work-calendar.ts',
      line,
      why: 'hours that differ by exactly the rounding that is let pass do not come about',
    }),
  ),
  {
    file: 'src/domain/plan/work-calendar.ts',
    line: 'for (let d = 0; d < mostDays; d++) {',
    becomes: 'd <= mostDays',
    why: 'the horizon of some two years is judgement: a day more is as good',
  },
  ...[
    'run: piece.run?.run.number ?? 0,',
    'if (!kind) continue;',
    'return piece ? [inAll.get(piece) ?? 0] : [];',
    'const last = piece.run?.panels.length ?? 1;',
    'pieces: pieces.map((piece) => ({ ...piece, stick: stickOf.get(position.get(piece) ?? -1) })),',
  ].map((line) => ({ file: 'src/domain/plan/cut-list.ts', line, why: forTheCompiler })),
  {
    file: 'src/domain/plan/cut-list.ts',
    line: 'const tooLong = pieces.filter((piece) => kinds.every((kind) => kind.length < piece.length - 1e-6));',
    becomes: 'kind.length <= piece.length - 1e-6',
    why: 'lengths that differ by exactly the rounding that is let pass do not come about',
  },
  ...[': [],', ': [];', 'if (!screwChange) return [];'].map((line) => ({
    file: 'src/domain/plan/materials.ts',
    line,
    becomes: '["Stryker was here"]',
    why: 'what needs nothing is on no list, and the text that is put in there needs nothing',
  })),
];
