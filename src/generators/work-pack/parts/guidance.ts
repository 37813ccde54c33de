// What each kind of step asks of the crew, and what is looked at before the next one begins. Trade practice in our own
// words; the site's own method statement and permits come first.

import type { StepAction } from '../../../domain/model/job.js';

export interface Guidance {
  readonly work: string;
  readonly check: string;
  /** Nobody goes on without this signature. */
  readonly hold: boolean;
}

export const guidance: Readonly<Record<StepAction, Guidance>> = {
  empty: {
    work: 'Stop the feed and run the trough empty, with the guards on and nobody at the trough. What sticks is left for the cleaning.',
    check: 'No material heard or felt moving; the feed is held off.',
    hold: false,
  },
  isolate: {
    work:
      'Isolate every point of the isolation list. Each person hangs their own lock and keeps the key. ' +
      'Stop and isolate what feeds in and what could fall back.',
    check: 'Lock and tag numbers entered in the isolation list.',
    hold: true,
  },
  'prove dead': {
    work:
      'Try to start from every control. A competent electrical person proves dead at the motor. ' +
      'Release or block what is stored: the spiral as a spring, material above, raised parts, ' +
      'weight on the slope.',
    check: 'No movement, no voltage; stored energy released or blocked.',
    hold: true,
  },
  'gas test': {
    work:
      'A trained tester tests at the bottom, the middle and the top of the trough, from outside first. ' +
      'Ventilate if in doubt and test again. ' +
      'Disturbed material lets gas go: test again after every break and whenever material is moved.',
    check: 'Readings, time and name entered; within the limits of the site’s permit.',
    hold: true,
  },
  pause: {
    work:
      'Everybody comes out and is counted. Guard the openings; leave nothing loose or hanging. ' +
      'An enclosed trough is tested again before anybody goes back in.',
    check: 'All out, by name and number.',
    hold: true,
  },
  'other work': {
    work: 'As the order says, by the site’s own method statement.',
    check: 'Done as said; tools out and counted.',
    hold: false,
  },
  'gate off': {
    work: 'Strip the gate once nothing rests on it. Hold the plate while its fixings are undone; number the parts.',
    check: 'Parts counted; the opening guarded.',
    hold: false,
  },
  'gate shut': {
    work: 'Shut the gate fully and pin it. It stands as a barrier for the people below: nobody takes the pin out before they are clear.',
    check: 'Gate shut across the whole trough, pinned and tagged.',
    hold: true,
  },
  'covers off': {
    work: 'Number the covers before they are loosened. Stack them where they cannot slide or fall; keep the bolts in labelled bags.',
    check: 'Count taken off agrees with the list. Edges and openings guarded.',
    hold: false,
  },
  'braces off': {
    work: 'Mark each brace and its place. Do not use a brace as an anchor for people or loads.',
    check: 'Count taken off agrees with the list; trough sides still straight.',
    hold: false,
  },
  'hold-downs off': {
    work: 'Take the blocks off while the spiral is at rest and cannot lift. Measure the gap of each first and write it down.',
    check: 'Count taken off agrees with the list; gaps written down.',
    hold: false,
  },
  'restrain screw': {
    work: 'Hold the spiral against sliding and against turning, at both ends of the length to be worked on, with gear rated for the force in the lift table.',
    check: 'Restraint taut and inspected by the person in charge of lifting.',
    hold: true,
  },
  'unbolt drive': {
    work: 'Support the drive end. Undo the drive-plate bolts evenly, standing out of line with the spiral: it can spring.',
    check: 'Spiral free of the drive and still held.',
    hold: true,
  },
  'remove screw': {
    work:
      'Take the spiral out piece by piece as in the lift table. ' +
      'Lift only after a trial lift of a few centimetres; nobody under or beside the load. ' +
      'Where the liner stays, no cutting over it without shielding, wetting and fire watch.',
    check: 'Pieces counted and their lengths written down.',
    hold: false,
  },
  strip: {
    work:
      'Undo the bolts and lift the panels out, round the spiral where it stays in. Any order will do. ' +
      'Keep one piece with the thickest and one with the thinnest place.',
    check: 'Panels out counted. Thinnest place and its chainage written down.',
    hold: false,
  },
  clean: {
    work: 'Clean the trough down to sound steel. Look at the worn side for grooves, at seams and at bolt holes.',
    check: 'Trough inspected: no edge a panel could ride on, thin places marked and reported.',
    hold: true,
  },
  patch: {
    work:
      'Weld only under a hot-work permit, by a qualified welder. ' +
      'Take liner away locally, or shield and wet it: PE melts at about 130 °C and drips burning. ' +
      'Grind flush on the inside.',
    check: 'Fire watch kept for the time of the permit, at least an hour. Patch flush.',
    hold: true,
  },
  fit: {
    work: fitting('tapped tight to the one before'),
    check: 'Check sheet filled in panel by panel; the closing panel cut to the gap as measured.',
    hold: true,
  },
  'insert screw': {
    work:
      'Bring the spiral in piece by piece, each held against sliding and rolling until it is joined and the drive bolted; ' +
      'protect the new liner from edges and tools. ' +
      'No hot work over fitted liner without shielding, wetting and fire watch.',
    check: 'Joints in line, welds inspected, spiral held.',
    hold: true,
  },
  'join screw': {
    work: 'Join the pieces as the maker says, with the ends held true. Shield and wet the liner under a weld and below it; keep sparks out of the gaps.',
    check:
      'Joint looked at along its whole length; outside and inside ground or tightened as the maker says.',
    hold: true,
  },
  'fire watch': {
    work: 'Stay at the place with water at hand and watch it, the liner below it and the gaps behind the liner. Do nothing else meanwhile.',
    check:
      'Nothing warm to the hand, no smoke, no smell; time of the last spark and of the end of the watch written down.',
    hold: true,
  },
  'bolt drive': {
    work: 'Bolt the drive plate evenly with new locking parts, to the maker’s torque.',
    check: 'Torque marked; restraint still on until this is signed.',
    hold: true,
  },
  'release screw': {
    work:
      'Ease the restraint until the drive holds the spiral, standing out of line with it, then take it off at both ends. ' +
      'Lever, chain and clamps out of the trough, counted.',
    check: 'Nothing holds the spiral but its drive; restraint gear counted out.',
    hold: true,
  },
  'hold-downs on': {
    work: 'Put every block back at its own place and set its gap.',
    check: 'Count back agrees with count off; gap of each written down.',
    hold: false,
  },
  'braces on': {
    work: 'Put every brace back at its own place.',
    check: 'Count back agrees with count off.',
    hold: false,
  },
  'clear up': {
    work: 'Tools, old liner, offcuts, swarf, rags and tape out of the trough and off the platforms. Count tools against the list that came up.',
    check: 'Tool count agrees; nothing lies in the trough. Look from both ends with a lamp.',
    hold: false,
  },
  'covers on': {
    work: 'Look for tools and rags. Put every cover back with all its bolts.',
    check: 'Count back agrees with count off; guards complete.',
    hold: true,
  },
  'gate open': {
    work: 'Ask everybody below first. Take the pin out and open the gate.',
    check: 'Nobody below; the pin back in its place.',
    hold: false,
  },
  'gate on': {
    work: 'Refit the gate with all its parts and move it through its whole stroke.',
    check: 'Parts counted back; the gate runs free and shuts.',
    hold: false,
  },
  'remove isolation': {
    work: 'Everybody out and accounted for. Each person takes off their own lock; the person in charge of the isolation hands back.',
    check: 'All locks off and signed; the person who operates the plant has it back.',
    hold: true,
  },
  'run empty': {
    work: 'Run without material, guards on, nobody in reach. Listen along the whole length from outside.',
    check: 'Current empty, direction of turning, noise, each hold-down clear of the spiral.',
    hold: true,
  },
  'run loaded': {
    work: 'Feed slowly up to the usual amount.',
    check:
      'Current loaded, no leak past the liner, no lifting of the spiral. Tighten cover bolts again after the first shift.',
    hold: true,
  },
};

