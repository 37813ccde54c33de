// What is cut from what: every new panel of a job laid onto stock lengths and offcuts with the least new stock, each stick with
// its cuts, and which offcut serves which closing piece. Panels of one liner share stock; where no stock length is stated,
// panels are bought at the liner's panel lengths and closing pieces cut from them.

import type { Reline } from '../model/records.js';
import { stretchText } from '../order/words.js';
import { formatDay } from '../units/calendar.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { linersBrought } from '../model/same-again.js';
import type { LinerSpecification } from '../model/specifications.js';
import type { Area, Ground } from '../order/ground.js';
import type { ShelfStock } from '../model/shelf.js';
import { piecesToCut, type PieceToCut } from './pieces-to-cut.js';
import { cuttingStock, type CuttingPlan, type StockKind } from './cutting-stock.js';

export interface CutList {
  readonly liner: LinerSpecification;
  readonly pieces: readonly CutPiece[];
  readonly sticks: readonly Stick[];
  /** What was counted on the shelf of this liner; empty where the job lists stock of its own. */
  readonly shelf: readonly ShelfStock[];
  /** New stock by length, longest first. */
  readonly toBuy: readonly { readonly length: number; readonly count: number }[];
  /** What the stock in hand does not yield; the sticks above then count more of the same lengths. */
  readonly missing: readonly { readonly length: number; readonly count: number }[];
  /** Longer than any stock, as laid out or, a closing panel, as they may have to be. */
  readonly tooLong: readonly CutPiece[];
  readonly optimal: boolean;
  /** mm of new stock, and the least any plan needs. */
  readonly newStock: number;
  readonly lowerBound: number;
  /** New stock if the saw took nothing: where it is less, sheets a little longer than nominal would save whole sheets. */
  readonly newStockWithoutKerf: number;
  /** Waste over all stock used, offcuts included. */
  readonly wasteRatio: number;
  /** Offcuts that are in the records of earlier jobs with this liner and that the job does not list. */
  readonly recordedOffcuts: readonly {
    readonly length: number;
    readonly count: number;
    readonly date: string;
  }[];
}

export interface CutPiece extends PieceToCut {
  /** Position in `sticks`; undefined where no stock yields it. */
  readonly stick: number | undefined;
}

export interface Stick {
  /** `S1`, `S2`, … for new stock, `O1`, … for offcuts, `P1`, … for what lies on the shelf. */
  readonly name: string;
  readonly length: number;
  readonly offcut: boolean;
  /** What it is where it lies on the shelf of the plant. */
  readonly shelf?: ShelfStock['item'];
  /** It is ordered, and not there yet. */
  readonly isOrdered?: true;
  /** Positions in `pieces`, longest first. */
  readonly cuts: readonly number[];
  readonly rest: number;
  /** The rest is long enough to be kept and listed as an offcut. */
  readonly keep: boolean;
}

/**
 * One list for each liner of the job; runs that are not relined take no part. Offcuts of the job are offered to each list in
 * turn: what one has used is gone for the next.
 */
export function cutLists(
  job: Job,
  estate: Estate,
  ground: Ground,
  areas: readonly Area[] = ground.scope,
  shelfOf: (liner: LinerSpecification) => readonly ShelfStock[] = () => [],
): readonly CutList[] {
  const byLiner = piecesToCut(job, ground, areas);
  const used: number[] = [];
  return [...byLiner].map(([liner, pieces]) => {
    const onlyLiner = byLiner.size === 1;
    const shelf = shelfOf(liner).filter((each) => !hasOwnStock(job, onlyLiner) || isListed(job, each));
    const listed = stockOf(job, liner, onlyLiner, used);
    const kinds = [...listed.filter((kind) => !isOnShelf(kind, shelf)), ...shelf.flatMap(shelfKind)];
    const list = cutListOf(job, estate, liner, pieces, kinds, shelf);
    used.push(...list.sticks.flatMap((stick) => (stick.offcut ? [stick.length] : [])));
    return list;
  });
}

