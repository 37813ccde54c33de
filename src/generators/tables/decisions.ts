// One row a way out of a conveyor's table of decisions: what could be done on which day, both chances until then, what it costs
// and what it needs. Nothing is left out; what cannot be done says why.

import type { DecisionOption } from '../../domain/decision/option.js';
import { chance, day, number, text, whole, yesNo, type DataColumn } from '../remaining-life/columns.js';
import { currencyOf } from '../remaining-life/decision-words.js';
import type { ConveyorLife, RemainingLife } from '../remaining-life/remaining-life.js';
import { readingsBehind } from './readings-behind.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

interface OptionRow {
  readonly life: ConveyorLife;
  readonly option: DecisionOption;
  readonly number: number;
}

export function decisionsTable({ conveyors }: RemainingLife): EstateTable {
  return tableOf(
    decisionsKind,
    conveyors.flatMap((life) =>
      (life.decision?.options ?? []).map((option, i) => ({ life, option, number: i + 1 })),
    ),
  );
}

const columns: readonly DataColumn<OptionRow>[] = [
  text('plant', 'name of the plant', ({ life }) => life.conveyor.plant.name, { always: true }),
  text('conveyor', 'name of the conveyor', ({ life }) => life.conveyor.name, { always: true }),
  whole(
    'option',
    '1 is the best; what cannot be done, and waiting beyond the risk, come last',
    ({ number }) => number,
    { always: true },
  ),
  text('kind', 'kind of way out', ({ option }) => option.kind, { always: true }),
  text('what', 'what is done', ({ option }) => option.what, { always: true }),
  day('day', 'the day it is done', ({ option }) => option.day),
  text('outage', 'outage it happens in', ({ option }) => option.outage),
  chance(
    'limit_by_day',
    'chance of the limit by then, unseen panels counted in',
    ({ option }) => option.condemn,
  ),
  chance('limit_by_day_seen', 'of what was seen alone', ({ option }) => option.condemnSeen),
  chance('steel_by_day', 'chance of steel by then, unseen panels counted in', ({ option }) => option.contact),
  chance('steel_by_day_seen', 'of what was seen alone', ({ option }) => option.contactSeen),
  yesNo('within', 'both accepted chances are kept', ({ option }) => option.within, { always: true }),
  text('obstacle', 'why it cannot be done', ({ option }) => option.obstacle),
  number('cost', 'to be paid for the work, in currency', 2, ({ option }) => option.cost),
  number(
    'expected_cost',
    'with the chance of steel and the life used up, in currency',
    2,
    ({ option }) => option.expected,
  ),
  text('currency', 'ISO 4217', ({ life }) => life.decision && currencyOf(life.decision)),
  chance('reassures', 'chance that a look says it may wait', ({ option }) => option.reassures),
  text('needs', 'what it needs', ({ option }) => option.needs.join('; ') || undefined),
  ...readingsBehind<OptionRow>(({ life }) => life),
];

export const decisionsKind: Kind<OptionRow> = {
  name: 'decisions',
  about: 'a way out of a conveyor’s table of decisions, the best first',
  columns,
};
