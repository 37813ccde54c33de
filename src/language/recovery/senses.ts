// Which condition is meant by another word of the trade? A slack hold-down is loose, a weeping trough leaks, jammed product is blocked.
// Only what has one sense of that part: a sluggish gate need not be stuck, a bulge is no dent.

import type { ConditionKind, ConditionLine } from '../../domain/model/records.js';

export type Aspect = NonNullable<ConditionLine['aspect']>;

/** It does not do what it is there for. */
const dead =
  "not working, not work, does not work, did not work, does n't work, doesn't work, didn't work, wouldn't work, " +
  "won't work, will not work, " +
  'not functioning, without function, no function, out of order, out of action, failed, fails, no effect, without effect, ' +
  'does not stop, ' +
  "doesn't stop, did not stop, didn't stop, not stopping, does not trip, doesn't trip, did not trip, not tripping, " +
  'no reaction, no response, no signal, gives no signal, ' +
  'not responding, defective, faulty, inoperative';
const absent =
  'gone, lost, off, not fitted, not there, fallen off, fell off, came off, come off, taken off, left off, absent, not in place';
/** It cannot be moved. */
const bypassed =
  'bridged, defeated, overridden, tied down, tied back, tied up, jumpered, jumped, shorted, shorted out, shunted, taped, ' +
  'taped over, taped up, by-passed, bridged out, blinded, covered up, disabled, switched off, disconnected, unplugged';

const fast =
  "jammed, seized, seized up, stuck fast, won't open, will not open, does not open, doesn't open, wouldn't open, " +
  "can't open, cannot open, " +
  "can not open, couldn't open, could not open, can't be opened, cannot be opened, could not be opened, " +
  "couldn't be opened, not to be opened, " +
  "won't move, will not move, does not move, doesn't move, can't be moved, cannot be moved, rusted shut, rusted solid, " +
  'frozen shut, frozen';

