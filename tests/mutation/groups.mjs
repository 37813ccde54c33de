// Which files are mutated together, and which tests are run against them. A group is what one person changes in one sitting;
// its tests are those that speak about its files, so that a mutant costs a second and not the whole suite.

// `pure`: the tests touch nothing but the domain, so that in-process.mjs can run them.

/** @typedef {{ readonly files: readonly string[], readonly tests: readonly string[], readonly pure?: boolean }} Group */

/**
 * Orders of work, by examples: those that speak of the files first, as they are named, and those that see nearly everything last.
 * Property tests and the brute force see more still, and cost minutes a fault.
 * @param {readonly string[]} files
 * @param {readonly string[]} own
 */
const order = (files, own) => ({
  files: files.map((name) => `src/domain/order/${name}`),
  tests: [...new Set([...own, 'check-order', 'words-of-slips', 'safety', 'one-step-off'])].map(
    (name) => `tests/domain/${name.includes('/') ? name : `order/${name}`}.test.ts`,
  ),
  pure: true,
});

/**
 * Lines that cannot be read. The damages that are drawn and counted (damaged-lines.test.ts) see more, and cost a second a fault.
 * @param {readonly string[]} files
 */
const recovery = (files) => ({
  files: files.map((name) => `src/language/recovery/${name}.ts`),
  tests: ['tests/language/one-line-off.test.ts', 'tests/language/slips.test.ts'],
  pure: true,
});

