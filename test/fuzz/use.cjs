// Loaded into a program with `--require`: at its end it writes its use of resources to the file that USE_FILE names.
const { writeFileSync } = require('node:fs');

process.on('exit', () => writeFileSync(process.env.USE_FILE, JSON.stringify(process.resourceUsage())));