/** Where the whole order is cold work nobody is told of flames, and neither are those who carry a spiral over the liner. */
const withoutFlame: Readonly<Partial<Record<StepAction, Partial<Guidance>>>> = {
  'remove screw': {
    work:
      'Take the spiral out piece by piece as in the lift table. ' +
      'Lift only after a trial lift of a few centimetres; nobody under or beside the load.',
  },
  'insert screw': {
    work: 'Bring the spiral in piece by piece; protect the new liner from edges and tools.',
    check: 'Joints in line, spiral held.',
  },
};

/** What a step asks that is itself done cold. */
const doneCold: Readonly<Partial<Record<StepAction, Partial<Guidance>>>> = {
  patch: {
    work:
      'Bolt, rivet or bond the patch on; saw, shear and drill, no grinding. Heads and edges flush on the inside. ' +
      'If it cannot be done so, stop and ask: another way needs a permit of its own.',
    check: 'Patch tight and flush on the inside; swarf out of the trough.',
  },
  'join screw': {
    work: 'Join the pieces as the maker says, with the ends held true. Keep swarf out of the gaps.',
    check: 'Joint looked at along its whole length and tightened as the maker says.',
  },
};

export interface StepSetting {
  /** Of the step itself, and of any step of its order. */
  readonly hot: { readonly step: boolean; readonly order: boolean };
  /** How the pieces of the new spiral are joined. */
  readonly joints: 'welded' | 'bolted';
  /** Between the panels that the step fits: `8 mm`, or several where its runs differ; undefined where all are butted. */
  readonly gap: string | undefined;
  /** Some of its panels are butted and some have a gap. */
  readonly someButted: boolean;
  /** What holds panels that have no bolts; undefined where all are bolted, or nothing is said. */
  readonly heldBy: string | undefined;
}

