// Has an order come, or is it late? Its day has passed, and nobody has counted the shelf since.

import type { OrderedScrew, Plant } from '../../../domain/model/plant.js';
import { fittedSince, takesIn } from '../../../domain/model/shelf.js';
import { screwsOrderedOn } from '../../../domain/model/spare-screw.js';
import type { StatedDay } from '../../../domain/model/stated.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';

export const orderedAndNotCounted: Rule = {
  code: 'TL278',
  title: 'Order whose day has passed, and no count since',
  severity: 'warning',
  restsOn: ['machine'],
  byTheCalendar: true,
  why:
    'Report and pack take it as there, and as not there where the same liner was fitted since; if it is late, the job that counts on it ' +
    'stands in an open trough without a liner, and if it still lies there, it is ordered twice.',
  todo:
    'Count the shelf and write it down with its day (`on the shelf TwoLayer12 9 panels counted 2026-11-09`); ' +
    'if it has not come, write the new day.',
  given: 'estate',
  example: `
plant Store {
  ordered TwoLayer12 9 panels on 2023-10-02 arrives «2024-12-04|2027-12-06»
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  P1 colour ivory
}`,
  cases: [
    ['counted on that day', '2024-12-04', 'on the shelf TwoLayer12 9 panels counted 2024-12-04'],
    ['counted the day before', '«2024-12-04»', 'on the shelf TwoLayer12 3 panels counted 2024-12-03'],
    ['another item was counted', '«2024-12-04»', 'on the shelf TwoLayer12 90 fixings counted 2024-12-11'],
  ].map(([name = '', day = '', count = '']) => ({
    name,
    text: `
plant Store {
  ordered TwoLayer12 9 panels arrives ${day}
  ${count}
}
inspection DG1 2025-03-10 meter 6000 h {
  P1 colour ivory
}`,
  })),
  *check(input) {
    const today = todayOf(input);
    if (today === undefined) return;
    const { relines, plants, screwChanges } = input.estate;
    for (const plant of plants) {
      for (const order of plant.ordered ?? []) {
        const { liner, item, count, length, ordered: since, arrives } = order;
        const what = count.count === 1 ? item.replace(/s$/, '') : item;
        if (arrives.day >= today || plant.shelf.some((each) => takesIn(each, order))) continue;
        const fitted = fittedSince(order, plant, relines, today);
        yield {
          origin: arrives.origin,
          message:
            notCounted(
              count.count,
              `${count.count} ${what}${length ? ` ${length.text} long` : ''} of ${liner.name}`,
              since,
              arrives,
            ) +
            (fitted
              ? `and ${fitted.conveyor.name} was relined with it on ${formatDay(fitted.date.day)}: ` +
                `${count.count === 1 ? 'it is not' : 'none of them is'} taken as there.`
              : `and ${todayWords(input, today)}.`),
        };
      }
      for (const { screw } of uniqueScrews(plant))
        for (const { order, count } of screwsOrderedOn(plant, screw, undefined, screwChanges)) {
          const { ordered: since, arrives } = order;
          if (arrives.day >= today) continue;
          yield {
            origin: arrives.origin,
            message:
              notCounted(count, `${counted(count, 'spiral')} ${screw.name}`, since, arrives) +
              `and ${todayWords(input, today)}.`,
          };
        }
    }
  },
};

function uniqueScrews({ orderedScrews = [] }: Plant): readonly OrderedScrew[] {
  return [...new Map(orderedScrews.map((each) => [each.screw.name, each])).values()];
}

function notCounted(count: number, what: string, since: StatedDay | undefined, arrives: StatedDay): string {
  const [were, them] = count === 1 ? ['was', 'it'] : ['were', 'them'];
  return (
    `${what}${since ? `, ordered on ${formatDay(since.day)},` : ''} ${were} promised for ` +
    `${formatDay(arrives.day)}, nobody has counted ${them} since, `
  );
}
