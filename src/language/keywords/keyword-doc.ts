// What hovers, completion and messages tell about a keyword: its meaning in a sentence or two, and what to type after it.

export interface KeywordDoc {
  /** Markdown, for someone who knows conveyors and has never seen the language. */
  readonly meaning: string;
  /** The whole fact as a snippet with placeholders, where more than the keyword has to be typed. */
  readonly snippet?: string;
}

/** Keywords by the grammar rule they stand in: the same word can mean two things in two places. */
export type KeywordDocs = Readonly<Record<string, Readonly<Record<string, KeywordDoc>>>>;

export function word(meaning: string, snippet?: string): KeywordDoc {
  return snippet === undefined ? { meaning } : { meaning, snippet };
}
