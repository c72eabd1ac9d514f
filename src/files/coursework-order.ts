import type { Coursework, CourseworkTask } from '../course/coursework/coursework.ts';

/** What a task is about, in the order in which its file says it. */
function about(task: CourseworkTask): object {
  switch (task.kind) {
    case 'lesson':
      return { lesson: task.lesson };
    case 'questions': {
      const { make, layouts, quiz, sum, only } = task.about;
      const named = {
        make,
        ...(layouts && { layouts }),
        ...(quiz !== undefined && { quiz }),
        ...(sum !== undefined && { sum }),
        ...(only && { only }),
      };
      return { title: task.title, about: named, level: task.level, count: task.count };
    }
    case 'job':
      return { job: task.job };
    case 'callout':
      return { callout: task.callout };
    case 'fault':
      return { system: task.system, level: task.level };
  }
}

/** A coursework as plain data with its keys in one order, whatever order it was made in. */
export function orderedCoursework({
  id,
  title,
  says,
  opens,
  due,
  variants,
  seed,
  tasks,
  pass,
}: Coursework): object {
  return {
    id,
    title,
    ...(says !== undefined && { says }),
    ...(opens !== undefined && { opens }),
    ...(due !== undefined && { due }),
    variants,
    seed,
    ...(pass !== undefined && { pass }),
    tasks: tasks.map((task) => ({
      id: task.id,
      kind: task.kind,
      ...about(task),
      attempts: task.attempts,
      hints: task.hints,
      ...(task.pass !== undefined && { pass: task.pass }),
    })),
  };
}
