// Who gets to the embedded editor: whoever has the secret of the run, from the page of the run.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { type IncomingMessage, type Server, createServer, request } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Gate, openGate } from '../../client/open/gate.ts';

describe('the gate before the embedded editor', () => {
  let folder: string;
  let behind: Server;
  let gate: Gate;
  let reached: string[];

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-gate-'));
    reached = [];
    behind = createServer((asked, answer) => {
      reached.push(`${asked.method} ${asked.url}`);
      if (asked.url === '/broken') {
        answer.writeHead(200, { 'content-length': '100' });
        answer.write('half');
        setImmediate(() => answer.destroy());
      } else asked.pipe(answer);
    });
    behind.on('upgrade', (asked: IncomingMessage, socket, first: Buffer) => {
      reached.push(`upgrade ${asked.url}`);
      socket.write('HTTP/1.1 101 Switching Protocols\r\nUpgrade: echo\r\nConnection: Upgrade\r\n\r\n');
      socket.write(first);
      socket.pipe(socket);
    });
    const path = join(folder, 'socket');
    await new Promise<void>((resolve) => behind.listen(path, resolve));
    gate = await openGate(path);
  });

  afterEach(() => {
    gate.close();
    behind.close();
    rmSync(folder, { recursive: true });
  });

  interface Answer {
    readonly status: number;
    readonly headers: IncomingMessage['headers'];
    readonly text: string;
  }

  /** What is answered; to an upgrade, what comes back of a word. */
  function ask(path: string, headers: Readonly<Record<string, string>> = {}, body = ''): Promise<Answer> {
    const { hostname, port } = new URL(gate.address());
    return new Promise((resolve, reject) => {
      const asked = request({ host: hostname, port, path, headers, method: body === '' ? 'GET' : 'POST' }, (answer) => {
        let text = '';
        answer.on('data', (data: Buffer) => (text += data.toString()));
        answer.on('error', reject);
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
      });
      asked.on('upgrade', (answer, socket) => {
        socket.once('data', (data: Buffer) => {
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: data.toString() });
          socket.destroy();
        });
        socket.write('word');
      });
      asked.on('error', reject);
      asked.end(body);
    });
  }

  const UPGRADE = { connection: 'Upgrade', upgrade: 'echo' };
  const pathOf = (address: string): string => address.slice(new URL(address).origin.length);
  /** A cookie of the run, and the path that it is for. */
  const admitted = async (): Promise<{ cookie: string; root: string }> => {
    const { headers } = await ask(pathOf(gate.address()));
    const [, cookie, root] = /^([^;]+); Path=([^;]+)\/;/.exec(headers['set-cookie']?.[0] ?? '') ?? [];
    return { cookie: cookie ?? assert.fail(), root: root ?? assert.fail() };
  };
  /** All that is answered to bytes, until the connection is closed. */
  const answersTo = (...bytes: readonly string[]): Promise<string> =>
    new Promise((resolve) => {
      const { hostname, port } = new URL(gate.address());
      let text = '';
      const socket = connect(Number(port), hostname);
      socket.setEncoding('utf8').on('data', (data) => (text += String(data)));
      // What was sent and not read resets the connection, after its answer.
      socket.on('error', () => undefined).on('close', () => resolve(text));
      for (const one of bytes) socket.write(one);
    });

  it('lets nobody by without the secret', async () => {
    for (const path of ['/', '/healthz', '/?secret=', '/?secret=guess', '/vscode-remote-resource?path=/etc/shadow']) {
      const { status, headers } = await ask(path, { cookie: 'plumbline-editor=guess' });
      assert.equal(status, 403, path);
      assert.equal(headers['set-cookie'], undefined);
    }
    const { origin } = new URL(gate.address());
    assert.equal((await ask('/', { ...UPGRADE, origin })).status, 403);
    assert.deepEqual(reached, []);
  });

  it('takes the secret for a cookie that no script and no other site can use, and goes on without it', async () => {
    const { status, headers, text } = await ask(pathOf(gate.address({ folder: '/a "b"&<c>' })));
    assert.equal(status, 200);
    assert.match(
      headers['set-cookie']?.[0] ?? '',
      /^plumbline-editor=[\w-]{43}; Path=\/[\w-]{22}\/; HttpOnly; SameSite=Strict$/,
    );
    const secret = new URL(gate.address()).searchParams.get('secret') ?? assert.fail();
    assert.ok(!text.includes(secret));
    assert.match(text, /url=\/[\w-]{22}\/\?folder=%2Fa\+%22b%22%26%3Cc%3E">$/);
    assert.deepEqual(reached, []);
  });

  it('refuses a path that is no address, and lives on', async () => {
    for (const path of ['//[', '//', '//%', '/\\[', '*']) assert.equal((await ask(path)).status, 403, path);
    const secret = new URL(gate.address()).searchParams.get('secret') ?? assert.fail();
    const { text } = await ask(`//example.org/?secret=${secret}`);
    assert.match(text, /url=\/[\w-]{22}\/example\.org\/">$/);
  });

  it('passes on what comes with the cookie, both ways', async () => {
    const { cookie, root } = await admitted();
    const { status, text } = await ask(`${root}/some/path?x=1`, { cookie: `other=1; ${cookie}` }, 'a body');
    assert.deepEqual([status, text], [200, 'a body']);
    const { origin } = new URL(gate.address());
    const upgraded = await ask(`${root}/socket`, { ...UPGRADE, cookie, origin });
    assert.deepEqual([upgraded.status, upgraded.text], [101, 'word']);
    assert.deepEqual(reached, ['POST /some/path?x=1', 'upgrade /socket']);
  });

  it('breaks off what breaks off behind it, and refuses headers beyond all measure', async () => {
    const { cookie, root } = await admitted();
    await assert.rejects(ask(`${root}/broken`, { cookie }));
    // RFC 6585, 5: Request Header Fields Too Large.
    assert.equal((await ask(`${root}/`, { cookie: `${cookie}; ${'x'.repeat(20_000)}` })).status, 431);
    assert.equal((await ask(`${root}/still`, { cookie })).status, 200);
  });

  it('refuses another name and another origin, with the cookie and the secret too', async () => {
    const { cookie, root } = await admitted();
    const { origin, host, port } = new URL(gate.address());
    for (const headers of [
      ...[`example.org:${port}`, `localhost:${port}`, '127.0.0.1', `127.0.0.1.:${port}`, `[::1]:${port}`].map(
        (name) => ({ host: name }),
      ),
      ...['http://example.org', `http://localhost:${port}`, `https://${host}`, 'http://127.0.0.1', 'null'].map(
        (name) => ({ origin: name }),
      ),
    ]) {
      assert.equal((await ask(`${root}/`, { cookie, ...headers })).status, 403);
      assert.equal((await ask(pathOf(gate.address()), headers)).status, 403);
      assert.equal((await ask(`${root}/`, { ...UPGRADE, cookie, origin, ...headers })).status, 403);
    }
    // A browser always says from which page it upgrades.
    assert.equal((await ask(`${root}/`, { ...UPGRADE, cookie })).status, 403);
    assert.deepEqual(reached, []);
  });

  it('has a cookie for one path, as a browser sends it to other ports too (RFC 6265, 8.5)', async () => {
    const { cookie, root } = await admitted();
    for (const path of ['/', '/healthz', root, `${root}x/`, `/${root}/`, '/A'.repeat(11) + '/'])
      assert.equal((await ask(path, { cookie })).status, 403, path);
    assert.equal((await ask(`${root}/`)).status, 403, 'the path alone');
    const other = await openGate(join(folder, 'socket'));
    try {
      const foreign = pathOf(other.address());
      assert.equal((await ask(foreign)).status, 403, 'the secret of another run');
    } finally {
      other.close();
    }
    assert.deepEqual(reached, []);
  });

  it('takes nothing but one plain request at a time for one', async () => {
    const { cookie, root } = await admitted();
    const { host } = new URL(gate.address());
    const request = (first: string, ...headers: string[]): string =>
      [`${first} HTTP/1.1`, `Cookie: ${cookie}`, ...headers, 'Connection: close', '', ''].join('\r\n');
    const own = `Host: ${host}`;
    const hidden = `GET ${root}/hidden HTTP/1.1\r\nHost: ${host}\r\nCookie: ${cookie}\r\n\r\n`;
    for (const [what, ...bytes] of [
      // RFC 9112, 3.2 and 3.2.2.
      ['two hosts', request(`GET ${root}/`, own, 'Host: example.org')],
      ['no host', `GET ${root}/ HTTP/1.0\r\nCookie: ${cookie}\r\n\r\n`],
      ['an address of another host', request(`GET http://example.org${root}/`, own)],
      ['an address of this one', request(`GET http://${host}${root}/`, own)],
      ['an address with the secret', request(`GET http://example.org${pathOf(gate.address())}`, own)],
      ['no path', request('OPTIONS *', own)],
      // A header that Node would leave out, as the 2001st.
      [
        'an origin behind many headers',
        request(`GET ${root}/`, own, ...Array<string>(2100).fill('a:'), 'Origin: null'),
      ],
      // RFC 9112, 6.1 to 6.3, 5.2 and 2.2: two readings of where a request ends.
      ['two lengths', request(`POST ${root}/`, own, 'Content-Length: 0', 'Content-Length: 9'), hidden],
      ['a length and chunks', request(`POST ${root}/`, own, 'Content-Length: 5', 'Transfer-Encoding: chunked'), hidden],
      ['chunks twice', request(`POST ${root}/`, own, 'Transfer-Encoding: chunked, identity'), hidden],
      ['a folded header', request(`POST ${root}/`, own, 'A: b\r\n Content-Length: 9', 'Content-Length: 0'), hidden],
      ['line feeds alone', hidden.replaceAll('\r\n', '\n')],
      ['a zero', request(`GET ${root}/`, own, 'A: \0')],
    ] as const) {
      const [status, ...more] = (await answersTo(...bytes)).match(/^HTTP\/1\.1 \d+/gm) ?? [];
      assert.match(status ?? '', / 40[03]$/, what);
      assert.deepEqual(more, [], what);
    }
    assert.deepEqual(reached, []);
  });

  it('keeps no connection that it has refused, whatever goes on to come', async () => {
    const { host } = new URL(gate.address());
    const endless = `POST / HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 1000000\r\n\r\nx`;
    assert.match(await answersTo(endless), /^HTTP\/1\.1 403[^]*^connection: close\r$/im);
    const upgrade = `GET / HTTP/1.1\r\nHost: ${host}\r\nConnection: Upgrade\r\nUpgrade: echo\r\n\r\n`;
    assert.match(await answersTo(upgrade), /^HTTP\/1\.1 403/);
  });
});
