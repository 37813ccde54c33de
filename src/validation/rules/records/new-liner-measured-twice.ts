// Do two thicknesses of one new panel agree? A panel by its number and a point on it, or two lines of one panel, within three
// standard deviations of both gauges. The point's own line counts for the point, else the thinner one of the panel.

import { depthGaugeError } from '../../../domain/geometry/gauge.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Origin } from '../../../domain/model/origin.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import type { Reline } from '../../../domain/model/records.js';
import { intervalOf } from '../../../domain/model/runs.js';
import type { Stated } from '../../../domain/model/stated.js';
import { stretchText } from '../../../domain/order/words.js';
import type { Rule } from '../../rule.js';

export const newLinerMeasuredTwice: Rule = {
  code: 'TL531',
  title: 'New panel with two thicknesses',
  severity: 'warning',
  restsOn: [],
  why: 'Wear is counted from the thickness when new: a millimetre too much there is a millimetre of wear that nobody saw.',
  todo: 'Measure once more on an offcut of that sheet, and keep the line that is right.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  fitted panel 1 of run 2 thickness 12.6 mm ± 0.1 mm
  fitted panel 1 of run 2 thickness «11.5 mm|12.5 mm» ± 0.1 mm
}`,
  cases: [
    {
      name: 'a point and the panel it lies on',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  P1 thickness 12.6 mm ± 0.1 mm
  fitted panel 3 of run 2 thickness «11.5 mm» ± 0.1 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const reline of estate.relines) {
      const seen: Measured[] = [...pointsOf(reline)];
      for (const panel of panelsOf(estate, reline)) {
        const other = seen.find(
          (each) =>
            each.from < panel.to &&
            each.to > panel.from &&
            Math.abs(each.thickness.value - panel.thickness.value) > 3 * Math.hypot(each.error, panel.error),
        );
        seen.push(panel);
        if (other)
          yield {
            origin: panel.thickness.origin,
            message: `${panel.what} of ${reline.conveyor.name} has ${panel.thickness.text} here and ${other.thickness.text} as ${other.what}.`,
            related: [{ origin: other.origin, message: other.what }],
          };
      }
    }
  },
};

interface Measured {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly what: string;
  readonly thickness: Stated<'length'>;
  readonly error: number;
  readonly origin: Origin;
}

function pointsOf({ conveyor, asFitted }: Reline): readonly Measured[] {
  return asFitted.flatMap(({ point, thickness, error, origin }) => {
    const at = conveyor.points.find(({ name }) => name === point.name)?.at.value;
    if (at === undefined) return [];
    return [
      { from: at, to: at, what: point.name, thickness, error: error?.value ?? depthGaugeError, origin },
    ];
  });
}

function panelsOf(estate: Estate, { conveyor, date, panelThicknesses }: Reline): readonly Measured[] {
  const ends = installedPanelEnds(estate, date.day);
  return panelThicknesses.flatMap(({ stretch, thickness, error, origin }) => {
    const place = intervalOf(conveyor, stretch, ends);
    if (!place) return [];
    const what = stretchText(stretch);
    return [{ ...place, what, thickness, error: error?.value ?? depthGaugeError, origin }];
  });
}
