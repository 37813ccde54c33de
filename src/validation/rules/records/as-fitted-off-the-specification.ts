// Was the new liner as thick as bought? Stated tolerance, or one twentieth, and three standard deviations of the reading.

import { depthGaugeError } from '../../../domain/geometry/gauge.js';
import { newThicknessOf } from '../../../domain/model/fitted-thickness.js';
import { scopeOf } from '../../../domain/model/liner-sets.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import { intervalOf } from '../../../domain/model/runs.js';
import { linersBrought } from '../../../domain/model/same-again.js';
import { stretchText } from '../../../domain/order/words.js';
import { measuredAt } from '../../evidence/measured-at.js';
import type { Rule } from '../../rule.js';

export const asFittedOffTheSpecification: Rule = {
  code: 'TL336',
  title: 'New liner of another thickness than bought',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'A thinner sheet takes its share off the life of the whole set; a thicker one may be another product.',
  todo: 'Check the gauge on an offcut and the delivery against the order.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  P1 thickness «10.1 mm|12.1 mm» ± 0.2 mm
}`,
  cases: [
    {
      name: 'a panel by its number',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  fitted panel 2 of run 2 thickness «13.5 mm» ± 0.2 mm
}`,
    },
    {
      name: 'a point where nothing was fitted, which is told by itself',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
  P1 thickness 5.9 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const reline of estate.relines) {
      const { conveyor, asFitted, panelThicknesses, newThickness } = reline;
      const ends = installedPanelEnds(estate, reline.date.day);
      const measured = [
        ...asFitted.map((row) => ({
          ...row,
          where: `${row.point.name} of ${conveyor.name}`,
          chainage: measuredAt(conveyor, row),
        })),
        ...panelThicknesses.map(({ stretch, ...row }) => {
          const place = intervalOf(conveyor, stretch, ends);
          return {
            ...row,
            where: `The liner at ${stretchText(stretch)} of ${conveyor.name}`,
            chainage: place && (place.from + place.to) / 2,
          };
        }),
      ].map((row) => ({ ...row, liner: linersBrought(reline, row.chainage)[0] ?? reline.liner }));
      const [whole] = linersBrought(reline).filter((liner) => newThicknessOf(reline, liner));
      if (newThickness && whole)
        measured.push({
          ...newThickness,
          where: `The liner of ${conveyor.name}`,
          chainage: undefined,
          liner: whole,
        });
      if (measured.length === 0) continue;
      // What lies outside is told by itself (TL337), and is no number of the new liner.
      const scope = scopeOf(conveyor, reline, ends);
      const isFitted = ({ chainage: at }: { readonly chainage?: number | undefined }): boolean =>
        at === undefined || scope.length === 0 || scope.some(({ from, to }) => at >= from && at <= to);
      for (const { where, thickness, error, liner } of measured.filter(isFitted)) {
        const tolerance = liner.thicknessTolerance?.value ?? 0.05 * liner.thickness.value;
        if (
          Math.abs(thickness.value - liner.thickness.value) <=
          tolerance + 3 * (error?.value ?? depthGaugeError)
        )
          continue;
        yield {
          origin: thickness.origin,
          message: `${where} was fitted with ${thickness.text}, and ${liner.name} is ${liner.thickness.text} thick.`,
          related: [{ origin: liner.thickness.origin, message: `thickness of ${liner.name}` }],
        };
      }
    }
  },
};
