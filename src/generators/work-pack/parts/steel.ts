// The steel that a job lays bare or welds on: what the gauge showed there, and what was welded in before. A welder has to know how
// thick the plate is still, and where an older patch ends; whoever lays it bare reads it again while nothing lies over it.

import { troughState, type PlatePlace, type TroughState } from '../../../domain/conditions/trough.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Patch } from '../../../domain/model/records.js';
import { areasOf, areasOfAction, type Area, type Ground } from '../../../domain/order/ground.js';
import { isHot } from '../../../domain/order/heat.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords, lengthWords } from '../../../domain/units/length-words.js';
import type { SteelFacts } from '../pack.js';

/** mm beyond the work from which a reading still says something of the plate there; judgement. */
const besideTheWork = 500;

/** `fitted`: where panels are renewed, mm. Undefined where the job does not come to the steel. */
export function steelFacts(
  estate: Estate,
  ground: Ground,
  fitted: readonly Area[],
  unit: LengthUnit,
  asOf: CalendarDay | undefined,
): SteelFacts | undefined {
  const { conveyor } = ground.job;
  const patched = ground.steps.flatMap((step, i) =>
    step.action === 'patch' ? areasOf(ground, i).map((area) => ({ ...area, hot: isHot(ground, step) })) : [],
  );
  const bared = [...patched, ...fitted, ...areasOfAction(ground, 'strip')];
  if (bared.length === 0) return undefined;
  const trough = troughState(estate, conveyor, asOf);
  const near = (from: number, to: number, areas: readonly Area[]): boolean =>
    areas.some((area) => from <= area.to + besideTheWork && to >= area.from - besideTheWork);
  const known = knownPlaces(trough);
  const places = known.filter(({ at }) => near(at, at, bared));
  const patches = trough.patches.filter(({ from, to }) => near(from.value, to.value, bared));
  const unread = patched.filter((area) => !known.some(({ at }) => near(at, at, [area])));
  if (places.length + patches.length + unread.length === 0) return undefined;
  return {
    plate: `${lengthWords(trough.plate, unit)} when new${trough.material === undefined ? '' : ` (${trough.material})`}, at least ${lengthWords(trough.minimum, unit)} must be left`,
    rows: [
      ...places.map((place) => ({ at: place.at, ...placeRow(place, unit) })),
      ...patches.map((patch) => ({ at: patch.from.value, ...patchRow(patch, unit) })),
      ...unread.map((area) => ({
        at: area.from,
        origin: conveyor.nameOrigin,
        where: `${chainageWords(area.from, unit)} to ${chainageWords(area.to, unit)}`,
        known:
          `to be ${area.hot ? 'welded' : 'patched cold'}, and no reading of the plate on record: ` +
          `read it before anything is ${area.hot ? 'welded' : 'fixed to it'}`,
      })),
    ]
      .sort((a, b) => a.at - b.at)
      .map(({ at: _, ...row }) => row),
  };
}

type KnownPlace = PlatePlace & { readonly covered?: CalendarDay };

/** What was read, and what was welded over since: a welder meets the old plate at the edge of the patch. */
function knownPlaces({ places, covered }: TroughState): readonly KnownPlace[] {
  const isThere = (a: PlatePlace, b: PlatePlace): boolean => a.at === b.at && a.clock === b.clock;
  const over = covered.filter(
    (each) =>
      !places.some((place) => isThere(place, each)) &&
      !covered.some((other) => isThere(other, each) && other.covered > each.covered),
  );
  return [...places, ...over];
}

type Row = SteelFacts['rows'][number];

function placeRow(
  { at, clock, readings, patch, belowMinimum, plate, covered }: KnownPlace,
  unit: LengthUnit,
): Row {
  const read = readings.map(({ day, thickness, error, note }) => {
    const by = error === undefined ? '' : ` ± ${lengthWords(error, unit)}`;
    return `${lengthWords(thickness, unit)}${by} (${formatDay(day)}${note === undefined ? '' : `, ${note}`})`;
  });
  const last = readings.at(-1);
  return {
    origin: last?.origin ?? patch?.origin,
    where: `${chainageWords(at, unit)}${clock === undefined ? '' : ` at ${clock}`}`,
    known: [
      patch ? `on the patch of ${formatDay(patch.date.day)}, ${lengthWords(plate, unit)} when new` : '',
      read.length > 0 ? `plate read ${read.join(', ')}` : 'not read since',
      covered !== undefined
        ? `patched since, ${formatDay(covered)}`
        : belowMinimum
          ? 'AT OR BELOW THE MINIMUM'
          : '',
    ]
      .filter(Boolean)
      .join('; '),
  };
}

function patchRow({ from, to, sector, thickness, date, by, note, origin }: Patch, unit: LengthUnit): Row {
  const round = sector ? `, ${sector.from.text} to ${sector.to.text}` : ', all round';
  return {
    origin,
    where: `${chainageWords(from.value, unit)} to ${chainageWords(to.value, unit)}${round}`,
    known: [
      `patch of ${lengthWords(thickness.value, unit)} welded in ${formatDay(date.day)}${by === undefined ? '' : ` by ${by}`}`,
      note ?? '',
    ]
      .filter(Boolean)
      .join('; '),
  };
}