function cutListOf(
  job: Job,
  estate: Estate,
  liner: LinerSpecification,
  pieces: readonly PieceToCut[],
  kinds: readonly Kind[],
  shelf: readonly ShelfStock[],
): CutList {
  const tooLong = pieces.filter((piece) => isBeyond(piece, kinds));
  const cuttable = pieces.filter((piece) => !tooLong.includes(piece));
  const problem = (stock: readonly Kind[]) => ({
    stock,
    pieces: cuttable.map(({ longest }) => ({ length: asSold(longest, stock), count: 1 })),
    kerf: job.sawKerf.value,
  });
  let stock: readonly Kind[] = kinds;
  let plan: CuttingPlan = cuttingStock(problem(stock));
  const missing =
    plan.kind === 'not enough stock'
      ? plan.missing.map(({ piece, count }) => ({ length: cuttable[piece]?.length ?? 0, count }))
      : [];
  if (plan.kind === 'not enough stock') {
    stock = [...kinds, ...bought(kinds, liner)];
    plan = cuttingStock(problem(stock));
  }
  const sticks: Stick[] = [];
  const stickOf = new Map<number, number>();
  if (plan.kind === 'plan') {
    // Every panel is a piece of its own, so no two sticks are cut into the same ones and each is taken once.
    for (const cut of plan.sticks) {
      const kind = stock[cut.stock];
      if (!kind) continue;
      for (const piece of cut.pieces) stickOf.set(piece, sticks.length);
      const letter = kind.shelf ? 'P' : kind.offcut ? 'O' : 'S';
      const number = sticks.filter(({ name }) => name.startsWith(letter)).length + 1;
      sticks.push({
        name: `${letter}${number}`,
        length: kind.length,
        offcut: kind.offcut,
        ...(kind.shelf ? { shelf: kind.shelf } : {}),
        ...(kind.isOrdered ? { isOrdered: true as const } : {}),
        cuts: cut.pieces,
        rest: cut.rest,
        keep: cut.rest >= job.minimumClosingPiece.value,
      });
    }
  }
  const fresh = sticks.filter((stick) => !stick.offcut && !stick.shelf);
  const lengths = [...new Set(fresh.map((stick) => stick.length))].sort((a, b) => b - a);
  const position = new Map(cuttable.map((piece, i) => [piece, i]));
  const inAll = new Map(pieces.map((piece, i) => [piece, i]));
  return {
    liner,
    pieces: pieces.map((piece) => ({ ...piece, stick: stickOf.get(position.get(piece) ?? -1) })),
    sticks: sticks.map((stick) => ({
      ...stick,
      cuts: stick.cuts.flatMap((i) => {
        const piece = cuttable[i];
        return piece ? [inAll.get(piece) ?? 0] : [];
      }),
    })),
    shelf,
    toBuy: lengths.map((length) => ({
      length,
      count: fresh.filter((stick) => stick.length === length).length,
    })),
    missing,
    tooLong: tooLong.map((piece) => ({ ...piece, stick: undefined })),
    optimal: plan.kind === 'plan' && plan.optimal,
    newStock: fresh.reduce((sum, stick) => sum + stick.length, 0),
    newStockWithoutKerf: newStockOf(cuttingStock({ ...problem(stock), kerf: 0 }), stock),
    lowerBound: plan.kind === 'plan' ? plan.lowerBound : 0,
    wasteRatio: plan.kind === 'plan' ? plan.wasteRatio : 0,
    recordedOffcuts: recorded(job, estate, liner),
  };
}

/** No stock is as long as the piece may have to be. */
function isBeyond({ longest }: PieceToCut, kinds: readonly Kind[]): boolean {
  return kinds.every((kind) => kind.length < longest - rounding);
}

/** Pieces are rounded, stock is as it is written: 47.244 in are 1199.9976 mm, and such a panel is cut from such a one. */
function asSold(length: number, kinds: readonly Kind[]): number {
  return kinds.find((kind) => Math.abs(kind.length - length) < rounding)?.length ?? length;
}

/** mm. */
const rounding = 1e-3;

export interface ClosingBeyondStock {
  readonly liner: LinerSpecification;
  readonly piece: PieceToCut;
  /** The longest stock there is, mm. */
  readonly stock: number;
}

/** Closing panels that would do as they are laid out, and that no stock covers where the panels before them come short. */
export function closingBeyondStock(
  job: Job,
  ground: Ground,
  areas: readonly Area[] = ground.scope,
): readonly ClosingBeyondStock[] {
  const byLiner = piecesToCut(job, ground, areas);
  return [...byLiner].flatMap(([liner, pieces]) => {
    const kinds = stockOf(job, liner, byLiner.size === 1, []);
    const stock = Math.max(0, ...kinds.map(({ length }) => length));
    return pieces
      .filter((piece) => isBeyond(piece, kinds) && piece.length <= stock + 1e-6)
      .map((piece) => ({ liner, piece, stock }));
  });
}

/** A sheet to ask for, mm: whole centimetres, never shorter. */
export function sheetToOrder({ longest }: Pick<PieceToCut, 'longest'>): number {
  return Math.ceil(longest / 10 - 1e-9) * 10;
}

