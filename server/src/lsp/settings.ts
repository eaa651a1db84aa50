/** The settings of a client, at the start and when they change. */

import type { HintKinds } from '../features/inlay-hints.ts';
import { isMapping } from '../text/syntax.ts';

export interface Settings {
  /** Whether errors of shape are reported and keys completed and described, or left to another extension. */
  readonly schemaFeatures: boolean;
  readonly inlayHints: HintKinds;
  readonly codeLens: boolean;
}

export const usual: Settings = {
  schemaFeatures: true,
  inlayHints: { streams: true, cables: true, cablesFrom: 10, volumes: true, ranges: true },
  codeLens: false,
};

/** Reads the settings that a client sends, an object of any shape: missing ones stay as in `before`. */
export function readSettings(sent: unknown, before: Settings = usual): Settings {
  const hints = part(sent, 'inlayHints');
  const enabled = truth(part(hints, 'enabled'), true);
  const kind = (name: Exclude<keyof HintKinds, 'cablesFrom'>): boolean =>
    hints === undefined ? before.inlayHints[name] : enabled && truth(part(hints, name), usual.inlayHints[name]);
  const schemaFeatures = part(sent, 'schemaFeatures');
  return {
    schemaFeatures: schemaFeatures === undefined ? before.schemaFeatures : schemaFeatures !== 'off',
    inlayHints: {
      streams: kind('streams'),
      cables: kind('cables'),
      cablesFrom: number(part(hints, 'cablesFrom'), (hints === undefined ? before : usual).inlayHints.cablesFrom),
      volumes: kind('volumes'),
      ranges: kind('ranges'),
    },
    codeLens: truth(part(part(sent, 'codeLens'), 'enabled'), before.codeLens),
  };
}

/** The options that a client sends once, at the start. */
export interface StartOptions {
  /** Address of the folder with a page for each rule, or of any one page with `{rule}` for its name. */
  readonly rulePages: string | undefined;
  /** The client's own command that asks for completions, to be run where a value comes next. */
  readonly suggestCommand: string | undefined;
}

export function readStartOptions(sent: unknown): StartOptions {
  return { rulePages: text(part(sent, 'rulePages')), suggestCommand: text(part(sent, 'suggestCommand')) };
}

function part(value: unknown, key: string): unknown {
  return isMapping(value) ? value[key] : undefined;
}

function truth(value: unknown, otherwise: boolean): boolean {
  return typeof value === 'boolean' ? value : otherwise;
}

function number(value: unknown, otherwise: number): number {
  return typeof value === 'number' ? value : otherwise;
}

function text(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}