export function guidanceFor(action: StepAction, setting: StepSetting): Guidance {
  const { hot } = setting;
  const own = {
    ...guidance[action],
    ...(hot.order ? {} : withoutFlame[action]),
    ...(hot.step ? {} : doneCold[action]),
  };
  switch (action) {
    case 'insert screw':
      return setting.joints === 'bolted'
        ? { ...own, check: 'Joints in line, bolts of the joints tight as the maker says, spiral held.' }
        : own;
    case 'fit':
      return { ...own, work: fitting(jointWords(setting), setting.heldBy) };
    case 'strip':
      return setting.heldBy === undefined
        ? own
        : {
            ...own,
            work: own.work.replace('Undo the bolts', `Take off what holds them (${setting.heldBy})`),
          };
    default:
      return own;
  }
}

/** Each panel as `joined` says. */
function fitting(joined: string, heldBy?: string): string {
  const first = `Fit in the order of the panel list, each panel ${joined}, `;
  if (heldBy !== undefined) return `${first}then held by ${heldBy}.`;
  return (
    first +
    'then drilled through the trough’s holes, countersunk and bolted. ' +
    'The countersink must stay in the first colour.'
  );
}

function jointWords({ gap, someButted }: StepSetting): string {
  if (gap === undefined) return 'tapped tight to the one before';
  return `set with the gap of ${gap} to the one before${someButted ? ' (tapped tight where the panel list has no gap)' : ''}`;
}

/** A run without feed that stands before the isolation: it empties the trough, and shows how the machine runs before the work. */
export const emptyingRun: Guidance = {
  work: guidance.empty.work,
  check: `${guidance.empty.check} ${guidance['run empty'].check}`,
  hold: guidance['run empty'].hold,
};
