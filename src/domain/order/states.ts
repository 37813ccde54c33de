// The states a piece of the machine goes through, as small numbers, and which step brings it into each.

import type { StepAction } from '../model/job.js';
import type { PieceKind } from './ground.js';

export const live = 0,
  isolated = 1,
  dead = 2;
export const notRun = 0,
  runEmpty = 1,
  runLoaded = 2;
export const free = 0,
  restrained = 1;
export const bolted = 0,
  unbolted = 1;
export const untested = 0,
  tested = 1;
export const oldScrew = 0,
  noScrew = 1,
  newScrew = 2,
  /** In its place, its pieces not joined yet. */
  laidScrew = 3;
/** Covers, braces and hold-downs. */
export const on = 0,
  off = 1;
export const oldPanel = 0,
  stripped = 1,
  cleaned = 2,
  newPanel = 3;

export const laden = 0,
  emptied = 1;
export const gateOpen = 0,
  gateShut = 1,
  gateOff = 2;
/** Where there was hot work: until it has been watched, something may smoulder. */
export const cool = 0,
  hot = 1;

/** Tools, old liner and swarf lie about; kept only where an order has steps that clear up. */
export const tidy = 0,
  littered = 1;

/** A set of states, as bits. */
export type States = number;

export function states(...each: number[]): States {
  return each.reduce((bits, state) => bits | (1 << state), 0);
}

export function holds(set: States, state: number): boolean {
  return ((set >> state) & 1) === 1;
}

/** The steps that bring a piece into a state, in the order they are done. */
export function broughtBy(kind: PieceKind, from: number, to: number): readonly StepAction[] {
  switch (kind) {
    case 'isolation':
      if (to === live) return ['remove isolation'];
      return from === live && to === dead
        ? ['isolate', 'prove dead']
        : to === dead
          ? ['prove dead']
          : ['isolate'];
    case 'running':
      return to === runLoaded ? ['run loaded'] : ['run empty'];
    case 'restraint':
      return to === restrained ? ['restrain screw'] : ['release screw'];
    case 'drive':
      return to === unbolted ? ['unbolt drive'] : ['bolt drive'];
    case 'air':
      return to === tested ? ['gas test'] : ['pause'];
    case 'content':
      return ['empty'];
    case 'gate':
      if (to === gateOff) return ['gate off'];
      return to === gateShut ? ['gate shut'] : from === gateOff ? ['gate on'] : ['gate open'];
    case 'heat':
      return to === cool ? ['fire watch'] : [];
    case 'litter':
      return to === tidy ? ['clear up'] : [];
    case 'screw':
      if (to === newScrew && from === laidScrew) return ['join screw'];
      return to === noScrew ? ['remove screw'] : ['insert screw'];
    case 'cover':
      return to === off ? ['covers off'] : ['covers on'];
    case 'brace':
      return to === off ? ['braces off'] : ['braces on'];
    case 'hold-down':
      return to === off ? ['hold-downs off'] : ['hold-downs on'];
    case 'panel':
      if (to === stripped) return ['strip'];
      if (to === cleaned) return from === oldPanel ? ['strip', 'clean'] : ['clean'];
      return ['fit'];
  }
}
