// Conveyors with their plant, liner and screw, and the finding of them by `DG1` or `Tarnholt.DG1`. A name that two plants use
// must be written with its plant.

import type { Conveyor, Point } from '../../domain/model/conveyor.js';
import type { Plant } from '../../domain/model/plant.js';
import type { Problem } from '../../domain/model/problem.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import type { NameUse } from '../../domain/model/stated.js';
import { assumed } from '../lowering/assumed.js';
import type { ConveyorDraft, NamedConveyor } from '../sheet.js';
import { compareNames } from '../compare-names.js';
import { checkStretch } from './stretches.js';
import { closest, findNamed, finishedFirst, type NameTable } from './name-table.js';

export interface ConveyorIndex {
  readonly items: readonly Conveyor[];
  /** Names of those that are declared and cannot be used. */
  readonly unusable: readonly string[];
  orderOf(conveyor: Conveyor): number;
  /** The conveyor a record means; undefined where there is none (said) or where it cannot be used (said where it is declared). */
  find(use: NameUse, problems: Problem[]): Conveyor | undefined;
  pointOf(conveyor: Conveyor, name: string): Point | undefined;
  /** The point, or a problem unless the point is declared but cannot be placed. */
  checkPoint(conveyor: Conveyor, use: NameUse, problems: Problem[]): Point | undefined;
}

interface Specifications {
  readonly plants: NameTable<Plant>;
  readonly liners: NameTable<LinerSpecification>;
  readonly screws: NameTable<ScrewSpecification>;
}

export function buildConveyors(
  all: readonly NamedConveyor[],
  specifications: Specifications,
  problems: Problem[],
): ConveyorIndex {
  const names = conveyorNames(all, problems);
  const built = buildNamed(names, specifications, problems);
  const items = [...built.values()];
  const order = new Map(items.map((conveyor, index) => [conveyor, index]));
  const unplaced = new Map([...built].map(([one, conveyor]) => [conveyor, one.unplaced]));
  const answered = new Map<string, Answer>();

  return {
    items,
    unusable: [...names.byFullName.values()].flatMap((one) =>
      built.has(one) || one.name === '' || one.perhaps === true ? [] : [one.name],
    ),
    orderOf: (conveyor) => order.get(conveyor) ?? items.length,
    find(use, into) {
      const answer = answered.get(use.name) ?? answerOf(use.name, names, built);
      answered.set(use.name, answer);
      if (answer.kind === 'one') return answer.conveyor;
      into.push(notOne(use, answer));
      return undefined;
    },
    pointOf: (conveyor, name) => pointsOf(conveyor).get(name),
    checkPoint(conveyor, use, into) {
      const point = pointsOf(conveyor).get(use.name);
      if (point || unplaced.get(conveyor)?.some((name) => isPointOf(name, use.name))) return point;
      into.push({
        kind: 'unknown point',
        origin: use.origin,
        point: use.name,
        conveyor: conveyor.name,
        known: closest(use.name, [...pointsOf(conveyor).keys()]),
        elsewhere: conveyorsWithPoint(use.name, conveyor, items, names).slice(0, 5),
      });
      return undefined;
    },
  };
}

interface ConveyorNames {
  /** By `Plant.Name`, and by name alone, where two plants may share it. */
  readonly byFullName: ReadonlyMap<string, NamedConveyor>;
  readonly byName: ReadonlyMap<string, readonly NamedConveyor[]>;
  /** Of headings that cannot be read: of another plant, perhaps, than a conveyor of that name. */
  readonly half: ReadonlySet<string>;
}

function conveyorNames(all: readonly NamedConveyor[], problems: Problem[]): ConveyorNames {
  const byFullName = new Map<string, NamedConveyor>();
  const byName = new Map<string, NamedConveyor[]>();
  const half = new Set<string>();
  for (const one of finishedFirst(all)) {
    const { name, origin } = one;
    if (one.unfinished) half.add(name);
    if (one.unfinished && byName.has(name)) continue;
    const full = fullName(one);
    const first = byFullName.get(full)?.origin;
    if (first) {
      problems.push({ kind: 'repeated name', origin, what: 'conveyor', name, first });
      continue;
    }
    byFullName.set(full, one);
    byName.set(name, [...(byName.get(name) ?? []), one]);
  }
  return { byFullName, byName, half };
}

/** In the order of full names, whichever file came first. */
function buildNamed(
  { byFullName }: ConveyorNames,
  specifications: Specifications,
  problems: Problem[],
): ReadonlyMap<NamedConveyor, Conveyor> {
  const built = new Map<NamedConveyor, Conveyor>();
  for (const one of [...byFullName.values()].sort((a, b) => compareNames(fullName(a), fullName(b)))) {
    const conveyor = one.value && build(one.value, specifications, problems);
    if (conveyor) built.set(one, conveyor);
    else if (!one.value && one.plantUse) findNamed(specifications.plants, one.plantUse, problems);
  }
  return built;
}

type Answer =
  | { readonly kind: 'one'; readonly conveyor: Conveyor | undefined }
  | { readonly kind: 'many'; readonly candidates: readonly string[] }
  | { readonly kind: 'none'; readonly known: readonly string[]; readonly elsewhere?: string };

