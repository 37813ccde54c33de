// What a conveyor's page says of it first: which liner lies there, since when, and what its life is counted in.

import { newSince } from '../../../domain/model/liner-sets.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { amountWithUnit } from './wording.js';
import { sizesOf } from '../sizes.js';

/** Terms and their values, in the order of the page. */
export function conveyorFacts(life: ConveyorLife): readonly (readonly [string, string])[] {
  const { conveyor, now, duty } = life;
  const sizes = sizesOf(conveyor);
  const liners = [...new Set(life.lying.map((set) => set.liner.name))];
  const since = life.lying.map((set) => newSince(set)?.day);
  const days = since.flatMap((day) => day ?? []).sort((a, b) => a - b);
  const fitted = [...new Set(days.map((day) => formatDay(day)))];
  if (since.includes(undefined)) fitted.push('not recorded');
  const total = life.unit === 'h' ? now?.hours : now?.tonnes;
  return [
    ['Liner', liners.length === 0 ? 'none' : liners.join(', ')],
    ['Fitted', fitted.length === 0 ? '–' : fitted.join(', ')],
    [
      'Condemn at',
      [...new Set(life.points.map((p) => sizes.size(p.condemn)))].join(', ') ||
        sizes.size(conveyor.liner.condemn.value),
    ],
    [
      life.unit === 'h' ? 'Run in all' : 'Carried in all',
      total === undefined ? 'not known' : amountWithUnit(total, life.unit),
    ],
    ['Duty', duty ? duty.text : 'none declared'],
    ['Wear goes by', life.unit === 'h' ? 'running hours' : 'tonnes'],
  ];
}
