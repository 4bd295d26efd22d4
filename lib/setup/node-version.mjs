/** The oldest Node that runs this project. Written so that old versions can read it too. */

const OLDEST = { major: 20, minor: 19 };

/**
 * @param {string} version as in process.versions.node
 * @returns {string | null} one line on what to do, null when the version will do
 * @example describeOldNode('18.20.4') // 'Benchtake needs Node 20.19 or newer; this is Node 18.20.4. …'
 */
export function describeOldNode(version) {
  const parts = version.split('.').map(Number);
  const major = parts[0] || 0;
  const minor = parts[1] || 0;
  if (major > OLDEST.major || (major === OLDEST.major && minor >= OLDEST.minor)) return null;
  return 'Benchtake needs Node 20.19 or newer; this is Node ' + version + '. Install the current long-term release from nodejs.org.';
}
