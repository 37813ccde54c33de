// The estate as an edit of its files would make it: a record more, dated the day of the report, or a limit changed in a liner. The
// estate itself is never touched, so a what-if gives what editing gives because it is an edit, of a copy.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Quantity } from '../../../domain/units/quantity.js';
import type { Dimension } from '../../../domain/units/dimension.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { History } from '../../../domain/model/history.js';
import { momentOn } from '../../../domain/model/history.js';
import type { Origin } from '../../../domain/model/origin.js';
import { nothingSeen } from '../../../domain/model/other-facts.js';
import type { DutyChange, MeterReading, Reline } from '../../../domain/model/records.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import type { Stated, Toleranced } from '../../../domain/model/stated.js';
import { inTurn } from '../../../domain/model/turns.js';
import type { WhatIfChange } from '../what-if.js';

/** After all that is written: of two records of one day the later one rules. */
const nowhere: Origin = { source: -1, start: Number.MAX_SAFE_INTEGER, end: Number.MAX_SAFE_INTEGER };

export interface Tried {
  readonly estate: Estate;
  /** The conveyor of the copy. */
  readonly conveyor: Conveyor;
}

/** Undefined with the reason in words where the records lack what such an edit would need. */
export function triedEstate(
  change: WhatIfChange,
  history: History,
  estate: Estate,
  asOf: CalendarDay,
): Tried | string {
  const { conveyor } = history;
  switch (change.kind) {
    case 'duty': {
      const duty = {
        nominal: stated(change.duty),
        ...(change.tolerance && { tolerance: stated(change.tolerance) }),
      };
      return withDuty(estate, conveyor, asOf, duty);
    }
    case 'speed': {
      if (conveyor.wearBy === 'tonnes') return 'its wear goes by tonnes, of which the speed says nothing';
      const duty = dutyInForce(estate, history, asOf);
      return duty === undefined
        ? 'no duty is known from which a day’s turns follow'
        : withDuty(estate, conveyor, asOf, duty, stated(change.speed));
    }
    case 'condemn':
      return withLimit(estate, conveyor, change.liner, change.least);
    case 'liner':
      return withReline(estate, history, asOf, change.liner);
  }
}

/** Relined whole on the day of the report with a liner: what a new set is judged by. */
export function withReline(
  estate: Estate,
  history: History,
  asOf: CalendarDay,
  liner: LinerSpecification,
): Tried | string {
  const meter = meterOn(history, asOf);
  if (!meter) return 'what the meter shows on that day is not known';
  const copy = copyOf(estate, history.conveyor);
  const reline: Reline = {
    conveyor: copy.conveyor,
    conveyorUse: { name: copy.conveyor.name, origin: nowhere },
    date: { day: asOf, origin: nowhere },
    meter,
    liner: copy.estate.liners[estate.liners.indexOf(liner)] ?? copy.conveyor.liner,
    scope: [],
    asFitted: [],
    oldPanels: [],
    panelsFitted: [],
    panelThicknesses: [],
    plates: [],
    offcuts: [],
    ...nothingSeen(),
    origin: nowhere,
  };
  return { ...copy, estate: { ...copy.estate, relines: [...copy.estate.relines, reline] } };
}

function copyOf(estate: Estate, conveyor: Conveyor): Tried {
  const copy = structuredClone(estate);
  const own = copy.conveyors[estate.conveyors.indexOf(conveyor)];
  if (!own) throw new Error(`${conveyor.name} is no conveyor of this estate`);
  return { estate: copy, conveyor: own };
}

function withDuty(
  estate: Estate,
  of: Conveyor,
  asOf: CalendarDay,
  duty: Toleranced<'duty'>,
  speed?: Stated<'rotation'>,
): Tried {
  const { estate: copy, conveyor } = copyOf(estate, of);
  const record: DutyChange = {
    conveyor,
    conveyorUse: { name: conveyor.name, origin: nowhere },
    from: { day: asOf, origin: nowhere },
    duty,
    ...(speed && { speed }),
    origin: nowhere,
  };
  return { conveyor, estate: { ...copy, dutyChanges: [...copy.dutyChanges, record] } };
}

/** As it was stated, with its spread; else as the meter shows it. */
function dutyInForce(
  estate: Estate,
  { conveyor, observed }: History,
  asOf: CalendarDay,
): Toleranced<'duty'> | undefined {
  // A record of the speed alone leaves the hours as they were.
  const recorded = inTurn(estate.dutyChanges).findLast(
    (change) => change.conveyor === conveyor && change.duty && change.from.day <= asOf,
  );
  const declared = recorded?.duty ?? conveyor.duty ?? conveyor.plant.duty;
  if (declared) return declared;
  return observed && { nominal: stated({ value: observed.perDay, dimension: 'duty', text: observed.text }) };
}

function withLimit(
  estate: Estate,
  of: Conveyor,
  liner: LinerSpecification | undefined,
  least: Quantity<'length'>,
): Tried {
  const { estate: copy, conveyor } = copyOf(estate, of);
  const own = new Set([
    conveyor.liner,
    ...copy.relines.filter((r) => r.conveyor === conveyor).map((r) => r.liner),
  ]);
  copy.liners.forEach((each, k) => {
    // The copy is ours alone until it is handed out.
    if (liner ? estate.liners[k] === liner : own.has(each)) Object.assign(each, { condemn: stated(least) });
  });
  return { estate: copy, conveyor };
}

/** What the counters should show at the end of a day. */
function meterOn(history: History, asOf: CalendarDay): MeterReading | undefined {
  const { hours, tonnes } = momentOn(history, asOf);
  const last = history.hours.knots.at(-1);
  if (hours === undefined || !last) return undefined;
  const weighed = history.tonnes?.knots.at(-1);
  const shown = last.reading.value + (hours - last.total);
  return {
    hours: stated({ value: shown, dimension: 'duration', text: `${Math.round(shown)} h` }),
    ...(weighed &&
      tonnes !== undefined && {
        tonnes: stated({
          value: 1000 * (weighed.reading.value + (tonnes - weighed.total)),
          dimension: 'mass',
          text: `${Math.round(weighed.reading.value + (tonnes - weighed.total))} t`,
        }),
      }),
  };
}

function stated<D extends Dimension>(quantity: Quantity<D>): Stated<D> {
  return { ...quantity, origin: nowhere };
}
