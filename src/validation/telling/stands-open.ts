// Of a line that says that something is over: what stands open there, and the line that ends it. Where one thing does, that is what was
// meant; of several nobody but who wrote it knows which.

import { openConditions } from '../../domain/conditions/follow-up.js';
import { openAmong, type OpenLine } from '../../domain/conditions/open-among.js';
import { canEnd, saysOver } from '../../domain/conditions/over-words.js';
import {
  closingText,
  conditionWords,
  isSamePlace,
  panelWords,
  partNameOf,
  saysNoPlace,
} from '../../domain/conditions/kinds.js';
import { safeguardNamed } from '../../domain/conditions/safeguards-named.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import type { SaidOver } from '../../domain/model/problem.js';
import { partsByKind } from '../../domain/model/part-names.js';
import type { ConditionLine } from '../../domain/model/records.js';
import { formatDay } from '../../domain/units/calendar.js';

export interface Ending {
  readonly line: string;
  /** `tail bearing noise, open since 2022-05-09` */
  readonly what: string;
  /** A kind of its own, or in words of which one is said: `gate ok` need not mean its wiper. */
  readonly isSure: boolean;
}

/** Every line that could be meant; those that share a word with what is told go before all others. */
export function endingsFor(estate: Estate, over: SaidOver): readonly Ending[] {
  const conveyor = estate.conveyors.find(({ name }) => name === over.conveyor);
  const fits = openOf(estate, over, conveyor).filter(
    ({ last }) => isOfIt(last, over, conveyor) && canEnd(over.told, last),
  );
  const named = fits.filter(({ last }) => sharesAWord(last, over));
  return (named.length > 0 ? named : fits).map((open) => endingOf(open, over));
}

function openOf(
  estate: Estate,
  { conveyor: name, day }: SaidOver,
  conveyor: Conveyor | undefined,
): readonly OpenLine[] {
  if (conveyor)
    return openConditions(estate, conveyor, day).map(({ first, last }) => ({
      first: first.line,
      last: last.line,
      since: first.record.date.day,
    }));
  return openAmong(
    (estate.unread?.told ?? []).filter((each) => each.conveyor === name),
    day,
  );
}

function endingOf({ first, last, since }: OpenLine, over: SaidOver): Ending {
  const { head, said, texts, tail } = over;
  const own = new Set(`${first.kind} ${first.aspect ?? ''}`.split(' '));
  const isOwn = (word: string): boolean => first.kind !== 'finding' && own.has(word.toLowerCase());
  const left = said
    .split(' ')
    .filter((word) => !isOwn(word))
    .join(' ')
    .replace(/^[,:;. ]+|[,:;. ]+$/g, '');
  const note = [left, texts.join('; ')].filter(Boolean).join(': ').replace(/"/g, '');
  const line = [head, closingText(first, last), note === '' ? '' : `"${note}"`, tail];
  return {
    line: line.filter(Boolean).join(' '),
    isSure: first.kind !== 'finding' || sharesAWord(last, over),
    what: `${conditionWords(last)}, open since ${formatDay(since)}`,
  };
}

/** Of its part and place; where no part is named, of a thing that is called by the same word. */
function isOfIt(line: ConditionLine, over: SaidOver, conveyor: Conveyor | undefined): boolean {
  if (over.side !== undefined && line.side !== undefined && over.side !== line.side) return false;
  if (over.part === undefined ? !sharesAWord(line, over) : !isOfPart(line, over.part)) return false;
  return over.place === undefined || isThere(line, over.place, conveyor);
}

const alike: readonly (readonly string[])[] = [
  ['liner', 'panel', 'joint', 'bolts', 'material'],
  ['spiral', 'flight', 'screw'],
  ['cover', 'hatch'],
  ['bolts', 'panel'],
  ['drive', 'motor', 'gearbox', 'coupling'],
];

function isOfPart(line: ConditionLine, part: string): boolean {
  const own = partNameOf(line);
  if (own === undefined) return wordsOf(line).includes(part);
  return own === part || alike.some(([general, ...more]) => general === part && more.includes(own));
}

function isThere(
  line: ConditionLine,
  place: NonNullable<SaidOver['place']>,
  conveyor: Conveyor | undefined,
): boolean {
  // Nobody said where of what is where it is: a bearing, a cord.
  if (!('name' in place)) {
    const stated = (value: number): NonNullable<ConditionLine['at']> => ({
      value,
      dimension: 'length',
      text: '',
      origin: line.origin,
    });
    const to = place.to === undefined ? {} : { to: stated(place.to) };
    return saysNoPlace(line) || isSamePlace({ at: stated(place.at), ...to }, line);
  }
  const { name } = place;
  if ([line.point?.name, line.end?.name].includes(name)) return true;
  if (name.startsWith('panel ')) return line.panel !== undefined && panelWords(line.panel) === name;
  if (!conveyor) return saysNoPlace(line);
  const at = chainageNamed(conveyor, name);
  if (at === undefined) return saysNoPlace(line) && ['tail', 'head', 'drive'].includes(name);
  const safeguard = safeguardNamed({ at, point: { name, origin: line.origin } }, partNameOf(line), conveyor);
  return isSamePlace({ at, ...(safeguard && { safeguard }) }, line);
}

/** Where a point or a part lies, by its name or by the number that pages print. */
export function chainageNamed(conveyor: Conveyor, name: string): ConditionLine['at'] {
  const parts = [...partsByKind(conveyor).values()].flat();
  return (
    conveyor.points.find((point) => point.name === name)?.at ??
    parts.find((part) => part.name === name || part.called === name)?.from
  );
}

function sharesAWord(line: ConditionLine, { told, part }: SaidOver): boolean {
  const own = wordsOf(line).split(' ');
  return told
    .split(' ')
    .some(
      (word) => word.length > 2 && word !== part && !plain.has(word) && !saysOver(word) && own.includes(word),
    );
}

/** These two things have in common that both are told in words. */
const plain: ReadonlySet<string> = new Set(
  'the and was not with from for out off its has now are too all one two half left right side still again bit'.split(
    ' ',
  ),
);

/** What is wrong, in small letters. */
function wordsOf({ kind, aspect, words }: ConditionLine): string {
  return [kind === 'finding' ? '' : kind, aspect, words]
    .filter(Boolean)
    .join(' ')
    .toLowerCase()
    .replace(/[^\p{L}\d ]+/gu, ' ');
}
