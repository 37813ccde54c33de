// Parts of a conveyor by the name that people use for them: the declared one, and where there is none the number that pages print.
// Whoever reads a sheet writes `cover loose at C2`, and that has to be the cover that the sheet called so.

import type { Conveyor, HoldDown, Span } from './conveyor.js';
import type { Origin } from './origin.js';
import type { Stated } from './stated.js';

export interface NamedPart {
  readonly name?: string;
  /** By its number, where it has no name of its own. */
  readonly called?: string;
  readonly from: Stated<'length'>;
  readonly origin: Origin;
}

type Parts = Pick<
  Conveyor,
  | 'breaks'
  | 'hatches'
  | 'covers'
  | 'holdDowns'
  | 'braces'
  | 'access'
  | 'liftingPoints'
  | 'isolations'
  | 'hoppers'
  | 'drains'
  | 'safeguards'
>;

/** Its own name, or its number from the tail. */
export function coverName(cover: Span, index: number): string {
  return cover.name ?? `C${index + 1}`;
}

/** Its own name, or its number as declared; another letter where something else of the machine is called `H1`. */
export function holdDownName(
  { hatches, breaks, covers }: Pick<Conveyor, 'hatches' | 'breaks' | 'covers'>,
  block: HoldDown,
  index: number,
): string {
  const taken = [...hatches, ...breaks, ...covers].some(({ name }) => /^H\d+$/.test(name ?? ''));
  return block.name ?? `${taken ? 'HD' : 'H'}${index + 1}`;
}

/** A gate, a hatch, a cover, a lifting point lies where it is declared: `gate stuck at Gate`, `finding at L1 "hook bent"`. */
export function partsByKind(conveyor: Parts): ReadonlyMap<string, readonly NamedPart[]> {
  const { breaks, hatches, covers, holdDowns, braces, access, liftingPoints, isolations, hoppers, drains } =
    conveyor;
  const parts = new Map<string, readonly NamedPart[]>([
    ['gate', breaks],
    ['hatch', hatches],
    ['cover', covers.map((each, index) => ({ ...each, called: coverName(each, index) }))],
    ['hold-down', holdDowns.map((each, index) => ({ ...each, called: holdDownName(conveyor, each, index) }))],
    ['brace', braces],
    ['access', access],
    ['lifting point', liftingPoints.map((each) => ({ ...each, from: each.at }))],
    ['isolation', isolations.flatMap(({ at, ...each }) => (at ? [{ ...each, from: at }] : []))],
    ['hopper', hoppers],
    ['drain', drains],
  ]);
  for (const { kind, name, at, origin } of conveyor.safeguards)
    if (at)
      parts.set(kind, [
        ...(parts.get(kind) ?? []),
        { from: at, origin, ...(name !== undefined && { name }) },
      ]);
  return parts;
}

export function partNamed(parts: readonly NamedPart[], wanted: string): Stated<'length'> | undefined {
  const part = parts.find(({ name }) => name === wanted) ?? parts.find(({ called }) => called === wanted);
  return part?.from;
}
