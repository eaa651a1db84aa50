import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { mountUnits, unitCommand, unitPath, unitText, unitWord } from '../../../server/src/make/quoting/unit.ts';
import { unavailable } from '../../availability.ts';
import { words } from '../../rehearsal/unit.ts';
import { hostileText } from '../hostile.ts';
import { loadedBySystemd } from '../media/real-systemd.ts';

const unit = (...lines: readonly string[]): string => `[Service]\n${lines.join('\n')}\n`;

describe('quoting for units of systemd', function () {
  // systemd.service(5): $$ for a dollar sign; systemd.unit(5): %% for a per cent sign; systemd.syntax(7): C escapes.
  it('leaves what is plain, and quotes and doubles what is not', () => {
    assert.equal(unitWord('0:v:0'), '0:v:0');
    assert.equal(unitWord('%H $x "y" \\ \n'), '"%%H $$x \\"y\\" \\\\ \\x0a"');
    assert.equal(unitWord(';'), '";"');
    assert.equal(unitWord(''), '""');
    assert.equal(unitPath('/srv/archive'), '/srv/archive');
    assert.equal(unitPath('/srv/a 100% "b"'), `'/srv/a 100%% "b"'`);
  });

  it('refuses what no program can be given, and paths that cannot be written', () => {
    assert.equal(unitWord('a\0b'), undefined);
    assert.equal(unitWord('\ud800'), undefined);
    assert.equal(unitCommand(['a', 'b\0']), undefined);
    for (const path of ['/a\nb', `/a"b'c`, 'a', '', '/a\\', '/a b\\', '/a\\b'])
      assert.equal(unitPath(path), undefined, path);
  });

  describe('by systemd', () => {
    before(function () {
      if (spawnSync('systemd-analyze', ['--version']).status !== 0)
        unavailable(this, 'systemd-analyze is not installed');
    });

    it('gives a program exactly what was meant', () => {
      fc.assert(
        fc.property(fc.array(hostileText, { minLength: 1, maxLength: 6 }), (meant) => {
          const command = unitCommand(['/usr/bin/true', ...meant]);
          if (command === undefined) return meant.some((text) => unitWord(text) === undefined);
          const { complaints, commands } = loadedBySystemd('quoted.service', unit(`ExecStart=${command}`));
          assert.equal(complaints, '');
          // systemd.service(5): a doubled dollar sign becomes one when the command is run.
          assert.deepEqual(commands, [['/usr/bin/true', ...meant.map((text) => text.replaceAll('$', '$$$$'))]]);
          // The rehearsal's reader agrees with systemd.
          assert.deepEqual(words(command), commands[0]);
          return true;
        }),
        { numRuns: 40 },
      );
    });

    it('knows what is mounted at a path, and above it, by the name that we give it', () => {
      fc.assert(
        fc.property(
          hostileText.map((text) => text.replace(/[\0\ud800-\udfff]/g, '_')),
          (text) => {
            const path = `/srv/${text}`
              .split('/')
              .filter((part) => part !== '' && part !== '.' && part !== '..')
              .join('/');
            const { stdout, status } = spawnSync('systemd-escape', ['--path', '--suffix=mount', `/${path}`], {
              encoding: 'utf8',
            });
            // systemd.unit(5): no unit has a name of more than 255 bytes.
            const own = status === 0 && stdout.trimEnd().length <= 255 ? stdout.trimEnd() : undefined;
            assert.deepEqual(
              mountUnits(`/${path}`).filter((name) => name === own),
              own === undefined ? [] : [own],
            );
            assert.equal(mountUnits(`/${path}`)[0], 'srv.mount');
          },
        ),
        { numRuns: 60 },
      );
    });

    it('takes a path for exactly that path', () => {
      fc.assert(
        fc.property(
          fc
            .tuple(hostileText, fc.constantFrom('', '\\', '\\\\', ' \\', "'\\", ' '))
            .map(([text, end]) => `/srv/x${text.replace(/\/\.*/g, '_')}${end}`),
          (path) => {
            const written = unitPath(path);
            if (written === undefined) return;
            const { complaints, settings } = loadedBySystemd(
              'path.service',
              `[Unit]\nRequiresMountsFor=${written}\n${unit('ExecStart=/usr/bin/true', `ReadWritePaths=${written}`)}`,
            );
            assert.equal(complaints, '');
            assert.deepEqual(settings.get('ReadWritePaths'), [path]);
            // Passed over, it would let a service write where the disk is missing.
            assert.deepEqual(settings.get('RequiresMountsFor'), [`${path} (origin-file)`]);
          },
        ),
        { numRuns: 25 },
      );
    });

    it('shows a text as a description of one line', () => {
      fc.assert(
        fc.property(hostileText, (text) => {
          const { complaints, settings } = loadedBySystemd(
            'described.service',
            `[Unit]\nDescription=x ${unitText(text)}\n${unit('ExecStart=/usr/bin/true')}`,
          );
          assert.equal(complaints, '');
          assert.equal(settings.get('Description')?.[0], `x ${unitText(text).replaceAll('%%', '%')}`.trim());
        }),
        { numRuns: 15 },
      );
    });

    it('does complain, of a fault that is planted', () => {
      assert.match(loadedBySystemd('fault.service', unit('ExecStart=/usr/bin/true "open')).complaints, /.+/);
      assert.match(
        loadedBySystemd('fault.service', unit('ExecStart=/usr/bin/absent')).complaints,
        /not executable|No such file/,
      );
      assert.match(loadedBySystemd('fault.service', unit('ExecStart=/usr/bin/true %Q')).complaints, /.+/);
      assert.match(
        loadedBySystemd('fault.service', unit('ExecStart=/usr/bin/true', 'RestartSec=soon')).complaints,
        /Failed to parse sec value/,
      );
    });
  });
});
