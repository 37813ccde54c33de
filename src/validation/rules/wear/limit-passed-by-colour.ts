// Is the condemn limit passed even by the slowest rate that the colours allow?

import { colourBounds } from '../../../domain/wear/colour-bounds.js';
import { originOf } from '../../../domain/model/records.js';
import { latestRows } from '../../evidence/latest-rows.js';
import { looksAt, showsLastColour } from './last-colour-showing.js';
import type { Rule } from '../../rule.js';

export const limitPassedByColour: Rule = {
  code: 'TL522',
  title: 'Condemn limit passed by colour',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'Nobody has measured, but the last colour has shown for so long that even at the slowest rate the records allow ' +
    'the limit is behind: what is left is for the steel.',
  todo: 'Take a gauge to these spots now, and plan the reline as if the limit were reached.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 colour ‹teal|ivory›
}
inspection DG1 ‹2025-03-10|2024-12-09› meter ‹6200|4900› h {
  «P1 colour teal»
}`,
  *check({ estate }) {
    const suspects = latestRows(estate).filter((one) => showsLastColour(estate, one));
    if (suspects.length === 0) return;
    const looks = looksAt(estate, suspects);
    for (const suspect of suspects) {
      const seen = looks.get(suspect.row);
      const { liner } = suspect.set;
      const colours = (seen ?? []).flatMap(({ exposure, layer }) =>
        layer === undefined ? [] : [{ exposure, layer }],
      );
      // After a thickness there is a rate, and other rules speak.
      if (colours.length === 0 || colours.length < (seen?.length ?? 0)) continue;
      const bounds = colourBounds({
        layers: liner.layers.map((layer) => layer.thickness.value),
        least: liner.condemn.value,
        seen: colours,
      });
      if (bounds.kind !== 'between' || bounds.mostLife > 0) continue;
      yield {
        origin: originOf(estate.readings, suspect.row),
        message:
          `${suspect.place.name} of ${suspect.place.conveyor.name} has shown ` +
          `${liner.layers.at(-1)?.name ?? 'the last layer'} for so long that the condemn limit of ${liner.condemn.text} ` +
          `is passed at any rate its colours allow.`,
      };
    }
  },
};
