// What is there already when a job is planned: stock and fixings of a liner on the shelf, whole spare spirals. A job takes from it
// before anything is ordered.

import type { Estate } from '../model/estate.js';
import type { Plant } from '../model/plant.js';
import { shelfOn, stockOf, stockOrdered, type ShelfStock } from '../model/shelf.js';
import { screwsOrderedOn, spareScrewOn, spiralLengthWords } from '../model/spare-screw.js';
import type { LinerSpecification, ScrewSpecification } from '../model/specifications.js';
import type { CalendarDay } from '../units/calendar.js';

export interface PlantStore {
  /** Of one liner; empty where nothing of it was ever counted. */
  stock(liner: LinerSpecification): readonly ShelfStock[];
  /** Undefined where such spirals were never counted or ordered. */
  spirals(screw: ScrewSpecification): SpiralStock | undefined;
}

export interface SpiralStock {
  readonly count: number;
  /** Undefined where none was ever counted. */
  readonly counted: CalendarDay | undefined;
  /** `; no whole spiral: 1 length of 9.5 m, counted on …`; empty where no length of one was counted or ordered. */
  readonly lengths: string;
  /** On their way, the soonest first. */
  readonly ordered: readonly { readonly count: number; readonly arrives: CalendarDay }[];
}

export const emptyStore: PlantStore = { stock: () => [], spirals: () => undefined };

/**
 * As it was counted by a day, less the spirals that went in since, with all that is ordered and not perhaps fitted; empty where
 * nobody knows the day.
 */
export function storeOf(
  { relines, screwChanges }: Pick<Estate, 'relines' | 'screwChanges'>,
  plant: Plant,
  asOf: CalendarDay | undefined,
): PlantStore {
  if (asOf === undefined) return emptyStore;
  return {
    stock: (liner) => [
      ...stockOf(shelfOn(plant, liner, asOf), liner),
      ...stockOrdered(plant, liner, asOf, relines),
    ],
    spirals: (screw) => {
      const spare = spareScrewOn(plant, screw, asOf, screwChanges);
      const ordered = screwsOrderedOn(plant, screw, asOf, screwChanges).map(({ order, count }) => ({
        count,
        arrives: order.arrives.day,
      }));
      const pieces = spiralLengthWords(plant, screw, asOf, screwChanges);
      return spare || ordered.length > 0 || pieces.length > 0
        ? {
            lengths: pieces.length > 0 ? `; beside whole ones ${pieces.join(', ')}` : '',
            count: spare?.count.count ?? 0,
            counted: spare?.counted.day,
            ordered,
          }
        : undefined;
    },
  };
}

/** Without orders that come after a job begins; all of them where it has no window. */
export function storeBy(store: PlantStore, begins: CalendarDay | undefined): PlantStore {
  if (begins === undefined || store === emptyStore) return store;
  return {
    ...store,
    stock: (liner) => store.stock(liner).filter(({ isOrdered, counted }) => !isOrdered || counted <= begins),
    spirals: (screw) => {
      const there = store.spirals(screw);
      return there && { ...there, ordered: there.ordered.filter(({ arrives }) => arrives <= begins) };
    },
  };
}
