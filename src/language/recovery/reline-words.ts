// What a reline was of and what was found then, in the words of whoever did it: `pieces 1 and 2 new`, `upper half relined 9.1 to 16.6 with
// MakeB`, `old piece 1 6.1 left`, `plate 5.1 at 10.3`. A scope that goes unread would make the whole liner new, so no note is offered for it.

import type { BrokenLine } from './broken-line.js';
import { noteOf, noteOfWords, takenApart } from './general.js';
import type { LinePattern } from './pattern.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import { changed } from './repairs.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { isName } from './said-place.js';
import { imagesOf, isSmallLength, keyword, textsIn, type Word } from './word.js';

export const relineLines: readonly LineSaying[] = [
  lengthFitted,
  fittedBy,
  offcutAndMore,
  oldPanelOfNoRun,
  oldPanelNowhere,
  oldPanelInOwnWords,
  scopeInWords,
  oldPanelInWords,
  plateInWords,
  turnedInAReline,
];

const pieces = /^(piece|pieces|panel|panels|sheet|sheets|liner|half|end|all|everything|whole)$/;
const renewed = /^(new|relined|renewed|replaced|changed|fitted|exchanged|reline|scope|lined)$/;

/** `right half of panel 2 of run 1`: as a note it would leave the reline without its scope. */
const partly =
  /^(?:half|halves|only|just|part|parts|lower|upper|left|right|left side|right side|end|top|bottom)$/;

