// A condition whose words are all there, in another order or with more words between: `brace at 6.7 m missing`, `hold-down shoe worn
// at 12.5 m`, `hatch H1 stuck`. What is left over is its note. Of one that is no longer so, `motor noise gone`, the answer is `closed`.

import { measureOf } from '../../domain/conditions/kinds.js';
import type { ConditionKind } from '../../domain/model/records.js';
import type { SaidLine } from './general.js';
import { noteOf } from './general.js';
import { partOfWord } from './part-words.js';
import type { LinePattern } from './pattern.js';
import { isReassuring } from './reassuring.js';
import { keyword, plainImage, type Word } from './word.js';

/** Undefined where no kind is named in full. */
export function asCondition(said: SaidLine, pattern: LinePattern): readonly Word[] | undefined {
  const { part, place, severity, photo, by, told, texts, answer } = said;
  if (part === undefined || by.length > 0) return undefined;
  const isOver = told.some(({ image }) => isReassuring(image));
  const found = kindIn(part, told, pattern);
  if (!found || (isOver && answer.length > 0)) return undefined;
  const { kind, rest } = found;
  // `hatch missing bolts 2`: something else is missing.
  const isPanel = (at: number): boolean => rest[at]?.type === 'panel' && rest[at + 1]?.type === 'NUMBER';
  if (rest.some((word, at) => partOfWord(word) !== undefined && !isPanel(at))) return undefined;
  const measure = measureIn(kind, rest);
  const note = noteOf(
    rest.filter((word) => word !== measure),
    texts,
  );
  return [
    ...(isOver ? [keyword('closed')] : answer),
    ...kind.map(keyword),
    ...(measure ? [measure] : []),
    ...place,
    ...severity,
    ...photo,
    ...(note ? [note] : []),
  ];
}

interface Found {
  /** `hold-down worn`; `motor`, `noise`. */
  readonly kind: readonly string[];
  readonly rest: readonly Word[];
}

function kindIn(part: string, told: readonly Word[], pattern: LinePattern): Found | undefined {
  const kinds = [...pattern.first].filter((each) => each.includes(' ') && partOfWord(keyword(each)) === part);
  const found = kinds.flatMap((kind): readonly Found[] => {
    const wanted = kind.slice(part.length).trim().split(' ');
    const used = wanted.map((each) =>
      told.find((word) => plainImage(word) === each || same[plainImage(word)] === each),
    );
    if (!kind.startsWith(part) || wanted[0] === '' || used.includes(undefined)) return [];
    return [{ kind: [kind], rest: told.filter((word) => !used.includes(word)) }];
  });
  const [longest] = found.sort((a, b) => a.rest.length - b.rest.length);
  return longest ?? ofTheDrive(part, told, pattern);
}

const same: Readonly<Partial<Record<string, string>>> = { leak: 'leaking', leaks: 'leaking' };

/** Its part alone is the kind, and what is wrong stands behind it. */
function ofTheDrive(part: string, told: readonly Word[], pattern: LinePattern): Found | undefined {
  const standing = pattern.next(pattern.start, part);
  if (standing === undefined) return undefined;
  const aspect = told.find(({ type }) => aspects.has(type));
  return aspect && { kind: [part, aspect.type], rest: told.filter((word) => word !== aspect) };
}

const aspects: ReadonlySet<string> = new Set([
  'noise',
  'oil low',
  'oil dirty',
  'oil leak',
  'seal leaking',
  'flooded',
]);

function measureIn([kind = '']: readonly string[], rest: readonly Word[]): Word | undefined {
  switch (
    measureOf(kind as ConditionKind) // the pattern has the kinds of the language
  ) {
    case 'count':
      return rest.find(({ type }) => type === 'NUMBER');
    case 'length':
      return rest.find(({ type }) => type === 'QUANTITY');
    case 'none':
      return undefined;
  }
}
