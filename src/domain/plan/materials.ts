// What to have on site before the job begins, how many with spares, and by when to order it: liner from the cut list, bolts
// from rows and pitch, hold-down blocks and braces that are to be renewed, consumables by rule of thumb. Spares and rules of thumb
// are judgement and are shown as such. Order-by date = first day of the window − lead time, to the day.

import { countHoldDowns, holdDownWords } from '../model/hold-down-count.js';
import { lengthOn } from '../model/unit-of-machine.js';
import { perhapsFittedWords, type ShelfStock } from '../model/shelf.js';
import type { LinerSpecification, ScrewSpecification } from '../model/specifications.js';
import type { CalendarDay } from '../units/calendar.js';
import { addDays, formatDay } from '../units/calendar.js';
import { formatPercent } from '../units/format.js';
import { counted } from '../units/wording.js';
import type { Job, Spare, StepAction } from '../model/job.js';
import type { LeadItem } from '../model/plant.js';
import type { PartToRenew } from '../conditions/to-renew.js';
import { areasOfAction, overlaps, within, type Area, type Ground, type Piece } from '../order/ground.js';
import { sheetToOrder, type CutList } from './cut-list.js';
import { emptyStore, type PlantStore, type SpiralStock } from './store.js';

export interface Material {
  readonly what: string;
  readonly for: LeadItem | 'consumable';
  /** Needed by the work itself. */
  readonly needed: number;
  readonly spares: number;
  /** Undefined where nothing of it was counted in the store. */
  readonly onShelf: number | undefined;
  /** What of the store it would be; undefined for what is never counted there. */
  readonly shelf: ShelfKind | undefined;
  /** On its way, and promised for before the job begins. */
  readonly ordered?: number;
  /** What is needed and spare, less what is there or on its way. */
  readonly toOrder: number;
  readonly unit: 'pieces' | 'm' | 'l';
  /** How the number came about. */
  readonly basis: string;
  /** Undefined without a window or a lead time, and where nothing is to be ordered. */
  readonly orderBy: CalendarDay | undefined;
}

export type ShelfKind =
  | { readonly kind: 'liner'; readonly liner: LinerSpecification; readonly length: number }
  | { readonly kind: 'fixings'; readonly liner: LinerSpecification }
  | { readonly kind: 'spiral'; readonly screw: ScrewSpecification };

/** Extra over what is needed, rounded up to whole pieces; judgement. */
export const spareShare = { liner: 0.05, bolts: 0.1, blocks: 0.05, screw: 0 } as const;

/** What is needed, before spares and dates. */
interface Requirement {
  readonly what: string;
  readonly for: Material['for'];
  readonly needed: number;
  readonly share: number;
  readonly unit: Material['unit'];
  readonly basis: string;
  readonly onShelf?: number;
  readonly shelf?: ShelfKind;
  readonly ordered?: {
    readonly count: number;
    readonly by: CalendarDay;
    /** In words where the list counts in another unit. */
    readonly words?: string;
  };
  /** What was ordered and is not taken as there, with the reason. */
  readonly notThere?: readonly string[];
  /** What a job may say of its spares, and how many of that come out of one of these. */
  readonly told?: { readonly item: Spare['item']; readonly each: number };
}

export function materialsOf(
  job: Job,
  ground: Ground,
  cuts: readonly CutList[],
  areas: readonly Area[] = ground.scope,
  store: PlantStore = emptyStore,
  renewed: readonly PartToRenew[] = [],
): readonly Material[] {
  const required = [
    ...cuts.flatMap((cut) => sheets(cut, job)),
    ...linerBolts(ground, areas, store),
    ...acrossTheTrough(job, ground, areas, renewed),
    ...spiral(job, store),
    ...consumables(ground, cuts, areas),
  ];
  return required.flatMap((each) => (each.needed > 0 ? [withSpares(job, each)] : []));
}

function withSpares(job: Job, required: Requirement): Material {
  const { what, needed, unit, for: kind, onShelf, ordered, notThere = [], shelf } = required;
  const { spares, basis } = sparesOf(job, required);
  const there = (onShelf ?? 0) + (ordered?.count ?? 0);
  const toOrder = Math.max(0, Math.round((needed + spares - there) * 1000) / 1000);
  return {
    what,
    for: kind,
    needed,
    spares,
    onShelf,
    shelf,
    ...(ordered ? { ordered: ordered.count } : {}),
    toOrder,
    unit,
    basis: [
      basis,
      ...(ordered
        ? [`${ordered.words ?? ordered.count} ordered, promised for ${formatDay(ordered.by)}`]
        : []),
      ...notThere,
    ].join('; '),
    orderBy: toOrder > 0 ? orderBy(job, kind) : undefined,
  };
}

