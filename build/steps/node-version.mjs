// Kept to syntax that any Node with modules can read, so that an old one can still say what is wrong.

/** Ends the process with advice when this Node is older than Stillroom needs (package.json, "engines"). */
export function requireNode() {
  const parts = process.versions.node.split('.').map(Number);
  const tooOld = parts[0] < 20 || (parts[0] === 20 && parts[1] < 19);
  if (!tooOld) return;
  console.error('Stillroom needs Node 20.19 or newer; this is Node ' + process.versions.node + '.');
  console.error('Install a current version from https://nodejs.org and run the same command again.');
  process.exit(1);
}
