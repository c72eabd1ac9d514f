import type { Item, Scene } from '../../course/item.ts';
import type { Shelf } from '../../course/task.ts';
import { drawScene, type ScenePicture } from './picture.ts';

/** A question as it can be shown and printed: all of an item but its judge, and its scene as a picture. Plain data. */
export type Question = Omit<Item, 'judge' | 'scene'> & { readonly picture?: ScenePicture };

/** A question that can be answered. */
export interface Asked extends Question {
  readonly judge: Item['judge'];
  /** Draws the state that a note shows. */
  readonly draw: (scene: Scene) => ScenePicture;
  /** The scene with what is live, for after a right answer; absent where the picture shows it already. */
  readonly lit?: ScenePicture;
}

/** All of an item but its judge. */
export function questionOf(shelf: Shelf, { judge: _judge, scene, ...item }: Item): Question {
  return scene ? { ...item, picture: drawScene(shelf.layout(scene.layout), scene) } : item;
}

/** An item made ready to be asked. */
export function askedOf(shelf: Shelf, item: Item): Asked {
  const draw = (scene: Scene) => drawScene(shelf.layout(scene.layout), scene);
  const asked = { ...questionOf(shelf, item), judge: item.judge, draw };
  if (!item.scene?.dark) return asked;
  const { dark: _dark, ...lit } = item.scene;
  return { ...asked, lit: draw(lit) };
}

const ASKS = /\?$|^(Set|Mark|Land|Put|Follow) /;

/** What stands before the question itself, and the question: from the first sentence that asks or bids. */
export function splitAsk(ask: string): readonly [context: string, question: string] {
  const sentences = ask.split(/(?<=[.?!])\s+(?=[A-Z(])/);
  const at = Math.max(
    0,
    sentences.findIndex((sentence) => ASKS.test(sentence)),
  );
  return [sentences.slice(0, at).join(' '), sentences.slice(at).join(' ')];
}
