// What stops the screw, or keeps people from it: each line is one, or one at each of its places. A place by name is a part of the same
// conveyor, so that a slip is told where the safeguard is declared.

import { unitOf } from '../../domain/units/length-words.js';
import type * as ast from '../generated/ast.js';
import type { Conveyor, Safeguard, SafeguardKind } from '../../domain/model/conveyor.js';
import { partNamed, partsByKind } from '../../domain/model/part-names.js';
import { closest } from '../assembly/name-table.js';
import type { Parts } from './parts.js';
import { stated } from './block.js';
import { endPlace } from './end-place.js';
import { chainage } from './limits.js';
import { lowerPlacement } from './placement.js';
import { textOf, wordsOf, type Reader } from './reader.js';

type Machine = Omit<Parts, 'safeguards' | 'named' | 'unplaced'> &
  Pick<Conveyor, 'length' | 'drive' | 'breaks'>;
type Place = Pick<Safeguard, 'at' | 'to' | 'point' | 'end'> & { readonly number?: number };

export function lowerSafeguards(
  reader: Reader,
  nodes: readonly ast.Safeguard[],
  machine: Machine,
): readonly Safeguard[] {
  return nodes.flatMap((node): readonly Safeguard[] => {
    const said = wordsOf(node, 'kind');
    if (said === undefined) return [];
    // The grammar takes these words only.
    const kind = (said === 'interlock switch' ? 'interlock' : said) as SafeguardKind;
    const side = wordsOf(node, 'side') as Safeguard['side'];
    const name = textOf(node, 'name');
    const all = placesOf(reader, node, kind, machine);
    return all.map(({ number, ...place }) => ({
      kind,
      ...place,
      origin: reader.origin(node),
      ...stated({
        // `interlock H1`: the hatch of that name.
        name: place.point?.name === name || name === undefined ? undefined : name + (number ?? ''),
        side,
        note: node.note,
      }),
    }));
  });
}

function placesOf(reader: Reader, node: ast.Safeguard, kind: string, machine: Machine): readonly Place[] {
  const { posts } = node;
  if (posts.length > 0) return posts.map((post) => placeOf(reader, post, kind, machine));
  if (textOf(node, 'from') !== undefined) return (lowerPlacement(reader, node, kind) ?? []).map(stretch);
  const use = reader.name(node, 'name');
  const at = use && partAt(use.name, machine);
  return [use && at ? { point: use, at } : {}];
}

function stretch({ from, to, number }: NonNullable<ReturnType<typeof lowerPlacement>>[number]): Place {
  return { at: from, ...stated({ number, to: to.value > from.value ? to : undefined }) };
}

function placeOf(reader: Reader, node: ast.Post, kind: string, machine: Machine): Place {
  const end = reader.name(node, 'end');
  if (end) return { end, ...endPlace(end, machine, unitOf([machine.length.text])) };
  const point = reader.name(node, 'point');
  if (!point) {
    const span = reader.range(node, 'length', `chainage of the ${kind}`, chainage);
    return span ? stretch(span) : {};
  }
  const at = partAt(point.name, machine);
  if (!at && !machine.isolations.some(({ name }) => name === point.name))
    reader.problems.push({
      kind: 'unknown name',
      what: 'part',
      origin: point.origin,
      name: point.name,
      known: closest(point.name, namesOf(machine)),
    });
  return { point, ...stated({ at }) };
}

function partAt(name: string, machine: Machine): Safeguard['at'] {
  const parts = [...partsByKind({ ...machine, safeguards: [] }).values()].flat();
  return partNamed(parts, name) ?? machine.points.find((point) => point.name === name)?.at;
}

function namesOf(machine: Machine): readonly string[] {
  const parts = [...partsByKind({ ...machine, safeguards: [] }).values()].flat();
  return [...parts, ...machine.points].flatMap(({ name }) => name ?? []);
}
