#!/usr/bin/env node
// Stands in for the desktop's executable: @vscode/test-electron spawns it as `vscodeExecutablePath`.
import { register } from 'tsx/esm/api';

register();
const { runTestsEmbedded } = await import('./embedded-code.ts');
process.exitCode = await runTestsEmbedded(process.argv.slice(2));
