/** Things that stand one after the other: what comes after one that is gone takes its place. */
const ITEM = 'li, tr, article';
/** What somebody can be in the middle of. */
const PART = `${ITEM}, section, form, fieldset, details, dialog, [role="group"], [role="region"]`;

/** An element, and where it stands in all that it stands in, from the inside out. */
interface Place {
  readonly element: HTMLElement;
  readonly within: readonly { readonly parent: Element; readonly index: number }[];
}

/**
 * Keeps the focus on the screen when what has it goes: a line that is done, a form that was sent. It goes on to whatever
 * took the place, or to the part around it; to no button, since a key that is pressed twice must not do something else.
 */
export function keepFocus(document: Document): void {
  let last: Place | null = null;
  let isLooking = false;

  function note(): void {
    const { activeElement } = document;
    last = activeElement instanceof HTMLElement && activeElement !== document.body ? placeOf(activeElement) : null;
  }

  function look(): void {
    isLooking = false;
    if (last === null || hasFocus(document) || isThere(last.element)) return;
    focusOn(successorOf(last) ?? document.querySelector<HTMLElement>('main h1') ?? document.querySelector('main'));
  }

  document.addEventListener('focusin', note);
  // Who clicks beside everything lets go of the focus on purpose.
  document.addEventListener('mousedown', () => setTimeout(note));
  const observer = new MutationObserver((changes) => {
    // What was hidden or disabled has the focus until the next frame, what was taken away has lost it already.
    const mayBeLost = !hasFocus(document) || changes.some(({ type }) => type === 'attributes');
    if (isLooking || last === null || !mayBeLost) return;
    isLooking = true;
    // Screens and forms that take the focus themselves do so meanwhile.
    requestAnimationFrame(() => setTimeout(look));
  });
  const attributeFilter = ['disabled', 'hidden', 'inert', 'open'];
  observer.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter });
}

const hasFocus = ({ activeElement, body }: Document): boolean => activeElement !== null && activeElement !== body;

const isThere = (element: Element): boolean =>
  element.isConnected && element.checkVisibility() && !element.matches(':disabled');

function placeOf(element: HTMLElement): Place {
  const within: Place['within'][number][] = [];
  let child: Element = element;
  for (let parent = child.parentElement; parent !== null; parent = child.parentElement) {
    within.push({ parent, index: [...parent.children].indexOf(child) });
    if (parent.matches('main')) break;
    child = parent;
  }
  return { element, within };
}

function successorOf({ within }: Place): HTMLElement | null {
  for (const { parent, index } of within) {
    if (!isThere(parent)) continue;
    const next = parent.children[Math.min(index, parent.children.length - 1)];
    if (next instanceof HTMLElement && next.matches(ITEM) && isThere(next)) return next;
    if (parent instanceof HTMLElement && parent.matches(PART)) return parent;
  }
  return null;
}

function focusOn(target: HTMLElement | null): void {
  if (target === null) return;
  if (!target.hasAttribute('tabindex')) {
    target.tabIndex = -1;
    target.addEventListener(
      'blur',
      () => {
        target.removeAttribute('tabindex');
      },
      { once: true },
    );
  }
  target.focus({ preventScroll: true });
  target.scrollIntoView({ block: 'nearest' });
}