/** Which panels or which stretch, and of which liner. */
function scopeInWords({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const first = written[0]?.type ?? '';
  if (block !== 'Reline' || ['fitted', 'old panel', 'finding', 'serviced', 'liner', 'offcut'].includes(first))
    return undefined;
  const words = joined(written);
  const { part } = takenApart(words);
  if (part !== undefined && part !== 'panel' && part !== 'liner') return undefined;
  if (words.some(({ type }) => type === 'not seen')) return undefined;
  const images = words.map(({ image }) => image.toLowerCase());
  const isPartly =
    partly.test(images[0] ?? '') &&
    words.some(
      ({ type }, i) =>
        type === 'of run' || type === 'run' || (type === 'panel' && words[i + 1]?.type === 'NUMBER'),
    );
  if (
    !images.some((image) => pieces.test(image)) ||
    (!isPartly && !images.some((image) => renewed.test(image)))
  )
    return undefined;
  if (words.some(({ type }) => type === 'thickness' || type === 'closed')) return undefined;
  const scope = scopeOf(words);
  if (scope === undefined) return undefined;
  const name = words.find((word) => isName(word) && !/^[A-Z]{1,2}\d+$/.test(word.image))?.image;
  const liner = name === undefined ? '' : ` and \`liner ${name}\`, a line each`;
  const half = isPartly ? partlyRelined(words, written, pattern) : undefined;
  if (half) return half;
  const line = [keyword('scope'), ...words.filter(({ type }) => !['scope', 'reline'].includes(type))];
  const isAll = imagesOf(line) === scope && readsSoundly(line, pattern);
  return {
    at: 0,
    ...(isAll ? { repair: changed(written, line), senses: [['reline', 'scope']] as const } : {}),
    message:
      `What was relined is its \`scope\`, because without one the whole liner counts as new: \`${scope}\`${liner}. ` +
      'What else there is to say of it stands in a `finding "…"`.',
  };
}

/** `right half of panel 2 of run 1 from 3.5 m to 5 m`: the stretch is the scope, and what else it says stands beside it. */
function partlyRelined(
  words: readonly Word[],
  written: readonly Word[],
  pattern: LinePattern,
): Otherwise | undefined {
  const from = words.findIndex(({ type }, i) => type === 'from' && words[i + 2]?.type === 'to');
  if (from < 0) return undefined;
  const stretch = words.slice(from, from + 4);
  const line = [keyword('scope'), ...stretch];
  const note = noteOf(
    words.filter((word, i) => (i < from || i > from + 3) && word.type !== 'STRING'),
    textsIn(written),
  );
  const finding = [keyword('finding'), keyword('panel'), ...stretch, ...(note ? [note] : [])];
  if (!note || !readsSoundly(line, pattern) || !readsSoundly(finding, pattern)) return undefined;
  return {
    at: 0,
    message:
      'What was relined is its `scope`, because without one the whole liner counts as new; half a panel by the clock has no line, ' +
      `so the other half counts as new with it: ${shownTogether([line, finding])}.`,
    repair: inSeveralLines(written, [line, finding]),
  };
}

function scopeOf(words: readonly Word[]): string | undefined {
  const run = words.findIndex(({ type }) => type === 'of run');
  const panels = words.findLastIndex(({ type }, i) => i < run && (type === 'panel' || type === 'panels'));
  if (panels >= 0) return `scope ${imagesOf(words.slice(panels, run + 2))}`;
  const { place } = takenApart(words);
  if (place.length >= 4 && place[0]?.type === 'from') return `scope ${imagesOf(place.slice(0, 4))}`;
  if (place[1]?.type === 'panel') return `scope ${imagesOf(place.slice(1))}`;
  const range = words.findIndex(
    ({ type }, i) => type === 'to' && isBare(words[i - 1]) && isBare(words[i + 1]),
  );
  if (range > 0) return `scope from ${metres(words[range - 1])} to ${metres(words[range + 1])}`;
  const at = words.findIndex(({ image }) =>
    /^(piece|pieces|panel|panels|sheet|sheets)$/.test(image.toLowerCase()),
  );
  const counts: string[] = [];
  for (let i = at + 1; i < words.length && at >= 0; i++) {
    const { type = '', image = '' } = words[i] ?? {};
    if (type === 'NUMBER' && /^\d+$/.test(image)) counts.push(image);
    else if (!['no', 'nr', 'and', 'to', ',', '.'].includes(image)) break;
    else counts.push(image);
  }
  while (counts.length > 0 && !/\d/.test(counts.at(-1) ?? '')) counts.pop();
  const numbers = counts
    .filter((each) => !['no', 'nr', '.'].includes(each))
    .join(' ')
    .replace(/ ,/g, ',');
  if (numbers === '') return undefined;
  return `scope ${/^\d+$/.test(numbers) ? 'panel' : 'panels'} ${numbers} of run 1\`, if it is run 1; or \`scope run 2`;
}

function isBare(word: Word | undefined): boolean {
  return word?.type === 'NUMBER' || (word?.type === 'QUANTITY' && /\d *m$/.test(word.image));
}

function metres(word: Word | undefined): string {
  const image = word?.image ?? '';
  return / ?m$/.test(image) ? image : `${image} m`;
}

/** `old panel 2 mm`, in a reline of one panel: where it lay is for who measured to say. */
function oldPanelNowhere({ block, words: [first, size, ...more] }: BrokenLine): Otherwise | undefined {
  const isSize = size !== undefined && isSmallLength(size);
  if (
    block !== 'Reline' ||
    first?.type !== 'old panel' ||
    !size ||
    !isSize ||
    more.some(({ type }) => type !== 'STRING')
  )
    return undefined;
  return {
    at: 1,
    message:
      `Where it lay is said with it, by a point of it or by its number: \`old panel at P5 thickness ${size.image}\` or ` +
      `\`old panel 1 of run 2 thickness ${size.image}\`, say.`,
  };
}

/** `fitted by "own crew" in 9 h` */
function fittedBy({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, by, who, ...rest] = words;
  if (block !== 'Reline' || first?.type !== 'fitted' || by?.type !== 'by' || who?.type !== 'STRING')
    return undefined;
  const note =
    rest.length === 0
      ? undefined
      : noteOf([first, ...rest.filter(({ type }) => type !== 'STRING')], textsIn(rest));
  const lines = [[by, who], ...(note ? [[keyword('finding'), note]] : [])];
  if (!lines.every((line) => readsSoundly(line, pattern))) return undefined;
  return {
    at: 0,
    message: `Who did it is said with \`by\`: ${shownTogether(lines)}.`,
    repair: inSeveralLines(words, lines),
    senses: [['fitted', 'by']],
  };
}

/** `offcut 600 mm left over` */
function offcutAndMore({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, size, ...rest] = words;
  if (block !== 'Reline' || first?.type !== 'offcut' || size?.type !== 'QUANTITY' || rest.length === 0)
    return undefined;
  const line = [first, size];
  const isSaid = rest.every(({ image }) => /^(?:left|over|kept|remains|remaining|is|was|long)$/.test(image));
  const note = noteOfWords(rest);
  const finding = [
    keyword('finding'),
    keyword('liner'),
    ...(note ? [{ ...note, image: `"offcut: ${note.image.slice(1)}` }] : []),
  ];
  const lines = isSaid ? [line] : [line, finding];
  if (rest[0]?.type === 'NUMBER' || !note || !lines.every((each) => readsSoundly(each, pattern)))
    return undefined;
  return {
    at: 2,
    message: `How long what was left over is, is all of its line: ${shownTogether(lines)}.`,
    repair: inSeveralLines(words, lines),
    senses: isSaid ? rest.map(({ image }): SaidBy => [image, 'offcut']) : [],
  };
}

/** `old panel 3 worn through at bottom`: of which run is for who took it out to say. */
function oldPanelOfNoRun({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, count, ...rest] = words;
  const isOfRun = rest.some(({ type }) => type === 'of run' || type === 'run');
  if (block !== 'Reline' || first?.type !== 'old panel' || count?.type !== 'NUMBER' || isOfRun)
    return undefined;
  const size = rest.find(isSmallLength);
  const read = rest.some(({ type }) => type === 'worn through')
    ? 'worn through'
    : `thickness ${size?.image ?? '… mm'}`;
  const note = noteOf(
    rest.filter(
      (word) => word !== size && word.type !== 'STRING' && !['worn through', 'thickness'].includes(word.type),
    ),
    textsIn(rest),
  );
  return {
    at: 2,
    message:
      `Of which run it was is said with it: \`old panel ${count.image} of run 1 ${read}${note ? ` ${note.image}` : ''}\`, if it lay in ` +
      'run 1.',
  };
}

/** `old panel at 7 m not measured "went into the skip"`, `old panel weight 31 kg`: nothing is left to reckon with. */
function oldPanelInOwnWords({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const isMeasured = words.some(
    ({ type, image }) => type === 'thickness' || type === 'worn through' || /\d *(mm|in)$/.test(image),
  );
  if (block !== 'Reline' || words[0]?.type !== 'old panel' || isMeasured || words.length < 3)
    return undefined;
  const { place, told, texts } = takenApart(joined(words));
  const said = [imagesOf(told), ...texts].filter(Boolean).join(': ');
  const line = [keyword('finding'), keyword('liner'), ...place, { type: 'STRING', image: `"${said}"` }];
  return {
    at: 0,
    message: `An old panel that was not measured tells nothing of the wear; a finding keeps it: \`${imagesOf(line)}\`.`,
    ...(readsSoundly(line, pattern) ? { repair: changed(words, line) } : {}),
  };
}

/** `fitted panel 1 of run 1 3480 mm`: how long one panel is; lengths are said of all panels of a run. */
function lengthFitted({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, panel, number, ofRun, run, ...rest] = words;
  const size = rest.find(({ type, image }) => type === 'QUANTITY' && /\d *(mm|cm|m|in|ft)$/.test(image));
  const isPanel = panel?.type === 'panel' && ofRun?.type === 'of run';
  if (block !== 'Reline' || first?.type !== 'fitted' || !isPanel || !number || !run || !size)
    return undefined;
  const isLong =
    rest.some(({ image }) => image === 'length' || image === 'long') || /^\d{3,} *mm$/.test(size.image);
  if (!isLong || rest.some(({ type }) => type === 'thickness')) return undefined;
  const place = [keyword('at'), panel, number, ofRun, run];
  const text: Word = {
    type: 'STRING',
    image: `"${['fitted, length', size.image, ...textsIn(rest)].join(' ')}"`,
  };
  const line = [keyword('finding'), keyword('panel'), ...place, text];
  return {
    at: 0,
    message:
      `How long the panels are is said of the whole run, from its tail: \`fitted run ${run.image} panels ${size.image}, …\`. ` +
      `Of one alone it is kept in \`${imagesOf(line)}\`.`,
    ...(readsSoundly(line, pattern) ? { repair: changed(words, line) } : {}),
  };
}

/** `old piece 1 6.1 left`, `old ones 7.4 and 7.9 left` */
function oldPanelInWords({ block, words }: BrokenLine): Otherwise | undefined {
  if (block !== 'Reline' || words[0]?.image !== 'old') return undefined;
  const values = words.filter(
    ({ type, image }) =>
      (type === 'NUMBER' || type === 'QUANTITY') && /^\d+\.\d+|mm$/.test(image) && !/\d *m$/.test(image),
  );
  const size = (values[0]?.image ?? '7.9 mm').replace(/ .*$/, '');
  const count = words.find(({ type, image }) => type === 'NUMBER' && /^\d$/.test(image))?.image ?? '1';
  const place = words.find(({ type, image }) => type === 'QUANTITY' && /\d *m$/.test(image))?.image;
  const line =
    place === undefined
      ? `old panel ${count} of run 1 thickness ${size} mm`
      : `old panel at ${place} thickness ${size} mm`;
  return {
    at: 0,
    message:
      `What was left of a panel that came out is the last reading of the old liner, a line each: \`${line}\`` +
      `${place === undefined ? ', if it lay in run 1' : ''}, or \`worn through\`.`,
  };
}

/** `plate 5.1 at 10.3`, in a look too */
function plateInWords({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (
    !['Reline', 'Inspection'].includes(block) ||
    written[0]?.type !== 'plate' ||
    written[1]?.type === 'at' ||
    written[1]?.type === 'from'
  )
    return undefined;
  const { place, told } = takenApart(joined(written.slice(1)));
  const size = told.find(({ type, image }) => type === 'NUMBER' || /\d *mm$/.test(image));
  const texts = textsIn(written);
  if (size && place.length < 2) return steelSomewhere(told, size, texts);
  if (!size) return undefined;
  const others = told.filter((word) => word !== size && word.type === 'ID');
  const note = [imagesOf(others), ...texts].filter(Boolean).join(': ');
  const number = size.image.replace(/ .*$/, '');
  const line = [
    keyword('plate'),
    ...place,
    keyword('thickness'),
    { type: 'QUANTITY', image: `${number} mm` },
    ...(note === '' ? [] : [{ type: 'STRING', image: `"${note}"` }]),
  ];
  const isSure = size.type === 'QUANTITY' && readsSoundly(line, pattern);
  return {
    at: 0,
    ...(isSure ? { repair: changed(written, line) } : {}),
    message: `What is left of the steel says first where: \`${imagesOf(line)}\`${isSure ? '' : ', if it was in mm'}.`,
  };
}

/** `plate next to hole 2.2 mm` */
function steelSomewhere(told: readonly Word[], size: Word, texts: readonly string[]): Otherwise {
  const note = noteOf(
    told.filter((word) => word !== size && word.type !== 'STRING'),
    texts,
  );
  return {
    at: 0,
    message:
      `What is left of the steel says first where: \`plate at … thickness ${size.image.replace(/ ?mm$/, '')} mm` +
      `${note ? ` ${note.image}` : ''}\`, with its chainage in place of \`…\`.`,
  };
}

/** `piece 3 turned end for end` */
function turnedInAReline({ block, words, heading }: BrokenLine): Otherwise | undefined {
  const turned = words.some(({ type }) => type === 'turned end for end');
  if (!['Reline', 'Inspection', 'ScrewChange'].includes(block) || !turned || words[0]?.type === 'panel')
    return undefined;
  const count = words.find(({ type }) => type === 'NUMBER')?.image ?? '2';
  const [, conveyor, day] = heading;
  const hours = heading.find(({ type }) => type === 'QUANTITY')?.image ?? '8120 h';
  return {
    at: 0,
    message:
      'Panels that were turned or changed places are a record of their own, with the meter of that day: the wear goes with them. ' +
      `\`panels moved ${conveyor?.image ?? 'DG1'} ${day?.image ?? '2026-03-14'} meter ${hours} {\`, ` +
      `\`${imagesOf([keyword('panel')])} ${count} of run 1 turned end for end\`, if it lay in run 1, \`}\`.`,
  };
}
