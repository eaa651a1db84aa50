// The user's settings, as the server gets them.
import * as vscode from 'vscode';
import type { WorkspaceMiddleware } from 'vscode-languageclient';

const section = 'plumbline';

/** Extensions that check any YAML file against a contributed schema, and complete and describe its keys. */
const schemaDriven = ['redhat.vscode-yaml'];

/** Settings for the server, both at its start and when it asks for the section `plumbline`. */
export interface ServerSettings {
  /** Whether the server reports errors of shape, completes and describes keys, or leaves that to another extension. */
  readonly schemaFeatures: 'on' | 'off';
}

/** The current settings; `auto` is resolved here, as only the editor knows its extensions. */
export function serverSettings(): ServerSettings {
  const wanted = vscode.workspace.getConfiguration(section).get<string>('schemaFeatures', 'auto');
  if (wanted === 'on' || wanted === 'off') return { schemaFeatures: wanted };
  const isServed = schemaDriven.some((id) => vscode.extensions.getExtension(id) !== undefined);
  return { schemaFeatures: isServed ? 'off' : 'on' };
}

/** Answers the server's questions for settings, with `auto` resolved. */
export const answerSettings: NonNullable<WorkspaceMiddleware['configuration']> = async (params, token, next) => {
  const answers = await next(params, token);
  if (!Array.isArray(answers)) return answers;
  return answers.map((answer: unknown, index) => {
    const asked = params.items[index]?.section;
    if (asked === section) return { ...Object(answer), ...serverSettings() };
    return asked === `${section}.schemaFeatures` ? serverSettings().schemaFeatures : answer;
  });
};