/** What each says of its part, behind the language's own word. */
const ofKind: Readonly<Partial<Record<ConditionKind, string>>> = {
  'panel missing':
    'gone, lost, fallen off, come off, came off, torn off, fell off, fallen out, fell out, not there, absent',
  'panel torn': 'ripped, tear, tears, ripped open, split, rip, cut, cut open, slit',
  'panel cracked': 'crack, cracks, hairline crack, fractured',
  'panel lifted':
    'lifting, lifts, raised, curled, standing up, stands up, bulging up, standing proud, stands proud, proud, sticking up, ' +
    'sticks up, loose',
  'panel shifted': 'slipped, slid, crept, moved, displaced, out of place',
  'joint open':
    'joint gaping, joint gap, gap between panels, panel gap, gap of joint, joint gapes, gap at joint, gap in joint, ' +
    'joint gapped, open joint',
  'bolts loose': 'slack, undone, not tight, loosened, came loose, come loose, working loose, worked loose',
  'bolts missing':
    'gone, lost, fallen out, fell out, not there, absent, sheared off, snapped off, broken off',
  'material behind liner':
    'product behind liner, sludge behind liner, cake behind liner, dirt behind liner, build-up behind liner, ' +
    'product under liner, product under the liner, cake under the liner, ' +
    'product behind panel, sludge behind panel, cake behind panel, dirt behind panel, material behind panel, build-up behind panel, behind liner',
  'product blocked':
    'product jammed, product bridged, product plugged, product choked, jammed product, plugged with product, ' +
    'jammed with product, blocked with product, blocked, blockage, plugged up, choked up, product stuck, product wedged, ' +
    'product clogged, clogged, clogged with product, product plug, plug of product',
  'spiral off centre':
    'off center, off-centre, off-center, out of centre, out of center, eccentric, not centred, not central, not centered, ' +
    'off to one side',
  'spiral bent': 'buckled, kinked',
  'spiral weld cracked':
    'weld crack, weld has a crack, weld split, welding seam cracked, weld seam cracked, seam cracked, crack in seam, ' +
    'crack in the seam, crack in weld seam, crack in welding seam, weld broken, weld open, welding cracked, ' +
    'welding seam crack, crack in spiral weld, crack in the spiral weld, crack in weld, crack in the weld, cracked weld',
  'spiral cracked': 'crack, cracks',
  'hold-down loose':
    'slack, undone, not tight, slackened, loosened, came loose, come loose, rattles, rattling',
  'hold-down missing': 'gone, lost, fallen off, fell off, came off, come off, not there, absent',
  'hold-down bent': 'buckled',
  'hold-down worn': 'worn down, worn away, worn thin',
  'brace bent': 'buckled, kinked',
  'brace missing': 'gone, lost, fallen off, fell off, came off, not there, absent',
  'cover missing': 'gone, lost, fallen off, fell off, blown off, not there, absent',
  'cover loose': 'slack, rattling, rattles, not tight, undone',
  'cover bent': 'buckled, warped, dented',
  'cover stuck': fast,
  'cover leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'hatch missing': 'gone, lost, fallen off, fell off, not there, absent',
  'hatch bent': 'buckled, warped, dented',
  'hatch stuck': fast,
  'hatch leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'gate stuck': `${fast}, jams, sticks, sticking, won't close, will not close, does not close, doesn't close, cannot be closed, can't be closed`,
  'gate leaking': 'leak, leaks, weeping, weeps, dripping, drips, passing',
  'trough cracked': 'crack, cracks',
  'trough leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'trough dented': 'dent, dents, bulged in, pushed in',
  'guard missing': absent,
  'guard loose':
    'slack, rattling, rattles, hanging, hanging loose, hanging off, not tight, undone, not secured',
  'guard bent': 'dented, buckled, crushed, deformed',
  'emergency stop dead': `${dead}, broken`,
  'pull cord dead': dead,
  'pull cord broken': 'torn, snapped, parted, ripped, cut, cut through, torn off, off, came off',
  'pull cord slack':
    'sagging, sags, hanging, hanging down, loose, not tight, no tension, without tension, too loose',
  'interlock dead': `${dead}, broken`,
  'interlock bypassed': bypassed,
  'zero-speed sensor dead': `${dead}, broken`,
  'zero-speed sensor bypassed': bypassed,
  'level probe dead': `${dead}, broken`,
  'level probe bypassed': bypassed,
  'blockage switch dead': `${dead}, broken`,
  'blockage switch bypassed': bypassed,
  'cable damaged':
    'chafed, chafing, chafes, frayed, cut, crushed, pinched, nicked, torn, split, cracked, broken, squashed, scuffed, ' +
    'rubbed through, worn through, ' +
    'insulation worn, insulation damaged, burnt, bare, damage, insulation cracked, insulation cut',
  'walkway damaged':
    'bent, broken, cracked, rusted through, corroded through, torn, buckled, damage, hole, holes, grating bent, ' +
    'grating broken, grating damaged, ' +
    'handrail bent, handrail broken, handrail damaged, rail bent, step broken',
  'sign missing': absent,
};

const ofAspect: Readonly<Record<Aspect, string>> = {
  noise:
    'hum, noisy, rumble, rumbles, rumbling, squeal, squeals, squealing, squeak, squeaks, squeaking, grinding, grinds, knocking, knocks, ' +
    'rattle, rattles, rattling, humming, hums, whining, whines, howls, howling, growls, grumbling, grumbles, singing, ' +
    'screaming, chattering, noises, noisily, growling, clicking, clicks, screeching, loud',
  'oil low': 'oil level low, low oil, low on oil, oil level too low, oil below mark, oil too low',
  'oil dirty':
    'dirty oil, oil black, oil milky, oil cloudy, oil contaminated, milky, oil is black, black oil, milky oil',
  'oil leak':
    'oil leaking, oil leaks, leaks oil, leaking oil, loses oil, losing oil, oil loss, loss of oil, oil on floor, ' +
    'oil on the floor, oil under it, oil leakage, leaking, leaks, leak, weeping, weeps, dripping, drips, oil sweating, ' +
    'sweating oil, sweats oil, oil weeping, weeping oil, ' +
    'weeps oil, oil drips, oil dripping, dripping oil, drips oil',
  'seal leaking':
    'leaking, leaks, leak, seal leaks, seal leak, seal weeping, seal weeps, seal drips, seal dripping, leaking seal, ' +
    'leaking at seal, leaking at the seal, ' +
    'stuffing box leaking, stuffing box leaks, stuffing box weeping, stuffing box drips, gland leaking, gland leaks, ' +
    'gland weeping, gland drips',
  flooded: 'under water, drowned',
};

/** These say no more than the language's own word, and need not be kept beside it. */
const same: ReadonlySet<string> = new Set(
  (
    'gone, lost, slack, undone, seized, jammed, blocked, leak, leaks, noisy, crack, cracks, oil leaking, oil leaks, ' +
    'leaks oil, leaking oil, seal leaks, ' +
    'seal leak, leaking seal, low oil, dirty oil, weld crack, off center, off-centre, off-center, product jammed, ' +
    'jammed product, blockage, ' +
    'product behind liner, material behind panel, joint gap, weld has a crack, cracked weld, crack in weld, crack in the weld, ' +
    "not working, does not work, doesn't work, out of order, bypassed, by-passed, not there, absent, open joint, damage"
  ).split(', '),
);

export interface Sense {
  /** Words as they are written, one blank between them. */
  readonly said: readonly string[];
  /** Nothing is lost without them. */
  readonly isSame: boolean;
}

export function sensesOf(kind: ConditionKind): readonly Sense[] {
  return split(ofKind[kind]);
}

export function sensesOfAspect(aspect: Aspect): readonly Sense[] {
  return split(ofAspect[aspect]);
}

function split(text: string | undefined): readonly Sense[] {
  if (text === undefined) return [];
  return text.split(', ').map((each) => ({ said: each.split(' '), isSame: same.has(each) }));
}

const ofAll: ReadonlyMap<string, string> = new Map(Object.entries({ ...ofKind, ...ofAspect }));

/** Whether what is written says the same as a condition or an aspect of the language, and no more. */
export function isSaidBy(written: string, put: string): boolean {
  return split(ofAll.get(put)).some(({ said, isSame }) => isSame && said.includes(written));
}

/** Whether these words, together with the condition's own, say it: `seized` or `cover seized` of a cover that is stuck. */
export function isSaidOf(kind: ConditionKind, words: readonly string[]): boolean {
  const own = kind.split(' ');
  const rest = words.filter((each) => !own.includes(each));
  if (rest.length === 0) return words.length > 1 && own.every((each) => words.includes(each));
  return sensesOf(kind).some(({ said }) => rest.every((each) => said.includes(each)));
}