function answerOf(name: string, names: ConveyorNames, built: ReadonlyMap<NamedConveyor, Conveyor>): Answer {
  const bare = bareName(name);
  const named = names.byName.get(bare) ?? [];
  const inPlant = names.byFullName.get(name) ?? named.find((one) => !one.plantUse);
  const found = name === bare ? named : inPlant ? [inPlant] : [];
  const [only] = found;
  // A conveyor whose name cannot be read may be this one.
  if (!only)
    return names.byName.has('') || names.half.has(bare)
      ? { kind: 'one', conveyor: undefined }
      : unknown(name, names);
  return found.length > 1
    ? { kind: 'many', candidates: found.map(fullName).sort(compareNames) }
    : { kind: 'one', conveyor: built.get(only) };
}

function unknown(name: string, { byFullName, byName }: ConveyorNames): Answer {
  const bare = bareName(name);
  if (name === bare) return { kind: 'none', known: closest(name, [...byName.keys()]) };
  const known = closest(name, [...byFullName.keys()]);
  const others = (byName.get(bare) ?? []).flatMap((one) => one.plantUse?.name ?? []);
  if (others.length === 0) return { kind: 'none', known };
  return {
    kind: 'none',
    known,
    elsewhere: `${bare} is a conveyor of ${others.sort(compareNames).join(' and ')}`,
  };
}

function notOne({ name, origin }: NameUse, answer: Exclude<Answer, { kind: 'one' }>): Problem {
  if (answer.kind === 'many')
    return { kind: 'ambiguous name', origin, what: 'conveyor', name, candidates: answer.candidates };
  const { known, elsewhere } = answer;
  return {
    kind: 'unknown name',
    origin,
    what: 'conveyor',
    name,
    known,
    ...(elsewhere === undefined ? {} : { elsewhere }),
  };
}

/** `CP1` of a row of points `CP`. */
function isPointOf(row: string, name: string): boolean {
  return name === row || (name.startsWith(row) && /^\d+$/.test(name.slice(row.length)));
}

function conveyorsWithPoint(
  name: string,
  except: Conveyor,
  items: readonly Conveyor[],
  { byName }: ConveyorNames,
): string[] {
  return items
    .filter((other) => other !== except && pointsOf(other).has(name))
    .map((other) =>
      byName.get(other.name)?.length === 1 ? other.name : `${other.plant.name}.${other.name}`,
    );
}

/** `DG1` of `Tarnholt.DG1`. */
function bareName(name: string): string {
  return name.slice(name.indexOf('.') + 1);
}

function fullName(one: NamedConveyor): string {
  return one.plantUse ? `${one.plantUse.name}.${one.name}` : one.name;
}

const points = new WeakMap<Conveyor, ReadonlyMap<string, Point>>();

function pointsOf(conveyor: Conveyor): ReadonlyMap<string, Point> {
  const known = points.get(conveyor);
  if (known) return known;
  const made = new Map(conveyor.points.map((point) => [point.name, point]));
  points.set(conveyor, made);
  return made;
}

const last = new WeakMap<ConveyorDraft, Conveyor>();

function build(
  draft: ConveyorDraft,
  { plants, liners, screws }: Specifications,
  problems: Problem[],
): Conveyor | undefined {
  const namedPlant = findNamed(plants, draft.plantUse, problems);
  const liner = findNamed(liners, draft.linerUse, problems)?.value;
  const screw = findNamed(screws, draft.screwUse, problems)?.value;
  const along = draft.linersAlong.map((one) => ({
    ...one,
    liner: findNamed(liners, one.use, problems)?.value,
  }));
  const linersAlong = along.flatMap(({ liner: there, ...one }) => (there ? [{ ...one, liner: there }] : []));
  if (!liner || !screw || linersAlong.length < along.length) return undefined;
  const before = last.get(draft);
  const plant = namedPlant?.value ?? standIn(draft.plantUse, before?.plant);
  if (
    before &&
    before.plant === plant &&
    before.liner === liner &&
    before.screw === screw &&
    sameAlong(before.linersAlong, linersAlong)
  )
    return before;
  const conveyor: Conveyor = { ...draft, plant, liner, screw, linersAlong };
  for (const { stretch } of linersAlong) checkStretch(stretch, conveyor, problems);
  for (const { run } of conveyor.panelsFitted) checkStretch(run, conveyor, problems);
  last.set(draft, conveyor);
  return conveyor;
}

function sameAlong(a: Conveyor['linersAlong'], b: Conveyor['linersAlong']): boolean {
  return a.length === b.length && a.every(({ liner }, index) => liner === b[index]?.liner);
}

/** Where the plant is not declared the conveyor is still checked; only what plants state falls back to its defaults. */
function standIn({ name, origin }: NameUse, before: Plant | undefined): Plant {
  if (before && before.origin === origin) return before;
  return {
    name,
    origin,
    nameOrigin: origin,
    risk: assumed.risk(origin),
    contactRisk: assumed.contactRisk(origin),
    outages: [],
    crews: [],
    accessUnits: [],
    cranes: [],
    shifts: [],
    leadTimes: [],
    expedited: [],
    shelf: [],
    spareScrews: [],
    costs: [],
    unitTimes: [],
  };
}