/** As the job says, else the usual share. */
function sparesOf({ spares }: Job, required: Requirement): Pick<Material, 'spares' | 'basis'> {
  const { needed, share, basis, told } = required;
  const said = told && spares?.find(({ item }) => item === told.item);
  if (!said)
    return {
      spares: Math.max(0, Math.ceil(needed * share - 1e-9)),
      basis: share > 0 ? `${basis}; ${formatPercent(share)} spares` : basis,
    };
  return {
    spares: Math.ceil(said.count.count / told.each),
    basis: `${basis}; the job asks for ${said.count.count} spare ${said.item}`,
  };
}

function sheets(cut: CutList, job: Job): Requirement[] {
  const offcuts = cut.sticks.filter((stick) => stick.offcut).length;
  const taken = cut.sticks.filter((stick) => stick.shelf);
  const lengths = [...new Set([...cut.toBuy, ...taken].map(({ length }) => length))].sort((a, b) => b - a);
  const spared = cut.toBuy[0]?.length ?? lengths[0]; // what is bought, longest first; from the shelf where nothing is
  return [
    ...lengths.map((length): Requirement => {
      const fresh = cut.toBuy.find((buy) => buy.length === length)?.count ?? 0;
      const used = taken.filter((stick) => stick.length === length);
      const listed = listedOf(job, cut, length);
      const panel = fresh === 0 && used.every(({ shelf }) => shelf === 'panels');
      return {
        what: `${cut.liner.name} ${panel ? 'panel' : 'sheet'}, ${lengthOn(cut, length)}`,
        for: 'liner',
        needed: fresh + used.length,
        share: fresh > 0 || length === spared ? spareShare.liner : 0,
        unit: 'pieces',
        basis: [
          cutFrom(cut, length),
          ...(listed === undefined ? [] : [`the job lists ${counted(listed, 'piece')} as there or on order`]),
          ...notesOf(cut, length),
        ].join('; '),
        shelf: { kind: 'liner', liner: cut.liner, length },
        ...(listed === undefined ? {} : { onShelf: listed }),
        ...countOf(cut.shelf.filter((each) => each.item !== 'fixings' && each.length === length)),
        ...(length === spared ? { told: { item: 'panels', each: panelsOf(cut, length) } } : {}),
      };
    }),
    ...cut.tooLong
      .filter(({ closing, length, longest }) => closing && longest > length)
      .map((piece): Requirement => ({
        what: `${cut.liner.name} sheet of at least ${lengthOn(cut, sheetToOrder(piece))}`,
        for: 'liner',
        needed: 1,
        share: 0,
        unit: 'pieces',
        basis:
          `closing panel ${piece.panel} of run ${piece.run}: the gap may be up to ` +
          `${lengthOn(cut, piece.longest)}, longer than any stock`,
      })),
    { ...consumable(`${cut.liner.name} offcuts in hand`, offcuts, 'cut list'), onShelf: offcuts },
  ];
}

/** What was written beside the count of such pieces, and beside their order. */
function notesOf({ shelf }: CutList, length: number): readonly string[] {
  return shelf.flatMap(({ item, length: own, note, isOrdered }) =>
    item !== 'fixings' && own === length && note !== undefined
      ? [`${isOrdered ? 'at the order' : 'at the count'}: “${note}”`]
      : [],
  );
}

/** How many sheets of a length the job says are on hand or on order; undefined where it counts none, or the shelf has them. */
function listedOf({ stock }: Job, cut: CutList, length: number): number | undefined {
  if (cut.shelf.some((each) => each.item !== 'fixings' && each.length === length)) return undefined;
  const counts = stock.flatMap((each) =>
    !each.offcut && each.count && each.length.value === length ? [each.count.count] : [],
  );
  return counts.length === 0 ? undefined : counts.reduce((sum, count) => sum + count, 0);
}

/** How many of the panels to fit are cut from sheets of a length. */
function cutFrom({ sticks, pieces }: CutList, length: number): string {
  const cuts = sticks.flatMap((stick) => (!stick.offcut && stick.length === length ? stick.cuts : []));
  return cuts.length === pieces.length
    ? `cut list: ${pieces.length} panels`
    : `cut list: ${cuts.length} of ${pieces.length} panels`;
}

