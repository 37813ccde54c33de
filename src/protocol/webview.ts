// What the extension and its webviews say to each other: postMessage only, plain data.

/** Extension to page: show this. */
export interface ShowPage {
  readonly type: 'show';
  readonly title: string;
  readonly html: string;
  /** The keys of data-origin that can be followed to the text. */
  readonly origins: readonly string[];
  readonly stale: boolean;
}

/** Extension to page: nothing can be shown, and why. */
export interface ShowReason {
  readonly type: 'reason';
  readonly title: string;
  readonly reason: string;
}

/** Extension to page: the text cursor stands on this element now. */
export interface Reveal {
  readonly type: 'reveal';
  readonly origin: string;
}

export type ToPage = ShowPage | ShowReason | Reveal;

export type FromPage =
  | { readonly type: 'ready' }
  | { readonly type: 'open'; readonly origin: string }
  | { readonly type: 'refresh' }
  | { readonly type: 'save' };
