import { Document, isMap, isSeq } from 'yaml';
import type { Coursework } from '../course/coursework/coursework.ts';
import { orderedCoursework } from './coursework-order.ts';
import { flow, fold, writeDocument } from './job-write.ts';

/**
 * A coursework as a YAML file that `parseCoursework` reads back as it was.
 * @param schema address of the format's JSON Schema, which editors check against
 */
export function writeCoursework(coursework: Coursework, schema?: string): string {
  const document = new Document(orderedCoursework(coursework));
  fold(document.get('says', true));
  const tasks = document.get('tasks', true);
  for (const task of isSeq(tasks) ? tasks.items : []) if (isMap(task)) flow(task.get('about', true));
  return writeDocument(document, schema);
}
