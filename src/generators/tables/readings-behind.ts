// A prediction travels with its interval and the count of readings behind it: the columns that say so in every table of chances.

import { day, whole, type DataColumn } from '../remaining-life/columns.js';
import type { ConveyorForecast, ConveyorLife } from '../remaining-life/remaining-life.js';

export function readingsBehind<Row>(of: (row: Row) => ConveyorLife): readonly DataColumn<Row>[] {
  const dates = (row: Row): Extract<ConveyorForecast, { kind: 'dates' }> | undefined => {
    const forecast = of(row).model?.forecast;
    return forecast?.kind === 'dates' ? forecast : undefined;
  };
  return [
    day('limit_on_p10', 'the first panel at its limit, 10 % quantile', (row) => dates(row)?.days.q10),
    day('limit_on_p50', 'the same, the middle', (row) => dates(row)?.days.q50),
    day('limit_on_p90', 'the same, 90 % quantile', (row) => dates(row)?.days.q90),
    whole('panels', 'panels of the liner', (row) => of(row).decision?.panels),
    whole('panels_seen', 'of these, seen', (row) => of(row).decision?.panelsSeen),
    whole('readings', 'thicknesses behind the chances', (row) => dates(row)?.readings),
    whole('indicators', 'colours and steel showing behind the chances', (row) => dates(row)?.indicators),
    whole('pool', 'places and liners they borrow from', (row) => dates(row)?.pool),
  ];
}
