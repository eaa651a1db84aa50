// The licences of the bundled packages: every copy of a package must carry the text of its licence.
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';

const LICENCE = /^(licen[cs]e|copying|notice|thirdpartynotices)\b/i;

/**
 * @param {readonly import('esbuild').Metafile[]} metafiles of all bundles
 * @returns {Promise<string>}
 * @throws {Error} where a package has no text of its licence
 */
export async function noticesOf(metafiles) {
  const folders = new Set(
    metafiles
      .flatMap(({ outputs }) => Object.values(outputs).flatMap(({ inputs }) => Object.entries(inputs)))
      .flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [folderOf(path)] : []))
      .filter((folder) => folder !== undefined),
  );
  const notices = await Promise.all([...folders].sort().map(noticeOf));
  return `Plumbline contains these packages, each under its own licence.\n\n${notices.join('\n')}`;
}

/** The folder of the package that a file belongs to. */
function folderOf(path) {
  return /^.*\bnode_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0];
}

async function noticeOf(folder) {
  const { name, version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  const files = (await readdir(folder)).filter((file) => LICENCE.test(file)).sort();
  if (files.length === 0) throw new Error(`${folder} is bundled, and has no text of its licence.`);
  const texts = await Promise.all(files.map((file) => readFile(join(folder, file), 'utf8')));
  const line = '-'.repeat(78);
  return `${line}\n${name} ${version} (${license})\n${line}\n\n${texts.map((text) => text.trim()).join('\n\n')}\n`;
}
