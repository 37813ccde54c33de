// Do neighbouring liners of one run stand at one height, as they lie today?

import { historyOf } from '../../../domain/model/history.js';
import { setsMeeting } from '../../../domain/model/lying-liner.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const eight = `liner TwoLayer8 {
  layer grey 4 mm
  layer orange 4 mm
  panel length 1200 mm ± 1 mm
  condemn at 2 mm
  bolt M8 rows 2 pitch 200 mm
  joint butted
}`;

const threshold: RuleThreshold = {
  usual: '2 mm',
  dimension: 'length',
  what: 'Step between neighbouring liners that a spiral rides over without catching.',
  basis: 'judgement: the wear of a quarter of a usual life',
};

export const stepBetweenLiners: Rule = {
  code: 'TL257',
  title: 'Step between liners',
  severity: 'warning',
  restsOn: [],
  why:
    'The spiral lies on the thicker panel and bridges the thinner one: ' +
    'the edge of the step carries its weight and wears fast, ' +
    'or is caught and torn up where it faces the flow.',
  todo: 'Lay panels of one thickness within a run, or bevel the edge of the thicker one over a hand’s breadth and look at it first.',
  threshold,
  given: 'estate',
  example: `${eight}
reline DG1 2024-10-07 meter 4800 h {
  liner «TwoLayer8»
  scope ‹from 7.5 m to 9.9 m|run above Gate›
}`.replace('«TwoLayer8»', '«TwoLayer8|TwoLayer8»'),
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      for (const { at, lower, upper } of setsMeeting(historyOf(estate, conveyor))) {
        const step = upper.liner.thickness.value - lower.liner.thickness.value;
        if (Math.abs(step) <= settled(conveyor.plant, 'TL257', threshold)) continue;
        const newer =
          (upper.fitted?.day ?? 0) >= (lower.fitted?.day ?? 0) && (upper.reline || !lower.reline)
            ? upper
            : lower;
        const along = conveyor.linersAlong.find(
          ({ liner }) => liner === newer.liner || liner === lower.liner,
        );
        yield {
          origin:
            newer.reline?.linerUse?.origin ??
            newer.reline?.origin ??
            along?.use.origin ??
            conveyor.linerUse.origin,
          message:
            `At ${chainageOn(conveyor, at)} of ${conveyor.name} ${lower.liner.name} ` +
            `(${lower.liner.thickness.text}) meets ${upper.liner.name} (${upper.liner.thickness.text}): ` +
            `a step of ${lengthOn(conveyor, Math.abs(step))} when new${step > 0 ? ', and its edge faces the flow' : ''}.`,
          related: [
            { origin: lower.liner.thickness.origin, message: `thickness of ${lower.liner.name}` },
            { origin: upper.liner.thickness.origin, message: `thickness of ${upper.liner.name}` },
          ],
        };
      }
    }
  },
};
