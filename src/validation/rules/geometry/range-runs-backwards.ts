// Is every range written from its lower to its upper end?

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Plant } from '../../../domain/model/plant.js';
import type { Range } from '../../../domain/model/stated.js';
import type { Dimension } from '../../../domain/units/dimension.js';
import { each } from '../../telling/each.js';
import type { Found } from '../../finding.js';
import type { Rule, RuleInput } from '../../rule.js';

const onConveyors = each(
  (estate) => estate.conveyors,
  function* (conveyor: Conveyor) {
    for (const part of conveyor.breaks) yield* judge(`Break ${part.name}`, part);
    for (const part of conveyor.access) yield* judge(`Access ${part.name ?? ''}`.trim(), part);
    for (const part of conveyor.braces) yield* judge('The brace', part);
    for (const part of conveyor.covers) yield* judge('The cover', part);
    for (const part of conveyor.hatches) yield* judge('The hatch', part);
    yield* judge('The clearance', conveyor.clearance);
    yield* judge('The service temperature', conveyor.serviceTemperature);
    yield* judge('The fitting temperature', conveyor.fittingTemperature);
  },
);

const onPlants = each(
  (estate) => estate.plants,
  function* (plant: Plant) {
    yield* judge('The service temperature', plant.serviceTemperature);
    yield* judge('The fitting temperature', plant.fittingTemperature);
  },
);

export const rangeRunsBackwards: Rule = {
  code: 'TL213',
  title: 'Range from the larger to the smaller',
  severity: 'error',
  restsOn: [],
  why: 'A stretch that ends before it begins is either two swapped numbers or one wrong digit, and the two are mended differently.',
  todo: 'Write the smaller value first, after checking which of the two is right.',
  given: 'conveyor',
  example: '  access A1 at «12 m|0 m» to ‹0|12› m platform',
  *check(input: RuleInput) {
    yield* onPlants(input);
    for (const { scope } of input.estate.screwChanges) yield* judge('The length', scope);
    // A conveyor that states no temperature of its own has its plant's: told once, at the place where it is written.
    const told = new Set<string>();
    for (const found of onConveyors(input)) {
      const place = `${found.origin.source} ${found.origin.start}`;
      if (told.has(place) || ofPlant(input, found)) continue;
      told.add(place);
      yield found;
    }
  },
};

function ofPlant(input: RuleInput, found: Found): boolean {
  return input.estate.plants.some(
    (plant) =>
      plant.origin.source === found.origin.source &&
      plant.origin.start <= found.origin.start &&
      found.origin.end <= plant.origin.end,
  );
}

function* judge(what: string, range: Range<Dimension> | undefined): Iterable<Found> {
  if (!range || range.from.value <= range.to.value) return;
  yield {
    origin: range.from.origin,
    message: `${what} runs from ${range.from.text} back to ${range.to.text}.`,
    fixes: [
      {
        title: `Swap: ${range.to.text} to ${range.from.text}`,
        edits: [
          { origin: range.from.origin, text: range.to.text },
          { origin: range.to.origin, text: range.from.text },
        ],
      },
    ],
  };
}
