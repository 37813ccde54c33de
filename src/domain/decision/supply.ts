// How soon can the liner for a scope be there? From the shelf at once where the newest count covers every piece, else after
// the usual or the expedited lead time; what lies on the shelf for one conveyor is not offered to a second in the programme.

import type { LeadItem, OrderedStock, Plant, ShelfCount, ShelfItem } from '../model/plant.js';
import {
  notThereWords,
  ordersOn,
  orderWords,
  perhapsFittedOn,
  shelfOn,
  stockOf,
  type LinerWentIn,
} from '../model/shelf.js';
import type { LinerSpecification } from '../model/specifications.js';
import { addDays, formatDay, type CalendarDay } from '../units/calendar.js';
import { spoken } from '../units/wording.js';

export interface Pieces {
  readonly liner: LinerSpecification;
  /** Lengths of the panels to fit, mm. */
  readonly lengths: readonly number[];
  readonly fixings: number;
}

export interface Supply {
  readonly by: 'shelf' | 'ordered' | 'usual' | 'expedited';
  /** First day on which all of it is there. */
  readonly day: CalendarDay;
  /** On top of the reline, money; 0 where nothing is. */
  readonly price: number;
  readonly why: string;
  /** The bolts come last: the liner would be there before. */
  readonly waitsForFixings?: true;
}

/** `liner is`, or `bolts are` where these come last. */
export function waitedFor({ waitsForFixings }: Supply): string {
  return waitsForFixings ? 'bolts are' : 'liner is';
}

export interface Supplies {
  /** Soonest first; empty where nothing says how long it takes. */
  readonly ways: readonly Supply[];
  /** What the shelf has and lacks for this scope, in words. */
  readonly shelf: string;
}

const kerf = 3;

/**
 * @param pieces of every liner that the work takes: all of them have to be there
 * @param relines of all conveyors: they may have used what was ordered
 */
export function suppliesOf(
  plant: Plant,
  pieces: readonly Pieces[],
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): Supplies {
  const each = pieces.map((some) => ({ shelf: shelfOn(plant, some.liner, asOf), some }));
  const lacks = each.map(({ shelf, some }) => lacking(shelf, some));
  const lack = {
    panels: lacks.reduce((sum, { panels }) => sum + panels, 0),
    fixings: lacks.reduce((sum, { fixings }) => sum + fixings, 0),
    words: lacks
      .map(({ words }, i) => (lacks.length > 1 ? `${pieces[i]?.liner.name ?? ''}: ${words}` : words))
      .join('; '),
  };
  const days = (item: LeadItem): number | undefined => leadDays(plant, item);
  const boltDays = lack.fixings > 0 ? days('fixings') : 0;
  const ways: Supply[] = [];
  if (each.length > 0 && each.every(({ shelf }) => shelf.length > 0) && lack.panels === 0) {
    const day = addDays(asOf, boltDays ?? 0);
    ways.push({
      by: 'shelf',
      day,
      price: 0,
      why: `from the shelf: ${lack.words}${lack.fixings > 0 ? `; fixings ${waiting(plant, 'fixings', asOf)}` : ''}`,
      ...(day > asOf && { waitsForFixings: true }),
    });
  }
  const unknown = pieces.flatMap(({ liner }) =>
    perhapsFittedOn(plant, liner, asOf, relines).map(notThereWords),
  );
  const promised = ways.length > 0 ? undefined : byOrders(plant, pieces, asOf, relines);
  if (promised) ways.push(promised);
  const usual = days('liner');
  if (usual !== undefined)
    ways.push({
      by: 'usual',
      day: addDays(asOf, Math.max(usual, boltDays ?? 0)),
      price: 0,
      why: [`liner ${waiting(plant, 'liner', asOf)}`, ...unknown].join('; '),
    });
  const fast = plant.expedited.find(({ item }) => item === 'liner');
  if (fast) {
    const wait = Math.ceil(fast.time.value / 24 - 1e-9);
    ways.push({
      by: 'expedited',
      day: addDays(asOf, Math.max(wait, boltDays ?? 0)),
      price: fast.price.value,
      why: `expedited, ${spoken(fast.time.text)} from an order on ${formatDay(asOf)}, ${fast.price.text} more`,
    });
  }
  return {
    ways: ways.sort((a, b) => a.day - b.day || a.price - b.price),
    shelf: [lack.words, ...unknown].join('; '),
  };
}

