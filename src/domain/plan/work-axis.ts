// Working time with and without tests of the air. An enclosed trough is tested again at its interval and before anybody goes back
// after a break, and nobody works on the machine meanwhile: so a plan is made in net time, from which the tests are left out as
// nights are, and is then laid over the shifts. Everything in whole minutes since the first shift began.
//
// The first test begins as early as it can, which is never the worse choice: every later moment then has at least as much net
// time behind it. What is left of a shift once the air would have to be tested again, too short for a test and some work, is lost.

import type { Pause } from './scheduling/clock.js';

export interface AirTests {
  /** Earliest end of the first test, minutes of working time, > 0. */
  readonly first: number;
  /** How long one takes. */
  readonly length: number;
  /** Minutes from the end of one to the beginning of the next; undefined: after breaks only. */
  readonly every: number | undefined;
}

export interface RepeatedTest {
  readonly net: number;
  /** In working time. */
  readonly from: number;
  readonly to: number;
  readonly why: 'interval' | 'break';
}

export interface WorkAxis {
  /** Ends of shifts in net time, and how long the nights after them are; with every test as a pause of its own. */
  readonly breaks: readonly number[];
  readonly pauses: readonly Pause[];
  /** Every one that could come, however long the work goes on. */
  readonly tests: readonly RepeatedTest[];
  /** Working time at the end of a shift in which nobody may be inside any more. */
  readonly lost: readonly { readonly from: number; readonly to: number }[];
  /** Longest net time in one shift; Infinity where no shift ends. */
  readonly longest: number;
  /** Ends of shifts and nights in working time. */
  readonly nights: readonly Pause[];
  /** A beginning lies after a test at that moment, an end before it. */
  toWork(net: number, side: 'start' | 'finish'): number;
  toNet(work: number): number;
}

/** `nights`: ends of shifts, minutes of working time, ascending, with the minutes until the next shift. */
export function workAxis(nights: readonly Pause[], air: AirTests | undefined): WorkAxis {
  const made: Made = { net: 0, spans: [], tests: [], pauses: [], breaks: [], left: [] };
  let from = 0;
  for (const night of nights) {
    layShift(made, from, night.at, air);
    made.breaks.push(made.net);
    const out = made.spans.at(-1)?.to ?? 0;
    const lost = night.at - out;
    if (lost > 0) made.left.push({ from: out, to: night.at });
    made.pauses.push({ at: made.net, length: night.length + lost + openingTest(air, night.at) });
    from = night.at;
  }
  // Beyond the last shift end that anybody asked for, and where no shift ends at all.
  layShift(made, from, from + beyond, air);
  const { spans, tests, pauses, breaks } = made;
  return {
    breaks,
    pauses,
    tests,
    lost: made.left,
    nights,
    longest: breaks.length > 0 ? Math.max(...breaks.map((at, k) => at - (breaks[k - 1] ?? 0))) : Infinity,
    toWork: (net, side) => {
      const span = spans.findLast(({ net: at }) => (side === 'start' ? at <= net : at < net)) ?? spans[0];
      return span ? span.from + net - span.net : net;
    },
    toNet: (work) => {
      const span = spans.findLast(({ from: at }) => at <= work) ?? spans[0];
      return span ? span.net + Math.min(work, span.to) - span.from : work;
    },
  };
}

/** Minutes laid out behind the last shift end. */
const beyond = 100_000;

interface Made {
  net: number;
  readonly spans: { readonly net: number; readonly from: number; readonly to: number }[];
  readonly tests: RepeatedTest[];
  readonly pauses: Pause[];
  readonly breaks: number[];
  readonly left: { readonly from: number; readonly to: number }[];
}

/** The spans of one shift between its tests. */
function layShift(made: Made, from: number, to: number, air: AirTests | undefined): void {
  let at = from;
  const span = (end: number): void => {
    made.spans.push({ net: made.net, from: at, to: end });
    made.net += end - at;
    at = end;
  };
  if (!air || to - from <= air.length) return span(to);
  const test = (why: RepeatedTest['why']): void => {
    if (why === 'interval') made.pauses.push({ at: made.net, length: air.length });
    made.tests.push({ net: made.net, from: at, to: at + air.length, why });
    at += air.length;
  };
  if (air.first <= from) test('break');
  let next = Math.max(at, air.first) + (air.every ?? Infinity);
  while (next + air.length < to) {
    span(next);
    test('interval');
    next = at + (air.every ?? Infinity);
  }
  span(Math.min(next, to));
}

function openingTest(air: AirTests | undefined, shift: number): number {
  return air && air.first <= shift ? air.length : 0;
}
