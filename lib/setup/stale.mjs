/** What has to be made again: a fingerprint of the files it is made from, kept beside what was made. */
import { createHash } from 'node:crypto';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

/**
 * A fingerprint of files and folders, by name and content.
 * @param {string} root
 * @param {readonly string[]} sources from `root`; one that does not exist counts as empty
 * @param {readonly string[]} [without] folders to leave out, from `root`
 * @returns {Promise<string>}
 */
export async function fingerprint(root, sources, without = []) {
  const files = (await Promise.all(sources.map((source) => listFiles(root, source, without)))).flat().toSorted();
  const hash = createHash('sha256').update(process.version);
  const contents = await Promise.all(files.map((file) => readFile(path.join(root, file))));
  for (const [index, content] of contents.entries()) hash.update(`\0${files[index]}\0${content.length}\0`).update(content);
  return hash.digest('hex');
}

/**
 * @param {string} root
 * @param {string} source
 * @param {readonly string[]} without
 * @returns {Promise<string[]>}
 */
async function listFiles(root, source, without) {
  if (without.includes(source)) return [];
  try {
    const entries = await readdir(path.join(root, source), { withFileTypes: true });
    return (await Promise.all(entries.map(({ name }) => listFiles(root, `${source}/${name}`, without)))).flat();
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT') return [];
    if (code === 'ENOTDIR') return [source];
    throw error;
  }
}

/**
 * @param {unknown} error
 * @returns {string} `ENOENT`, `EACCES` …, empty when it has none
 */
export function codeOf(error) {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/**
 * @param {string} file
 * @param {string} mark
 */
export async function hasMark(file, mark) {
  return (await readFile(file, 'utf8').catch(() => '')) === mark;
}

/**
 * @param {string} file
 * @param {string} mark
 */
export async function writeMark(file, mark) {
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, mark);
}
