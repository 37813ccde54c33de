// Does a threshold that a plant sets reach its rule? The rule has one, and the value is of its kind.

import type { PlantThreshold } from '../../../domain/model/plant.js';
import type { Rule } from '../../rule.js';
import { valueOf, type RuleThreshold } from '../../threshold.js';

export const thresholdWithoutEffect: Rule = {
  code: 'TL265',
  title: 'Threshold without effect',
  severity: 'warning',
  restsOn: [],
  why: 'The rule goes on by its usual value: what was meant to be told is not, or what was meant to be quiet is told.',
  todo: '`troughline explain CODE` says whether a rule has a threshold, its usual value and its unit.',
  given: 'plant',
  example: '  threshold TL261 «10 kg|10 m»',
  cases: [
    { name: 'a rule without one', text: '  threshold «TL302» 5 %' },
    { name: 'no rule', text: '  threshold «TL999» 5 %' },
    { name: 'below nothing', text: '  threshold TL261 «-2 m»' },
    { name: 'a number without its unit', text: '  threshold TL261 «8»' },
    { name: 'set twice', text: '  threshold TL261 «8 m»\n  threshold TL261 9 m' },
    { name: 'in other units', text: '  threshold TL261 26 ft "the trolley’s rail ends there"' },
  ],
  *check({ estate, thresholds }) {
    if (!thresholds) return;
    for (const { thresholds: set = [] } of estate.plants)
      for (const [index, one] of set.entries()) {
        const wrong = thresholds.has(one.code)
          ? wrongWith(one, thresholds.get(one.code))
          : `There is no rule ${one.code}.`;
        if (wrong !== undefined)
          yield { origin: thresholds.get(one.code) ? one.valueOrigin : one.codeOrigin, message: wrong };
        else if (set.slice(index + 1).some(({ code }) => code === one.code))
          yield {
            origin: one.valueOrigin,
            message: `${one.code} is set again below: this value does not count.`,
          };
      }
  },
};

function wrongWith({ code, text }: PlantThreshold, threshold: RuleThreshold | undefined): string | undefined {
  if (!threshold) return `${code} has no threshold to set.`;
  const value = valueOf(text, threshold);
  if (typeof value === 'number') return undefined;
  return value === 'negative'
    ? `The threshold of ${code} cannot be below zero.`
    : `The threshold of ${code} is written as ${threshold.usual}, and ${text} cannot be read so.`;
}
