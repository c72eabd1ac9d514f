/** What a manifest says of a package. */
export interface Contents {
  /** Names it: letters, digits, hyphens; begins with a letter. */
  readonly id: string;
  /** Of the course, or of the coursework. */
  readonly title: string;
  /** A sentence or two for the platform's list. */
  readonly about: string;
  /** Of the project: `0.1.0`. */
  readonly version: string;
  /** The page that the platform opens. */
  readonly launch: string;
  /** Every file of the package but the manifest, by path, in order. */
  readonly files: readonly string[];
  /**
   * The tutor's own pass mark, 0 to 1. Undefined keeps to the rule of the course or coursework, which need not be a
   * share of the score, and which the page itself judges.
   */
  readonly passMark: number | undefined;
}
