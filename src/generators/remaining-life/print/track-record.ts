// Have the forecasts kept their word? What was found is said with its numbers; where nothing was found it is said what would have
// stayed hidden. A claim that intervals are right is never made: next readings cannot show it.

import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { PooledMiss } from '../../../domain/wear/pooled-miss.js';
import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { RemainingLife, Track, TrackedLook } from '../remaining-life.js';
import { counted, list } from '../../../domain/units/wording.js';

type Told = Pick<RemainingLife, 'tracks'>;

export function trackSentence({ tracks }: Told): string {
  const looks = tracks.flatMap((t) => t.looks);
  if (looks.length === 0 && tracks.every((t) => t.finished.of === 0))
    return 'No earlier forecast can be judged yet: no thickness was read after a day on which it could have been foretold.';
  const found = [...misses(tracks), ...ended(tracks)];
  if (found.length > 0) return found.join(' ');
  return `No miss found${hiddenWords(tracks)}.${endedWords(tracks)}`;
}

/** What a look back could not have shown: from the conveyor that tells most to the one that tells least, and all together. */
function hiddenWords(tracks: readonly Track[]): string {
  const looks = tracks
    .flatMap((t) => t.looks)
    .filter(({ horizon }) => horizon === 'all looks before')
    .sort((a, b) => a.pooled.hidden - b.pooled.hidden);
  const [least, most] = [looks[0], looks.at(-1)];
  if (!least || !most) return '';
  const words = (look: TrackedLook): string => `${wholePercent(look.pooled.hidden)} at ${look.conveyor.name}`;
  const fleet = tracks.flatMap((t) => t.together['all looks before'] ?? []);
  const all =
    fleet[0] && fleet.length === 1 ? `; at all conveyors alike below ${wholePercent(fleet[0].hidden)}` : '';
  return `; a change below ${words(least)}${least === most ? '' : ` to ${words(most)}`} would have stayed hidden${all}`;
}

/** Conveyors whose last look missed, each by the horizon that shows it best. */
export function missedLooks(tracks: readonly Track[]): ReadonlyMap<string, TrackedLook> {
  const byConveyor = new Map<string, TrackedLook>();
  for (const look of tracks.flatMap((t) => t.looks)) {
    const known = byConveyor.get(look.conveyor.name);
    if (look.told && (!known || look.pooled.z > known.pooled.z)) byConveyor.set(look.conveyor.name, look);
  }
  return byConveyor;
}

/** One sentence a conveyor whose last look missed; else one for all together. */
function misses(tracks: readonly Track[]): readonly string[] {
  const byConveyor = missedLooks(tracks);
  if (byConveyor.size > 0)
    return [...byConveyor.values()].map(
      ({ conveyor, day, pooled, horizon }) =>
        `At the look of ${formatDay(day)} wear of ${conveyor.name} since ` +
        `${horizon === 'all looks before' ? 'the look before' : 'the looks it was foretold from'} was ` +
        `${missWords(pooled)}.`,
    );
  const all = tracks.flatMap((t) => Object.values(t.together)).filter((p) => p?.told === true);
  const most = all.reduce((a, b) => (!a || (b?.z ?? 0) > a.z ? b : a), undefined);
  return most ? [`At the last looks of all conveyors together wear was ${missWords(most)}.`] : [];
}

/** `34 % (20–48) more than foretold, at 14 of 16 points`. */
export function missWords({ excess, low, high, more, points }: PooledMiss): string {
  const less = excess < 0;
  const [a, b] = less ? [-high, -low] : [low, high];
  return (
    `${wholePercent(Math.abs(excess))} (${formatNumber(a * 100, 0)} to ${formatNumber(b * 100, 0)}) ` +
    `${less ? 'less' : 'more'} than foretold, ` +
    `at ${less ? points - more : more} of ${counted(points, 'point')}`
  );
}

function ended(tracks: readonly Track[]): readonly string[] {
  return tracks.flatMap(({ finished: { of, early, told } }) =>
    told
      ? [
          `Of ${counted(of, 'set')} that reached the limit ${early} ended before the 10 % quantile of what ` +
            'was foretold at half of their life: take the forecasts as too late.',
        ]
      : [],
  );
}

function endedWords(tracks: readonly Track[]): string {
  const of = tracks.reduce((sum, { finished }) => sum + finished.of, 0);
  const early = tracks.reduce((sum, { finished }) => sum + finished.early, 0);
  if (of === 0) return '';
  return (
    ` Of ${counted(of, 'set')} that reached the limit ${early} ended before the 10 % quantile foretold ` +
    `at half of their life${of < 10 ? ', too few to judge by' : ''}.`
  );
}

/** One sentence for each published report: what came out since, or what would have stayed hidden. */
export function publishedSentences({ judged }: Pick<RemainingLife, 'judged'>): readonly string[] {
  return judged.map(({ asOf, conveyors, together, told, reached }) => {
    const head = `The report of ${formatDay(asOf)}, as it was published: `;
    const ends =
      reached.of === 0
        ? ''
        : ` Of ${counted(reached.of, 'limit')} seen reached since, ${reached.early} came before the 10 % quantile and ${reached.late} after the 90 % one.`;
    const found = conveyors.filter((c) => c.told);
    if (found.length > 0)
      return `${head}${found.map(({ name, pooled }) => `wear of ${name} since was ${missWords(pooled)}`).join('; ')}.${ends}`;
    if (together && told) return `${head}wear since was ${missWords(together)} over all conveyors.${ends}`;
    const one = together ?? conveyors[0]?.pooled;
    return one
      ? `${head}no miss found at ${counted(one.points, 'point')} read since; a change below ${wholePercent(one.hidden)} would have stayed hidden.${ends}`
      : `${head}no thickness of the same liners was read since.${ends}`;
  });
}

export function trackTable({ tracks }: Told): Markup | undefined {
  if (tracks.length === 0) return undefined;
  const rows = tracks.flatMap(({ looks }) =>
    looks.map(({ conveyor, horizon, cut, day, pooled, told }) => [
      conveyor.name,
      formatDay(day),
      `${horizon} (up to ${formatDay(cut)})`,
      `${formatNumber(pooled.excess * 100, 0)} %`,
      `${formatNumber(pooled.low * 100, 0)} to ${formatNumber(pooled.high * 100, 0)} %`,
      `${pooled.more} of ${pooled.points}`,
      told
        ? element('strong', {}, 'missed')
        : `none; below ${wholePercent(pooled.hidden)} would have stayed hidden`,
    ]),
  );
  const cuts = [...new Set(tracks.flatMap((t) => t.cuts))].sort((a, b) => a - b).map(formatDay);
  return group(
    element(
      'p',
      {},
      `Forecast again from the records up to ${list(cuts)}: the wear up to the last look of each conveyor, pooled over its points, ` +
        'because the gauge error of one reading hides a doubling and that of twenty does not. How often the intervals of next readings held is not counted: ' +
        'the gauge decides that, whatever the rate does.',
    ),
    rows.length > 0 &&
      table({
        class: 'tight',
        columns: [
          { head: 'Conveyor' },
          { head: 'Look', class: 'day' },
          { head: 'Foretold from' },
          { head: 'Wear beside foretold', number: true },
          { head: '90 % between', number: true },
          { head: 'Points with more', number: true },
          { head: 'Miss' },
        ],
        rows,
      }),
    endedWords(tracks) !== '' && element('p', {}, endedWords(tracks).trim()),
  );
}

function wholePercent(ratio: number): string {
  return `${formatNumber(ratio * 100, 0)} %`;
}
