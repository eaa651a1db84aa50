/**
 * Holds a client to the order of the Language Server Protocol (3.17, Server lifecycle; JSON-RPC 2.0, 5.1): `initialize`
 * once, then requests with the parameters that they need, and after `shutdown` only `exit`. A message out of order, or
 * text that is no message, gets the error of the protocol, and the server goes on.
 */

import {
  type DataCallback,
  type Disposable,
  ErrorCodes,
  type ResponseMessage,
  type MessageReader,
  type MessageWriter,
} from 'vscode-languageserver';
import { isObject, unsound } from './sound-params.ts';

type Id = number | string | null;

interface Refusal {
  readonly id: Id;
  readonly code: number;
  readonly message: string;
}

export class Lifecycle {
  private state: 'new' | 'initialized' | 'shut down' = 'new';
  private readonly writer: MessageWriter;
  private readonly ended: (status: number) => void;

  /** @param ended takes the exit status of the server */
  constructor(writer: MessageWriter, ended: (status: number) => void) {
    this.writer = writer;
    this.ended = ended;
  }

  /** The client is gone or sends `exit`: a success only after `shutdown`. */
  end(): void {
    this.ended(this.state === 'shut down' ? 0 : 1);
  }

  /** Answers text that cannot be read as a message. @param why as a clause */
  refuseText(why: string): void {
    this.answer({ id: null, code: ErrorCodes.ParseError, message: `It cannot be read: ${why}.` });
  }

  /** The reader's messages without those that are out of order. */
  inOrder(reader: MessageReader): MessageReader {
    return {
      onError: reader.onError,
      onClose: reader.onClose,
      onPartialMessage: reader.onPartialMessage,
      dispose: () => reader.dispose(),
      listen: (callback: DataCallback): Disposable =>
        reader.listen((message) => {
          const verdict = this.judge(message);
          if (verdict === 'ended') this.end();
          else if (verdict === 'taken') callback(message);
          else if (verdict !== 'passed over') this.answer(verdict);
        }),
    };
  }

  private judge(message: unknown): Refusal | 'taken' | 'passed over' | 'ended' {
    if (!isObject(message)) return invalid(null, 'A message is one object; there are no batches.');
    const { id, method, params } = message;
    if (method === undefined) return isId(id) ? 'taken' : invalid(null, 'It is neither a request nor an answer.');
    if (typeof method !== 'string') return invalid(isId(id) ? id : null, 'The method is no text.');
    if (params !== undefined && params !== null && typeof params !== 'object')
      return id === undefined ? 'passed over' : invalid(isId(id) ? id : null, 'Parameters are an object or a list.');
    if (id === undefined) return this.notification(method, params);
    if (!isId(id)) return invalid(null, 'The id of a request is a number or a text.');
    return this.request(method, id, params);
  }

  private notification(method: string, params: unknown): 'taken' | 'passed over' | 'ended' {
    if (method === 'exit') return 'ended';
    if (this.state !== 'initialized') return 'passed over';
    return method !== '$/cancelRequest' || (isObject(params) && isId(params['id'])) ? 'taken' : 'passed over';
  }

  private request(method: string, id: Id, params: unknown): Refusal | 'taken' {
    if (this.state === 'shut down') return invalid(id, 'The server is shut down: only exit comes after it.');
    if (method !== 'initialize') {
      if (this.state === 'new')
        return { id, code: ErrorCodes.ServerNotInitialized, message: 'The first request is initialize.' };
      const wrong = unsound(method, params);
      if (wrong !== undefined)
        return { id, code: ErrorCodes.InvalidParams, message: `It has no ${wrong}, or one of another type.` };
      if (method === 'shutdown') this.state = 'shut down';
      return 'taken';
    }
    if (this.state !== 'new') return invalid(id, 'The server is initialized already.');
    if (!isObject(params) || !isObject(params['capabilities']))
      return { id, code: ErrorCodes.InvalidParams, message: 'It does not say what the client can do.' };
    this.state = 'initialized';
    return 'taken';
  }

  private answer({ id, code, message }: Refusal): void {
    const answer: ResponseMessage = { jsonrpc: '2.0', id, error: { code, message } };
    this.writer.write(answer).catch(() => undefined);
  }
}

function invalid(id: Id, message: string): Refusal {
  return { id, code: ErrorCodes.InvalidRequest, message };
}

function isId(value: unknown): value is number | string {
  return typeof value === 'number' || typeof value === 'string';
}
