// Do a colour and a thickness of one spot agree? A layer shows only while what is left lies within it.

import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { growthsOf } from '../../evidence/growth.js';
import { leftByLayers } from '../../evidence/left-by-layers.js';
import { dayOfRow, readingWords } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const colourAgainstThickness: Rule = {
  code: 'TL307',
  title: 'Colour that contradicts the thickness',
  severity: 'warning',
  restsOn: ['history'],
  why: 'One of the two is wrong: the gauge, the point, the colour in bad light, or which liner is fitted; a decision should not rest on either.',
  todo: 'Look again with a lamp and a gauge checked on an offcut.',
  given: 'inspection',
  example: `
  P1 thickness 9.8 mm
  «P1 colour teal|P2 colour ivory»`,
  cases: [
    {
      name: 'within what the gauge may err',
      text: `
  P1 thickness 6.5 mm ± 0.3 mm
  P1 colour teal`,
    },
  ],
  *check({ estate }) {
    const { readings } = estate;
    for (const { row, before, place, liner, kinds, sameInspection } of growthsOf(estate)) {
      if (kinds !== 'mixed') continue;
      const indicator = readings.kind[row] === ReadingKind.thickness ? before : row;
      const layer =
        readings.kind[indicator] === ReadingKind.colour
          ? (readings.value[indicator] ?? 0)
          : liner.layers.length;
      const left = leftByLayers(liner)[layer];
      const means = left
        ? `${readingWords(estate, indicator, liner)} means ${lengthOn(place.conveyor, left.least.left)} ` +
          `to ${lengthOn(place.conveyor, left.most.left)} left`
        : 'bare steel means nothing left';
      yield {
        origin: originOf(readings, row),
        message:
          `${place.name} of ${place.conveyor.name} shows ${readingWords(estate, row, liner)}, and ${readingWords(estate, before, liner)} ` +
          `${sameInspection ? 'in the same inspection' : `on ${dayOfRow(estate, before)}`}; ${means}.`,
        related: [{ origin: originOf(readings, before), message: readingWords(estate, before, liner) }],
      };
    }
  },
};
