// Prints as mocha's `spec` does, and writes what ran to the file that run.ts asks for.
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

/** What `unavailable` of test/availability.ts puts into titles. */
const SKIPPED = /\[skipped: ([^\]]*)\]/;

module.exports = class extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    const ran = { passed: 0, failed: [], skipped: [] };
    runner.on('pass', () => ran.passed++);
    runner.on('fail', (test) => ran.failed.push(test.fullTitle()));
    runner.on('pending', (test) => ran.skipped.push(SKIPPED.exec(test.fullTitle())?.[1] ?? 'no reason is given'));
    runner.once('end', () => writeFileSync(options.reporterOptions.file, JSON.stringify(ran)));
  }
};
