// Prints like mocha's `spec`, and writes the tests that ran in each file to the file that run.ts asks for.
const { relative } = require('node:path');
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

/** The text that `unavailable` of test/availability.ts adds to titles. */
const SKIPPED = /\[skipped: ([^\]]*)\]/;

module.exports = class extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    const files = {};
    const ranIn = ({ file = '' }) => (files[relative('.', file)] ??= { passed: 0, failed: [], skipped: [] });
    runner.on('pass', (test) => ranIn(test).passed++);
    runner.on('fail', (test) => ranIn(test).failed.push(test.fullTitle()));
    runner.on('pending', (test) =>
      ranIn(test).skipped.push(SKIPPED.exec(test.fullTitle())?.[1] ?? 'no reason is given'),
    );
    runner.once('end', () => writeFileSync(options.reporterOptions.file, JSON.stringify(files)));
  }
};
