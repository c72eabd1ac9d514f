import type { APIRoute, GetStaticPaths } from 'astro';
import { stageLibrary } from '../../../files/site/stage.ts';
import { systemPages } from '../../../files/site/systems.ts';
import { canLayOut } from '../../../ui/reference/can-lay-out.ts';

export const getStaticPaths = (() =>
  systemPages().map((page) => ({
    params: { system: page.spec.id },
    props: { page },
  }))) satisfies GetStaticPaths;

/** A system with its wirings, for a script that a tutor opens. */
export const GET: APIRoute<{ page: ReturnType<typeof systemPages>[number] }> = ({ props: { page } }) =>
  Response.json({ ...stageLibrary(page), laysOut: canLayOut(page.system) });
