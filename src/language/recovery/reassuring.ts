// Words that say of a thing that it is as it should be, or is so again: a condition with such a word as its note would say the opposite.

const words: ReadonlySet<string> = new Set(
  'fine good normal ok okay quiet sound tight clean not no gone cured ended stopped freely fixed never none without'.split(
    ' ',
  ),
);

export function isReassuring(image: string): boolean {
  return words.has(image.toLowerCase());
}
