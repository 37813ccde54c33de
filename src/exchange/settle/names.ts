// The conveyor and the point that a sheet means by a name: the mapping's word for it, else the same name, capitals aside. What is
// not there is answered with the reason and the names that are nearest, and never replaced by them.

import type { Conveyor, Point } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { list } from '../../domain/units/wording.js';
import { nearest } from '../../language/nearest.js';
import { wordKey, type Mapping } from '../mapping.js';

export function conveyorNamed(text: string, estate: Estate, mapping: Mapping): Conveyor | string {
  const [, own = text] = /^[^.]*\.(.*)$/.exec(text) ?? []; // without the plant
  const name = mapping.conveyors.get(wordKey(text)) ?? mapping.conveyors.get(wordKey(own)) ?? text;
  const key = wordKey(name);
  const found = estate.conveyors.filter(
    (one) => wordKey(one.name) === key || wordKey(`${one.plant.name}.${one.name}`) === key,
  );
  const [only, another] = found;
  if (only && !another) return only;
  if (only)
    return `"${name}" is a conveyor of several plants; write ${list(found.map(qualified), 'or')} in the mapping (conveyors)`;
  const near = nearest(
    name,
    estate.conveyors.map((one) => one.name),
  ).slice(0, 2);
  return `no conveyor "${name}" in the estate${near.length > 0 ? `; nearest: ${list(near)}` : ''}`;
}

export function pointNamed(
  text: string,
  { name: conveyor, points }: Conveyor,
  mapping: Mapping,
): Point | string {
  const meant = mapping.points.get(wordKey(text));
  const name = typeof meant === 'string' ? meant : text;
  const found =
    points.find((one) => one.name === name) ?? points.find((one) => wordKey(one.name) === wordKey(name));
  if (found) return found;
  const near = nearest(
    name,
    points.map((one) => one.name),
  ).slice(0, 3);
  return `${conveyor} has no point "${name}"${near.length > 0 ? `; nearest: ${list(near)}` : ' and no other'}`;
}

export function qualified({ name, plant }: Conveyor): string {
  return `${plant.name}.${name}`;
}
