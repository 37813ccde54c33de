// Cautions for someone who opens a cover to look, not to work: the usual ones, in few words that are read on site.

import { safeguardsOutText, type OpenCondition } from '../../../domain/conditions/rows.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { causticOf } from '../../../domain/model/product-dangers.js';
import { drainsWords, hoppersWords } from '../../../domain/model/stands-above.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { Estate } from '../../../domain/model/estate.js';
import { unreadText } from '../../../domain/model/unread.js';

/** Stands first: what was last read may be missing on this sheet. */
export function unreadCaution(
  estate: Estate,
  conveyor: Conveyor,
): readonly { readonly heading: string; readonly text: string }[] {
  const text = unreadText(estate, [conveyor]);
  return text === undefined ? [] : [{ heading: 'Not all was read.', text }];
}

/** What the look cannot count on, and has to try: `guard missing at drive (open since 2026-03-09)`. */
export function safeguardCaution(
  open: readonly OpenCondition[],
): readonly { readonly heading: string; readonly text: string }[] {
  const out = safeguardsOutText(open);
  return out === undefined
    ? []
    : [
        {
          heading: 'Safeguards out of order.',
          text: `${out}. Count on none of them; look, and have each tried, before anything else.`,
        },
      ];
}

export function sheetCautions(
  conveyor: Conveyor,
  unit: LengthUnit,
): readonly { readonly heading: string; readonly text: string }[] {
  const hoppers = hoppersWords(conveyor, unit);
  const drains = drainsWords(conveyor.drains, unit);
  const caustic = causticOf(conveyor);
  return [
    {
      heading: 'This sheet is no permit.',
      text:
        'It does not clear the machine for work. ' +
        'Site rules, permits and competent, licensed people decide; if anything differs from the sheet, ' +
        'stop and ask.',
    },
    {
      heading: 'Isolate and prove dead',
      text: 'before a cover is opened: lock, tag, try to start. The spiral can spring and slide. No hand, arm or gauge into a machine that could move.',
    },
    ...(hoppers.length > 0
      ? [
          {
            heading: 'Material above.',
            text: `${hoppers.join('; ')}: emptied, or held off, before anybody opens or leans in below.`,
          },
        ]
      : []),
    ...(drains.length > 0
      ? [
          {
            heading: 'Drain.',
            text: `${drains.join('; ')}: free and tight? Shut again before the machine runs.`,
          },
        ]
      : []),
    ...(caustic
      ? [
          {
            heading: `${caustic.name}.`,
            text:
              'Burns eyes and skin: tight goggles, gloves, eye rinse in reach, as the data sheet says; rinse at once with much water.' +
              (caustic.hot ? ' No water on what lies there: it gets hot.' : ''),
          },
        ]
      : []),
    conveyor.confinedSpace
      ? {
          heading: 'Declared confined space.',
          text: 'Entry permit, person outside, gas test before opening and again after each break. Do not lean in: gas collects in the trough.',
        }
      : {
          heading: 'Gas.',
          text:
            'Test before opening where material digests or rots, and again after each break. ' +
            'Smell is no warning. Whether this is a confined space is for a competent person to judge.',
        },
    ...(conveyor.access.some((zone) => zone.kind !== 'ground')
      ? [
          {
            heading: 'Height.',
            text: 'Inspected platform, guarded edges, tools and gauge on lanyards, nobody below.',
          },
        ]
      : []),
  ];
}
