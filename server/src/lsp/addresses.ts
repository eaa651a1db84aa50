/** Addresses of files, as clients write them and in the one form that the server uses. */

import { ErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';

/** Editors write the address of a file in several ways: the server uses one form, and answers in the client's. */
export class Addresses {
  private readonly asWritten = new Map<string, string>();

  /**
   * The one form of an address that a client has written.
   *
   * @throws ResponseError where it is none
   */
  take(uri: string): string {
    const own = oneForm(uri);
    if (own === undefined) throw new ResponseError(ErrorCodes.InvalidParams, `${uri} is no address.`);
    if (own !== uri) this.asWritten.set(own, uri);
    return own;
  }

  /** Forgets how an address was written. */
  forget(uri: string): void {
    this.asWritten.delete(uri);
  }

  shown(uri: string): string {
    return this.asWritten.get(uri) ?? uri;
  }
}

/** An address in the one form that the server uses; `undefined` where it is none (RFC 3986, 3). */
export function oneForm(uri: string): string | undefined {
  try {
    return URI.parse(uri).toString();
  } catch (error) {
    // `URIError` is of half a surrogate pair, which cannot be encoded.
    if (error instanceof URIError || (error instanceof Error && error.message.startsWith('[UriError]')))
      return undefined;
    throw error;
  }
}
