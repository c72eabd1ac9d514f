/** The learner's choice of colours: `auto` follows the system. */
export type Theme = 'auto' | 'light' | 'dark';

const order: Theme[] = ['auto', 'light', 'dark'];
const words: Record<Theme, string> = { auto: 'Auto', light: 'Light', dark: 'Dark' };

/** Runs in the head before anything is painted, so that the page never flashes the wrong colours. */
export const boot =
  "try{var t=localStorage.getItem('theme');if(t=='light'||t=='dark')document.documentElement.dataset.theme=t}catch(e){}";

/** The theme after this one, going round. */
export function next(theme: Theme): Theme {
  return order[(order.indexOf(theme) + 1) % order.length] ?? 'auto';
}

/** Makes the button change the theme on each press; storage may be barred, then the choice lasts for the page. */
export function wire(button: HTMLButtonElement, root: HTMLElement = document.documentElement): void {
  const now = (): Theme => (root.dataset.theme as Theme | undefined) ?? 'auto';
  const show = (): void => {
    const label = button.querySelector('span');
    if (label) label.textContent = words[now()];
  };
  button.addEventListener('click', () => {
    const theme = next(now());
    if (theme === 'auto') delete root.dataset.theme;
    else root.dataset.theme = theme;
    try {
      if (theme === 'auto') localStorage.removeItem('theme');
      else localStorage.setItem('theme', theme);
    } catch {
      /* nothing to keep it in */
    }
    show();
  });
  show();
  button.hidden = false;
}
