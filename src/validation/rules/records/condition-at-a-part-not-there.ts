// Is something wrong with a part that the conveyor does not have there? A torch held by hand is good to 300 mm [judgement].

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { partOf, samePlace } from '../../../domain/conditions/kinds.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { ConditionKind } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const conditionAtAPartNotThere: Rule = {
  code: 'TL524',
  title: 'Condition of a part that is not declared there',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The pack takes off and puts back what is declared: the bent brace or the loose block is on no list, and nobody brings one along.',
  todo: 'Correct the chainage, or add the part to the conveyor.',
  given: 'inspection',
  around: { conveyor: '  brace every 3 m from 3 m to 9 m' },
  example: '  brace bent at «4.5 m|6 m»',
  cases: [
    { name: 'within the hand of a torch', text: '  brace bent at 6.3 m' },
    { name: 'just beyond', text: '  brace bent at «6.31 m»' },
    { name: 'between two hold-downs', text: '  hold-down loose at «3 m»' },
    { name: 'a hold-down that is there', text: '  hold-down missing at 3.75 m' },
    { name: 'a cover is as long as it is', text: '  cover missing at 4 m' },
    { name: 'a hatch that nobody declared', text: '  hatch stuck at «4.5 m»' },
    { name: 'put right, wherever it was', text: '  brace bent at 6 m\n  closed brace bent at 6 m' },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of estate.inspections) {
      for (const { kind, at, point, answer } of conditions) {
        const parts = partsOf(conveyor, kind);
        if (!parts || !at || point || answer !== undefined) continue;
        if (at.value > conveyor.length.value + 0.5) continue; // beyond the conveyor: another finding
        const off = (one: Span): number => Math.max(one.from - at.value, at.value - one.to, 0);
        const nearest = [...parts.spans].sort((a, b) => off(a) - off(b))[0];
        if (nearest && off(nearest) <= samePlace) continue;
        yield {
          origin: at.origin,
          message: nearest
            ? `${conveyor.name} has no ${parts.name} at ${at.text}; the nearest is at ${chainageOn(conveyor, nearest.from)}.`
            : `${conveyor.name} declares no ${parts.name}, and one is told of at ${at.text}.`,
        };
      }
    }
  },
};

/** Chainages, mm. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** Undefined for conditions of what lies everywhere, liner, spiral, material, and of what no conveyor declares: its guards. */
function partsOf(
  { holdDowns, braces, covers, hatches, breaks }: Conveyor,
  kind: ConditionKind,
): { readonly name: string; readonly spans: readonly Span[] } | undefined {
  const spans = (
    parts: readonly { readonly from: { value: number }; readonly to: { value: number } }[],
  ): Span[] => parts.map(({ from, to }) => ({ from: from.value, to: to.value }));
  switch (partOf(kind)) {
    case 'hold-down':
      return { name: 'hold-down', spans: spans(holdDowns) };
    case 'brace':
      return { name: 'brace', spans: spans(braces) };
    case 'cover':
      return { name: 'cover', spans: spans(covers) };
    case 'hatch':
      return { name: 'hatch', spans: spans(hatches) };
    case 'gate':
      return { name: 'slide gate', spans: spans(breaks.filter((each) => each.kind === 'slide gate')) };
    case 'liner':
    case 'spiral':
    case 'trough':
    case 'drive':
    case 'product':
    case 'safeguard':
    case 'surroundings':
    case 'other':
      return undefined;
  }
}
