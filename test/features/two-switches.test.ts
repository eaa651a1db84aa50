// Cables between switches that know no VLANs: an uplink joins them, unless they are two networks on purpose.
import assert from 'node:assert/strict';
import { complete } from '../../server/src/features/completion/completion.ts';
import { withoutTabStops } from '../../server/src/features/completion/offer.ts';
import { atCursor } from '../cursor.ts';

/** @param lan, cams, screen keys of the recorder's cards and of the screen in the stable */
function nextCable(lan: string, cams: string, screen: string): string {
  const { checked, file, offset } = atCursor({
    'a.site.yaml': `
devices:
  core: {kind: switch, ports: {1-3: {speed: 1 Gb/s}}}
  stable: {kind: switch, ports: {1-3: {speed: 1 Gb/s}}}
  recorder: {kind: server, ports: {lan: {speed: 1 Gb/s${lan}}, cams: {speed: 1 Gb/s${cams}}}}
  hall-screen: {kind: display, speed: 1 Gb/s, address: 192.168.1.61}
  stable-screen: {kind: display, speed: 1 Gb/s${screen}}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: hall-screen}
  - {from: stable/1, to: recorder/cams}
  - {from: stable/2, to: stable-screen}
`,
    'b.site.yaml': 'cables:\n  - $0',
  });
  const [cable] = complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [];
  assert.equal(cable?.label, 'cable', 'the ready-made one is the first');
  return withoutTabStops(cable.insert ?? '').replace(/, type.*/, '');
}

const [HOUSE, VIDEO] = [', address: 192.168.1.5', ', address: 192.168.20.5'];

describe('A cable between two switches without VLANs', () => {
  it('joins them where nothing shows that they are apart', () => {
    assert.equal(nextCable('', '', ''), '{from: core/3, to: stable/3');
  });

  it('joins them where hosts of one network are at both', () => {
    assert.equal(nextCable(HOUSE, VIDEO, ', address: 192.168.1.62'), '{from: core/3, to: stable/3');
  });

  it('is not offered where a server has a card in each of two networks', () => {
    assert.equal(nextCable(HOUSE, VIDEO, ', address: 192.168.20.62'), '{from: , to: ');
  });
});
