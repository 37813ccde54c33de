// The base case and the changed one of a what-if, side by side: the report as it is, and the same report of an estate with the one
// edit that the change stands for (tried-estate.ts). What a new liner would last is told by relining on the day of the report, once
// with the present liner and once with the other.

import { riskDayOf } from './risk-day.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { WhatIfChange } from '../what-if.js';
import type { ConveyorLife } from './conveyor-life.js';
import type { ConveyorForecast, Quantiles } from './model.js';
import { triedEstate, withReline, type Tried } from './tried-estate.js';

export interface Case {
  readonly forecast: ConveyorForecast;
  readonly riskDay: CalendarDay | undefined;
}

export type WhatIf = { readonly change: WhatIfChange; readonly conveyor: string } & (
  | { readonly kind: 'dates'; readonly base: Case; readonly changed: Case }
  /** Exposure of a new set, fitted on the day of the report, until its first place reaches the limit. */
  | {
      readonly kind: 'liner life';
      readonly unit: 'h' | 't';
      /** The likeliest to be first. */
      readonly place: string;
      readonly present: Quantiles;
      readonly other: Quantiles;
    }
  | { readonly kind: 'cannot say'; readonly why: string }
);

export interface WhatIfInput {
  readonly estate: Estate;
  readonly asOf: CalendarDay;
  /** As the report has it. */
  readonly life: Pick<ConveyorLife, 'conveyor' | 'history' | 'unit' | 'model' | 'decision' | 'worst'>;
  /** The same report of another estate. */
  readonly report: (tried: Tried) => Pick<ConveyorLife, 'model' | 'decision'> | undefined;
}

export function whatIfOf(change: WhatIfChange, input: WhatIfInput): WhatIf {
  const { life, estate, asOf } = input;
  const head = { change, conveyor: life.conveyor.name };
  const cannot = (why: string): WhatIf => ({ ...head, kind: 'cannot say', why });
  const base = caseOf(life);
  if (!base) return cannot('no model could be fitted to the records');
  const tried = triedEstate(change, life.history, estate, asOf);
  if (typeof tried === 'string') return cannot(tried);
  const changed = caseOf(input.report(tried));
  if (!changed) return cannot('no model could be fitted to the records');
  if (change.kind !== 'liner') return { ...head, kind: 'dates', base, changed };
  const present = withReline(estate, life.history, asOf, lyingLiner(life));
  const same = typeof present === 'string' ? undefined : caseOf(input.report(present));
  if (same?.forecast.kind !== 'dates' || changed.forecast.kind !== 'dates')
    return cannot('nothing tells how long a new liner lasts');
  return {
    ...head,
    kind: 'liner life',
    unit: life.unit,
    place: changed.forecast.first[0]?.name ?? '',
    present: same.forecast.exposure,
    other: changed.forecast.exposure,
  };
}

/** Where the limit comes first now. */
function lyingLiner({ worst, conveyor }: WhatIfInput['life']) {
  return worst?.set?.liner ?? conveyor.liner;
}

function caseOf(life: Pick<ConveyorLife, 'model' | 'decision'> | undefined): Case | undefined {
  const model = life?.model;
  return model && { forecast: model.forecast, riskDay: riskDayOf(life) };
}