/** @type {Readonly<Record<string, Group>>} */
export const groups = {
  fixes: {
    files: ['src/cli/fixes.ts', 'src/analysis/fixes-together.ts'],
    tests: ['tests/cli/fixes.test.ts', 'tests/analysis/fixes-together.test.ts'],
  },
  attention: {
    files: ['src/generators/remaining-life/parts/attention.ts'],
    tests: ['tests/generators/remaining-life/attention.test.ts'],
    pure: true,
  },
  decisions: {
    files: ['src/domain/wear/decision.ts', 'src/domain/wear/where-to-look.ts'],
    tests: ['tests/domain/wear/decision.test.ts', 'tests/domain/wear/where-to-look.test.ts'],
    pure: true,
  },
  lifting: {
    files: ['src/language/lifting.ts', 'src/language/comments.ts'],
    tests: ['tests/language/lifted-rows.test.ts', 'tests/language/comments.test.ts'],
    pure: true,
  },
  decision: {
    files: ['src/domain/decision/conveyor-decision.ts'],
    tests: ['tests/domain/decision/conveyor-decision.test.ts'],
    pure: true,
  },
  'recovery-lines': {
    files: ['src/language/recovery/pattern.ts'],
    tests: ['tests/language/line-pattern.test.ts'],
    pure: true,
  },
  'recovery-walk': recovery(['evidence', 'left-line', 'places', 'slip', 'walk']),
  'recovery-words': recovery(['part-order', 'repairs', 'telling', 'trade-words', 'wording']),
  consequences: {
    files: ['src/analysis/consequences.ts'],
    tests: ['tests/analysis/consequences.test.ts'],
    pure: true,
  },
  records: {
    files: [
      'corrected',
      'known-on',
      'lying-screw',
      'newest',
      'other-facts',
      'panels-moved',
      'spare-screw',
    ].map((name) => `src/domain/model/${name}.ts`),
    tests: [
      'tests/domain/model/corrected.test.ts',
      'tests/domain/model/panels-moved.test.ts',
      'tests/domain/model/old-panels.test.ts',
    ],
    pure: true,
  },
  passed: {
    files: ['src/domain/wear/passed.ts', 'src/generators/remaining-life/passed-words.ts'],
    tests: ['tests/generators/remaining-life/passed.test.ts'],
    pure: true,
  },
  'plan-cut-list': {
    files: [
      'src/domain/plan/cut-list.ts',
      'src/domain/plan/pieces-to-cut.ts',
      'src/domain/plan/materials.ts',
    ],
    tests: [
      'tests/domain/plan/cut-list.test.ts',
      'tests/domain/plan/cut-list-cases.test.ts',
      'tests/domain/plan/materials.test.ts',
    ],
    pure: true,
  },
  'plan-lifts': {
    files: ['src/domain/plan/lifts.ts', 'src/domain/plan/spiral-cuts.ts', 'src/domain/plan/held-up.ts'],
    tests: [
      'tests/domain/plan/lifts.test.ts',
      'tests/domain/plan/lift-table.test.ts',
      'tests/domain/plan/spiral-cuts.test.ts',
    ],
    pure: true,
  },
  'plan-calendar': {
    files: [
      'src/domain/plan/work-calendar.ts',
      'src/domain/plan/work-axis.ts',
      'src/domain/plan/air-tests.ts',
    ],
    tests: ['tests/domain/plan/work-calendar.test.ts', 'tests/domain/plan/work-axis.test.ts'],
    pure: true,
  },
  'plan-words': {
    files: ['src/domain/plan/plan-problems.ts'],
    tests: ['tests/domain/plan/plan-problems.test.ts'],
    pure: true,
  },
  'plan-teams': {
    files: ['src/domain/plan/teams.ts', 'src/domain/plan/unit-times.ts'],
    tests: ['tests/domain/plan/work-and-teams.test.ts'],
    pure: true,
  },
  'plan-proposed': {
    files: ['src/domain/plan/proposed-steps.ts'],
    tests: ['tests/domain/plan/proposed-steps.test.ts'],
    pure: true,
  },
  'plan-schedule': {
    files: ['arrange', 'plan-job', 'planning-basis', 'time-rules', 'what-shortens'].map(
      (name) => `src/domain/plan/${name}.ts`,
    ),
    tests: [
      'tests/domain/plan/plan-job.test.ts',
      'tests/domain/plan/plan-cases.test.ts',
      'tests/domain/plan/plan-rows.test.ts',
      'tests/domain/plan/planning-basis.test.ts',
      'tests/domain/plan/schedule-rules.test.ts',
      'tests/domain/plan/work-and-teams.test.ts',
    ],
    pure: true,
  },
  'plan-cutting': {
    files: ['src/domain/plan/cutting-stock.ts', 'src/domain/plan/cutting/*.ts'],
    tests: ['tests/domain/plan/cutting-stock.test.ts', 'tests/domain/plan/cutting-cases.test.ts'],
    pure: true,
  },
  'plan-remembered': {
    files: ['src/domain/plan/scheduled-before.ts'],
    tests: ['tests/domain/plan/scheduled-before.test.ts'],
    pure: true,
  },
  'plan-hours': {
    files: ['src/domain/plan/hour-by-hour.ts'],
    tests: ['tests/domain/plan/machine-state.test.ts'],
    pure: true,
  },
  'plan-rows': {
    files: ['floats', 'lay-over', 'named-steps', 'repeated-tests', 'write-order'].map(
      (name) => `src/domain/plan/${name}.ts`,
    ),
    tests: ['tests/domain/plan/plan-rows.test.ts'],
    pure: true,
  },
  'order-people': order(
    ['people.ts', 'platform.ts', 'access.ts', 'side-by-side.ts', 'rest.ts', 'heat.ts'],
    ['people', 'access', 'heat', 'below', 'people-below', 'side-by-side', 'sequence'],
  ),
  'order-demands': order(
    ['demands.ts', 'demands/*.ts', 'needs.ts', 'states.ts', 'start.ts'],
    ['demands', 'start', 'needs'],
  ),
  'order-liner': order(
    ['front.ts', 'closing-error.ts', 'contact.ts', 'layout.ts', 'ground.ts'],
    ['ground', 'front', 'demands'],
  ),
  'order-judge': order(
    ['judge.ts', 'check-order.ts', 'violation.ts', 'unsplit.ts'],
    ['side-by-side', 'access', 'heat'],
  ),
  'order-walk': order(
    ['walk.ts', 'walk-state.ts', 'finish.ts', 'sequence.ts', 'precedence.ts'],
    ['sequence', 'needs'],
  ),
  'order-repairs': order(
    ['repairs.ts', 'change-steps.ts', 'edits.ts', 'lifting-gear.ts'],
    ['repairs', 'sequence', 'plan/lifting-gear', 'side-by-side', 'access', 'edits'],
  ),
  tell: order(['tell.ts', 'telling/*.ts', 'words.ts'], ['words-of-slips', 'side-by-side']),
};
