// Compares modules with tables outside the project; each value names how it was verified.
import assert from 'node:assert/strict';
import type { CableType } from '../../server/src/standards/cabling.ts';
import { MODULE_NAMES, type Module, mediumOf, meet, moduleNamed, reachOf } from '../../server/src/standards/modules.ts';
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };

function known(name: string): Module {
  const module = moduleNamed(name);
  assert.ok(module !== undefined, name);
  return module;
}

describe('Modules (IEEE 802.3)', () => {
  // Secondary: a glossary's table of the limits of IEEE 802.3z by fibre and modal bandwidth (62.5 µm of 200 MHz·km, 50
  // µm of 500 MHz·km, single-mode); a university's chart of media (100BASE-FX, 10GBASE-LR and -ER); the table of
  // 802.3aq in a maker's manual (10GBASE-LRM); the Ethernet Alliance on OM3 and OM4 (10GBASE-SR, 40GBASE-SR4).
  for (const [name, type, metres] of [
    ['100base-fx', 'om1', 2000],
    ['1000base-sx', 'om1', 275],
    ['1000base-sx', 'om2', 550],
    ['1000base-lx', 'om1', 550],
    ['1000base-lx', 'om2', 550],
    ['1000base-lx', 'os2', 5000],
    ['10gbase-sr', 'om3', 300],
    ['10gbase-sr', 'om4', 400],
    ['10gbase-lrm', 'om1', 220],
    ['10gbase-lrm', 'om3', 220],
    ['10gbase-lr', 'os2', 10_000],
    ['10gbase-er', 'os2', 40_000],
    ['1000base-bx10-d', 'os2', 10_000],
    ['40gbase-sr4', 'om3', 100],
    ['40gbase-sr4', 'om4', 150],
  ] as const) {
    it(`${name} reaches ${metres} m over ${type} (secondary)`, () => {
      const far = reachOf(name, known(name), type);
      assert.deepEqual([far?.metres, far?.verified], [metres, 'secondary']);
    });
  }

  // From memory: clauses 58, 59, 112, 114, 158; 10GBASE-SR on OM1 and OM2, clause 52.
  for (const [name, type, metres] of [
    ['100base-lx10', 'os2', 10_000],
    ['1000base-lx10', 'os2', 10_000],
    ['10gbase-sr', 'om1', 33],
    ['10gbase-sr', 'om2', 82],
    ['25gbase-sr', 'om3', 70],
    ['25gbase-lr', 'os2', 10_000],
    ['10gbase-br10-d', 'os2', 10_000],
  ] as const) {
    it(`${name} reaches ${metres} m over ${type} (from memory)`, () => {
      assert.equal(reachOf(name, known(name), type)?.metres, metres);
    });
  }

  it('lights no fibre that it is not made for', () => {
    assert.equal(reachOf('10gbase-lr', known('10gbase-lr'), 'om3'), undefined);
    assert.equal(reachOf('1000base-sx', known('1000base-sx'), 'os2'), undefined);
    assert.equal(reachOf('1000base-bx10-u', known('1000base-bx10-u'), 'om2'), undefined);
  });

  it('crosses the wavelengths of a single fibre: 1490 nm down and 1310 nm up (secondary: a dictionary, a manual)', () => {
    const [down, up] = [known('1000base-bx10-d'), known('1000base-bx10-u')];
    assert.deepEqual([down.sends, down.hears], [1490, 1310]);
    assert.deepEqual([up.sends, up.hears], [1310, 1490]);
    assert.ok(meet(down, up) && meet(up, down) && !meet(down, down) && !meet(up, up));
  });

  it('meets what sends alike over two fibres, and nothing of another speed, light or number of fibres', () => {
    assert.ok(meet(known('1000base-lx'), known('1000base-lx10')));
    for (const [a, b] of [
      ['1000base-sx', '1000base-lx'],
      ['1000base-lx', '10gbase-lr'],
      ['10gbase-lr', '10gbase-er'],
      ['1000base-lx10', '1000base-bx10-u'],
      ['1000base-t', '1000base-sx'],
    ] as const)
      assert.ok(!meet(known(a), known(b)) && !meet(known(b), known(a)), `${a} ${b}`);
    assert.ok(meet(known('1000base-t'), known('10gbase-t')), 'over copper the two ends agree on a speed');
  });

  it('has a counterpart for each, and reaches over its own medium', () => {
    for (const name of MODULE_NAMES) {
      const module = known(name);
      assert.ok(
        MODULE_NAMES.some((other) => meet(module, known(other))),
        name,
      );
      const types = Object.keys(module.reach) as CableType[];
      assert.ok(module.medium === 'copper' || types.some((type) => mediumOf(type) === module.medium), name);
    }
  });

  it('is the list of the schema', () => {
    assert.deepEqual(siteSchema.$defs.port.properties.module.enum, MODULE_NAMES);
    assert.deepEqual(siteSchema.$defs.device.properties.module.enum, MODULE_NAMES);
  });
});
