// A line that does not read as any fact of the language. The parser says where it stopped and what would have fitted.

import type { Problem, SaidOver } from '../../../domain/model/problem.js';
import { list } from '../../../domain/units/wording.js';
import type { Fix, Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { replace } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';
import { chainageNamed, endingsFor, type Ending } from '../../telling/stands-open.js';
import type { Estate } from '../../../domain/model/estate.js';

export const syntax: Rule = {
  code: 'TL101',
  title: 'Text that does not read as a fact',
  severity: 'error',
  restsOn: [],
  why: 'What cannot be read is left out of every check, report and work pack: a break or a reading may be missing without anyone noticing.',
  todo: 'Mend this line; the others of its block are read. Hover over its first word, or ask for completion, to see how it goes.',
  given: 'whole',
  example: `
plant Tarnholt {
  outage ‹|Spring27 ›«2027-04-12» to 2027-04-23
}`,
  check: onProblem('syntax', (written, { estate }) => {
    const { unnamed } = written;
    const problem = unnamed && !hasNamed(estate, unnamed) ? { ...written, ...unnamed } : written;
    const own = problem.mend ? [mending(problem.mend)] : [];
    const plain = { message: problem.message, ...(own.length > 0 ? { fixes: own } : {}) };
    const { over } = problem;
    return over ? ending(over, endingsFor(estate, over), plain, own) : plain;
  }),
};

/** Of a conveyor that cannot be read nobody knows. */
function hasNamed(
  { conveyors }: Estate,
  { conveyor: name, names }: { readonly conveyor: string; readonly names: readonly string[] },
): boolean {
  const conveyor = conveyors.find((each) => each.name === name);
  // `WB1` beside `WB2` is a machine too.
  const isMachine = (each: string): boolean =>
    each.replace(/\d+$/, '') === name.replace(/\d+$/, '') && /[A-Z]\d+$/.test(each);
  if (!conveyor) return !names.every(isMachine);
  return names.some((each) => chainageNamed(conveyor, each) !== undefined);
}

type Said = Omit<Found, 'origin'>;

/** What stands open there is known only when all records are; until then the line is taken after all others. */
function ending(over: SaidOver, endings: readonly Ending[], plain: Said, own: readonly Fix[]): Said {
  const later = own.map((fix) => ({ ...fix, later: true }));
  const [only, ...more] = endings;
  if (!only) return { ...plain, ...(later.length > 0 ? { fixes: later } : {}) };
  const lines = endings.map(({ line }) => `\`${line}\``);
  if (more.length > 0 || !only.isSure)
    return {
      message: `${plain.message} What stands open there ends by its own line: ${list(lines.slice(0, most), 'or')}.`,
      ...(later.length > 0 ? { fixes: later } : {}),
    };
  const note = over.offered === undefined ? '' : ` What ends nothing is \`${over.offered}\`.`;
  const fix: Fix = {
    ...replace(over.origin, only.line, { title: `Write ${only.line}`, preferred: false }),
    offered: true,
    later: true,
  };
  return {
    message: `There is ${only.what}: \`${only.line}\` says that it is over.${note}`,
    fixes: [fix, ...own.map(({ offered: _, ...each }) => each)],
  };
}

/** So many lines are shown. */
const most = 3;

type Mend = NonNullable<Extract<Problem, { kind: 'syntax' }>['mend']>;

/** One replacement is likeliest: what the line was meant to be is still for its author to say, unless only the order of its parts was wrong. */
function mending({ origin, text, isSure = false }: Mend): Fix {
  const word = text.trim().replace(/\s*\n\s*/g, ' and ');
  const fix = replace(origin, text, {
    title: word === '' ? 'Take it out' : `Write ${word}`,
    preferred: isSure,
  });
  return isSure ? fix : { ...fix, offered: true };
}
