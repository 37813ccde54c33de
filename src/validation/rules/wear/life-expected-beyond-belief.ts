// Does the ± of an expected life say something? An expected life is where a forecast starts before anything was
// measured; ± 0 % would outvote every reading, and ± 100 % or more says nothing but looks like knowledge. A supplier's figure is
// never better than 5 % [judgement]. The report takes a spread outside these bounds as the nearest of them, and this finding says so.

import type { Toleranced } from '../../../domain/model/stated.js';
import { believableSpread, spreadRatio } from '../../../domain/model/spread-ratio.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';

export const lifeExpectedBeyondBelief: Rule = {
  code: 'TL511',
  title: 'Expected life with bounds that say nothing',
  severity: 'warning',
  restsOn: [],
  why:
    'Forecasts of spots that nobody has measured start from the expected life: ' +
    'taken as certain it would outvote the gauge, ' +
    'and with bounds wider than the life itself it holds a date where there is no knowledge.',
  todo: 'State what the supplier or your own liners have shown, for example `± 30 %`; leave the expected life out where nothing is known.',
  given: 'liner',
  example: 'expected life 14000 h ± «0 %|30 %»',
  *check({ estate }) {
    for (const { name, expectedLife } of estate.liners) {
      if (!expectedLife?.tolerance) continue;
      const ratio = spreadRatio(expectedLife) ?? 0;
      const { least, most } = believableSpread;
      if (ratio >= least && ratio <= most) continue;
      yield {
        origin: expectedLife.tolerance.origin,
        message:
          `Liner ${name} is expected to last ${words(expectedLife)}, ` +
          `which is ${ratio < least ? 'closer than any liner keeps to' : 'no bound at all'}; ` +
          `the report reckons with ± ${formatNumber(100 * (ratio < least ? least : most))} %.`,
      };
    }
  },
};

function words({ nominal, tolerance }: Toleranced<'duration'>): string {
  return `${nominal.text} ± ${tolerance?.text ?? ''}`;
}
