// Is a size one that such conveyors come in (plausible.ts)? What is not was mostly written in the wrong unit: a liner of
// 10 in, a trough of 226 m, a conveyor of 22.4 mm.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { LinerSpecification, ScrewSpecification } from '../../../domain/model/specifications.js';
import type { Stated } from '../../../domain/model/stated.js';
import { formatValue } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Found } from '../../finding.js';
import {
  bands,
  isPlausible,
  withLikelierUnit,
  type PlausibleBand,
  type Sized,
} from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

const onLiners = each(
  (estate) => estate.liners,
  function* (liner: LinerSpecification) {
    const layers = liner.layers.map(
      (layer) => [`Layer ${layer.name} of ${liner.name}`, 'layer thickness', layer.thickness] as const,
    );
    const unlikely = layers.filter(([, what, value]) => !isPlausible(what, value.value));
    yield* judge(layers);
    if (unlikely.length === 0)
      yield* judge([[`The thickness of ${liner.name}`, 'liner thickness', liner.thickness]]);
    yield* judge(
      liner.panelLengths.map((length) => [`A panel of ${liner.name}`, 'panel length', length] as const),
    );
    if (liner.bolt?.pitch)
      yield* judge([[`The bolt pitch of ${liner.name}`, 'bolt pitch', liner.bolt.pitch]]);
  },
);

const onScrews = each(
  (estate) => estate.screws,
  function* (screw: ScrewSpecification) {
    yield* judge([
      [`The outside diameter of ${screw.name}`, 'outside diameter', screw.outsideDiameter],
      [`The pitch of ${screw.name}`, 'screw pitch', screw.pitch],
    ]);
    if (screw.flight) {
      yield* judge([
        [`The flight width of ${screw.name}`, 'flight width', screw.flight.width],
        [`The flight thickness of ${screw.name}`, 'flight thickness', screw.flight.thickness],
      ]);
    }
  },
);

const onConveyors = each(
  (estate) => estate.conveyors,
  function* (conveyor: Conveyor) {
    const { name, trough, drive } = conveyor;
    yield* judge([
      [`The length of ${name}`, 'conveyor length', conveyor.length],
      [`The incline of ${name}`, 'incline', { ...conveyor.incline, value: Math.abs(conveyor.incline.value) }],
      [`The trough radius of ${name}`, 'trough inside radius', trough.insideRadius],
      [`The side height of ${name}`, 'trough side height', trough.sideHeight],
      [`The trough plate of ${name}`, 'trough plate', trough.plate],
    ]);
    yield* judge(
      conveyor.sections.map(
        (section) => [`Section ${section.name}`, 'section length', section.length] as const,
      ),
    );
    if (drive?.speed) yield* judge([[`The speed of ${name}`, 'speed', drive.speed]]);
    if (drive?.power) yield* judge([[`The drive power of ${name}`, 'drive power', drive.power]]);
    if (conveyor.bulkDensity)
      yield* judge([[`The bulk density of ${name}`, 'bulk density', conveyor.bulkDensity]]);
  },
);

export const unlikelySize: Rule = {
  code: 'TL234',
  title: 'Size that such conveyors do not come in',
  severity: 'warning',
  restsOn: [],
  why: 'An inch read as a millimetre, or a metre as a millimetre, spoils everything computed from it, and liners have been ordered by such numbers.',
  todo: 'Check the unit first, then the number.',
  given: 'liner',
  example: `
  layer ivory «6 in|6 mm»
  layer teal 6 mm`,
  *check(input) {
    yield* onLiners(input);
    yield* onScrews(input);
    yield* onConveyors(input);
  },
};

function* judge(sizes: readonly (readonly [what: string, kind: Sized, value: Stated])[]): Iterable<Found> {
  for (const [what, kind, value] of sizes) {
    if (value.assumed !== undefined || isPlausible(kind, value.value)) continue;
    const band: PlausibleBand = bands[kind];
    const likelier = withLikelierUnit(kind, value.text);
    yield {
      origin: value.origin,
      message: `${what} is ${value.text}; such conveyors have ${formatValue(band.from, band.dimension)} to ${formatValue(band.to, band.dimension)}.`,
      ...(likelier.length === 0 ? {} : { todo: `Check the unit: was ${list(likelier, 'or')} meant?` }),
      fixes: likelier.map((text) => replace(value.origin, text)),
    };
  }
}
