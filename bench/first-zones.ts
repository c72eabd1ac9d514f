/** A worker of `zones.ts`: prepares a system and judges one wrong wiring where nothing has run before. */
import { parentPort, workerData } from 'node:worker_threads';
import { makeWideJudge } from '../src/engine/grade/wide-judge.ts';
import { zonesSystem, zonesWrong } from '../tests/engine/support/zones.ts';

const { zones, id } = workerData as { readonly zones: number; readonly id: string };
const wrong = zonesWrong(zones).find((one) => one.id === id);
if (!wrong) throw new Error(`no wiring "${id}"`);
const system = zonesSystem(zones);
const start = process.threadCpuUsage();
makeWideJudge(system).judge(wrong.wires);
const { user, system: kernel } = process.threadCpuUsage(start);
parentPort?.postMessage((user + kernel) * 1000);
