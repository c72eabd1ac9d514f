// Any Node since version 12 can run this file, so that an old one gets a plain message and not a syntax error.
// 22.18 is the first of its line that runs TypeScript sources directly.
const needed = [22, 18];
const [major, minor] = process.versions.node.split('.').map(Number);

if (major < needed[0] || (major === needed[0] && minor < needed[1])) {
  console.error(
    `Switched Live needs Node ${needed.join('.')} or newer. This is Node ${process.versions.node}.`,
  );
  console.error('Install a newer Node from your system, then run the command again.');
  process.exit(1);
}
