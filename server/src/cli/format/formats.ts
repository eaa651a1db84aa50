/** The ways to print findings. */

import type { Severity } from '../../site/model.ts';
import type { PlacedFindings } from '../placed.ts';
import { githubFormat } from './github.ts';
import { jsonFormat } from './json.ts';
import { junitFormat } from './junit.ts';
import { sarifFormat } from './sarif.ts';
import { textFormat } from './text.ts';

export const FORMATS: Readonly<Record<string, (findings: PlacedFindings) => string>> = {
  text: textFormat,
  json: jsonFormat,
  sarif: sarifFormat,
  junit: junitFormat,
  github: githubFormat,
};

/** From the least severe up. */
export const GRAVITY: readonly Severity[] = ['hint', 'information', 'warning', 'error'];
