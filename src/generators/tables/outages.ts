// One row an outage that is ahead and a conveyor of its plant: the chances by then, whether the liner can be there, and which
// outage was chosen. An outage of a plant without forecasts stands there with its days and no chances.

import type { OutageDecision } from '../../domain/decision/outage-decision.js';
import type { Outage } from '../../domain/model/plant.js';
import { chance, day, text, yesNo, type DataColumn } from '../remaining-life/columns.js';
import { acceptedBy } from '../../domain/decision/conveyor-decision.js';
import type { ConveyorLife, RemainingLife } from '../remaining-life/remaining-life.js';
import { readingsBehind } from './readings-behind.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

interface OutageRow {
  readonly life: ConveyorLife;
  readonly outage: Outage;
  readonly decision: OutageDecision | undefined;
}

export function outagesTable({ estate, conveyors, asOf }: RemainingLife): EstateTable {
  const rows = estate.plants.flatMap((plant) =>
    plant.outages
      .filter(({ from }) => asOf === undefined || from.day >= asOf)
      .toSorted((a, b) => a.from.day - b.from.day)
      .flatMap((outage) =>
        conveyors
          .filter(({ conveyor }) => conveyor.plant === plant)
          .map((life) => ({ life, outage, decision: decisionOf(life, outage) })),
      ),
  );
  return tableOf(outagesKind, rows);
}

function decisionOf({ decision }: ConveyorLife, outage: Outage): OutageDecision | undefined {
  return decision?.outages.find(({ name, from }) => name === outage.name && from === outage.from.day);
}

const moves = { moves: true } as const;

const columns: readonly DataColumn<OutageRow>[] = [
  text('plant', 'name of the plant', ({ life }) => life.conveyor.plant.name, { always: true }),
  text('outage', 'name of the outage', ({ outage }) => outage.name, { always: true }),
  text('title', 'what it is for', ({ outage }) => outage.title),
  day('outage_from', 'its first day', ({ outage }) => outage.from.day, { always: true }),
  day('outage_to', 'its last day', ({ outage }) => outage.to.day, { always: true }),
  text('conveyor', 'name of the conveyor', ({ life }) => life.conveyor.name, { always: true }),
  chance(
    'limit_by_outage',
    'chance of the limit by then, unseen panels counted in',
    ({ decision }) => decision?.condemn,
  ),
  chance('limit_by_outage_seen', 'of what was seen alone', ({ decision }) => decision?.condemnSeen),
  chance(
    'steel_by_outage',
    'chance of steel by then, unseen panels counted in',
    ({ decision }) => decision?.contact,
  ),
  chance('steel_by_outage_seen', 'of what was seen alone', ({ decision }) => decision?.contactSeen),
  chance('accepted_limit', 'accepted chance of the limit', ({ life }) => acceptedBy(life.conveyor).condemn),
  chance('accepted_steel', 'accepted chance of steel', ({ life }) => acceptedBy(life.conveyor).contact),
  yesNo('within', 'both accepted chances are kept until then', ({ decision }) => decision?.within),
  yesNo(
    'chosen',
    'the outage that the report relines at',
    ({ life, decision }) =>
      life.attention.level === 'reline to plan' &&
      decision !== undefined &&
      life.attention.outage?.name === decision.name,
    { always: true },
  ),
  yesNo('reachable', 'a liner ordered today is there by then', ({ decision }) => decision?.reachable, moves),
  day('order_by', 'day to order by for it', ({ decision }) => decision?.orderBy),
  yesNo('order_is_late', 'that day has passed', ({ decision }) => decision?.orderIsLate, moves),
  ...readingsBehind<OutageRow>(({ life }) => life),
];

export const outagesKind: Kind<OutageRow> = {
  name: 'outages',
  about: 'an outage ahead and a conveyor of its plant',
  columns,
};