function newStockOf(plan: CuttingPlan, stock: readonly Kind[]): number {
  if (plan.kind !== 'plan') return 0;
  return plan.sticks.reduce(
    (sum, stick) => sum + (isNew(stock[stick.stock]) ? stick.times * stock[stick.stock]!.length : 0),
    0,
  ); // the kind was found just before
}

interface Kind extends StockKind {
  readonly offcut: boolean;
  readonly shelf?: ShelfStock['item'];
  readonly isOrdered?: true;
}

function isNew(kind: Kind | undefined): boolean {
  return kind !== undefined && !kind.offcut && !kind.shelf;
}

/** It is there already: whatever is cut from it need not be bought. */
function shelfKind({ item, length, count, isOrdered }: ShelfStock): Kind[] {
  if (item === 'fixings' || count === 0) return [];
  return [{ length, count, cost: 0, offcut: false, shelf: item, ...(isOrdered ? { isOrdered } : {}) }];
}

/** What lies on the shelf of a length that the job lists may be the very pieces that it means. */
function isListed({ stock }: Job, { item, length }: ShelfStock): boolean {
  return item !== 'fixings' && stock.some((each) => !each.offcut && each.length.value === length);
}

/** The shelf holds as many of that length as the job lists. */
function isOnShelf({ length, offcut, count }: Kind, shelf: readonly ShelfStock[]): boolean {
  if (offcut || count === undefined) return false;
  const there = shelf.filter((each) => each.item !== 'fixings' && each.length === length);
  return there.reduce((sum, each) => sum + each.count, 0) >= count;
}

/**
 * A job that lists lengths without a number says what all is cut from. With a number they are pieces in hand, beside what the shelf has
 * and what is ordered.
 */
function hasOwnStock(job: Job, onlyLiner: boolean): boolean {
  return onlyLiner && job.stock.some((each) => !each.offcut && !each.count);
}

/**
 * The job's own stock, else the liner's stock lengths, else its panel lengths; offcuts of the job are free. `used`: lengths of
 * offcuts that are gone, one for each.
 */
function stockOf(
  job: Job,
  liner: LinerSpecification,
  onlyLiner: boolean,
  used: readonly number[],
): readonly Kind[] {
  const listed = onlyLiner ? job.stock : job.stock.filter((each) => each.offcut);
  const gone = [...used];
  const left = (length: number, count: number): number => {
    let rest = count;
    for (; rest > 0 && gone.includes(length); rest--) gone.splice(gone.indexOf(length), 1);
    return rest;
  };
  const offcuts = listed
    .filter((each) => each.offcut)
    .map((each): Kind => ({
      length: each.length.value,
      count: left(each.length.value, each.count?.count ?? 1),
      cost: 0,
      offcut: true,
    }))
    .filter(({ count = 0 }) => count > 0);
  const stated = listed
    .filter((each) => !each.offcut)
    .map((each): Kind => ({
      length: each.length.value,
      offcut: false,
      ...(each.count ? { count: each.count.count } : {}),
    }));
  if (stated.length > 0) return [...offcuts, ...stated];
  return [...offcuts, ...bought([], liner)];
}

/** As many as are wanted, of the lengths in hand or on offer. */
function bought(kinds: readonly Kind[], liner: LinerSpecification): Kind[] {
  const inHand = kinds.filter(isNew).map((kind) => kind.length);
  const offered = [...inHand, ...liner.stockLengths.map((length) => length.value)];
  const lengths = offered.length > 0 ? offered : liner.panelLengths.map((length) => length.value);
  return [...new Set(lengths)].map((length) => ({ length, offcut: false }));
}

function recorded(job: Job, estate: Estate, liner: LinerSpecification): CutList['recordedOffcuts'] {
  const listed = new Set(job.stock.filter((each) => each.offcut).map((each) => each.length.value));
  return estate.relines
    .filter(
      (reline, index, all) =>
        linersBrought(reline).includes(liner) && !all.slice(0, index).some((one) => isCopy(one, reline)),
    )
    .flatMap((reline) =>
      reline.offcuts
        .filter((offcut) => !listed.has(offcut.length.value))
        .map((offcut) => ({
          length: offcut.length.value,
          count: offcut.count,
          date: formatDay(reline.date.day),
        })),
    );
}

/** One reline written down twice: its offcuts are there once. */
function isCopy(one: Reline, other: Reline): boolean {
  return (
    one.conveyor === other.conveyor &&
    one.date.day === other.date.day &&
    one.meter.hours?.value === other.meter.hours?.value &&
    one.scope.map(stretchText).join() === other.scope.map(stretchText).join()
  );
}
