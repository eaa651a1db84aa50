// The addresses of a subnet: each of its 2^(32 - prefix) addresses is there once, and who has it.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { subnetMap } from '../../server/src/draw/subnet.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { planFrom } from '../report/paddock.ts';
import { type Picture, picture } from './picture.ts';

function draw(subnet: string, hosts: Readonly<Record<string, string>>, more = ''): Picture {
  const text = `vlans: {video: {id: 20, subnet: ${subnet}${more}}}
devices:
${Object.entries(hosts)
  .map(([name, address]) => `  ${name}: {kind: camera, address: ${address}}`)
  .join('\n')}
`;
  return picture(svgFile(subnetMap.draw(planFrom(text), 'video', USUAL_OPTIONS)));
}

/** Addresses that are there, one by one or in a line of many. */
function addressesIn({ words }: Picture): number {
  return words.reduce((sum, { text }) => {
    const many = /^\.\d+ – \.\d+: (\d+) /.exec(text);
    return sum + (many !== null ? Number(many[1]) : /^\.\d+$/.test(text) ? 1 : 0);
  }, 0);
}

describe('the addresses of a subnet', () => {
  for (const [subnet, size] of [
    ['192.168.20.0/24', 256],
    ['192.168.20.64/26', 64],
    ['192.168.20.4/30', 4],
  ] as const)
    it(`of ${subnet} are ${size}`, () => {
      assert.equal(addressesIn(draw(subnet, { cam: subnet.replace(/\d+\/\d+$/, '70') })), size);
    });

  it('lead to who has them, and report two who have one', () => {
    const { things } = draw('192.168.20.0/24', { a: '192.168.20.9', b: '192.168.20.9', c: '192.168.20.10' });
    assert.deepEqual(
      things.map(({ texts, looks }) => [...texts, looks.has('bad')]),
      [
        ['.9', '▲ 2 ×', true],
        ['.10', 'c', false],
      ],
    );
  });

  it('say which are in the pool', () => {
    const { words } = draw('192.168.20.0/24', {}, ', dhcp-pool: 192.168.20.100-192.168.20.199');
    const inPool = words.filter(({ text }) => text === 'pool').length;
    const lines = words.map(({ text }) => Number(/: (\d+) in the pool$/.exec(text)?.[1] ?? 0));
    assert.equal(inPool + lines.reduce((sum, each) => sum + each, 0), 100);
  });

  it('of a large one are those blocks that have something in use', () => {
    const seen = draw('10.0.0.0/16', { a: '10.0.3.1', b: '10.0.200.7' });
    assert.equal(addressesIn(seen), 512);
    assert.match(seen.description, /254 blocks of 256 addresses with none in use are left out/);
  });
});
