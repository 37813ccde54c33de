// Is something wrong with a part that the conveyor does not have there? A torch held by hand is good to 300 mm [judgement].

import { datedRecords } from '../../../domain/model/dated-records.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { isSafeguard } from '../../../domain/conditions/safeguards.js';
import { partNameOf, samePlace } from '../../../domain/conditions/kinds.js';
import { hasGate, type Conveyor } from '../../../domain/model/conveyor.js';
import type { SeenPlace } from '../../../domain/model/records.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const conditionAtAPartNotThere: Rule = {
  code: 'TL524',
  title: 'Condition of a part that is not declared there',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The pack takes off and puts back what is declared: the bent brace or the loose block is on no list, and nobody brings one along.',
  todo: 'Correct the chainage, or add the part to the conveyor.',
  given: 'inspection',
  around: {
    conveyor: '  brace every 3 m from 3 m to 9 m\n  emergency stop at tail',
    inspection: '  emergency stop tried at tail',
  },
  example: '  brace bent at «4.5 m|6 m»',
  cases: [
    { name: 'within the hand of a torch', text: '  brace bent at 6.3 m' },
    { name: 'just beyond', text: '  brace bent at «6.31 m»' },
    { name: 'between two hold-downs', text: '  hold-down loose at «3 m»' },
    { name: 'a hold-down that is there', text: '  hold-down missing at 3.75 m' },
    { name: 'a cover is as long as it is', text: '  cover missing at 4 m' },
    { name: 'a hatch that nobody declared', text: '  hatch stuck at «4.5 m»' },
    { name: 'a gate by the name of the inlet', text: '  gate leaking at «Inlet»' },
    { name: 'a gate by its own name', text: '  gate leaking at Gate' },
    { name: 'a finding of a part', text: '  finding hold-down at «3 m» serious "shoe worn"' },
    { name: 'a finding of one that is there', text: '  finding gate at Gate serious "bent"' },
    { name: 'work at one', text: '  serviced hold-down tightened at «3 m»' },
    {
      name: 'a stop where another is declared',
      text: '  emergency stop dead at «head» closed on 2025-03-11',
    },
    { name: 'that one', text: '  emergency stop dead at tail closed on 2025-03-11' },
    { name: 'a safeguard of which none is declared', text: '  interlock dead at «4 m» closed on 2025-03-11' },
    { name: 'put right, wherever it was', text: '  brace bent at 6 m\n  closed brace bent at 6 m' },
  ],
  *check({ estate }) {
    for (const { conveyor, conditions } of datedRecords(estate))
      for (const line of conditions)
        if (line.answer === undefined) yield* judge(conveyor, partNameOf(line), line);
    for (const { conveyor, part, place } of estate.services) yield* judge(conveyor, part, place);
  },
};

function* judge(conveyor: Conveyor, part: string | undefined, place: SeenPlace): Iterable<Found> {
  const { at, to, point, end } = place;
  const parts = partsOf(conveyor, part) ?? safeguardsOf(conveyor, part);
  if (!parts || !at) return;
  const named = point && conveyor.breaks.find(({ name }) => name === point.name);
  // A point lies where somebody looks, not where the part is.
  if (point && (part !== 'gate' || !named || hasGate(named))) return;
  if (at.value > conveyor.length.value + 0.5) return; // beyond the conveyor: another finding
  const [low, high] = [at.value, to?.value ?? at.value];
  const off = (one: Span): number => Math.max(one.from - high, low - one.to, 0);
  const nearest = [...parts.spans].sort((a, b) => off(a) - off(b))[0];
  if (!named && nearest && off(nearest) <= samePlace) return;
  const where = named ? `${named.name}, its ${named.kind}` : end ? `the ${end.name}` : at.text;
  yield {
    origin: named ? point.origin : at.origin,
    message: nearest
      ? `${conveyor.name} has no ${parts.name} at ${where}; the nearest is at ${chainageOn(conveyor, nearest.from)}.`
      : `${conveyor.name} declares no ${parts.name}, and one is told of at ${where}.`,
  };
}

/** Chainages, mm. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** Undefined where the conveyor declares no safeguard at all, or one of the kind without a place: nobody wrote down which it has. */
function safeguardsOf(
  { safeguards }: Conveyor,
  part: string | undefined,
): { readonly name: string; readonly spans: readonly Span[] } | undefined {
  if (part === undefined || safeguards.length === 0 || !isSafeguard(part)) return undefined;
  const own = safeguards.filter(({ kind }) => kind === part);
  if (own.some(({ at }) => at === undefined)) return undefined;
  return {
    name: part,
    spans: own.flatMap(({ at, to }) => (at ? [{ from: at.value, to: (to ?? at).value }] : [])),
  };
}

/** Undefined for conditions of what lies everywhere, liner, spiral, material. */
function partsOf(
  { holdDowns, braces, covers, hatches, breaks }: Conveyor,
  part: string | undefined,
): { readonly name: string; readonly spans: readonly Span[] } | undefined {
  const spans = (
    parts: readonly { readonly from: { value: number }; readonly to: { value: number } }[],
  ): Span[] => parts.map(({ from, to }) => ({ from: from.value, to: to.value }));
  const gates = breaks.filter(hasGate);
  const there = { 'hold-down': holdDowns, brace: braces, cover: covers, hatch: hatches, gate: gates };
  const name = Object.keys(there).find((each) => each === part) as keyof typeof there | undefined; // found among its keys
  return name && { name: name === 'gate' ? 'slide gate' : name, spans: spans(there[name]) };
}
