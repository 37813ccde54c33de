// What lies on the shelf for a part of which something is open: whoever reads of the noisy bearing wants to know that a new one is there.

import { historyOf } from '../model/history.js';
import { screwNow } from '../model/lying-screw.js';
import { spareScrewOn, spiralLengthWords } from '../model/spare-screw.js';
import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { SparePart } from '../model/plant.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';

/** `on the shelf: 1 tail bearing, counted on 2026-10-20`, as a note of the open condition; nothing where nobody counted. */
export function shelfNotes(
  estate: Estate,
  conveyor: Conveyor,
  part: string | undefined,
  asOf: CalendarDay | undefined,
): readonly string[] {
  const found = part === 'spiral' || part === 'flight' ? spirals(estate, conveyor, asOf) : [];
  const parts = newest(conveyor, part, asOf).map(
    ({ count, counted, note, what }) =>
      `${count.count === 0 ? 'no' : count.count} ${part ?? ''}${what === undefined ? '' : ` (${what})`} on the shelf, ` +
      `counted on ${formatDay(counted.day)}${note === undefined ? '' : ` (“${note}”)`}`,
  );
  return [...found, ...parts, ...onTheirWay(conveyor, part, asOf)];
}

/** Ordered by a day, and not in a count of the shelf since they were to come. */
function onTheirWay(
  conveyor: Conveyor,
  part: string | undefined,
  asOf: CalendarDay | undefined,
): readonly string[] {
  return (conveyor.plant.orderedParts ?? [])
    .filter(
      (order) =>
        order.part === part &&
        fits(order, conveyor) &&
        (order.ordered?.day ?? -Infinity) <= (asOf ?? Infinity) &&
        !newest(conveyor, part, asOf).some(
          ({ what, counted }) => what === order.what && counted.day >= order.arrives.day,
        ),
    )
    .map(
      ({ count, what, ordered, arrives, note }) =>
        `${count.count} ${part ?? ''}${what === undefined ? '' : ` (${what})`} ordered` +
        `${ordered ? ` on ${formatDay(ordered.day)}` : ''}, promised for ${formatDay(arrives.day)}` +
        (note === undefined ? '' : ` (“${note}”)`),
    );
}

/** Of this machine, or not said to fit another alone. */
function fits({ conveyorUse }: Pick<SparePart, 'conveyorUse'>, { name, plant }: Conveyor): boolean {
  const of = conveyorUse?.name;
  return of === undefined || of === name || of === `${plant.name}.${name}`;
}

function spirals(estate: Estate, conveyor: Conveyor, asOf: CalendarDay | undefined): readonly string[] {
  const { plant } = conveyor;
  if (plant.spareScrews.length + (plant.orderedScrews ?? []).length === 0) return [];
  const screw = screwNow(historyOf(estate, conveyor, { asOf }));
  const whole = spareScrewOn(plant, screw, asOf, estate.screwChanges);
  return [
    ...(whole
      ? [
          `${whole.count.count === 0 ? 'no' : whole.count.count} whole ${screw.name} on the shelf, ` +
            `counted on ${formatDay(whole.counted.day)}`,
        ]
      : []),
    ...spiralLengthWords(plant, screw, asOf, estate.screwChanges).map((each) => `${screw.name}: ${each}`),
  ];
}

/** The newest count up to a day of each, of what fits this conveyor or is not said to fit another alone. */
function newest(
  conveyor: Conveyor,
  part: string | undefined,
  asOf: CalendarDay | undefined,
): readonly SparePart[] {
  const found = new Map<string, SparePart>();
  for (const spare of conveyor.plant.spareParts ?? []) {
    if (spare.part !== part || spare.counted.day > (asOf ?? Infinity) || !fits(spare, conveyor)) continue;
    const key = `${spare.what ?? ''} ${spare.conveyorUse?.name ?? ''}`;
    const known = found.get(key);
    if (!known || known.counted.day < spare.counted.day) found.set(key, spare);
  }
  return [...found.values()];
}
