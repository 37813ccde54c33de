// Do words say that something which was wrong is over, and of which kinds of condition can they say it? `quiet` ends a noise, `welded` a
// crack, `ok` whatever it was; `tightened` says nothing of a cord that is dead. What is over still has to be told by what stands open.

import { partOf } from './kinds.js';
import type { ConditionLine } from '../model/records.js';

interface Ending {
  /** In a line of words in small letters with one blank between them. */
  readonly says: RegExp;
  /** How the condition ends that it can be said of: kind and aspect. */
  readonly of: RegExp;
  /** What a finding in words may be that it can be said of. */
  readonly words: RegExp;
}

const between = (words: string): RegExp => new RegExp(`(?<![^ ])(?:${words})(?![^ ])`);

const endings: readonly Ending[] = [
  {
    says: between(
      'ok|okay|all right|in order|good|fine|normal|sound|gone|cured|over|solved|resolved|remedied|rectified|fixed|mended|repaired|' +
        'put right|made good|holds|stopped|renewed|replaced|exchanged|changed|swapped|new|as new|no more|no longer [a-z]+|not [a-z]+ (?:any more|anymore)',
    ),
    of: /./,
    words: /./,
  },
  {
    says: between('quiet|silent|runs? smooth(?:ly)?|smooth again'),
    of: /noise$/,
    words: /nois|rattl|hum|knock|squeal|squeak|rumbl|grind|loud|whin|rub|vibrat/,
  },
  {
    says: between(
      '(?:re)?tight(?:ened)?|tight again|torqued|nipped up|screwed (?:down|on|back|up)|bolted (?:down|on|back)|clamped|secured|refixed|rebolted|tensioned',
    ),
    of: /(?:loose|slack|lifted|open|leaking)$/,
    words: /loose|slack|proud|lift|stand|screw|bolt|nut|gap|open|rattl|leak|drip/,
  },
  {
    says: between(
      '(?:re)?welded(?: up| on| over)?|brazed|ground(?: out| off| flush| down| smooth)?|(?:filed|dressed)(?: off| flush)?|patched',
    ),
    of: /(?:cracked|torn|leaking|damaged|dented)$/,
    words: /crack|edge|burr|weld|goug|groove|proud|hole|torn|worn|sharp|notch|leak|thin|rust/,
  },
  {
    says: between('(?:re)?straightened|straight again|bent back|pressed straight|knocked out'),
    of: /(?:bent|dented|damaged)$/,
    words: /bent|bow|dent|kink|crook|twist|buckl|out of/,
  },
  {
    says: between(
      'freed|free again|chiselled (?:out|off)|chipped (?:out|off|away)|shovelled out|jetted(?: clear| out)?|hosed(?: out| off| down)?|pulled out|cut out|scraped (?:out|off)|' +
        'moves|moves freely|runs freely|loosened|opens again|unblocked|cleared|rodded|dug out|flushed|thawed|cleaned|clean|washed|removed|taken out',
    ),
    of: /(?:stuck|blocked|behind liner|oil dirty|bypassed)$/,
    words:
      /stuck|stiff|block|froz|ice|jam|lump|dirt|build|bridg|hang|plug|clog|cake|material|sludge|wire|rope|rag|nest|seiz|slow/,
  },
  {
    says: between(
      'put back(?: on)?|put on again|refitted|reinstalled|back|back on|back in place|in place again|closed',
    ),
    of: /(?:missing|loose|shifted|lifted|open)$/,
    words: /missing|gone|off|open|lost|away|lying/,
  },
  {
    says: between('(?:re)?sealed|dry|dry again|new gasket|tight'),
    of: /(?:leaking|leak|flooded)$/,
    words: /leak|drip|wet|weep|water|drops/,
  },
  {
    says: between('spliced|joined|knotted'),
    of: /(?:broken|damaged)$/,
    words: /broken|torn|cut|frayed|snapped/,
  },
  { says: between('topped up|filled(?: up)?|refilled'), of: /oil low$/, words: /low|level|empty/ },
  {
    says: between('works|works again|working|working again|trips|stops'),
    of: /(?:dead|bypassed)$/,
    words: /dead|work|trip|stop|fail|fault/,
  },
];

/** Nothing is over of which they say so, or not yet. */
const doubting = between(
  'not|never|still|only|partly|half|badly|should|must|needs?|wants|to be|almost|nearly|but|except|until|unless|soon|order|ordered|if|why|' +
    'cannot|could|no|without|last|since|before',
);

/** Some of it is left all the same: what is turned round says that it is over. */
const turned = between('no longer [a-z]+|no more|not [a-z]+ (?:any more|anymore)');

function isSaid(words: string): boolean {
  return !doubting.test(words.replace(turned, ' '));
}

/** `words`: what a line tells, in small letters with one blank between them. */
export function saysOver(words: string): boolean {
  return isSaid(words) && endings.some(({ says }) => says.test(words));
}

export function canEnd(words: string, line: ConditionLine): boolean {
  if (!isSaid(words)) return false;
  const kind = [line.kind, line.aspect].filter(Boolean).join(' ');
  const isInWords = line.kind === 'finding' || (partOf(line.kind) === 'drive' && line.aspect === undefined);
  return endings.some(
    ({ says, of, words: like }) =>
      says.test(words) && (isInWords ? like.test((line.words ?? '').toLowerCase()) : of.test(kind)),
  );
}
