/** A file to be made: its path from the root of the project, and its text. */
export interface Output {
  readonly path: string;
  readonly text: string;
}
