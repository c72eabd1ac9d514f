export { makeRandom, type Random, seedOf } from '../engine/model/random.ts';
