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
import { closest, findNamed, finishedFirst, type NameTable } from './name-table.js';

export interface ConveyorIndex {
  readonly items: readonly Conveyor[];
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
  const byFullName = new Map<string, NamedConveyor>();
  const byName = new Map<string, NamedConveyor[]>();
  for (const one of finishedFirst(all)) {
    if (one.unfinished && byName.has(one.name)) continue;
    const full = fullName(one);
    const first = byFullName.get(full);
    if (first) {
      problems.push({
        kind: 'repeated name',
        origin: one.origin,
        what: 'conveyor',
        name: one.name,
        first: first.origin,
      });
      continue;
    }
    byFullName.set(full, one);
    byName.set(one.name, [...(byName.get(one.name) ?? []), one]);
  }
  const built = new Map<NamedConveyor, Conveyor>();
  for (const one of [...byFullName.values()].sort((a, b) => compareNames(fullName(a), fullName(b)))) {
    const conveyor = one.value && build(one.value, specifications, problems);
    if (conveyor) built.set(one, conveyor);
    else if (!one.value && one.plantUse) findNamed(specifications.plants, one.plantUse, problems);
  }
  const items = [...built.values()];
  const order = new Map(items.map((conveyor, index) => [conveyor, index]));
  const named = new Map([...built].map(([one, conveyor]) => [conveyor, one]));
  const answered = new Map<string, Answer>();

  function answer(name: string): Answer {
    const known = answered.get(name);
    if (known) return known;
    const bare = name.slice(name.indexOf('.') + 1);
    const named = byName.get(bare) ?? [];
    const found =
      name === bare
        ? named
        : [byFullName.get(name) ?? named.find((one) => !one.plantUse)].filter((one) => one !== undefined);
    const [only] = found;
    const made: Answer = !only
      ? unknown(name)
      : found.length > 1
        ? { kind: 'many', candidates: found.map(fullName).sort(compareNames) }
        : { kind: 'one', conveyor: built.get(only) };
    answered.set(name, made);
    return made;
  }

  function unknown(name: string): Answer {
    const bare = name.slice(name.indexOf('.') + 1);
    const others = name.includes('.')
      ? (byName.get(bare) ?? []).flatMap((one) => one.plantUse?.name ?? [])
      : [];
    const known = name.includes('.') ? [...byFullName.keys()] : [...byName.keys()];
    return {
      kind: 'none',
      known: closest(name, known),
      ...(others.length > 0
        ? { elsewhere: `${bare} is a conveyor of ${others.sort(compareNames).join(' and ')}` }
        : {}),
    };
  }

  const index: ConveyorIndex = {
    items,
    orderOf: (conveyor) => order.get(conveyor) ?? items.length,
    find(use, into) {
      const found = answer(use.name);
      switch (found.kind) {
        case 'one':
          return found.conveyor;
        case 'many':
          into.push({
            kind: 'ambiguous name',
            origin: use.origin,
            what: 'conveyor',
            name: use.name,
            candidates: found.candidates,
          });
          return undefined;
        case 'none':
          into.push({
            kind: 'unknown name',
            origin: use.origin,
            what: 'conveyor',
            name: use.name,
            known: found.known,
            ...(found.elsewhere === undefined ? {} : { elsewhere: found.elsewhere }),
          });
          return undefined;
      }
    },
    pointOf: (conveyor, name) => pointsOf(conveyor).get(name),
    checkPoint(conveyor, use, into) {
      const point = pointsOf(conveyor).get(use.name);
      if (
        point ||
        named
          .get(conveyor)
          ?.unplaced.some(
            (name) =>
              use.name === name || (use.name.startsWith(name) && /^\d+$/.test(use.name.slice(name.length))),
          )
      )
        return point;
      const elsewhere = items
        .filter((other) => other !== conveyor && pointsOf(other).has(use.name))
        .map((other) =>
          byName.get(other.name)?.length === 1 ? other.name : `${other.plant.name}.${other.name}`,
        );
      into.push({
        kind: 'unknown point',
        origin: use.origin,
        point: use.name,
        conveyor: conveyor.name,
        known: closest(use.name, [...pointsOf(conveyor).keys()]),
        elsewhere: elsewhere.slice(0, 5),
      });
      return undefined;
    },
  };
  return index;
}

type Answer =
  | { readonly kind: 'one'; readonly conveyor: Conveyor | undefined }
  | { readonly kind: 'many'; readonly candidates: readonly string[] }
  | { readonly kind: 'none'; readonly known: readonly string[]; readonly elsewhere?: string };

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
  if (!liner || !screw) return undefined;
  const before = last.get(draft);
  const plant = namedPlant?.value ?? standIn(draft.plantUse, before?.plant);
  if (before && before.plant === plant && before.liner === liner && before.screw === screw) return before;
  const conveyor: Conveyor = { ...draft, plant, liner, screw };
  last.set(draft, conveyor);
  return conveyor;
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
    costs: [],
    unitTimes: [],
  };
}
