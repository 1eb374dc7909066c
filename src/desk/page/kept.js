// Shows a list anew without touching what stays the same in it: whoever reads, stands or types there is left in peace.

/** Keeps nodes by a key for as long as they show the same; what was not asked for between two calls of `begin` is forgotten. */
export function keeper() {
  let [before, now] = [new Map(), new Map()];
  return {
    begin() {
      [before, now] = [now, new Map()];
    },
    node(key, shown, make) {
      const text = JSON.stringify(shown);
      const known = now.get(key) ?? before.get(key);
      const kept = known?.text === text ? known : { text, node: make() };
      now.set(key, kept);
      return kept.node;
    },
  };
}

/** Gives a node these children and no others. Those that are there, in this order, are not moved. */
export function settle(parent, children) {
  const wanted = children.flat(Infinity).filter((child) => child instanceof Node);
  for (const child of [...parent.childNodes]) {
    if (!wanted.includes(child)) {
      child.remove();
    }
  }
  wanted.forEach((child, at) => {
    if (parent.childNodes[at] !== child) {
      parent.insertBefore(child, parent.childNodes[at] ?? null);
    }
  });
  return parent;
}

/** Changes what is shown; whoever stands at something that is still there afterwards stands at it, at the same height. */
export function undisturbed(change) {
  const stood = document.activeElement;
  const before = stood?.getBoundingClientRect().top;
  change();
  if (!stood?.isConnected || stood === document.body) {
    return;
  }
  if (document.activeElement !== stood) {
    stood.focus({ preventScroll: true });
  }
  scrollBy({ top: stood.getBoundingClientRect().top - before, behavior: "instant" });
}

/** Changes what is shown in a box: who stood at something that is gone afterwards stands at what comes first in it, else at
 *  the view's heading. */
export function keep_standing(box, change) {
  const stood = box.contains(document.activeElement);
  change();
  const now = document.activeElement;
  if (stood && (now === document.body || now.getClientRects().length === 0)) {
    const next = [...box.querySelectorAll("h2, button")].find((one) => one.getClientRects().length > 0)
      ?? document.querySelector("main h1");
    next?.matches("h2") && next.setAttribute("tabindex", "-1");
    next?.focus({ preventScroll: true });
  }
}

/** Changes what is shown in a box that may be made anew: what was typed into its first field stays, and who typed stays there. */
export function keep_typed(box, change) {
  const field = box.querySelector("input");
  const typed = field?.value;
  const stood = box.contains(document.activeElement) ? document.activeElement : null;
  const place = stood === field ? [field?.selectionStart, field?.selectionEnd] : null;
  change();
  const now = box.querySelector("input");
  if (now && now !== field && typed) {
    now.value = typed;
  }
  if (stood && !stood.isConnected) {
    const next = place ? now : box.querySelector("button");
    next?.focus({ preventScroll: true });
    place && now?.setSelectionRange(...place);
  }
}
