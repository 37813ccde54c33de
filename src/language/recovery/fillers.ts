// Words that only hold a sentence together: a line without them says the same.

export const fillers: ReadonlySet<string> = new Set(
  (
    'to after a them about again all also an and approx are at been by for from has have in is it its just now of ' +
    'on only still than that the there this very was were with'
  ).split(' '),
);

/** Before a value they say that it is none that was read so. */
export const vague: ReadonlySet<string> = new Set(['about', 'approx', 'approximately', 'circa', 'ca']);
