// A proxy on loopback in front of a server on a socket: lets only requests with the secret of this run through.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { type IncomingMessage, type ServerResponse, createServer, request } from 'node:http';
import type { Socket } from 'node:net';

const COOKIE = 'plumbline-editor';

export interface Gate {
  /** An address that lets a browser in; the secret is in it. */
  readonly address: (query?: Readonly<Record<string, string>>) => string;
  readonly close: () => void;
}

/**
 * Passes requests on a free port of 127.0.0.1 on to a socket. A request with the secret in its address gets a cookie;
 * without the cookie every other one is refused. So are other host names and pages of other origins, as a foreign name
 * may resolve to this machine, and a foreign page may send requests.
 *
 * A browser sends a cookie to all ports of a host (RFC 6265, 8.5), so to servers of others on this machine as well. So
 * this one is for a path that nobody can guess, below which everything is served.
 */
export async function openGate(socketPath: string): Promise<Gate> {
  const secret = randomBytes(32).toString('base64url');
  const token = randomBytes(32).toString('base64url');
  const root = `/${randomBytes(16).toString('base64url')}`;
  const sockets = new Set<Socket>();
  let host = '';

  // A path alone: where an address is asked for, its host counts and not that of the header (RFC 9112, 3.2.2).
  const isOwn = ({ url, headers, headersDistinct }: IncomingMessage): boolean =>
    url?.startsWith('/') === true &&
    headers.host === host &&
    headersDistinct['host']?.length === 1 &&
    (headers.origin === undefined || headers.origin === `http://${host}`);
  const isKnown = ({ url, headers }: IncomingMessage): boolean =>
    url?.startsWith(`${root}/`) === true &&
    (headers.cookie ?? '').split(/; */).some((pair) => isEqual(pair, `${COOKIE}=${token}`));
  const onward = ({ method, url, headers }: IncomingMessage): ReturnType<typeof request> =>
    request({
      socketPath,
      method,
      path: url?.slice(root.length),
      // By this VS Code's server makes the addresses in its pages.
      headers: { ...headers, 'x-forwarded-prefix': root },
    });

  const server = createServer((asked, answer) => {
    // Not by `URL`, which reads the text behind two slashes as a host name, and throws where it is not valid.
    const [path = '/', query = ''] = (asked.url ?? '/').split('?', 2);
    const parameters = new URLSearchParams(query);
    const given = parameters.get('secret');
    if (!isOwn(asked)) return refuse(answer);
    if (given !== null && isEqual(given, secret)) {
      parameters.delete('secret');
      const others = parameters.toString();
      const to = `${root}/${path.replace(/^[/\\]+/, '')}${others === '' ? '' : `?${others}`}`;
      return admit(answer, to, `${COOKIE}=${token}; Path=${root}/; HttpOnly; SameSite=Strict`);
    }
    if (!isKnown(asked)) return refuse(answer);
    const passed = onward(asked);
    passed.on('response', (response) => {
      answer.writeHead(response.statusCode ?? 502, response.headers);
      response.pipe(answer);
      // An answer that breaks off is not left open, or the browser waits for its rest.
      response.on('close', () => {
        if (!response.complete) answer.destroy();
      });
    });
    passed.on('error', () => answer.destroy());
    answer.on('close', () => passed.destroy());
    asked.pipe(passed);
  });
  server.on('upgrade', (asked: IncomingMessage, socket: Socket, first: Buffer) => {
    if (!isOwn(asked) || asked.headers.origin === undefined || !isKnown(asked)) {
      socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n', () => socket.destroy());
      return;
    }
    const passed = onward(asked);
    passed.on('upgrade', (response, other, ahead) => {
      const lines = response.rawHeaders.flatMap((name, index, all) =>
        index % 2 === 0 ? [`${name}: ${all[index + 1] ?? ''}`] : [],
      );
      socket.write(`HTTP/1.1 101 ${response.statusMessage ?? ''}\r\n${lines.join('\r\n')}\r\n\r\n`);
      socket.write(ahead);
      other.write(first);
      other.pipe(socket).pipe(other);
      for (const [from, to] of [
        [socket, other],
        [other, socket],
      ] as const)
        from.on('error', () => to.destroy()).on('close', () => to.destroy());
    });
    passed.on('response', () => socket.destroy());
    passed.on('error', () => socket.destroy());
    passed.end();
  });
  // All of them, or those that Node leaves out would not be looked at; their bytes are bounded anyway.
  server.maxHeadersCount = 0;
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    socket.on('error', () => socket.destroy());
  });

  await new Promise<void>((resolve, reject) => server.once('error', reject).listen(0, '127.0.0.1', resolve));
  const bound = server.address();
  if (typeof bound !== 'object' || bound === null) throw new Error('no free port on 127.0.0.1');
  host = `127.0.0.1:${bound.port}`;
  return {
    address: (query = {}) => `http://${host}/?${new URLSearchParams({ ...query, secret }).toString()}`,
    close() {
      server.close();
      for (const socket of sockets) socket.destroy();
    },
  };
}

/** Redirects by a page of its own, so that the browser sends the strict cookie even after a link from another site. */
function admit(answer: ServerResponse, to: string, cookie: string): void {
  const where = to.replace(/[&"<>]/g, (character) => `&#${character.charCodeAt(0)};`);
  answer.writeHead(200, {
    'content-type': 'text/html; charset=utf-8',
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    'set-cookie': cookie,
  });
  answer.end(`<!doctype html><meta http-equiv="refresh" content="0;url=${where}">`);
}

function refuse(answer: ServerResponse): void {
  // Closed, or a body that never ends would keep the connection.
  answer.writeHead(403, { 'content-type': 'text/plain; charset=utf-8', 'connection': 'close' });
  answer.end('Open the whole address that `npm start` has printed.\n');
}

/** Compares in constant time, so that the time shows nothing of how much is equal. */
function isEqual(a: string, b: string): boolean {
  const [hashA, hashB] = [a, b].map((text) => createHash('sha256').update(text).digest());
  return hashA !== undefined && hashB !== undefined && timingSafeEqual(hashA, hashB);
}
