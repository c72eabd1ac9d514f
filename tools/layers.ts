/** `node tools/layers.ts`: says where a source file breaks the order of the layers. */
import { fileURLToPath } from 'node:url';
import { judgeLayers } from './layers/walk.ts';

const complaints = judgeLayers(fileURLToPath(new URL('..', import.meta.url)));
for (const { file, line, says } of complaints) console.error(`${file}:${line}: ${says}`);
if (complaints.length > 0) process.exitCode = 1;
else console.log('Layers: every source file imports downward only.');
