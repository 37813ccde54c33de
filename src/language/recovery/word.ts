// A token as a pattern takes it, and as it stands in the text.

export interface Word {
  readonly type: string;
  readonly image: string;
}
