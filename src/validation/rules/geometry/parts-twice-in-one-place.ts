// Are two hold-downs, or two braces, written at the same chainage? A bracket is 50 mm wide or more [judgement].

import type { Span } from '../../../domain/model/conveyor.js';
import { each } from '../../telling/each.js';
import type { Found } from '../../finding.js';
import { remove } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const partsTwiceInOnePlace: Rule = {
  code: 'TL216',
  title: 'Two hold-downs or braces in one place',
  severity: 'warning',
  restsOn: [],
  why: 'The work pack counts what comes off and must go back: one that is written twice is missing at the end of the job.',
  todo: 'Take one of the two out, or correct its chainage.',
  given: 'conveyor',
  example: `
  hold-down every 1.5 m from 2.25 m to 11.25 m both sides
  «hold-down at 3.75 m both sides|hold-down at 4.5 m both sides»`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const sides = ['left side', 'right side'] as const;
      for (const side of sides) {
        const here = conveyor.holdDowns.filter((one) => one.side === 'both sides' || one.side === side);
        // What lies on both sides is told once, with the left.
        yield* twice('hold-down', side === 'left side' ? here : here.filter((one) => one.side === side));
      }
      yield* twice('brace', conveyor.braces);
    },
  ),
};

const width = 50;

function* twice(what: string, parts: readonly Span[]): Iterable<Found> {
  const ordered = [...parts].sort((a, b) => a.from.value - b.from.value);
  for (let i = 1; i < ordered.length; i++) {
    const [before, after] = byText(ordered[i - 1]!, ordered[i]!); // 0 ≤ i − 1 < i < length
    if (Math.abs(after.from.value - before.from.value) >= width) continue;
    yield {
      origin: after.origin,
      message: `There is a ${what} at ${before.from.text} already, and this puts another at ${after.from.text}.`,
      related: [{ origin: before.origin, message: `the other ${what}` }],
      // A row of them is not taken out for one.
      fixes:
        parts.filter((part) => part.origin === after.origin).length === 1
          ? [remove(after.origin, 'Take this one out')]
          : [],
    };
  }
}

function byText(a: Span, b: Span): readonly [Span, Span] {
  return a.origin.start <= b.origin.start ? [a, b] : [b, a];
}
