import type { BaseLanguageClient } from 'vscode-languageclient';

/** Starts the server; a failure is in the output channel and in the status item, and nowhere else. */
export async function startQuietly(client: BaseLanguageClient): Promise<void> {
  await client.start().catch((error: unknown) => client.error('The language server did not start.', error));
}
