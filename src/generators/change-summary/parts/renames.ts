// Which names only changed? A block or a part that went while one came that says the same, under another name, was renamed;
// whatever speaks of it is then read by the new name, so that a rename is one line and not a hundred.

import { isRecord, type LedgerBlock, type LedgerFact } from '../../../domain/model/ledger.js';

export interface Rename {
  /** `conveyor`, `liner`, `point`, `outage`, … */
  readonly what: string;
  readonly from: string;
  readonly to: string;
  /** The block that the part belongs to, by its new name; undefined where a whole block was renamed. */
  readonly within: string | undefined;
}

/** `Tarnholt.DG1` is `DG1` wherever only one plant has a DG1. */
export function withoutNeedlessPlants(blocks: readonly LedgerBlock[]): readonly LedgerBlock[] {
  const counts = new Map<string, number>();
  for (const { kind, name } of blocks) if (kind === 'conveyor') counts.set(name, (counts.get(name) ?? 0) + 1);
  const short = (name: string): string => {
    const last = name.slice(name.lastIndexOf('.') + 1);
    return (counts.get(last) ?? 0) > 1 ? name : last;
  };
  return blocks.map((block) => {
    if (!isRecord(block.kind) || !block.name.includes('.')) return block;
    const name = short(block.name);
    return { ...block, name, identity: block.identity.replace(block.name, name) };
  });
}

export function renamesOf(before: readonly LedgerBlock[], after: readonly LedgerBlock[]): readonly Rename[] {
  const renames: Rename[] = [];
  for (const kind of ['plant', 'liner', 'screw', 'conveyor', 'job'] as const) {
    const follow = namesFollowed(before, renames);
    const [gone, come] = [onlyIn(follow, after, kind), onlyIn(after, follow, kind)];
    for (const fresh of come) {
      const best = gone
        .map((old) => ({ old, share: sameFacts(old, fresh) }))
        .filter(({ old }) => !renames.some(({ from, what }) => what === kind && from === old.name))
        .sort((a, b) => b.share - a.share)[0];
      if (best && best.share >= 0.7)
        renames.push({ what: kind, from: best.old.name, to: fresh.name, within: undefined });
    }
  }
  const follow = new Map(namesFollowed(before, renames).map((block) => [block.identity, block]));
  for (const fresh of after) {
    const old = isRecord(fresh.kind) ? undefined : follow.get(fresh.identity);
    if (old) renames.push(...partsRenamed(old, fresh));
  }
  return renames;
}

function onlyIn(
  these: readonly LedgerBlock[],
  those: readonly LedgerBlock[],
  kind: LedgerBlock['kind'],
): readonly LedgerBlock[] {
  const known = new Set(those.map(({ identity }) => identity));
  return these.filter((block) => block.kind === kind && !known.has(block.identity));
}

/** The share of facts that two blocks have in common; 0 where there are too few to tell. */
function sameFacts(one: LedgerBlock, other: LedgerBlock): number {
  const said = new Set(other.facts.map(({ value }) => value));
  const same = one.facts.filter(({ value }) => value !== '' && said.has(value)).length;
  return same < 2 ? 0 : same / Math.max(one.facts.length, other.facts.length);
}

/** Parts of a block whose name is their identity: `point P1` → `point Head1` at the same place. */
function partsRenamed(before: LedgerBlock, after: LedgerBlock): readonly Rename[] {
  const rest = ({ identity, value }: LedgerFact): string => value.slice(identity.length);
  const [old, fresh] = [before.facts, after.facts].map((facts) =>
    facts.filter(({ identity, value }) => isNamedPart(identity) && value.startsWith(identity)),
  );
  const known = new Set(before.facts.map(({ identity }) => identity));
  const still = new Set(after.facts.map(({ identity }) => identity));
  const gone = (old ?? []).filter(({ identity }) => !still.has(identity));
  return (fresh ?? []).flatMap((fact): readonly Rename[] => {
    if (known.has(fact.identity)) return [];
    const what = keywordOf(fact.identity);
    const from = gone.filter((each) => keywordOf(each.identity) === what && rest(each) === rest(fact));
    const [only, another] = from;
    if (!only || another || rest(fact).trim() === '') return [];
    return [
      {
        what,
        from: only.identity.slice(what.length + 1),
        to: fact.identity.slice(what.length + 1),
        within: after.identity,
      },
    ];
  });
}

const namedParts = /^(point|break|section|outage|crew|access unit|crane|hatch|isolation|lifting point) \S+$/;

function isNamedPart(identity: string): boolean {
  return namedParts.test(identity);
}

function keywordOf(identity: string): string {
  return identity.slice(0, identity.lastIndexOf(' '));
}

/** The blocks as they would stand if the new names had been used all along. */
export function namesFollowed(
  blocks: readonly LedgerBlock[],
  renames: readonly Rename[],
): readonly LedgerBlock[] {
  return renames.reduce<readonly LedgerBlock[]>(
    (now, rename) => now.map((block) => follow(block, rename)),
    [...blocks],
  );
}

function follow(block: LedgerBlock, { what, from, to, within }: Rename): LedgerBlock {
  const swap = (text: string): string => text.replace(wordOf(from), to);
  if (within === undefined) {
    const own = block.kind === what && block.name === from;
    const named = own || (what === 'conveyor' && isRecord(block.kind) && block.name === from);
    const facts = speakOf(what, block) ? block.facts.map((fact) => reworded(fact, swap)) : block.facts;
    return named
      ? { ...block, name: to, identity: block.identity.replace(` ${from}`, ` ${to}`), facts }
      : { ...block, facts };
  }
  const conveyor = within.startsWith('conveyor ') ? within.slice('conveyor '.length) : undefined;
  const speaks =
    block.identity === within ||
    (conveyor === undefined
      ? block.kind === 'job'
      : (isRecord(block.kind) && block.name === conveyor) ||
        (block.kind === 'job' && block.facts.some(({ value }) => value === `conveyor ${conveyor}`)));
  return speaks ? { ...block, facts: block.facts.map((fact) => reworded(fact, swap)) } : block;
}

/** Which blocks may name a plant, a liner, a screw, a conveyor or a job. */
function speakOf(what: string, { kind }: LedgerBlock): boolean {
  switch (what) {
    case 'plant':
      return kind === 'conveyor';
    case 'liner':
      return kind === 'conveyor' || kind === 'reline' || kind === 'job' || kind === 'plant';
    case 'screw':
      return kind === 'conveyor' || kind === 'screw change' || kind === 'job';
    default:
      return kind === 'job';
  }
}

function reworded(fact: LedgerFact, swap: (text: string) => string): LedgerFact {
  return { ...fact, identity: swap(fact.identity), value: swap(fact.value) };
}

function wordOf(name: string): RegExp {
  return new RegExp(`(?<![\\w-])${name.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)}(?![\\w-])`, 'g');
}
