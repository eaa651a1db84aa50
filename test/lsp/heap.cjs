// Loaded into a server with `--expose-gc --require`: at SIGUSR2 it writes how many bytes are in use to the file that
// HEAP_FILE names.
const { renameSync, writeFileSync } = require('node:fs');

process.on('SIGUSR2', () => {
  globalThis.gc();
  globalThis.gc();
  const file = process.env.HEAP_FILE;
  writeFileSync(`${file}.new`, String(process.memoryUsage().heapUsed));
  renameSync(`${file}.new`, file);
});
