/** Takes the settings of a client at the start and when it changes them, and refreshes what depends on them. */

import { DidChangeConfigurationNotification } from 'vscode-languageserver';
import type { Session } from './session.ts';
import { readSettings } from './settings.ts';

/**
 * @param schemaFeaturesChanged runs where the setting changes which diagnostics are shown
 * @returns a function to run once the client is initialized
 */
export function followSettings(session: Session, schemaFeaturesChanged: () => void): () => Promise<void> {
  const { connection } = session;

  /** Takes the client's settings where it can be asked for them, else those that it has `sent`. */
  const take = async (sent?: unknown): Promise<void> => {
    const before = session.settings;
    const { workspace } = session.client;
    const given: unknown =
      workspace?.configuration === true ? await connection.workspace.getConfiguration('plumbline') : sent;
    session.settings = readSettings(given, before);
    if (workspace?.inlayHint?.refreshSupport === true) void connection.languages.inlayHint.refresh();
    if (workspace?.codeLens?.refreshSupport === true) void connection.sendRequest('workspace/codeLens/refresh');
    if (before.schemaFeatures !== session.settings.schemaFeatures) schemaFeaturesChanged();
  };

  connection.onDidChangeConfiguration(({ settings }) => take(settings?.plumbline ?? settings));

  return async () => {
    const { workspace } = session.client;
    if (workspace?.didChangeConfiguration?.dynamicRegistration === true)
      await connection.client.register(DidChangeConfigurationNotification.type, { section: 'plumbline' });
    if (workspace?.configuration === true) await take();
  };
}
