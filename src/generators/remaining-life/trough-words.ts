// The trough's steel in words, for the page, the comment and the data.

import type { BareSpan, PlatePlace, TroughState } from '../../domain/conditions/trough.js';
import { rulingRate } from '../../domain/wear/arithmetic.js';
import { troughSteel } from '../../domain/model/trough-steel.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { amountWithUnit } from './print/wording.js';
import type { Sizes } from './sizes.js';

/** What stands between the screw and the open once the liner is through. */
export function lastLineText(
  { plate, minimum, places, covered, spans, material, bareAbove }: TroughState,
  sizes: Sizes,
): string {
  const known = [...places, ...covered].flatMap(({ hand, at, rateIsLeast }) => {
    const rate = rulingRate(hand);
    return rate === undefined ? [] : [{ rate, at, least: rateIsLeast }];
  });
  const fastest = known.reduce<(typeof known)[number] | undefined>(
    (a, b) => (a === undefined || b.rate > a.rate ? b : a),
    undefined,
  );
  const spare = Math.max(0, plate - minimum);
  const bare = spans.some(({ until }) => until === undefined);
  return (
    `The plate is ${sizes.size(plate)}${material === undefined ? '' : ` of ${material}`}, ` +
    `and ${sizes.size(minimum)} of it must be left: ${sizes.size(spare)} once the liner is through. ` +
    (fastest
      ? 'At the fastest rate measured on bare steel here, ' +
        `${fastest.least ? 'at least ' : ''}${sizes.rate(fastest.rate)} ${sizes.rateUnit('h')} at ${sizes.along(fastest.at)} ${sizes.far}, ` +
        `a new plate lasts ${fastest.least ? 'at most ' : ''}${amountWithUnit(spare / fastest.rate, 'h')} bare.`
      : 'How fast the screw wears this steel was never measured here, so no life is promised for it.') +
    (bareAbove > 0
      ? ` The liner ends ${sizes.near === 'mm' ? `${formatNumber(bareAbove, 0)} mm` : sizes.size(bareAbove)} below the top of the trough: ` +
        'that steel is always bare, and what comes over the edge gets behind the liner.'
      : '') +
    (bare && troughSteel(material).rusts
      ? ` ${material === undefined ? 'If it is of carbon steel, what' : 'What'} lies bare and wet also rusts, ` +
        'while the machine stands too; hours of running do not tell that.'
      : '')
  );
}

export function spanText(span: BareSpan, sizes: Sizes): string {
  const where = `${sizes.joint(span.from)} to ${sizes.joint(span.to)} ${sizes.far}`;
  const began = span.lined
    ? `between ${formatDay(span.lined.day)} and ${formatDay(span.found.day)}`
    : `found ${formatDay(span.found.day)}`;
  return `${where}: bare (${span.because}) since ${began}${span.until ? `, until ${formatDay(span.until.day)}` : ', still'}`;
}

export function plateHeads(sizes: Sizes): readonly string[] {
  return [
    `At, ${sizes.far}`,
    `Plate read, ${sizes.near}`,
    'Bare until then, h',
    `Rate, ${sizes.rateUnit('h')}`,
    'Left to the minimum',
  ];
}

/** In the order of the heads. */
export function plateCells(place: PlatePlace, sizes: Sizes): readonly string[] {
  const { hand, readings, patch } = place;
  const rate = rulingRate(hand);
  return [
    `${sizes.along(place.at)}${place.clock === undefined ? '' : ` at ${place.clock}`}${patch ? `, patch of ${formatDay(patch.date.day)}` : ''}`,
    readings
      .map(
        (r) =>
          `${sizes.thickness(r.thickness)}${r.error === undefined ? '' : ` ± ${sizes.thickness(r.error)}`} ` +
          `(${[formatDay(r.day), r.note].filter(Boolean).join(', ')})`,
      )
      .join(', ') || 'none since',
    readings
      .slice(-1)
      .map(({ bareLeast, bareMost }) =>
        place.noLiner !== undefined
          ? `always, no liner at ${place.noLiner}: ${formatNumber(bareMost, 0)}`
          : bareMost === 0
            ? 'never'
            : `${formatNumber(bareLeast, 0)} to ${formatNumber(bareMost, 0)}`,
      )
      .join(''),
    rate === undefined ? '–' : `${place.rateIsLeast ? 'at least ' : ''}${sizes.rate(rate)}`,
    leftText(place),
  ];
}

function leftText({ hand, belowMinimum, passedFor, bare, rateIsLeast }: PlatePlace): string {
  if (belowMinimum) return 'at the minimum: patch it';
  if (passedFor !== undefined)
    return `passed ${amountWithUnit(passedFor, 'h')} of running ago by its rate: measure it now`;
  if (hand.kind !== 'rate') return bare ? 'not known' : 'lined';
  const life = `${rateIsLeast ? 'at most ' : ''}${amountWithUnit(hand.remaining, 'h')}`;
  return bare ? `${life} of running, look at half of it` : `${life}, if it were bare again`;
}

/** Of a plate that was patched over: the same cells, the last one its end. */
export function coveredCells(place: TroughState['covered'][number], sizes: Sizes): readonly string[] {
  return [...plateCells(place, sizes).slice(0, -1), `patched over on ${formatDay(place.covered)}`];
}