function countOf(stock: readonly ShelfStock[]): Pick<Requirement, 'onShelf' | 'ordered' | 'notThere'> {
  const counted = stock.filter(({ isOrdered }) => !isOrdered);
  const orders = stock.filter(({ isOrdered, perhapsFitted }) => isOrdered && !perhapsFitted);
  const sum = (all: readonly ShelfStock[]): number => all.reduce((each, { count }) => each + count, 0);
  return {
    ...(counted.length > 0 ? { onShelf: sum(counted) } : {}),
    ...(orders.length > 0
      ? {
          ordered: {
            count: sum(orders),
            by: Math.max(...orders.map(({ promised, counted: on }) => promised ?? on)) as CalendarDay,
          },
        }
      : {}),
    notThere: stock.flatMap(({ perhapsFitted, promised }) =>
      perhapsFitted && promised !== undefined
        ? [
            `${perhapsFitted.count} were ordered for ${formatDay(promised)}: ${perhapsFittedWords(perhapsFitted.by)}`,
          ]
        : [],
    ),
  };
}

/** Whole panels of the longest kind in a sheet; at least one. */
function panelsOf({ liner }: CutList, sheet: number): number {
  const panel = Math.max(...liner.panelLengths.map(({ value }) => value));
  return Math.max(1, Math.floor(sheet / panel + 1e-9));
}

function linerBolts(ground: Ground, areas: readonly Area[], store: PlantStore): Requirement[] {
  return [...boltsByLiner(ground, areas)].flatMap(([liner, { count, basis }]): Requirement[] => {
    const { bolt, boltLength } = liner;
    if (!bolt) return [];
    const size = `${bolt.size}${boltLength ? ` × ${lengthOn({ liner }, boltLength.value)}` : ''}`;
    return [
      {
        ...fixing(`${size} countersunk bolt with nut and washer`, count, 'bolts', basis),
        ...countOf(store.stock(liner).filter(({ item }) => item === 'fixings')),
        shelf: { kind: 'fixings', liner },
        told: { item: 'fixings', each: 1 },
      },
    ];
  });
}

/**
 * Hold-down blocks and braces that do not go back as they came off: of what the order takes off, else of all that is opened, for a
 * screw change along the whole conveyor.
 */
function acrossTheTrough(
  job: Job,
  ground: Ground,
  areas: readonly Area[],
  renewed: readonly PartToRenew[],
): Requirement[] {
  const { conveyor } = job;
  const opened = job.screwChange ? [{ from: 0, to: conveyor.length.value }] : areas;
  // Where the order says what comes off, that and nothing else, as the list of what comes off and goes back.
  const off = (action: StepAction): readonly Area[] =>
    ground.steps.some((step) => step.action === action) ? areasOfAction(ground, action) : opened;
  const found = (part: PartToRenew['part'], piece: Piece): readonly PartToRenew[] =>
    renewed.filter((each) => each.part === part && overlaps(piece, each));
  const why = (part: PartToRenew['part'], pieces: readonly Piece[]): string =>
    [...new Set(pieces.flatMap((piece) => found(part, piece).map(({ what }) => what)))].join('; ');
  const taken = (part: PartToRenew['part'], pieces: readonly Piece[], action: StepAction): readonly Piece[] =>
    within(pieces, off(action)).filter((piece) => found(part, piece).length > 0);
  const places = conveyor.holdDowns.length > 0 ? taken('hold-down', ground.holdDowns, 'hold-downs off') : [];
  const blocks = countHoldDowns(
    places.map((piece) => {
      const side = sideToRenew(piece, found('hold-down', piece));
      return side === undefined ? {} : { side };
    }),
  );
  const braces = conveyor.braces.length > 0 ? taken('brace', ground.braces, 'braces off') : [];
  return [
    fixing(
      'hold-down block',
      blocks.blocks,
      'blocks',
      `${holdDownWords(blocks)}: ${why('hold-down', places)}`,
    ),
    fixing(
      'brace with its fixings',
      braces.length,
      'blocks',
      `${counted(braces.length, 'brace')}: ${why('brace', braces)}`,
    ),
  ];
}

/** Of a pair the one that was found, where every finding names the same side. */
function sideToRenew({ side }: Piece, found: readonly PartToRenew[]): Piece['side'] {
  const named = new Set(found.map((each) => each.side));
  const [only] = named;
  return side === 'both sides' && named.size === 1 && only !== undefined ? only : side;
}