/** The first day on which the shelf and what is on its way have every piece, bolts included; undefined where they never do. */
function byOrders(
  plant: Plant,
  pieces: readonly Pieces[],
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): Supply | undefined {
  const orders = pieces.map(({ liner }) => ordersOn(plant, liner, asOf, relines));
  const dayOf = ({ arrives }: OrderedStock): CalendarDay => Math.max(asOf, arrives.day) as CalendarDay;
  const days = [...new Set(orders.flat().map(dayOf))].sort((a, b) => a - b);
  const bolts = (lack: number): number => (lack > 0 ? (leadDays(plant, 'fixings') ?? 0) : 0);
  for (const day of days) {
    const lacks = pieces.map((some, i) =>
      lacking(
        [
          ...shelfOn(plant, some.liner, asOf),
          ...(orders[i] ?? []).flatMap((each) =>
            dayOf(each) <= day ? [{ ...each, counted: each.arrives }] : [],
          ),
        ],
        some,
      ),
    );
    if (lacks.some(({ panels }) => panels > 0)) continue;
    const wait = bolts(lacks.reduce((sum, { fixings }) => sum + fixings, 0));
    const waitsForFixings = addDays(asOf, wait) > day;
    return {
      by: 'ordered',
      day: Math.max(day, addDays(asOf, wait)) as CalendarDay,
      price: 0,
      why:
        (waitsForFixings ? `fixings ${waiting(plant, 'fixings', asOf)}; liner ` : '') +
        `ordered already: ${orders.flat().map(orderWords).join(', ')}`,
      ...(waitsForFixings && { waitsForFixings }),
    };
  }
  return undefined;
}

/** Nothing is left to order: it lies on the shelf, or is on its way. */
export function isBought({ by }: Supply): boolean {
  return by === 'shelf' || by === 'ordered';
}

/** Whole days from order to delivery; undefined where none is declared. */
export function leadDays(plant: Plant, item: LeadItem): number | undefined {
  const lead = plant.leadTimes.find((each) => each.item === item);
  return lead && Math.ceil(lead.time.value / 24 - 1e-9);
}

function waiting(plant: Plant, item: LeadItem, asOf: CalendarDay): string {
  const lead = plant.leadTimes.find((each) => each.item === item);
  return lead
    ? `${spoken(lead.time.text)} from an order on ${formatDay(asOf)}`
    : 'without a declared lead time';
}

/** Panels without a length serve nowhere where a liner comes in several: whoever reads that some are short is told. */
function lengthWords(
  { panelLengths }: LinerSpecification,
  item: ShelfItem,
  length: ShelfCount['length'],
): string {
  if (length) return ` of ${length.text}`;
  return item === 'panels' && panelLengths.length > 1 ? ' without their length' : '';
}

/** Pieces the shelf does not cover: whole panels first, the shortest that serves, then cuts from stock lengths. */
function lacking(
  shelf: readonly ShelfCount[],
  { liner, lengths, fixings }: Pieces,
): { readonly panels: number; readonly fixings: number; readonly words: string } {
  const stock = stockOf(shelf, liner);
  const each = (item: ShelfItem): number[] =>
    stock
      .filter((kind) => kind.item === item)
      .flatMap(({ length, count }) => Array.from({ length: count }, () => length))
      .sort((a, b) => a - b);
  const panels = each('panels');
  const sticks = [...each('stock lengths'), ...each('offcuts')].sort((a, b) => a - b);
  let missing = 0;
  for (const length of [...lengths].sort((a, b) => b - a)) {
    const fits = panels.findIndex((panel) => panel >= length - 0.5);
    if (fits >= 0) {
      panels.splice(fits, 1);
      continue;
    }
    const stick = sticks.findIndex((left) => left >= length - 0.5);
    if (stick < 0) missing += 1;
    else sticks[stick] = (sticks[stick] ?? 0) - length - kerf;
  }
  const bolts = shelf.filter(({ item }) => item === 'fixings');
  const have = bolts.reduce((sum, { count }) => sum + count.count, 0);
  const lackBolts = Math.max(0, fixings - have);
  const counted = shelf.map(
    ({ count, item, length, counted: on, note }) =>
      `${count.count} ${item}${lengthWords(liner, item, length)} counted ${formatDay(on.day)}` +
      (note === undefined ? '' : ` (“${note}”)`),
  );
  const words =
    shelf.length === 0
      ? `no ${liner.name} on the shelf is written down`
      : `${counted.join(', ')}; ${lengths.length} panels needed, ${missing === 0 ? 'all there' : `${missing} short`}`;
  return { panels: missing, fixings: lackBolts, words };
}
