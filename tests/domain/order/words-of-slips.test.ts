// What a fitter or planner reads for each thing an order gets wrong: the whole message and the whole reason, as they act on
// them. Kinds and places are the checker's (check-order.test.ts); here it is the words.

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { Piece, RunGround } from '../../../src/domain/order/ground.js';
import { listing, ranges, sayStep, stepText } from '../../../src/domain/order/words.js';
import { sayRole, wordsFor } from '../../../src/domain/order/tell.js';
import { sayPieces } from '../../../src/domain/order/telling/pieces.js';
import { liner, mm, origin, screw, stated } from '../../kit/estate.js';
import { afterwards, before, brace, check, cover, holdDown, job, line, step, walked } from './stories.js';

const reasons = {
  isolation:
    'A spiral that can turn takes hands and arms; isolation counts only when a try-start has proved it dead.',
  gas: 'Material in the trough gives off gas when it is disturbed, smell is no warning, and people reach into the trough from here on.',
  covers: 'Covers close the trough, so nobody gets at what lies under them.',
  across:
    'Hold-downs and braces lie across the spiral and the liner and are in the way of panels and spiral alike.',
  bare: 'Old and new panels cannot lie in the same place, and a trough can be cleaned and looked at only when it is bare.',
  dirt: 'Dirt under a panel lifts it towards the spiral, and worn-through steel is hidden for the life of the new liner.',
  closed: 'What lies below goes in first; it would all have to come off again.',
  handed: 'Once isolation is off the spiral can turn, with people at an open trough.',
  supply:
    'The drive has no supply until isolation is taken off, and taking it off out of turn is how people are hurt.',
  empty:
    'A spiral that touches somewhere shows at low current when empty; loaded, it cuts the liner before anyone notices.',
  turning:
    'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there.',
  loose:
    'The spiral is a spring that lies on a slope: unbolted, it springs back and slides down, and its whole weight is loose.',
  wound:
    'Started while it is held, the spiral winds itself up until the restraint tears off or the drive stalls, and what tears off is thrown.',
  hangs: 'The spiral hangs on the drive plate and cannot be drawn or cut free while it is bolted.',
  steel: 'The new spiral would lie on bare steel and be in the way of every panel under it.',
  over: 'Hold-downs and the drive plate go back over a spiral that is in.',
  two: 'Two spirals cannot lie in the same trough.',
  hot: 'PE1000 burns and drips burning, and the fire runs down the trough out of reach. Strip it there first, do it cold, or shield it, keep it wet and watch it; a word in the note is no measure.',
  twice:
    'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
  counted: 'Every part that comes off is counted back on before the machine is handed over.',
  bareSteel: 'The spiral would run on steel.',
  still: 'The machine cannot run.',
  isolated: 'Whoever starts it next would take off isolation that nobody has handed back.',
  renewed: 'The records would say that this was renewed when it was not.',
  proved:
    'A new liner is proved by the empty and loaded currents; without them the first fault shows in service.',
  tight:
    'A panel is tapped tight against its neighbour before it is drilled and bolted; one that is fitted on its own fixes a gap that no panel matches later.',
} as const;

/** Two panels, two covers, two braces, two hold-downs; enclosed. */
const full = job(
  line([2], [10, 10], {
    covers: [cover(0, 1000), cover(1000, 2000)],
    braces: [brace(500), brace(1500)],
    holdDowns: [holdDown(400), holdDown(1400)],
    confinedSpace: true,
  }),
  ['all'],
);
const order = [
  ...before,
  'gas test',
  'covers off',
  'braces off',
  'hold-downs off',
  'strip',
  'clean',
  'fit starting at head',
  'hold-downs on',
  'braces on',
  'covers on',
  ...afterwards,
];
/** Two panels, one cover and a new spiral. */
const spiral = job(
  line([2], [10, 10], { holdDowns: [holdDown(400), holdDown(1400)], covers: [cover(0, 2000)] }),
  ['all'],
  {
    screwChange: { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() },
  },
);
const change = [
  ...before,
  'covers off',
  'hold-downs off',
  'restrain screw',
  'unbolt drive',
  'remove screw',
  'strip',
  'clean',
  'fit starting at head',
  'insert screw',
  'bolt drive',
  'release screw',
  'hold-downs on',
  'covers on',
  ...afterwards,
];
const plain = job(line([4], [10, 10]), ['all']);
const fits = (...lines: string[]): string[] => [
  ...before,
  'strip run 1',
  'clean run 1',
  ...lines,
  ...afterwards,
];
const without = (lines: readonly string[], ...gone: string[]): string[] =>
  lines.filter((each) => !gone.includes(each));
/** One line of the order at another place: right behind `after`. */
const moved = (lines: readonly string[], what: string, after: string): string[] =>
  without(lines, what).flatMap((each) => (each === after ? [each, what] : [each]));

const words = (of: Job, lines: readonly string[]): readonly (readonly [string, string])[] =>
  check(of, lines).map(({ message, reason }) => [message, reason]);

const slope = stated('angle', 20);
const gapped = liner({
  panelLengths: [mm(1000)],
  panelTolerance: mm(1),
  joint: { policy: 'gap', gap: mm(0), origin: origin() },
  expansion: stated('expansion', 200e-6),
});
const range = (from: number, to: number) => ({
  from: stated('temperature', from),
  to: stated('temperature', to),
});
const both = 'panels 1 to 2 of run 1';

