import type { BaseLanguageClient } from 'vscode-languageclient';

/** Starts the server; a failure shows only in the output channel and in the status item. */
export async function startQuietly(client: BaseLanguageClient): Promise<void> {
  await client.start().catch((error: unknown) => client.error('The language server did not start.', error));
}
