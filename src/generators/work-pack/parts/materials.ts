// Cut lists and materials as rows of the pack.

import { sheetToOrder, type CutList, type CutPiece } from '../../../domain/plan/cut-list.js';
import { perhapsFittedWords } from '../../../domain/model/shelf.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Material } from '../../../domain/plan/materials.js';
import type { CutListFacts, MaterialRow, OrderBy } from '../pack.js';

export function cutListFacts(cut: CutList): CutListFacts {
  return {
    liner: cut.liner.name,
    sticks: cut.sticks.map((stick) => ({
      name: stick.name,
      length: stick.length,
      offcut: stick.offcut,
      shelf: stick.shelf !== undefined,
      ...(stick.isOrdered ? { ordered: true as const } : {}),
      rest: stick.rest,
      keep: stick.keep,
      cuts: stick.cuts.flatMap((position) => {
        const piece = cut.pieces[position];
        return piece ? [{ ...pieceFacts(piece), closing: piece.closing }] : [];
      }),
    })),
    shelf: cut.shelf
      .filter(({ item }) => item !== 'fixings')
      .map(({ item, length, count, counted, isOrdered, promised, perhapsFitted }) => ({
        item,
        length,
        count: perhapsFitted?.count ?? count,
        taken: cut.sticks.filter(
          (stick) => stick.shelf === item && stick.length === length && stick.isOrdered === isOrdered,
        ).length,
        counted: formatDay(promised ?? counted),
        ...(isOrdered ? { ordered: true as const } : {}),
        ...(perhapsFitted ? { notThere: perhapsFittedWords(perhapsFitted.by) } : {}),
      })),
    toBuy: cut.toBuy,
    missing: cut.missing,
    tooLong: cut.tooLong.map((piece) => ({
      ...pieceFacts(piece),
      ...(piece.longest > piece.length ? { order: sheetToOrder(piece) } : {}),
    })),
    newStock: cut.newStock,
    lowerBound: cut.lowerBound,
    optimal: cut.optimal,
    newStockWithoutKerf: cut.newStockWithoutKerf,
    wasteRatio: cut.wasteRatio,
    recordedOffcuts: cut.recordedOffcuts,
  };
}

function pieceFacts({ run, panel, length, longest }: CutPiece): {
  run: number;
  panel: number;
  length: number;
  longest?: number;
} {
  return { run, panel, length, ...(longest > length ? { longest } : {}) };
}

/** `orders`: where the report says to order now, its day stands instead of the window's. */
export function materialRow(material: Material, orders: readonly OrderBy[]): MaterialRow {
  const now = orders.find(({ item, latest }) => item === material.for && latest !== undefined);
  return {
    what: material.what,
    kind: material.for,
    needed: material.needed,
    spares: material.spares,
    ...(material.onShelf === undefined ? {} : { onShelf: material.onShelf }),
    ...(material.ordered === undefined ? {} : { ordered: material.ordered }),
    toOrder: material.toOrder,
    unit: material.unit,
    basis: material.basis,
    orderBy:
      material.toOrder === 0
        ? undefined
        : (now?.date ?? (material.orderBy === undefined ? undefined : formatDay(material.orderBy))),
  };
}
