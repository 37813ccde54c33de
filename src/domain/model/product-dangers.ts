// What of the material, or of what comes off it, burns eyes and skin, gets hot with water, or makes dust that burns? By the words it
// is declared with: common knowledge of the trade, and the safety data sheet of the product goes before it.

import type { Conveyor } from './conveyor.js';

type Product = Pick<Conveyor, 'conveys' | 'givesOff'>;

/** `hot`: with water it gets hot, or may: lime of which nobody says that it is slaked. */
export interface Caustic {
  /** As it begins a sentence: `Quicklime`. */
  readonly name: string;
  readonly hot: boolean;
}

const quick = /\bquick[- ]?lime|\b(burnt|burned|unslaked) lime|\bcalcium oxide|\bCaO\b/i;
const slaked = /\b(slaked|hydrated|milk of) lime|\blime (milk|slurry)|\bcalcium hydroxide|\bCa\(OH\)2/i;
const someLime = /\blime\b(?! ?(stone|scale|tree|fruit|wood|bark|chips|juice))|\blim(ed|ing)\b/i;
const cement = /\bcement\b/i;
const ash = /\bash(es)?\b(?! ?(trees?|wood|bark|chips|logs))/i;

export function causticOf({ conveys, givesOff = [] }: Product): Caustic | undefined {
  const said = [conveys?.material ?? '', ...givesOff].join('; ');
  if (quick.test(said)) return { name: 'Quicklime', hot: true };
  if (slaked.test(said)) return { name: 'Slaked lime', hot: false };
  if (someLime.test(said)) return { name: 'Lime', hot: true };
  if (cement.test(said)) return { name: 'Cement', hot: false };
  return ash.test(said) ? { name: 'Ash', hot: false } : undefined;
}

/** Something else than what burns skin is in it: it rots, or carries germs. */
export function carriesGerms(product: string): boolean {
  return /sludge|digest|manure|slurry|sewage|compost|mulch|waste|rejects|screenings|grit|wood|bark|food/i.test(
    product,
  );
}

const mineral =
  /\b((quick)?lime|limestone|cement|sand|grit|gravel|ash(es)?|stone|rock|gypsum|mineral|silica|quartz|clay|soil|brick|concrete|chalk|glass|salt)\b/i;
const plants =
  /\b(wood|bark|saw|grain|flour|sugar|starch|feed|straw|hay|peat|pellets?|seeds?|cereals?|compost)\b/i;
const otherFuel =
  /\b(coal|coke|char\w*|carbon|sludge|digest\w*|paper|plastic|rubber|sul(ph|f)ur|alumini?um|metal|biomass)\b/i;
const burns = { test: (text: string): boolean => plants.test(text) || otherFuel.test(text) };

/** What comes off is dust, and no gas. */
export function isDust(givenOff: string): boolean {
  return /\bdusts?\b/i.test(givenOff);
}

/** Dust of stone, lime, sand, ash: it harms the lungs and never burns. Where nobody says of what it is, it may burn. */
export function isMineralDust(dust: string, { conveys }: Product): boolean {
  const named = [mineral, burns].some((kind) => kind.test(dust));
  const said = (named ? dust : (conveys?.material ?? '')).replace(/\b\w+ ash(es)?\b/gi, 'ash');
  return mineral.test(said) && !burns.test(said);
}
