// The base case and the changed one of a what-if, side by side. Duty and speed change what is to come, a condemn limit changes
// what is aimed at, another liner changes how long a new set would last; the records stay what they are.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { OutageCandidate } from '../../../domain/wear/decision.js';
import type { WhatIfChange } from '../what-if.js';
import { conveyorModel, tryingDuty, type Coming, type FittedWear } from './forecasts.js';
import type { ConveyorForecast, Quantiles } from './model.js';
import type { PointLife } from './points.js';
import type { RunLife } from './runs.js';

export interface Case {
  readonly forecast: ConveyorForecast;
  readonly riskDay: CalendarDay | undefined;
  /** The outage to reline at, as in the report itself. */
  readonly outage: OutageCandidate | undefined;
}

export type WhatIf = { readonly change: WhatIfChange; readonly conveyor: string } & (
  | { readonly kind: 'dates'; readonly base: Case; readonly changed: Case }
  /** Exposure of a new set until its limit at the fastest-wearing place; the material is taken to wear alike. */
  | {
      readonly kind: 'liner life';
      readonly unit: 'h' | 't';
      readonly place: string;
      readonly present: Quantiles;
      readonly other: Quantiles;
    }
  | { readonly kind: 'cannot say'; readonly why: string }
);

export interface WhatIfInput {
  readonly fitted: FittedWear;
  readonly coming: Coming;
  readonly points: readonly PointLife[];
  readonly runs: readonly RunLife[];
}

export function whatIfOf(change: WhatIfChange, input: WhatIfInput): WhatIf {
  const { fitted, coming, points, runs } = input;
  const { conveyor } = coming.history;
  const head = { change, conveyor: conveyor.name };
  if (fitted.result.kind !== 'fitted') return { ...head, kind: 'cannot say', why: fitted.result.why };
  const caseOf = (changed: Coming, at: readonly PointLife[]): Case => {
    const { forecast, riskDay, outages } = conveyorModel({ fitted, coming: changed, points: at, runs });
    return { forecast, riskDay, outage: outages?.chosen };
  };
  const beside = (changed: Case): WhatIf => ({
    ...head,
    kind: 'dates',
    base: caseOf(coming, points),
    changed,
  });
  switch (change.kind) {
    case 'duty': {
      const perHour = coming.history.wearBy === 'tonnes' ? coming.history.throughput?.perHour : 1;
      if (perHour === undefined)
        return { ...head, kind: 'cannot say', why: 'no throughput is known to turn hours into tonnes' };
      return beside(
        caseOf(
          tryingDuty(coming, ({ turns = 1 }) => change.perDay * turns),
          points,
        ),
      );
    }
    case 'speed':
      // As a duty record with that speed: an hour counts by its turns. Where wear goes by tonnes speed says nothing of it.
      if (coming.history.wearBy === 'tonnes')
        return {
          ...head,
          kind: 'cannot say',
          why: 'its wear goes by tonnes, of which the speed says nothing',
        };
      return beside(
        caseOf(
          tryingDuty(coming, ({ perDay, turns = 1 }) => (perDay * change.rpm) / (change.now * turns)),
          points,
        ),
      );
    case 'condemn':
      return beside(
        caseOf(
          coming,
          points.map((point) => ({ ...point, condemn: change.least })),
        ),
      );
    case 'liner': {
      const fastest = points.reduce<PointLife | undefined>(
        (a, p) => ((p.model?.rate?.q50 ?? 0) > (a?.model?.rate?.q50 ?? 0) ? p : a),
        undefined,
      );
      const rate = fastest?.model?.rate;
      if (!fastest || !rate) return { ...head, kind: 'cannot say', why: 'no rate is known' };
      const lives = (depth: number): Quantiles => ({
        q05: depth / rate.q95,
        q10: depth / rate.q90,
        q50: depth / rate.q50,
        q90: depth / rate.q10,
        q95: depth / rate.q05,
      });
      const { thickness, condemn } = fastest.set?.liner ?? conveyor.liner;
      return {
        ...head,
        kind: 'liner life',
        unit: coming.history.wearBy === 'tonnes' ? 't' : 'h',
        place: fastest.place.name,
        present: lives(thickness.value - condemn.value),
        other: lives(change.liner.thickness.value - change.liner.condemn.value),
      };
    }
  }
}
