import assert from 'node:assert/strict';
import { spacedTables } from '../../client/src/spaced-tables.ts';

describe('a table in a hover', () => {
  it('has room between its columns, and keeps figures and units together', () =>
    assert.equal(
      spacedTables(
        '**6 Mb/s**\n\n|  | peak |  |\n| :-- | --: | :-- |\n| **all** | 6 Mb/s | with a tag |\n| a\\|b | 2 % | |',
      ),
      '**6 Mb/s**\n\n|  | peak&emsp; |  |\n| :-- | --: | :-- |\n' +
        '| **all**&emsp; | 6\u00a0Mb/s&emsp; | with a tag |\n| a\\|b&emsp; | 2\u00a0%&emsp; | |',
    ));
});
