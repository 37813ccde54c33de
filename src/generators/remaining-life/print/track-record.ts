// How often the intervals held when the past was forecast again: one sentence for the first page, a table for those who check.

import { formatNumber } from '../../../domain/units/format.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { RemainingLife, Track } from '../remaining-life.js';
import { counted, listed } from './wording.js';

export function trackSentence({ tracks }: Pick<RemainingLife, 'tracks'>): string {
  const [of, held] = sumAt(tracks, 0.8);
  if (of === 0)
    return 'No earlier forecast can be judged yet: there are no records after a day on which one could have been made.';
  return (
    `Forecast again from what was known then, ${held} of ${of} later thicknesses (${percent(held / of)}) fell inside their 80 % interval` +
    `${nineties(tracks)}. ${verdict(held, of)}`
  );
}

function nineties(tracks: readonly Track[]): string {
  const [of, held] = sumAt(tracks, 0.9);
  return of === 0 ? '' : `, ${held} of ${of} inside the 90 % one`;
}

function verdict(held: number, of: number): string {
  const share = held / of;
  const noise = 2 * Math.sqrt((0.8 * 0.2) / of);
  if (of < 10) return 'Too few to judge by.';
  if (share < 0.8 - noise) return 'That is fewer than promised: take the intervals as too narrow.';
  return share > 0.8 + noise
    ? 'That is more than promised: the intervals are on the wide side.'
    : 'That is what was promised, within chance.';
}

function sumAt(tracks: readonly Track[], nominal: number): readonly [number, number] {
  let of = 0;
  let held = 0;
  for (const { record } of tracks) {
    const row = record.all.find((h) => h.nominal === nominal);
    of += row?.of ?? 0;
    held += row?.held ?? 0;
  }
  return [of, held];
}

export function trackTable({ tracks }: Pick<RemainingLife, 'tracks'>): Markup | undefined {
  if (tracks.length === 0) return undefined;
  const rows = tracks.flatMap(({ measure, record }) =>
    (
      [
        ['readings of places seen before', record.inspected],
        ['places never seen before, from the pool', record.fromPool],
      ] as const
    ).flatMap(([what, held]) =>
      held
        .filter((h) => h.of > 0)
        .map((h) => [
          `${what}${tracks.length > 1 ? ` (by ${measure === 'h' ? 'hours' : 'tonnes'})` : ''}`,
          percent(h.nominal),
          String(h.held),
          String(h.of),
          percent(h.held / h.of),
          `${percent(h.low)} to ${percent(h.high)}`,
        ]),
    ),
  );
  const colours = tracks
    .filter((t) => t.record.colours.of > 0)
    .map(({ record: { colours: c } }) =>
      element(
        'p',
        {},
        `Colours: of ${counted(c.of, 'look')} at a next layer ${formatNumber(c.expected, 1)} were foretold to be through it and ${c.found} were; ${formatNumber(c.low, 1)} to ${formatNumber(c.high, 1)} would have been within chance.`,
      ),
    );
  const cuts = [...new Set(tracks.flatMap((t) => t.cuts))].sort((a, b) => a - b).map(formatDay);
  return group(
    element(
      'p',
      {},
      `Each later reading was forecast from the records up to ${listed(cuts)}, whichever came last before it, and held against the interval.`,
    ),
    rows.length > 0 &&
      table({
        class: 'tight',
        columns: [
          { head: 'Forecasts of' },
          { head: 'Interval', number: true },
          { head: 'Held', number: true },
          { head: 'Of', number: true },
          { head: 'Share', number: true },
          { head: 'True share, 95 % sure', number: true },
        ],
        rows,
      }),
    colours,
  );
}

function percent(ratio: number): string {
  return `${formatNumber(ratio * 100, 0)} %`;
}
