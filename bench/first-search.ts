/** A worker of `faults.ts`: all ones and twos in a thread where nothing has run before. Answers in nanoseconds. */
import { parentPort } from 'node:worker_threads';
import { hazards } from '../src/engine/faults/hazards/index.ts';
import { layersOf } from '../src/engine/faults/layers.ts';
import { loadMaterial } from './material.ts';

const { system, reference } = loadMaterial();
const [hazard] = hazards;
if (!hazard) throw new Error('no hazard to look for');
const start = process.threadCpuUsage();
layersOf(system, reference.wires, hazard, 2);
const { user, system: kernel } = process.threadCpuUsage(start);
parentPort?.postMessage((user + kernel) * 1000);
