import { notify } from '../shell/notice.ts';
import type { Mode } from './platform.ts';
import type { Told } from './runner.ts';

function find<T extends HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no #${id}.`);
  return found as T;
}

const NOTHING_REPORTED: Readonly<Record<Mode, string>> = {
  normal: '',
  browse: 'Opened to look around: nothing is reported',
  review: 'Opened for review: nothing is reported',
};

const KEPT: Readonly<Record<string, string>> = {
  reported: 'Your learning platform has your result and your place.',
  trouble:
    'Your learning platform did not take all of it. Your work is safe on this device, and is told when you open the activity again.',
  untold: 'Nothing was reported.',
};

/** What the launch page shows: first a panel that says what goes on, then the site in its frame under a bar. */
export function makeView() {
  const panel = find('panel');
  const frame = find<HTMLIFrameElement>('site');
  const standing = find('standing');
  const reported = find('reported');
  const leave = find<HTMLButtonElement>('leave');
  const says = find('says');
  let problem = '';

  /** The learner's choice of colours is made in the frame. */
  addEventListener('storage', ({ key, newValue }) => {
    if (key !== 'theme') return;
    const { dataset } = document.documentElement;
    if (newValue === 'light' || newValue === 'dark') dataset.theme = newValue;
    else delete dataset.theme;
  });

  return {
    /** Shows a page of the site. */
    open: (address: string) => {
      frame.src = address;
      frame.hidden = false;
      panel.hidden = true;
      frame.focus();
    },
    /** The address of the page in the frame; undefined before there is one, and on a page of another site. */
    address: (): string | undefined => {
      try {
        const address = frame.contentWindow?.location.href;
        return address?.startsWith('http') ? address : undefined;
      } catch {
        return undefined;
      }
    },
    /** There is no platform: says why, and offers to go on without. */
    offerWithout: (why: string, go: () => void) => {
      find('why').textContent = why;
      says.textContent = 'Not connected';
      panel.dataset.state = 'without';
      find('again').addEventListener('click', () => location.reload());
      find('go-without').addEventListener('click', () => {
        standing.textContent = 'Not connected';
        reported.textContent = 'Nothing is reported';
        document.body.dataset.state = 'without';
        go();
      });
    },
    tell: ({ says: words, problems }: Told, mode: Mode) => {
      standing.textContent = words;
      const [first] = problems;
      document.body.dataset.state = first ? 'trouble' : mode === 'normal' ? 'reported' : 'untold';
      const time = new Date().toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
      reported.textContent = first ? 'Not reported' : NOTHING_REPORTED[mode] || `Reported ${time}`;
      if (first && first !== problem)
        notify(
          `Your learning platform did not take your result. It stays on this device, and is sent again. ${first}`,
        );
      problem = first ?? '';
    },
    warn: (words: string) => notify(words),
    onLeave: (does: () => Promise<void>) => {
      leave.hidden = false;
      leave.addEventListener('click', () => {
        leave.disabled = true;
        void does();
      });
    },
    /** The session is over. */
    left: (back: string | undefined) => {
      frame.hidden = true;
      frame.removeAttribute('src');
      leave.hidden = true;
      const { state } = document.body.dataset;
      says.textContent = state === 'trouble' ? 'Not all is reported' : 'You have left';
      find('kept').textContent = KEPT[state ?? ''] ?? '';
      panel.dataset.state = 'left';
      // The panel says it.
      find('notice').replaceChildren();
      panel.hidden = false;
      if (back !== undefined) location.assign(back);
      else window.close();
    },
  };
}
