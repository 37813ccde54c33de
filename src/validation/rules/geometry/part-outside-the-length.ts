// Does every part lie on the conveyor? Chainage runs from 0 at the tail-end plate to the length at the head.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { Stated } from '../../../domain/model/stated.js';
import { capital } from '../../../domain/units/wording.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const partOutsideTheLength: Rule = {
  code: 'TL212',
  title: 'Part beyond the end of the conveyor',
  severity: 'error',
  restsOn: [],
  why: 'Nobody will find the part there; its neighbours and the runs between breaks are placed wrongly as well.',
  todo: 'Measure the chainage again from the inside face of the tail-end plate, in the direction of flow.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock 7:30
  point P2 at «19 m|9 m» clock 7:30`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const told = new Set<number>();
      for (const { what, at } of chainagesOf(conveyor)) {
        const outside = at.value < -0.5 || at.value > conveyor.length.value + 0.5;
        if (!outside || told.has(at.origin.start)) continue;
        told.add(at.origin.start);
        yield {
          origin: at.origin,
          message:
            at.value < 0
              ? `${what} lies at ${at.text}, before the tail-end plate of ${conveyor.name}.`
              : `${what} lies at ${at.text}, and ${conveyor.name} ends at ${conveyor.length.text}.`,
          related: [{ origin: conveyor.length.origin, message: `the length of ${conveyor.name}` }],
        };
      }
    },
  ),
};

function* chainagesOf(conveyor: Conveyor): Iterable<{ what: string; at: Stated<'length'> }> {
  for (const part of conveyor.breaks) if (!part.implied) yield* ends(`Break ${part.name}`, part);
  for (const part of conveyor.holdDowns) yield* ends('A hold-down', part);
  for (const part of conveyor.braces) yield* ends('A brace', part);
  for (const part of conveyor.covers) yield* ends('A cover', part);
  for (const part of conveyor.access) yield* ends(`Access ${part.name ?? ''}`.trim(), part);
  for (const part of conveyor.hoppers) yield* ends(`Hopper ${part.name ?? ''}`.trim(), part);
  for (const part of conveyor.drains) yield* ends(`Drain ${part.name ?? ''}`.trim(), part);
  for (const part of conveyor.hatches) yield* ends(`Hatch ${part.name ?? ''}`.trim(), part);
  for (const part of conveyor.isolations) if (part.at) yield { what: `Isolation ${part.name}`, at: part.at };
  for (const part of conveyor.liftingPoints) yield { what: `Lifting point ${part.name}`, at: part.at };
  for (const { kind, at, to } of conveyor.safeguards)
    for (const end of [at, to]) if (end) yield { what: capital(kind), at: end };
  for (const part of conveyor.points) yield { what: `Point ${part.name}`, at: part.at };
}

function* ends(
  what: string,
  part: { from: Stated<'length'>; to: Stated<'length'>; origin: Origin },
): Iterable<{ what: string; at: Stated<'length'> }> {
  yield { what, at: part.from };
  if (part.to.value !== part.from.value) yield { what, at: part.to };
}
