// Loaded into a server with `--expose-gc --require`: at SIGUSR2 it writes how many bytes are in use to the file that
// HEAP_FILE names. Machine code is not counted: V8 makes more of it for as long as it finds something to optimize.
const { renameSync, writeFileSync } = require('node:fs');
const { getHeapCodeStatistics } = require('node:v8');

process.on('SIGUSR2', () => {
  globalThis.gc();
  globalThis.gc();
  const file = process.env.HEAP_FILE;
  const { code_and_metadata_size: code } = getHeapCodeStatistics();
  writeFileSync(`${file}.new`, String(process.memoryUsage().heapUsed - code));
  renameSync(`${file}.new`, file);
});
