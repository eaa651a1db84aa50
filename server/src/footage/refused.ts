/** The request cannot be met. The message says why and what to do, as a sentence. */
export class Refused extends Error {
  /** Further lines for the user. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

/** The result does not fit on the disk. */
export class DiskFull extends Error {}
