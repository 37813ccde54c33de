// What is lost with a line that cannot be read? Some are told because the language has no place for them, and no fact of their
// block can have been in them: what it cost, how long somebody was at it, what the weather was, when somebody wants to look again.
// Whatever else the block says stands without them, and nothing waits for them to be mended. Words that may have been a fact
// (`took out panel 3`) are none of these.

import { conditionKinds } from '../../domain/conditions/kinds.js';
import type { Lacking } from '../../domain/model/problem.js';
import { blocksOfWork } from './general.js';
import { partOfWord } from './part-words.js';
import { inSmall, isValue, type Word } from './word.js';

/** A look that somebody wants. */
const again =
  /^(?:next (?:look|inspection|check)|(?:look|inspect|check) again|re-?(?:check|inspect))(?: is)?(?: due)? (?:after|in|by|within|on|before|at)\b/;

const admin = new RegExp(
  '^(?:costs?|price|paid|invoice[ds]?|budget|quot(?:e|ed|ation)|labou?r|man[- ]?hours|working hours|time spent|weather|' +
    '(?:work|purchase) order|(?:order|permit) number)\\b',
);

/** `took 18 h`: behind it a time, and no thing that was taken. */
const spent = /^(?:took|worked|lasted|duration)\b/;

/** Between blocks: that a machine stood still shows in its meter. */
const stood = /^(?:stopped|standstill|stood still|shut down)\b/;

/** `said`: its words but for those in quotes. */
function isBesideFacts(words: readonly Word[], said: string, block: string): boolean {
  if (block === 'Block') return stood.test(said);
  const isWork = blocksOfWork.has(block);
  if (!isWork && block !== 'Job' && block !== 'Order') return false;
  const [first, second] = words;
  if (first?.type === 'STRING') return block !== 'Order' && words.length === 1;
  return (
    again.test(said) || admin.test(said) || (spent.test(said) && second !== undefined && isValue(second.type))
  );
}

const ofConditions: ReadonlySet<string> = new Set([
  ...conditionKinds,
  'finding',
  'closed',
  'serviced',
  'by',
  'photo',
]);

/** A panel that is worn through tells of the rate, as a thickness does; and what is measured is a reading, whatever it begins with. */
const tellsOfWear = /\b(?:worn|through|thick\w*|colou?r|layer|plate|mm|showing|left)\b/;

/** `first`: the words that it may have begun with. */
export function lostWith(words: readonly Word[], first: readonly string[], block: string): Lacking {
  const said = inSmall(words.filter(({ type }) => type !== 'STRING'));
  if (isBesideFacts(words, said, block)) return 'words';
  // `drain blocked at 0.2 m`: where something is begins a reading only where it comes first.
  const starts = first.filter((word) => word === words[0]?.type || (word !== 'at' && word !== 'from'));
  const isOfAPart = starts.length > 0 || (first.length > 0 && partOfWord(words[0]) !== undefined);
  const isOfWork = blocksOfWork.has(block) && isOfAPart && starts.every((word) => ofConditions.has(word));
  return isOfWork && !tellsOfWear.test(said) ? 'conditions' : 'facts';
}
