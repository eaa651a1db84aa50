// A house of two switches, five cameras, a server with two cards and two screens, of ready-made items alone: names are
// typed at the devices, lengths at the cables, and the querier is named at last.
import assert from 'node:assert/strict';
import { withoutTabStops } from '../../server/src/features/completion/offer.ts';
import { Edited } from '../completed.ts';
import { taken } from '../taken.ts';

const URI = 'home.site.yaml';

class House {
  text = 'site:\n  name: Home\n  timezone: Europe/London\n';
  private readonly site = new Edited({});

  section(name: string, items: readonly (readonly [label: string, name?: string])[]): void {
    this.text += `${name}:\n`;
    for (const [label, own] of items) this.item(label, own);
  }

  private item(label: string, name: string | undefined): void {
    const at = this.site.offered(URI, `${this.text}  `, this.text.length + 2);
    const offer = at?.found.offers.find((one) => one.label === label);
    assert.ok(at !== undefined && offer?.insert !== undefined, `${label} is offered`);
    const insert = name === undefined ? offer.insert : offer.insert.replace(/\$\{1:[^}]*\}/g, name);
    const { text } = taken(at.file, at.found, { ...offer, insert });
    this.text = `${text.replace(/length: ?(?=\})/, 'length: 12 m')}\n`;
  }

  found(text = this.text): string[] {
    return this.site.with(URI, text).diagnostics.map(({ rule }) => rule.id);
  }
}

describe('A house of ready-made items', () => {
  it('lacks its querier alone, and with that has no problem', () => {
    const house = new House();
    house.section('vlans', [['VLAN for video'], ['VLAN']]);
    house.section('devices', [
      ['switch', 'core'],
      ['switch', 'stable'],
      ...['gate', 'yard', 'paddock', 'barn', 'porch'].map((name) => ['camera', `${name}-cam`] as const),
      ['server with two network cards', 'recorder'],
      ['display', 'hall-screen'],
      ['display', 'stable-screen'],
    ]);
    house.section(
      'cables',
      Array.from({ length: 10 }, () => ['cable'] as const),
    );
    house.section('streams', [
      ...Array.from({ length: 5 }, () => ['stream of a camera'] as const),
      ['stream re-sent as multicast'],
      ['stream re-sent as multicast'],
    ]);
    house.section('volumes', [['volume']]);
    house.section(
      'recordings',
      Array.from({ length: 5 }, () => ['recording'] as const),
    );
    assert.deepEqual(house.found(), ['no-querier'], house.text);
    assert.deepEqual(house.found(house.text.replace(/( video: \{.*)\}/, '$1, querier: core}')), []);
    assert.doesNotMatch(withoutTabStops(house.text), /: (?:[,}]|$)/m);
  });
});
