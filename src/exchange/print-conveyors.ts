// A conveyor of a list as the beginning of its block: the facts that the list has in full. A fact that it has in part stands there as
// a comment, so that nothing is lost, and what a conveyor cannot be without is named as missing.

import type { Estate } from '../domain/model/estate.js';
import { formatDay } from '../domain/units/calendar.js';
import { visibleLine } from '../domain/units/visible-text.js';
import { wordKey } from './mapping.js';
import type { AssetMeasure, AssetWord } from './mapping/asset-roles.js';
import type { SheetAsset } from './take-assets.js';
import { digitsOf } from './values/number.js';

export interface PrintedConveyor {
  readonly lines: readonly string[];
  /** What a conveyor needs and the list does not say. */
  readonly missing: readonly string[];
}

export function printConveyor(asset: SheetAsset, estate: Estate): PrintedConveyor {
  const { name, words, measures, commissioned } = asset;
  const facts: string[] = [];
  const missing: string[] = [];
  const measure = (role: AssetMeasure): string | undefined => measures.get(role)?.text;
  /** Of something declared in the estate. */
  const use = (key: 'plant' | 'screw' | 'liner', known: readonly string[]): void => {
    const said = words.get(key);
    const found = known.find((one) => wordKey(one) === wordKey(said ?? ''));
    if (found !== undefined) facts.push(`${key} ${found}`);
    else {
      missing.push(said === undefined ? key : `${key} ("${said}" is not declared)`);
      if (said !== undefined) facts.push(comment(`${key} ${said}`));
    }
  };
  const whole = (
    key: string,
    parts: readonly (readonly [string, string | undefined])[],
    needed: boolean,
  ): void => {
    const there = parts
      .filter(([, said]) => said !== undefined)
      .map(([word, said = '']) => `${word} ${said}`.trim());
    if (there.length === parts.length) facts.push(`${key} ${there.join(' ')}`.trim());
    else {
      if (there.length > 0) facts.push(comment(`${key} ${there.join(' ')}`));
      if (needed)
        missing.push(
          `${key} ${parts.flatMap(([word, said]) => (said === undefined ? word : [])).join(', ')}`.trim(),
        );
    }
  };
  use(
    'plant',
    estate.plants.map((plant) => plant.name),
  );
  whole('', [['length', measure('length')]], true);
  whole('', [['incline', measure('incline')]], true);
  const diameter = measures.get('inside diameter');
  const radius = measure('inside radius') ?? (diameter && `${digitsOf(diameter.value / 2)} mm`);
  whole(
    'trough',
    [
      ['inside radius', radius],
      ['side height', measure('side height')],
      ['plate', measure('plate')],
    ],
    true,
  );
  use(
    'screw',
    estate.screws.map((screw) => screw.name),
  );
  use(
    'liner',
    estate.liners.map((liner) => liner.name),
  );
  drive(words, measure, facts);
  const duty = measure('duty');
  if (duty !== undefined) facts.push(`duty ${duty}`);
  const conveys = words.get('conveys');
  if (conveys !== undefined) facts.push(`conveys ${quoted(conveys)}`);
  const day = commissioned === undefined ? undefined : formatDay(commissioned);
  if (day !== undefined || measure('meter') !== undefined)
    whole(
      'commissioned',
      [
        ['', day],
        ['meter', measure('meter')],
      ],
      false,
    );
  const title = words.get('title');
  const head = `conveyor ${name}${title === undefined ? '' : ` ${quoted(title)}`} {`;
  return { lines: [head, ...facts.map((fact) => `  ${fact}`), '}'], missing };
}

/** A drive is at an end; what is known of one at neither is kept as a comment. */
function drive(
  words: ReadonlyMap<AssetWord, string>,
  measure: (role: AssetMeasure) => string | undefined,
  facts: string[],
): void {
  const end = ['head', 'tail'].find((one) => one === wordKey(words.get('drive end') ?? ''));
  const said = (['power', 'speed'] as const).flatMap((role) => {
    const text = measure(role);
    return text === undefined ? [] : [`${role} ${text}`];
  });
  if (end !== undefined) facts.push(['drive at', end, ...said].join(' '));
  else if (said.length > 0) facts.push(comment(`drive ${said.join(' ')}, at which end is not said`));
}

function comment(text: string): string {
  return `// the list says: ${visibleLine(text.replace(/\s+/g, ' '))}`;
}

function quoted(text: string): string {
  return `"${visibleLine(text.replace(/\s+/g, ' ').trim()).replaceAll('"', "'")}"`;
}
