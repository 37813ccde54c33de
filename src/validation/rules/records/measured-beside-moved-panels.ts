// Does a thickness in the record of panels that were moved lie on one of these panels? What lies beside them stayed as it was: a
// thickness there is the reading of a look, and in this record it would start nothing anew and count nowhere.

import type { PanelsMoved } from '../../../domain/model/records.js';
import { stretchesMoved } from '../../../domain/model/panels-moved.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { list } from '../../../domain/units/wording.js';
import { measuredAt } from '../../evidence/measured-at.js';
import type { Fix } from '../../finding.js';
import type { Rule } from '../../rule.js';

type Measured = PanelsMoved['measured'][number];

export const measuredBesideMovedPanels: Rule = {
  code: 'TL573',
  title: 'Thickness beside the panels that were moved',
  severity: 'warning',
  restsOn: ['block', 'history'],
  why: 'The record of a move says what was left on panels that lie anew. Of a panel that stayed it starts nothing, so the number counts nowhere.',
  todo: 'Write it as a reading of a look of that day; or correct which panels were moved, or the point.',
  given: 'estate',
  example: `
panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 exchanged with panel 4 of run 2
  P1 thickness 11.4 mm
  at 5.2 m thickness 11.3 mm
  «P2 thickness 11.2 mm ± 0.2 mm|at 5 m thickness 11.2 mm»
}`,
  cases: [
    {
      name: 'without a clock position',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 exchanged with panel 4 of run 2
  P1 thickness 11.4 mm
  «at 8 m thickness 11.2 mm»
}`,
    },
    {
      name: 'a spot by its chainage and clock position',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  panel 3 of run 2 exchanged with panel 4 of run 2
  P1 thickness 11.4 mm
  «at 6.2 m clock 5:00 thickness 11.2 mm»
}`,
    },
  ],
  *check({ estate }) {
    for (const moved of estate.panelsMoved) {
      if (moved.measured.length === 0) continue;
      const stretches = stretchesMoved(estate, moved);
      // Panels that are not there have a finding of their own.
      if (stretches.length === 0) continue;
      for (const row of moved.measured) {
        const at = measuredAt(moved.conveyor, row);
        if (at === undefined || stretches.some(({ from, to }) => at >= from && at <= to)) continue;
        const { conveyor, date } = moved;
        const lying = list(
          stretches.map(({ from, to }) => `${chainageOn(conveyor, from)} to ${chainageOn(conveyor, to)}`),
          'and',
        );
        const where = row.at ? row.point.name : `${row.point.name} at ${chainageOn(conveyor, at)}`;
        yield {
          origin: row.origin,
          message:
            `${where} lies on no panel that was moved on ${formatDay(date.day)} (${lying}), ` +
            `and its ${row.thickness.text} count nowhere.`,
          // A reading says where round the trough it was taken: where nobody wrote it, nobody can make a look of it.
          fixes: row.at && !row.clock ? [] : [asALook(moved, row)],
        };
      }
    }
  },
};

function asALook({ conveyor, date, meter, origin }: PanelsMoved, row: Measured): Fix {
  const { at, clock, point, thickness, error } = row;
  const place = at ? [`at ${at.text}`, ...(clock ? [`clock ${clock.text}`] : [])].join(' ') : point.name;
  const read = [place, `thickness ${thickness.text}`, ...(error ? [`± ${error.text}`] : [])].join(' ');
  const hours = meter.hours ? `meter ${meter.hours.text}` : 'meter not read';
  const look = [
    `inspection ${conveyor.name} ${formatDay(date.day)} ${hours} {`,
    ...(clock ? ['  view downstream'] : []),
    `  ${read}`,
    '}',
  ].join('\n');
  return {
    title: `Write it as a look of ${formatDay(date.day)}`,
    edits: [
      { origin: row.origin, text: '' },
      { origin: { ...origin, start: origin.end }, text: `\n\n${look}` },
    ],
  };
}
