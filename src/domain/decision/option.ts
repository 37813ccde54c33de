// One thing that could be done about a conveyor, with its day, the chance of both bad ends until then, what it costs and what
// it needs. The list is never shortened: what cannot be done says why, and doing nothing is always in it.

import type { CalendarDay } from '../units/calendar.js';
import { either, type GoesBy } from './two-chances.js';
import type { WhatStays } from './what-stays.js';

export const optionKinds = [
  'look first',
  'part at an outage',
  'planned reline',
  'reline with a new screw',
  'part from stock',
  'unplanned stop',
  'expedite',
  'lower duty',
  'turn',
  'exchange',
  'do nothing',
] as const;
export type OptionKind = (typeof optionKinds)[number];

export interface DecisionOption {
  readonly kind: OptionKind;
  /** What is done, as a sentence without a full stop. */
  readonly what: string;
  /** Undefined where there is no such day. */
  readonly day: CalendarDay | undefined;
  /** Name of the outage it happens in. */
  readonly outage: string | undefined;
  /** Chance of the condemn limit and of steel until then, 0 to 1; of doing nothing, until the end of the horizon. */
  readonly condemn: number | undefined;
  readonly contact: number | undefined;
  /** Of what was seen alone, beside the chances above, which count unseen panels in. */
  readonly condemnSeen: number | undefined;
  readonly contactSeen: number | undefined;
  /** Where a part is relined: the chances of what stays; undefined where nothing stays, or everything does. */
  readonly stays?: WhatStays | undefined;
  /** Both accepted risks are kept, by the panels that the decision goes by (`GoesBy`), and by what stays (`stays`). */
  readonly within: boolean;
  /** Why it cannot be done; undefined where it can. */
  readonly obstacle: string | undefined;
  /** What would do away with the obstacle, a sentence each. */
  readonly remedies?: readonly string[] | undefined;
  /** To be paid for the work itself; undefined where a cost is not declared. */
  readonly cost: number | undefined;
  /** With the chance of steel and the share of the new liner's life that is used up by the end of the horizon. */
  readonly expected: number | undefined;
  /** The same by what was seen alone: what the programme compares, because a look comes first where little was seen. */
  readonly expectedSeen?: number | undefined;
  /** Scope of the work, as `ScopeWork` names it; undefined where nothing is relined. */
  readonly scope?: string | undefined;
  /** Share of the work's cost that the time until the horizon uses up, 0 to 1. */
  readonly used?: number | undefined;
  readonly needs: readonly string[];
  /** How the numbers came about, a sentence each. */
  readonly working: readonly string[];
  /** `look first`: chance that the look brings both risks within the accepted ones. */
  readonly reassures?: number;
  /** `look first`: expected money saved against the next best without a look, the look paid. */
  readonly saves?: number | undefined;
  /** `lower duty`: the duty that keeps the risk, as a share of the present one. */
  readonly duty?: number;
}

/** A look that reassures with a smaller chance is no way out; our judgement. */
const hardlyEver = 0.05;

/** It neither may well reassure nor saves money: what comes after it is known before it. */
function tellsNothing({ kind, reassures = 0, saves = 0 }: DecisionOption): boolean {
  return kind === 'look first' && reassures < hardlyEver && !(saves > 0);
}

/**
 * What can be done before what cannot; what keeps the risks before what does not; then a look that tells hardly anything, then
 * waiting beyond a risk; then the cheaper, by the panels that the decision goes by, then the smaller chances, what is planned, the
 * sooner, and a part before the whole.
 */
export function ranked(options: readonly DecisionOption[], goesBy: GoesBy): readonly DecisionOption[] {
  const group = (option: DecisionOption): number =>
    option.obstacle !== undefined
      ? 4
      : tellsNothing(option)
        ? 2
        : option.within
          ? 0
          : option.kind === 'do nothing'
            ? 3
            : 1;
  const price = (option: DecisionOption): number => expectedBy(goesBy, option) ?? Infinity;
  return [...options].sort(
    (a, b) =>
      group(a) - group(b) ||
      compare(price(a), price(b)) ||
      compare(beyond(a, goesBy), beyond(b, goesBy)) ||
      (a.day ?? Infinity) - (b.day ?? Infinity) ||
      optionKinds.indexOf(a.kind) - optionKinds.indexOf(b.kind),
  );
}

/** Where no cost is known: how far beyond the risks; what keeps them is alike, and a stop that is not planned comes after. */
function beyond(option: DecisionOption, goesBy: GoesBy): number {
  const unplanned = option.outage === undefined ? 1e-9 : 0;
  if (option.within) return unplanned;
  const { condemn, condemnSeen } = option;
  const before = (goesBy === 'what was seen' ? (condemnSeen ?? condemn) : condemn) ?? 1;
  return either(before, option.stays?.condemnSeen ?? 0) + unplanned;
}

/** What options are weighed by: expected cost by the panels that the decision goes by; undefined where it is not known. */
export function expectedBy(goesBy: GoesBy, { expected, expectedSeen }: DecisionOption): number | undefined {
  return goesBy === 'what was seen' ? (expectedSeen ?? expected) : expected;
}

/** Two that are both not known are alike. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

/** Nothing that was tried can be done, and waiting keeps no risk. */
export interface RuledOut {
  /** The only row left. */
  readonly waiting: DecisionOption;
  /** Why, each reason once. */
  readonly why: readonly string[];
  /** What would make one possible, a sentence each. */
  readonly remedies: readonly string[];
}

/** Undefined where something can be done, or need not be. */
export function ruledOutOf(options: readonly DecisionOption[]): RuledOut | undefined {
  const [first] = options;
  if (first?.kind !== 'do nothing' || first.within || first.obstacle !== undefined) return undefined;
  const relines = options.filter(({ kind }) => kind !== 'turn' && kind !== 'exchange');
  return {
    waiting: first,
    why: [...new Set(relines.flatMap(({ obstacle }) => obstacle ?? []))],
    remedies: [...new Set(relines.flatMap(({ remedies }) => remedies ?? []))],
  };
}

/** A new liner lies there afterwards. */
export function isReline({ kind }: Pick<DecisionOption, 'kind'>): boolean {
  switch (kind) {
    case 'planned reline':
    case 'reline with a new screw':
    case 'part at an outage':
    case 'part from stock':
    case 'unplanned stop':
    case 'expedite':
      return true;
    case 'look first':
    case 'lower duty':
    case 'turn':
    case 'exchange':
    case 'do nothing':
      return false;
  }
}

/** The best that can be done; undefined where nothing can: waiting beyond a risk is no way out. */
export function firstOption(options: readonly DecisionOption[]): DecisionOption | undefined {
  const [first] = options;
  return first === undefined || first.obstacle !== undefined || ruledOutOf(options) ? undefined : first;
}

/** `1`, × for what cannot be done, – for waiting where nothing else is left and no risk is kept. */
export function rankMark(options: readonly DecisionOption[], index: number): string {
  if (options[index]?.obstacle !== undefined) return '×';
  return index === 0 && ruledOutOf(options) ? '–' : String(index + 1);
}
