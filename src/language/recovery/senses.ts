// Which condition is meant by another word of the trade? A slack hold-down is loose, a weeping trough leaks, jammed product is blocked.
// Only what has one sense of that part: a sluggish gate need not be stuck, a bulge is no dent.

import type { ConditionKind, ConditionLine } from '../../domain/model/records.js';

export type Aspect = NonNullable<ConditionLine['aspect']>;

/** What each says of its part, behind the language's own word. */
const ofKind: Readonly<Partial<Record<ConditionKind, string>>> = {
  'panel missing': 'gone, lost, fallen off, come off, came off, torn off, fell off',
  'panel torn': 'ripped, tear',
  'panel cracked': 'crack, cracks',
  'panel lifted': 'lifting, lifts, raised, curled, standing up, stands up',
  'panel shifted': 'slipped, slid, crept',
  'joint open': 'joint gaping, joint gap, gap between panels, panel gap, gap of joint, joint gapes',
  'bolts loose': 'slack, undone, not tight',
  'bolts missing': 'gone, lost, fallen out',
  'material behind liner':
    'product behind liner, sludge behind liner, cake behind liner, dirt behind liner, build-up behind liner, ' +
    'product behind panel, sludge behind panel, cake behind panel, dirt behind panel, material behind panel, build-up behind panel',
  'product blocked':
    'product jammed, product bridged, product plugged, product choked, jammed product, plugged with product, ' +
    'jammed with product, blocked with product, blocked, blockage, plugged up, choked up',
  'spiral off centre':
    'off center, off-centre, off-center, out of centre, out of center, eccentric, not centred',
  'spiral bent': 'buckled, kinked',
  'spiral weld cracked':
    'weld crack, weld has a crack, weld split, crack in spiral weld, crack in the spiral weld, crack in weld, crack in the weld, cracked weld',
  'spiral cracked': 'crack, cracks',
  'hold-down loose': 'slack, undone, not tight, slackened',
  'hold-down missing': 'gone, lost, fallen off',
  'hold-down bent': 'buckled',
  'hold-down worn': 'worn down, worn away, worn thin',
  'brace bent': 'buckled, kinked',
  'brace missing': 'gone, lost',
  'cover missing': 'gone, lost',
  'cover loose': 'slack',
  'cover bent': 'buckled, warped, dented',
  'cover stuck': 'jammed, seized, stuck fast',
  'cover leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'hatch missing': 'gone, lost',
  'hatch bent': 'buckled, warped, dented',
  'hatch stuck': 'jammed, seized',
  'hatch leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'gate stuck': 'jammed, seized, jams, sticks, sticking',
  'gate leaking': 'leak, leaks, weeping, weeps, dripping, drips, passing',
  'trough cracked': 'crack, cracks',
  'trough leaking': 'leak, leaks, weeping, weeps, dripping, drips',
  'trough dented': 'dent',
};

const ofAspect: Readonly<Record<Aspect, string>> = {
  noise:
    'noisy, rumble, rumbles, rumbling, squeal, squeals, squealing, squeak, squeaks, squeaking, grinding, grinds, knocking, knocks, ' +
    'rattle, rattles, rattling, humming, hums, whining, whines, howls, howling, growls, growling, clicking, clicks, screeching, loud',
  'oil low': 'oil level low, low oil, low on oil, oil level too low, oil below mark, oil too low',
  'oil dirty':
    'dirty oil, oil black, oil milky, oil cloudy, oil contaminated, milky, oil is black, black oil, milky oil',
  'oil leak':
    'oil leaking, oil leaks, leaks oil, leaking oil, loses oil, losing oil, oil sweating, sweating oil, sweats oil, oil weeping, weeping oil, ' +
    'weeps oil, oil drips, oil dripping, dripping oil, drips oil',
  'seal leaking':
    'seal leaks, seal leak, seal weeping, seal weeps, seal drips, seal dripping, leaking seal, leaking at seal, leaking at the seal, ' +
    'stuffing box leaking, stuffing box leaks, stuffing box weeping, stuffing box drips, gland leaking, gland leaks, gland weeping, gland drips',
  flooded: 'under water, drowned',
};

/** These say no more than the language's own word, and need not be kept beside it. */
const same: ReadonlySet<string> = new Set(
  (
    'gone, lost, slack, undone, seized, jammed, leak, leaks, noisy, crack, cracks, oil leaking, oil leaks, leaks oil, leaking oil, seal leaks, ' +
    'seal leak, leaking seal, low oil, dirty oil, weld crack, off center, off-centre, off-center, product jammed, jammed product, blockage, ' +
    'product behind liner, material behind panel, joint gap, weld has a crack, cracked weld, crack in weld, crack in the weld'
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
