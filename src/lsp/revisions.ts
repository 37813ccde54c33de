// The texts of an estate as a revision of its repository has them, for comparing. Only a server that may start programs on a disk
// can read them; elsewhere there are none, and that is said.

export interface EstateRevision {
  readonly name: string;
  /** Address of the folder that the names of both sides are taken from. */
  readonly folder: string;
  readonly texts: readonly { readonly uri: string; readonly text: string }[];
}

export type RevisionAnswer =
  { readonly ok: true; readonly revision: EstateRevision } | { readonly ok: false; readonly reason: string };

export interface Revisions {
  /** @param uris the texts of the estate as it stands */
  read(uris: readonly string[], revision: string): RevisionAnswer;
}

export const noRevisions: Revisions = {
  read: () => ({
    ok: false,
    reason:
      'Comparing needs the git command, which the desktop has and a browser has not. ' +
      'Open the folder on the desktop, or run `troughline diff` there.',
  }),
};
