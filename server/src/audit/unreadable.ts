/** Why what an audit is given cannot be read; the message says where and what, for the person who made it. */
export class Unreadable extends Error {}

/** It can be read, but not what it is of: whoever asks has to say which of these. */
export class Untold extends Unreadable {
  readonly choices: readonly string[];

  constructor(message: string, choices: readonly string[]) {
    super(message);
    this.choices = choices;
  }
}