describe('an order is silent as it should be', () => {
  test.each([
    ['reline', full, order],
    ['screw change', spiral, change],
  ] as const)('%s', (_, of, lines) => expect(words(of, lines)).toEqual([]));
});

const slips: readonly (readonly [string, Job, readonly string[], ...(readonly [string, string])[]])[] = [
  // Isolation, air, and what lies in the way.
  [
    'no isolation',
    full,
    without(order, 'isolate', 'prove dead'),
    ['"gas test" comes while the machine is not isolated.', reasons.isolation],
  ],
  [
    'not proved',
    full,
    without(order, 'prove dead'),
    ['"gas test" comes before the machine is proved dead. "isolate" left it so.', reasons.isolation],
  ],
  [
    'proved too late',
    full,
    moved(order, 'prove dead', 'strip'),
    ['"gas test" comes before the machine is proved dead. "prove dead" comes only later.', reasons.isolation],
  ],
  [
    'no gas test',
    full,
    without(order, 'gas test'),
    [
      '"covers off" opens or enters an enclosed space without a gas test of the air 0.00 m to 2.00 m.',
      reasons.gas,
    ],
  ],
  [
    'gas test too late',
    full,
    moved(order, 'gas test', 'strip'),
    [
      '"covers off" opens or enters an enclosed space without a gas test of the air 0.00 m to 2.00 m. "gas test" comes only later.',
      reasons.gas,
    ],
  ],
  [
    'covers off too late',
    full,
    moved(order, 'covers off', 'strip'),
    [
      '"braces off" cannot be reached: 2 covers from 0.00 m to 2.00 m are still on. "covers off" comes only later.',
      reasons.covers,
    ],
  ],
  [
    'hold-downs stay on',
    full,
    without(order, 'hold-downs off', 'hold-downs on'),
    ['"strip" cannot be reached: 2 hold-downs from 0.40 m to 1.40 m are still on.', reasons.across],
  ],
  [
    'one brace stays on',
    full,
    order.map((each) => each.replace(/^(braces \w+)$/, '$1 from 0 mm to 1000 mm')),
    ['"strip" cannot be reached: the brace at 1.50 m is still on.', reasons.across],
  ],
  // Strip, clean, fit.
  [
    'stripped too late',
    full,
    moved(order, 'strip', 'clean'),
    [
      `"clean" needs the trough bare, but the old liner is in at ${both}. "strip" comes only later.`,
      reasons.bare,
    ],
  ],
  [
    'not cleaned',
    full,
    without(order, 'clean'),
    [
      `"fit from the head" fits over a trough that was not cleaned and looked at: ${both}. "strip" left it so.`,
      reasons.dirt,
    ],
  ],
  [
    'cleaned too late',
    full,
    moved(order, 'clean', 'fit starting at head'),
    [
      `"fit from the head" fits over a trough that was not cleaned and looked at: ${both}. "clean" comes only later.`,
      reasons.dirt,
    ],
  ],
  [
    'stripped twice',
    full,
    [...order.slice(0, 7), ...order.slice(6)],
    [`"strip" is already done for ${both}. "strip" did it.`, reasons.twice],
  ],
  [
    'hot work on the old liner',
    plain,
    [
      ...before,
      'patch run 1',
      'fire watch run 1',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      ...afterwards,
    ],
    [
      '"patch run 1" is hot work with liner in reach of its sparks, panels 1 to 4 of run 1, and the step does not say that it is shielded and wet.',
      reasons.hot,
    ],
  ],
  [
    'hot work on the new liner',
    plain,
    fits('fit run 1 starting at head', 'patch panels 2 to 4 of run 1', 'fire watch run 1'),
    [
      '"patch panels 2 to 4 of run 1" is hot work with liner in reach of its sparks, panels 2 to 4 of run 1, and the step does not say that it is shielded and wet.',
      reasons.hot,
    ],
  ],
  [
    'cleaned here and there',
    job(line([8], [10, 10]), ['all']),
    [
      ...before,
      'strip run 1',
      'clean panels 1 to 3 of run 1',
      'clean panel 5 of run 1',
      'clean panels 7 to 8 of run 1',
      'fit run 1 starting at head',
      ...afterwards,
    ],
    [
      '"fit run 1 from the head" fits over a trough that was not cleaned and looked at: panels 4 and 6 of run 1. "strip run 1" left it so.',
      reasons.dirt,
    ],
  ],
  // Closing up, handing back, running.
  [
    'covers back before the panels',
    full,
    moved(order, 'covers on', 'strip'),
    [
      `"covers on" closes up while ${both} are not fitted, 2 braces from 0.50 m to 1.50 m are off and 2 hold-downs from 0.40 m to 1.40 m are off. "fit from the head" comes only later.`,
      reasons.closed,
    ],
  ],
  [
    'hold-downs back before the panels',
    full,
    moved(order, 'hold-downs on', 'strip'),
    [
      `"hold-downs on" closes up while ${both} are not fitted. "fit from the head" comes only later.`,
      reasons.closed,
    ],
  ],
  [
    'handed back with covers off',
    full,
    moved(order, 'covers on', 'remove isolation'),
    [
      '"remove isolation" hands the machine back while 2 covers from 0.00 m to 2.00 m are off. "covers on" comes only later.',
      reasons.handed,
    ],
  ],
  [
    'run while isolated',
    full,
    moved(order, 'remove isolation', 'run empty'),
    ['"run empty" comes while the machine is isolated. "remove isolation" comes only later.', reasons.supply],
  ],
  [
    'loaded before empty',
    full,
    moved(order, 'run empty', 'run loaded'),
    ['"run loaded" comes before the machine has run empty. "run empty" comes only later.', reasons.empty],
  ],
  [
    'never run empty',
    full,
    without(order, 'run empty'),
    ['"run loaded" comes before the machine has run empty.', reasons.empty],
  ],
  [
    'never run loaded',
    full,
    without(order, 'run loaded'),
    ['The order ends without running the machine loaded.', reasons.proved],
  ],
  [
    'never run',
    full,
    without(order, 'run empty', 'run loaded'),
    ['The order ends without running the machine empty and then loaded.', reasons.proved],
  ],
  // Left out at the end.
  [
    'braces left off',
    full,
    without(order, 'braces on'),
    [
      '"remove isolation" hands the machine back while 2 braces from 0.50 m to 1.50 m are off. "braces off" left it so. No step puts it right before then.',
      reasons.handed,
    ],
  ],
  [
    'nothing fitted',
    full,
    without(order, 'fit starting at head'),
    [
      `"remove isolation" hands the machine back while ${both} are not fitted. "clean" left it so. No step puts it right before then.`,
      reasons.handed,
    ],
  ],
  [
    'isolation left on',
    full,
    without(order, 'remove isolation', 'run empty', 'run loaded'),
    ['The order ends with the machine isolated by "prove dead".', reasons.isolated],
  ],
  [
    'nothing renewed',
    full,
    without(order, 'strip', 'clean', 'fit starting at head'),
    [`The job's scope includes ${both}, and no step fits it.`, reasons.renewed],
  ],
  // The spiral.
  [
    'not restrained',
    spiral,
    without(change, 'restrain screw'),
    ['"unbolt drive" lets go of a spiral that nothing holds.', reasons.loose],
  ],
  [
    'restrained too late',
    spiral,
    moved(change, 'restrain screw', 'unbolt drive'),
    [
      '"unbolt drive" lets go of a spiral that nothing holds. "restrain screw" comes only later.',
      reasons.loose,
    ],
  ],
  [
    'drive plate bolted',
    spiral,
    without(change, 'unbolt drive', 'bolt drive'),
    ['"remove screw" comes while the drive plate is bolted.', reasons.hangs],
  ],
  [
    'drive plate unbolted too late',
    spiral,
    moved(change, 'unbolt drive', 'remove screw'),
    ['"remove screw" comes while the drive plate is bolted. "unbolt drive" comes only later.', reasons.hangs],
  ],
  [
    'in before the panels',
    spiral,
    moved(change, 'insert screw', 'clean'),
    [
      `"insert screw" puts the spiral in over ${both}, not yet fitted. "fit from the head" comes only later.`,
      reasons.steel,
    ],
  ],
  [
    'in before the old one is out',
    spiral,
    moved(change, 'insert screw', 'unbolt drive'),
    [
      '"insert screw" comes while the old spiral is in place: the spiral 0.00 m to 2.00 m. "remove screw" comes only later.',
      reasons.two,
    ],
  ],
  [
    'bolted before it is in',
    spiral,
    moved(change, 'bolt drive', 'fit starting at head'),
    [
      '"bolt drive" comes while the spiral 0.00 m to 2.00 m is out. "insert screw" comes only later.',
      reasons.over,
    ],
  ],
  [
    'held down before it is in',
    spiral,
    moved(change, 'hold-downs on', 'fit starting at head'),
    [
      '"hold-downs on" comes while the spiral 0.00 m to 2.00 m is out. "insert screw" comes only later.',
      reasons.over,
    ],
  ],
  [
    'covered before it is in',
    spiral,
    moved(change, 'covers on', 'fit starting at head'),
    [
      '"covers on" closes up while the spiral 0.00 m to 2.00 m is out and 2 hold-downs from 0.40 m to 1.40 m are off. "insert screw" comes only later.',
      reasons.closed,
    ],
  ],
  [
    'never put in',
    spiral,
    without(change, 'insert screw'),
    [
      '"remove isolation" hands the machine back while the spiral 0.00 m to 2.00 m is out. "remove screw" left it so. No step puts it right before then.',
      reasons.handed,
    ],
  ],
  [
    'never released',
    spiral,
    without(change, 'release screw'),
    [
      '"remove isolation" gives the machine power while the spiral is still restrained. "restrain screw" left it so. No step puts it right before then.',
      reasons.wound,
    ],
  ],
  [
    'released with the power on',
    spiral,
    moved(change, 'release screw', 'run empty'),
    [
      '"remove isolation" gives the machine power while the spiral is still restrained. "release screw" comes only later.',
      reasons.wound,
    ],
  ],
  [
    'released before it is restrained',
    plain,
    [...before, 'release screw', 'restrain screw', ...fits('fit').slice(before.length)],
    [
      '"release screw" releases a spiral that is not restrained yet. "restrain screw" comes only later.',
      'It has nothing to do here, and what is taken off later is then never put back.',
    ],
  ],
  [
    'released where nothing holds it',
    plain,
    [...before, 'release screw', ...fits('fit').slice(before.length)],
    [
      '"release screw" releases a spiral that no step restrains.',
      'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
    ],
  ],
  [
    'never bolted',
    spiral,
    without(change, 'bolt drive'),
    [
      '"release screw" comes while the drive plate is unbolted: nothing else holds the spiral. "unbolt drive" left it so.',
      reasons.loose,
    ],
  ],
  [
    'neither bolted nor released',
    spiral,
    without(change, 'bolt drive', 'release screw'),
    [
      '"remove isolation" hands the machine back while the drive plate is unbolted. "unbolt drive" left it so. No step puts it right before then.',
      reasons.handed,
    ],
    [
      '"remove isolation" gives the machine power while the spiral is still restrained. "restrain screw" left it so. No step puts it right before then.',
      reasons.wound,
    ],
  ],
  [
    'handed back unbolted',
    spiral,
    moved(change, 'bolt drive', 'remove isolation'),
    [
      '"release screw" comes while the drive plate is unbolted: nothing else holds the spiral. "bolt drive" comes only later.',
      reasons.loose,
    ],
  ],
  [
    'never changed',
    spiral,
    without(
      change,
      'restrain screw',
      'unbolt drive',
      'remove screw',
      'insert screw',
      'bolt drive',
      'release screw',
    ),
    ["The job's scope includes the spiral 0.00 m to 2.00 m, and no step changes it.", reasons.renewed],
  ],
  [
    'cut out over the new liner',
    { ...spiral, screwChange: { screw: screw(), joints: 'bolted', origin: origin() } },
    moved(change, 'remove screw', 'fit starting at head').flatMap((each) =>
      each === 'remove screw' ? [each, 'fire watch'] : [each],
    ),
    [
      `"remove screw" is hot work with liner in reach of its sparks, ${both}, and the step does not say that it is shielded and wet.`,
      reasons.hot,
    ],
  ],
  // Panels of one run.
  [
    'two fronts',
    plain,
    fits('fit panels 1 to 2 of run 1 starting at tail', 'fit panels 3 to 4 of run 1 starting at head'),
    [
      'Two fronts in run 1 (Tail to Head): "fit panels 1 to 2 of run 1 from the tail" and "fit panels 3 to 4 of run 1 from the head" meet at panel 3.',
      'The last gap between two fronts has fixed panels on both sides and matches no panel: 4 panels at ±1 mm, ±2 mm of measuring: 6 mm at worst, 2.8 mm root-sum-square, with no break there to absorb it. A piece that is too long will not drop in, and one that is too short leaves a slit for material to work in behind.',
    ],
  ],
  [
    'nothing to push against',
    plain,
    fits('fit panels 2 to 4 of run 1 starting at tail', 'fit panel 1 of run 1 starting at tail'),
    [
      '"fit panels 2 to 4 of run 1 from the tail" has nothing to push against: panel 1 of run 1 is not fitted. "fit panel 1 of run 1 from the tail" comes only later.',
      reasons.tight,
    ],
  ],
  [
    'one panel between two that stay',
    job(line([4], [10, 10]), ['panel 2 of run 1']),
    [
      ...before,
      'strip panel 2 of run 1',
      'clean panel 2 of run 1',
      'fit panel 2 of run 1 starting at tail',
      ...afterwards,
    ],
    [
      '"fit panel 2 of run 1 from the tail" closes panel 2 of run 1 against a panel that is in place.',
      'A gap with a fixed panel on both sides matches no panel: 1 panel at ±1 mm, ±2 mm of measuring: 3 mm at worst, 2.2 mm root-sum-square, with no break there to absorb it. The last panel of a front has to end at a break, or be cut to the gap as measured (`cut to fit`).',
    ],
  ],
  [
    'closing at a firm end',
    job(line([4], [0, 10]), ['all']),
    fits('fit run 1 starting at head'),
    [
      '"fit run 1 from the head" closes run 1 (Tail to Head) at Tail, which takes up no error at all, with panel 1 up to 6 mm out.',
      'Length errors add up towards the closing panel: 4 panels at ±1 mm, ±2 mm of measuring: 6 mm at worst, 2.8 mm root-sum-square. Head takes up 10 mm: start at Tail and close there.',
    ],
  ],
  [
    'closing at a break that takes too little',
    job(line([8], [5, 0]), ['all']),
    fits('fit run 1 starting at head'),
    [
      '"fit run 1 from the head" closes run 1 (Tail to Head) at Tail, which takes up 5 mm, with panel 1 up to 10 mm out.',
      'Length errors add up towards the closing panel: 8 panels at ±1 mm, ±2 mm of measuring: 10 mm at worst, 3.5 mm root-sum-square. Head takes up nothing either: leave the closing panel until the last gap is measured on site and cut it to fit, or declare a joint ring in the run.',
    ],
  ],
  [
    // 12 m × 20 K × 188e-6 = 45 mm against carbon steel; gaps of 0 mm take nothing.
    'growth in service',
    job(line([12], [10, 0], { liner: gapped, serviceTemperature: range(10, 30) }), ['all'], {
      fittingTemperature: range(10, 10),
    }),
    fits('fit run 1 starting at head'),
    [
      '"fit run 1 from the head" closes run 1 (Tail to Head) at Tail, which takes up 10 mm, with panel 1 up to 59.1 mm out.',
      'Length errors add up towards the closing panel: 12 panels at ±1 mm, ±2 mm of measuring + 45.1 mm growth in service that the gaps do not take: 59.1 mm at worst, 49.1 mm root-sum-square. Head takes up nothing either: leave the closing panel until the last gap is measured on site and cut it to fit, or declare a joint ring in the run.',
    ],
  ],
  [
    'growth not known',
    job(line([12], [10, 0], { liner: gapped }), ['all']),
    fits('fit run 1 starting at head'),
    [
      '"fit run 1 from the head" closes run 1 (Tail to Head) at Tail, which takes up 10 mm, with panel 1 up to 14 mm out.',
      'Length errors add up towards the closing panel: 12 panels at ±1 mm, ±2 mm of measuring, growth left out because no fitting or service temperature is declared: 14 mm at worst, 4 mm root-sum-square. Head takes up nothing either: leave the closing panel until the last gap is measured on site and cut it to fit, or declare a joint ring in the run.',
    ],
  ],
  [
    'panels slide off a gate',
    job(line([2, 2], [0, 10, 10], { incline: slope }), ['run 2']),
    [...before, 'strip run 2', 'clean run 2', 'fit run 2 starting at tail', ...afterwards],
    [
      '"fit run 2 from the tail" starts from the lower end, and Gate1 (slide gate) gives the panels nothing to rest on.',
      // π(226 − 6) + 2 × 260 = 1211.2 mm wide, 12 mm thick, 1 m long at 935 kg/m³: 13.6 kg. atan 0.15 = 8.5°.
      'At 20° a panel of 13.6 kg slides by itself (friction 0.15 holds up to 8.5°). Worked from the upper end, each panel is pushed up against the last one and bolted before anyone lets go of it.',
    ],
  ],
  [
    'on a conveyor that falls',
    job(line([2, 2], [10, 10, 0], { incline: stated('angle', -20) }), ['run 1']),
    [...before, 'strip run 1', 'clean run 1', 'fit run 1 starting at head', ...afterwards],
    [
      '"fit run 1 from the head" starts from the lower end, and Gate1 (slide gate) gives the panels nothing to rest on.',
      'At 20° a panel of 13.6 kg slides by itself (friction 0.15 holds up to 8.5°). Worked from the upper end, each panel is pushed up against the last one and bolted before anyone lets go of it.',
    ],
  ],
];
const gated = job(line([2, 2], [10, 10, 10]), ['run 1']);
/** Orders that stop short. */
const unfinished: readonly (readonly [string, Job, readonly string[], ...(readonly [string, string])[]])[] = [
  [
    'covers back that never came off, and come off later',
    full,
    ['isolate', 'prove dead', 'gas test', 'covers on', 'covers off', 'braces off'],
    [
      '"covers on" puts back what is not off yet: 2 covers from 0.00 m to 2.00 m. "covers off" comes only later.',
      'It has nothing to do here, and what is taken off later is then never put back.',
    ],
    [
      'The order ends with 2 braces from 0.50 m to 1.50 m off: taken off by "braces off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      "The job's scope includes panels 1 to 2 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
  [
    'a trough stripped and left',
    plain,
    [...before, 'strip run 1'],
    [
      'The order ends with panels 1 to 4 of run 1 bare after "strip run 1": stripped and never fitted.',
      'The spiral would run on steel.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
  [
    'cleaned and left',
    plain,
    [...before, 'strip panel 2 of run 1', 'clean panel 2 of run 1'],
    [
      'The order ends with panel 2 of run 1 bare after "clean panel 2 of run 1": stripped and never fitted.',
      'The spiral would run on steel.',
    ],
    [
      "The job's scope includes panels 1 and 3 to 4 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
  [
    'a spiral taken out and left',
    spiral,
    change.slice(0, 7),
    [
      'The order ends with the spiral 0.00 m to 2.00 m out, removed by "remove screw".',
      'The machine cannot run.',
    ],
    ['The order ends with the drive plate unbolted by "unbolt drive".', 'The machine cannot run.'],
    [
      'The order ends with the spiral restrained. "restrain screw" left it so. No step releases it.',
      reasons.wound,
    ],
    [
      'The order ends with 2 hold-downs from 0.40 m to 1.40 m off: taken off by "hold-downs off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      'The order ends with the cover 0.00 m to 2.00 m off: taken off by "covers off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      "The job's scope includes panels 1 to 2 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
  [
    'an order of nothing',
    plain,
    [],
    [
      "The job's scope includes panels 1 to 4 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends without running the machine empty and then loaded.',
      'A new liner is proved by the empty and loaded currents; without them the first fault shows in service.',
    ],
  ],
  [
    'a cover, a hold-down and a brace left off',
    full,
    order.slice(0, 6),
    [
      'The order ends with 2 hold-downs from 0.40 m to 1.40 m off: taken off by "hold-downs off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      'The order ends with 2 braces from 0.50 m to 1.50 m off: taken off by "braces off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      'The order ends with 2 covers from 0.00 m to 2.00 m off: taken off by "covers off" and never put back.',
      'Every part that comes off is counted back on before the machine is handed over.',
    ],
    [
      "The job's scope includes panels 1 to 2 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
  [
    'a gate left stripped',
    gated,
    [...before, 'gate off Gate1'],
    ['The order ends with the gate Gate1 stripped by "gate off Gate1".', 'The machine cannot run.'],
    [
      "The job's scope includes panels 1 to 2 of run 1, and no step fits it.",
      'The records would say that this was renewed when it was not.',
    ],
    [
      'The order ends with the machine isolated by "prove dead".',
      'Whoever starts it next would take off isolation that nobody has handed back.',
    ],
  ],
];
for (const [name, of, lines, ...expected] of unfinished)
  test(name, () => {
    expect(words(of, lines)).toEqual(expected);
  });

/** Without what is left open at the end. */
const onTheWay = (of: Job, lines: readonly string[]): readonly (readonly [string, string])[] =>
  check(of, lines)
    .filter(
      ({ kind }) =>
        !['not put back', 'screw still restrained', 'scope not done', 'no trial run'].includes(kind),
    )
    .map(({ message, reason }) => [message, reason]);
const astray: readonly (readonly [string, Job, readonly string[], ...(readonly [string, string])[]])[] = [
  [
    'a gate that is open already',
    gated,
    [...before, 'gate on Gate1'],
    [
      '"gate on Gate1" is already done for the gate Gate1.',
      'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
    ],
  ],
  [
    'a gate shut that is stripped',
    gated,
    [...before, 'gate off Gate1', 'gate shut Gate1'],
    [
      '"gate shut Gate1" finds the gate Gate1 stripped. "gate off Gate1" left it so.',
      'A gate is pinned shut, opened, stripped and refitted in turn; a barrier that is not where the order says protects nobody.',
    ],
  ],
  [
    'a gate refitted that was only shut',
    gated,
    [...before, 'gate shut Gate1', 'gate on Gate1'],
    [
      '"gate on Gate1" finds the gate Gate1 shut. "gate shut Gate1" left it so.',
      'A gate is pinned shut, opened, stripped and refitted in turn; a barrier that is not where the order says protects nobody.',
    ],
  ],
  [
    'a gate opened that is stripped',
    gated,
    [...before, 'gate off Gate1', 'gate open Gate1'],
    [
      '"gate open Gate1" finds the gate Gate1 stripped. "gate off Gate1" left it so.',
      'A gate is pinned shut, opened, stripped and refitted in turn; a barrier that is not where the order says protects nobody.',
    ],
  ],
  [
    'a gate pinned shut at the end',
    gated,
    [...before, 'gate shut Gate1', ...afterwards],
    [
      '"remove isolation" hands the machine back while the gate Gate1 is pinned shut. "gate shut Gate1" left it so. No step puts it right before then.',
      'Once isolation is off the spiral can turn, with people at an open trough.',
    ],
  ],
  [
    'run with a cover off',
    full,
    ['covers off', 'run empty'],
    [
      '"covers off" comes while the machine is not isolated.',
      'A spiral that can turn takes hands and arms; isolation counts only when a try-start has proved it dead.',
    ],
    [
      '"covers off" opens or enters an enclosed space without a gas test of the air 0.00 m to 2.00 m.',
      'Material in the trough gives off gas when it is disturbed, smell is no warning, and people reach into the trough from here on.',
    ],
    [
      '"run empty" runs the machine while 2 covers from 0.00 m to 2.00 m are off. "covers off" left it so. No step puts it right before then.',
      'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there.',
    ],
  ],
  [
    'run while isolated, with parts off',
    full,
    [...order.slice(0, 4), 'run empty', 'run loaded'],
    [
      '"run empty" comes while the machine is isolated. "prove dead" left it so.',
      'The drive has no supply until isolation is taken off, and taking it off out of turn is how people are hurt.',
    ],
    [
      '"run empty" runs the machine while 2 covers from 0.00 m to 2.00 m are off. "covers off" left it so. No step puts it right before then.',
      'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there.',
    ],
  ],
  [
    'emptied when power is off',
    plain,
    ['isolate', 'empty', 'prove dead'],
    [
      '"empty" needs power, and the machine is isolated. "isolate" left it so.',
      'Only a turning screw empties the trough; what stays in is weight on the spiral, gas, and dirt under the liner.',
    ],
  ],
  [
    'watched too short',
    plain,
    [
      ...before,
      'strip',
      'patch panel 1 of run 1 hot work shielded wet fire watch 90 min',
      'fire watch takes 80 min',
    ],
    [
      '"fire watch" watches for 80 min, and "patch panel 1 of run 1" asks for 1.5 h.',
      'What smoulders behind the liner shows late. The watch lasts as long as the permit asks, counted from the last spark.',
    ],
  ],
  [
    'watched as long as the longest asks',
    plain,
    [
      ...before,
      'strip',
      'patch panel 1 of run 1 hot work shielded wet fire watch 30 min',
      'patch panel 2 of run 1 hot work shielded wet fire watch 120 min',
      'fire watch takes 100 min',
    ],
    [
      '"fire watch" watches for 100 min, and "patch panel 2 of run 1" asks for 2 h.',
      'What smoulders behind the liner shows late. The watch lasts as long as the permit asks, counted from the last spark.',
    ],
  ],
  [
    'watched before it is too late',
    plain,
    [...before, 'strip', 'patch panel 1 of run 1', 'pause', 'fire watch'],
    [
      '"pause" comes before the hot work is watched: sparks were thrown, and "fire watch" comes only later.',
      'Polyethylene and dust smoulder out of sight and break into fire when everybody has gone; somebody stays, watches, and does nothing else.',
    ],
  ],
  [
    'not watched',
    plain,
    [...before, 'strip', 'patch panel 1 of run 1', 'pause'],
    [
      '"pause" comes before the hot work is watched: "patch panel 1 of run 1" throws sparks, and no fire watch follows it.',
      'Polyethylene and dust smoulder out of sight and break into fire when everybody has gone; somebody stays, watches, and does nothing else.',
    ],
  ],
  [
    'cut out of the middle',
    spiral,
    [...change.slice(0, 6), 'remove screw from 500 mm to 1500 mm'],
    [
      '"remove screw from 500 mm to 1500 mm" takes the spiral 0.50 m to 1.50 m from between two parts that are still in.',
      'Cut free at both ends at once, the piece springs and jams, and the part on the side without restraint is let go and slides. Start at an end, or where the neighbour is out already.',
    ],
  ],
  [
    'not cleared up',
    full,
    [...order.slice(0, 11), 'covers on', 'clear up'],
    [
      '"covers on" closes the trough over the tools and litter 0.00 m to 2.00 m. "clear up" comes only later.',
      'A spanner or an offcut under the covers is dragged along by the spiral: it scores the new liner, and jams where it is hardest to reach.',
    ],
  ],
  [
    'one side of the hot work said',
    plain,
    [...before, 'patch panel 1 of run 1 hot work shielded', 'patch panel 2 of run 1 hot work wet'],
    [
      '"patch panel 1 of run 1" is hot work with liner in reach of its sparks, panel 1 of run 1, and the step does not say that it is wet.',
      'PE1000 burns and drips burning, and the fire runs down the trough out of reach. Strip it there first, do it cold, or shield it, keep it wet and watch it; a word in the note is no measure.',
    ],
    [
      '"patch panel 2 of run 1" is hot work with liner in reach of its sparks, panel 2 of run 1, and the step does not say that it is shielded.',
      'PE1000 burns and drips burning, and the fire runs down the trough out of reach. Strip it there first, do it cold, or shield it, keep it wet and watch it; a word in the note is no measure.',
    ],
  ],
  [
    'hold-downs still on, told as lying across',
    plain,
    [...before, 'hold-downs on', 'strip'],
    [
      '"hold-downs on" is already done for the hold-down 0.00 m to 4.00 m.',
      'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
    ],
    [
      '"strip" cannot be reached: the hold-down 0.00 m to 4.00 m is still on.',
      'Hold-downs and braces lie across the spiral and the liner and are in the way of panels and spiral alike.',
    ],
  ],
  [
    'pieces of spiral laid and not joined',
    spiral,
    [...change.slice(0, 11), 'bolt drive', 'join screw'],
    [
      '"bolt drive" comes while the spiral 0.00 m to 2.00 m lies in pieces that are not joined. "join screw" comes only later.',
      'Pieces that nothing joins can be neither held down nor driven, and they move against one another.',
    ],
  ],
  [
    'a new spiral laid twice',
    spiral,
    [...change.slice(0, 11), 'insert screw'],
    [
      '"insert screw" is already done for the spiral 0.00 m to 2.00 m. "insert screw" did it.',
      'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
    ],
  ],
];
for (const [name, of, lines, ...expected] of astray)
  test(name, () => {
    expect(onTheWay(of, lines)).toEqual(expected);
  });

for (const [name, of, lines, ...expected] of slips)
  test(name, () => {
    expect(words(of, lines)).toEqual(expected);
  });

test('a liner that is thicker than the trough is wide has no weight to speak of, and the order is judged all the same', () => {
  const thick = liner({ panelLengths: [mm(1000)], panelTolerance: mm(1), thickness: mm(250) });
  const of = job(line([2, 2], [0, 10, 10], { incline: slope, liner: thick }), ['run 2']);
  const [only] = check(of, [
    ...before,
    'strip run 2',
    'clean run 2',
    'fit run 2 starting at tail',
    ...afterwards,
  ]);
  expect(only?.reason).toMatch(/^At 20° a panel slides by itself \(friction 0.15 holds up to 8.5°\)/);
});

describe('pieces in few words', () => {
  const run = (number: number): RunGround => ({ run: { number } }) as RunGround; // nothing else of it is read
  const [first, second] = [run(1), run(2)];
  const panel = (of: RunGround, number: number): Piece => ({
    number: 0,
    kind: 'panel',
    from: number * 1000 + (of === second ? 50_000 : 0),
    to: (number + 1) * 1000 + (of === second ? 50_000 : 0),
    run: of,
    panel: number,
  });
  const part = (kind: Piece['kind'], from: number, to = from): Piece => ({ number: 0, kind, from, to });
  test.each<readonly [readonly Piece[], string]>([
    [[], 'nothing'],
    [[panel(first, 4)], 'panel 4 of run 1'],
    [[panel(first, 5), panel(first, 4)], 'panels 4 to 5 of run 1'],
    [[panel(first, 1), panel(first, 3)], 'panels 1 and 3 of run 1'],
    [[panel(second, 1), panel(first, 3), panel(first, 2)], 'panels 2 to 3 of run 1 and panel 1 of run 2'],
    [[part('cover', 0, 1500)], 'the cover 0.00 m to 1.50 m'],
    [[part('cover', 1500, 3000), part('cover', 0, 1500)], '2 covers from 0.00 m to 3.00 m'],
    [[part('hold-down', 500)], 'the hold-down at 0.50 m'],
    [
      [part('hold-down', 2500), part('hold-down', 500), part('hold-down', 1500)],
      '3 hold-downs from 0.50 m to 2.50 m',
    ],
    [[part('air', 0, 1000), part('air', 1000, 2000)], 'the air from 0.00 m to 2.00 m'],
    [[part('screw', 1000, 2000), part('screw', 0, 1000)], 'the spiral from 0.00 m to 2.00 m'],
  ])('%#: %s', (pieces, expected) => {
    expect(sayPieces(pieces, 'mm')).toBe(expected);
  });
  test.each([
    [[], 'none'],
    [[3], '3'],
    [[3, 4], '3 to 4'],
    [[1, 2, 3, 5, 7, 8], '1 to 3, 5 and 7 to 8'],
  ])('numbers %j are %s', (numbers, expected) => {
    expect(ranges(numbers)).toBe(expected);
  });
});

test('what the other step has to do with it', () => {
  expect(
    (
      [
        ['two fronts', 'other front'],
        ['isolation missing', 'comes too late'],
        ['crew in two places', 'same time'],
        ['done twice', 'made it so'],
        ['not put back', 'made it so'],
        ['isolation missing', 'made it so'],
      ] as const
    ).map(([kind, role]) => sayRole(kind, role)),
  ).toEqual([
    'the other front of the run',
    'what is missing is done only here',
    'may go on at the same time',
    'done here already',
    'taken off here',
    'it is left so here',
  ]);
});

describe('a step written out reads as it was written', () => {
  test.each([
    'isolate',
    'a: strip',
    'strip all',
    'strip run 2',
    'strip run above Gate1',
    'strip panel 3 of run 2',
    'strip panels 3 to 5 of run 2',
    'strip from 100 mm to 2000 mm',
    'gate shut Gate1',
    'fit run 1 starting at tail',
    'fit run 1 starting at head cut to fit',
    'clean by Alpha',
    'clean by Alpha, Bravo',
    'clean by Alpha attended by Bravo, Charly',
    'clean using MP1',
    'clean using MP1 with 1 person',
    'clean using MP1 with 2 people',
    'clean after a',
    'clean after a, b',
    'fire watch takes 60 min',
    'gas test every 4 h',
    'clean dries 2 h',
    'patch cools 30 min',
    'patch cold work',
    'patch hot work',
    'patch hot work shielded',
    'patch hot work wet',
    'patch hot work shielded wet fire watch 90 min to be confirmed',
    'strip "mind the gauge"',
    'f: fit panels 1 to 2 of run 1 starting at head by Alpha attended by Bravo using MP1 with 2 people after a, b takes 2 h "slow"',
  ])('%s', (text) => expect(stepText(step(text))).toBe(text));

  test.each([
    ['fit panels 1 to 2 of run 1 starting at head by Alpha', 'fit panels 1 to 2 of run 1 from the head'],
    ['a: gate off Gate1 by Alpha after b', 'gate off Gate1'],
    ['strip by Alpha', 'strip'],
    ['fit starting at tail', 'fit from the tail'],
  ])('in a sentence, %s is "%s"', (text, said) => expect(sayStep(step(text))).toBe(said));
});

test.each([
  [[], 6, 'none'],
  [['a'], 6, 'a'],
  [['a', 'b', 'c'], 3, 'a, b and c'],
  [['a', 'b', 'c', 'd'], 3, 'a, b and 2 more'],
  [['a', 'b', 'c', 'd', 'e', 'f'], 6, 'a, b, c, d, e and f'],
  [['a', 'b', 'c', 'd', 'e', 'f', 'g'], 6, 'a, b, c, d, e and 2 more'],
])('of %j, %i at most: %s', (items, most, expected) => {
  expect(listing(items, most)).toBe(expected);
});

test('without being told, six are listed', () => {
  expect(listing(['a', 'b', 'c', 'd', 'e', 'f', 'g'])).toBe('a, b, c, d, e and 2 more');
});

test('what has its own words where it is found is not told here', () => {
  const slip = {
    kind: 'lone worker',
    grade: 'unsafe',
    step: 0,
    pieces: [],
    found: 0,
    wanted: 0,
    others: new Map(),
  } as const;
  expect(() => wordsFor(walked(plain, ['strip']), { ...slip, pieces: [] })).toThrow(
    '"lone worker" has its own words where it is found.',
  );
  expect(() => wordsFor(walked(plain, ['strip']), { ...slip, kind: 'done twice', pieces: [] })).toThrow(
    'A slip lacks what it is told by.',
  );
});
