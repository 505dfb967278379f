/** server/setup/node-version.mjs - says in one sentence when Node is too old for what we build on.
 *  May import: nothing. It must run on old versions of Node too, so it keeps to plain, old syntax. */

/** The oldest release of each line that the bundler and the test runner accept; from 24 on, any. */
const OLDEST_MINOR = { 20: 19, 22: 12 };

/** null when `version` (such as "20.19.1") will do, else the sentence to print. */
export function nodeVersionComplaint(version) {
  const parts = version.split(".").map(Number);
  const major = parts[0];
  const minor = parts[1];
  if (major >= 24) return null;
  if (OLDEST_MINOR[major] !== undefined && minor >= OLDEST_MINOR[major]) return null;
  return (
    "Passagework needs Node 20.19 or newer of the 20 line, 22.12 or newer of the 22 line, or 24 and later; this is Node " +
    version +
    ". Install a current Node and run the command again."
  );
}

/** Ends the process with the sentence when Node will not do. */
export function requireNode() {
  const complaint = nodeVersionComplaint(process.versions.node);
  if (complaint === null) return;
  console.error(complaint);
  process.exit(1);
}
