// Cameras that ask for user and password are asked by units that have them from a file, and they stand nowhere else.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { it } from 'mocha';
import { until } from '../../lab/until.ts';
import type { House } from '../house.ts';
import { ProcessList } from '../process-list.ts';
import { ACCESS, secretsOf } from '../site.ts';

export function credentials(house: () => House): void {
  it('records and sends on cameras that ask for a password', async () => {
    // Something of each recording is there, or there would be no recorder.
    const { services } = await house().recorder();
    const asking = [...services.values()].filter(({ unit }) => unit.all('Service', 'LoadCredential').length > 0);
    const asked = new Set(asking.flatMap(({ unit }) => unit.all('Service', 'LoadCredential')));
    assert.deepEqual([...asked].map((line) => line.slice(0, line.indexOf(':'))).sort(), [...ACCESS.keys()].sort());
  });

  /*
   * Two programs must know them. `with-credentials` reads them into its memory, which goes when FFmpeg takes its place.
   * FFmpeg reads them from a pipe and keeps them in memory, to ask again; root, and anybody who may trace a process of
   * its user, can read it there. On the wire, digest sends a hash, but basic the password itself: anybody who can
   * listen between the camera and its server has it, and RTSP without TLS knows no other way.
   */
  it('lets no secret be seen in a made file, in what is said, in arguments or in the environment', async () => {
    const { processes, server, said } = await house().recorder();
    const secrets = [...ACCESS.values()].flatMap(secretsOf);
    processes.look();
    assert.deepEqual(processes.seen, []);
    // It has looked at the right ones: FFmpeg of each of these cameras, that reads its address from a pipe.
    const listed = /^\/usr\/bin\/ffmpeg .* -f concat .* -i pipe:3 /;
    const asking = [...processes.commands].filter((command) => listed.test(command));
    assert.ok(asking.length >= ACCESS.size, asking.join('\n'));
    const made = await house().made();
    const texts = readdirSync(made, { recursive: true, encoding: 'utf8' })
      .map((path) => join(made, path))
      .filter((path) => statSync(path).isFile())
      .map((path) => readFileSync(path, 'utf8'));
    assert.ok(texts.some((text) => text.includes('LoadCredential=gate-cam:')));
    for (const text of [...texts, said])
      assert.deepEqual(
        secrets.filter((secret) => text.includes(secret)),
        [],
      );
    assert.deepEqual(readdirSync(join(server.root, 'etc/credentials')).sort(), [...ACCESS.keys()].sort());
  });

  it('would see one in arguments and in the environment', async () => {
    const [secret = ''] = [...ACCESS.values()].map(({ password }) => password);
    const careless = [
      spawn('sh', ['-c', 'sleep 60; :', 'sh', secret]),
      spawn('sleep', ['60'], { env: { ...process.env, CAMERA: secret } }),
    ];
    const list = new ProcessList([secret]);
    try {
      await until(
        () => {
          list.look();
          return careless.every(({ pid }, index) => {
            const what = index === 0 ? 'cmdline' : 'environ';
            return list.seen.some((line) => line.startsWith(`${pid} ${what}: `));
          });
        },
        () => list.seen.join('\n'),
      );
    } finally {
      for (const each of careless) each.kill('SIGKILL');
    }
  });
}
