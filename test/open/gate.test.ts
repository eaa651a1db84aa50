// Who gets to the embedded editor: whoever has the secret of the run, from the page of the run.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { type IncomingMessage, type Server, createServer, request } from 'node:http';
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
  const cookie = async (): Promise<string> => {
    const { headers } = await ask(pathOf(gate.address()));
    return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
  };

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
    assert.match(headers['set-cookie']?.[0] ?? '', /^plumbline-editor=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    const secret = new URL(gate.address()).searchParams.get('secret') ?? assert.fail();
    assert.ok(!text.includes(secret));
    assert.match(text, /url=\/\?folder=%2Fa\+%22b%22%26%3Cc%3E">$/);
    assert.deepEqual(reached, []);
  });

  it('refuses a path that is no address, and lives on', async () => {
    for (const path of ['//[', '//', '//%', '/\\[', '*']) assert.equal((await ask(path)).status, 403, path);
    const secret = new URL(gate.address()).searchParams.get('secret') ?? assert.fail();
    const { text } = await ask(`//example.org/?secret=${secret}`);
    assert.match(text, /url=\/example\.org\/">$/);
  });

  it('passes on what comes with the cookie, both ways', async () => {
    const own = await cookie();
    const { status, text } = await ask('/some/path?x=1', { cookie: `other=1; ${own}` }, 'a body');
    assert.deepEqual([status, text], [200, 'a body']);
    const { origin } = new URL(gate.address());
    const upgraded = await ask('/socket', { ...UPGRADE, cookie: own, origin });
    assert.deepEqual([upgraded.status, upgraded.text], [101, 'word']);
    assert.deepEqual(reached, ['POST /some/path?x=1', 'upgrade /socket']);
  });

  it('breaks off what breaks off behind it, and refuses headers beyond all measure', async () => {
    const own = await cookie();
    await assert.rejects(ask('/broken', { cookie: own }));
    // RFC 6585, 5: Request Header Fields Too Large.
    assert.equal((await ask('/', { cookie: `${own}; ${'x'.repeat(20_000)}` })).status, 431);
    assert.equal((await ask('/still', { cookie: own })).status, 200);
  });

  it('refuses another name and another origin, with the cookie and the secret too', async () => {
    const own = await cookie();
    const { origin, port } = new URL(gate.address());
    for (const headers of [
      { host: `example.org:${port}` },
      { host: `localhost:${port}` },
      { host: '127.0.0.1' },
      { origin: 'http://example.org' },
      { origin: `http://localhost:${port}` },
      { origin: 'null' },
    ]) {
      assert.equal((await ask('/', { cookie: own, ...headers })).status, 403);
      assert.equal((await ask(pathOf(gate.address()), headers)).status, 403);
      assert.equal((await ask('/', { ...UPGRADE, cookie: own, origin, ...headers })).status, 403);
    }
    // A browser always says from which page it upgrades.
    assert.equal((await ask('/', { ...UPGRADE, cookie: own })).status, 403);
    assert.deepEqual(reached, []);
  });
});