function spiral({ screwChange, conveyor }: Job, store: PlantStore): Requirement[] {
  if (!screwChange) return [];
  const spare = store.spirals(screwChange.screw);
  const length = Math.round(conveyor.length.value) / 1000;
  const plate = screwChange.screw.drivePlate;
  const bolts = plate
    ? [
        fixing(
          `${plate.size} drive-plate bolt with nut and washer`,
          plate.bolts.count,
          'bolts',
          'drive plate',
        ),
      ]
    : [];
  return [
    {
      what: `screw ${screwChange.screw.name}`,
      for: 'screw',
      needed: length,
      share: spareShare.screw,
      unit: 'm',
      shelf: { kind: 'spiral', screw: screwChange.screw },
      ...(spare?.counted === undefined ? {} : { onShelf: spare.count * length }),
      ...(spare ? spiralsOnOrder(spare, length) : {}),
      basis:
        spare?.counted !== undefined
          ? `length of the conveyor; ${counted(spare.count, 'whole spiral')} on the shelf, counted on ${formatDay(spare.counted)}${spare.lengths}`
          : `length of the conveyor${spare?.lengths ?? ''}`,
    },
    ...bolts,
  ];
}

function spiralsOnOrder({ ordered }: SpiralStock, length: number): Pick<Requirement, 'ordered'> {
  const last = ordered.at(-1);
  const count = ordered.reduce((sum, each) => sum + each.count, 0);
  if (!last) return {};
  return { ordered: { count: count * length, by: last.arrives, words: counted(count, 'whole spiral') } };
}

function consumables(ground: Ground, cuts: readonly CutList[], areas: readonly Area[]): Requirement[] {
  const panels = ground.runs.reduce((sum, run) => sum + within(run.panels, areas).length, 0);
  const cut = cuts.reduce((sum, each) => sum + each.pieces.length, 0);
  return [
    consumable(
      `drill bit${drillWords(ground, areas)} for trough holes`,
      Math.ceil(panels / 10),
      'one for ten panels, a rule of thumb',
    ),
    consumable(
      'countersink bit with depth stop',
      Math.ceil(panels / 20),
      'one for twenty panels, a rule of thumb',
    ),
    consumable('saw blade for PE', Math.ceil(cut / 30), 'one for thirty cuts, a rule of thumb'),
  ];
}

/** Sizes that the liners of the job are drilled with, where they say so. */
function drillWords(ground: Ground, areas: readonly Area[]): string {
  const sizes = ground.runs
    .filter((run) => within(run.panels, areas).length > 0)
    .flatMap(({ liner }) => (liner.drill ? [lengthOn({ liner }, liner.drill.size.value)] : []));
  return [...new Set(sizes)].map((size) => ` ${size}`).join(',');
}

function fixing(what: string, needed: number, spare: keyof typeof spareShare, basis: string): Requirement {
  return { what, for: 'fixings', needed, share: spareShare[spare], unit: 'pieces', basis };
}

function consumable(what: string, needed: number, basis: string): Requirement {
  return { what, for: 'consumable', needed, share: 0, unit: 'pieces', basis };
}

function boltsByLiner(
  ground: Ground,
  areas: readonly Area[],
): Map<CutList['liner'], { readonly count: number; readonly basis: string }> {
  const found = new Map<CutList['liner'], { count: number; basis: string }>();
  for (const run of ground.runs) {
    const panels = within(run.panels, areas);
    const { bolt } = run.liner;
    const pitch = bolt?.pitch?.value;
    if (!bolt || pitch === undefined || pitch <= 0) continue;
    const rows = bolt.rows?.count ?? usualRows;
    const count = panels.reduce((sum, panel) => sum + boltsOf(panel.length, pitch, rows), 0);
    const known = found.get(run.liner);
    found.set(run.liner, {
      count: (known?.count ?? 0) + count,
      basis: `${rows} rows${bolt.rows ? '' : ' (usual)'} at ${lengthOn(run, pitch)} pitch`,
    });
  }
  return found;
}

/** Rows across the sheet where the liner does not say; judgement: one at each top edge and two on the curve. */
const usualRows = 4;

/** Bolts in a panel of a length, mm: in each row one near either end, and no two further apart than the pitch. */
export function boltsOf(length: number, pitch: number, rows: number): number {
  return rows * (Math.max(1, Math.ceil((length - pitch) / pitch - 1e-9)) + 1);
}

/** Nothing that is consumed has a lead time. */
function orderBy(job: Job, item: Material['for']): CalendarDay | undefined {
  const lead = job.conveyor.plant.leadTimes.find((each) => each.item === item);
  if (!lead || !job.window) return undefined;
  return addDays(job.window.from.day, -Math.ceil(lead.time.value / 24 - 1e-9));
}
