import assert from 'node:assert/strict';
import { plain } from '../../client/src/plain.ts';

/** What a message has as a link in VS Code (src/vs/base/common/linkedText.ts, from memory). */
const LINK = /\[[^\]]+\]\((?:https?:\/\/|command:|file:)[^)\s]+/;

describe('a message with names of a site in it', () => {
  for (const name of ['[gate](command:workbench.action.terminal.new)', '[a](https://b.example)', '[a](file:///etc)']) {
    it(`has no link where one is named ${name}`, () => {
      const message = `No file can be named after ${name}.`;
      assert.match(message, LINK);
      assert.doesNotMatch(plain(message), LINK);
    });
  }

  it('is left as it is otherwise', () => assert.equal(plain('`chmod +x` (once) [a]'), '`chmod +x` (once) [a]'));
});
