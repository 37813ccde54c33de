// One row a reading, of the liner that lies there and of those before it: what was seen where, when, at which meter, on which
// liner after how much exposure. It is the long form that readings are brought in by, too.

import { exposedReadings, type ExposedReading } from '../../domain/model/exposure.js';
import type { Place } from '../../domain/model/records.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import { clockColumns } from '../remaining-life/clock-columns.js';
import { day, number, text, yesNo, type DataColumn } from '../remaining-life/columns.js';
import type { RemainingLife } from '../remaining-life/remaining-life.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

interface ReadingRow {
  readonly report: RemainingLife;
  readonly place: Place;
  readonly exposed: ExposedReading;
  /** On a liner that was replaced. */
  readonly former: boolean;
}

export function readingsTable(report: RemainingLife): EstateTable {
  return tableOf(readingsKind, rowsOf(report));
}

/** By conveyor, place and time, as the report has them; what nobody could read is a finding and no row. */
function rowsOf(report: RemainingLife): readonly ReadingRow[] {
  const { estate, asOf, conveyors } = report;
  const readings = exposedReadings(estate, { asOf });
  return conveyors.flatMap(({ conveyor }) =>
    estate.places
      .filter((place) => place.conveyor === conveyor)
      .flatMap((place) =>
        (readings.get(place) ?? []).flatMap((exposed) =>
          sawOf(report, exposed) === undefined
            ? []
            : [{ report, place, exposed, former: exposed.set?.removed !== undefined }],
        ),
      ),
  );
}

const columns: readonly DataColumn<ReadingRow>[] = [
  text('plant', 'name of the plant', ({ place }) => place.conveyor.plant.name, { always: true }),
  text('conveyor', 'name of the conveyor', ({ place }) => place.conveyor.name, { always: true }),
  text('point', 'name of the inspection point, or its place', ({ place }) => place.name, { always: true }),
  number('chainage_m', 'from the tail end in the direction of flow', 3, ({ place }) => place.at / 1000, {
    always: true,
  }),
  ...clockColumns<ReadingRow>(({ place }) => place.clock),
  day('date', 'day of the look', ({ exposed }) => exposed.inspection.date.day, { always: true }),
  number('meter_h', 'hour meter at the look', 1, ({ exposed }) => exposed.inspection.meter.hours?.value),
  number('meter_t', 'counter of tonnes at the look', 1, ({ exposed }) => {
    const kilograms = exposed.inspection.meter.tonnes?.value;
    return kilograms === undefined ? undefined : kilograms / 1000;
  }),
  text(
    'kind',
    'thickness, colour, trough showing or not seen',
    ({ report, exposed }) => sawOf(report, exposed),
    {
      always: true,
    },
  ),
  number('thickness_mm', 'left of the liner', 3, ({ report, exposed }) =>
    sawOf(report, exposed) === 'thickness' ? report.estate.readings.value[exposed.row] : undefined,
  ),
  number('error_mm', 'one standard deviation of the gauge, where one is stated', 3, ({ report, exposed }) =>
    sawOf(report, exposed) === 'thickness' ? report.estate.readings.error[exposed.row] : undefined,
  ),
  text('colour', 'layer that showed', ({ report, exposed }) => colourOf(report, exposed)),
  text('note', 'what was written beside it', ({ report, exposed }) =>
    report.estate.readings.notes.get(exposed.row),
  ),
  text('gauge', 'what it was read with', ({ exposed }) => exposed.inspection.gauge?.kind),
  text('view', 'which way the inspector looked; clock is by the flow whatever it was', ({ exposed }) =>
    exposed.inspection.view.stated ? exposed.inspection.view.direction : undefined,
  ),
  text('by', 'who looked, by role', ({ exposed }) => exposed.inspection.by),
  yesNo(
    'bench',
    'measured on the bench when the panel came out',
    ({ report, exposed }) => report.estate.readings.bench.has(exposed.row),
    { always: true },
  ),
  text('liner', 'liner it was read on', ({ exposed }) => exposed.set?.liner.name),
  day('fitted_on', 'day that liner was fitted', ({ exposed }) => exposed.set?.fitted?.day),
  number('exposure', 'of that liner at the look, in exposure_unit', 1, ({ exposed: { exposure } }) =>
    exposure.known ? exposure.value : undefined,
  ),
  text('exposure_unit', 'what wear follows: h or t', ({ exposed: { exposure } }) =>
    exposure.known ? exposure.unit : undefined,
  ),
  yesNo('former', 'on a liner that was replaced since', ({ former }) => former, { always: true }),
  text('left_out', 'why it took no part in any forecast', ({ exposed: { exposure } }) =>
    exposure.known ? undefined : exposure.reason,
  ),
];

type Saw = 'thickness' | 'colour' | 'trough showing' | 'not seen' | 'does not count';

function sawOf({ estate }: RemainingLife, exposed: ExposedReading): Saw | undefined {
  switch (estate.readings.kind[exposed.row]) {
    case ReadingKind.thickness:
      return 'thickness';
    case ReadingKind.colour:
      return layersOf(exposed)[estate.readings.value[exposed.row] ?? -1] === undefined ? undefined : 'colour';
    case ReadingKind.trough:
      return 'trough showing';
    case ReadingKind.notSeen:
      return 'not seen';
    case ReadingKind.withdrawn:
      return 'does not count';
    default:
      return undefined;
  }
}

function colourOf(report: RemainingLife, exposed: ExposedReading): string | undefined {
  return sawOf(report, exposed) === 'colour'
    ? layersOf(exposed)[report.estate.readings.value[exposed.row] ?? -1]
    : undefined;
}

function layersOf({ set, inspection }: ExposedReading): readonly string[] {
  return (set?.liner ?? inspection.conveyor.liner).layers.map(({ name }) => name);
}

export const readingsKind: Kind<ReadingRow> = {
  name: 'readings',
  about: 'a reading, of the liner that lies there or of one before it',
  columns,
};
