// The key of this run of the program: taken out of the link that opened the page, and kept for this tab only.

const place = "thawslip-key";

/** A part of an address as it is meant; as it stands where it is not encoded: what was typed may have a lone "%". */
export function decoded(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The key, or "" where there is none. A phone keeps its own until it is locked out. */
export function key() {
  return sessionStorage.getItem(place) ?? localStorage.getItem(place) ?? "";
}

/** Keeps the key by which this phone was let in. */
export function keep_key(found) {
  localStorage.setItem(place, found);
}

/** Takes the code that lets a phone in out of the address. \returns it, or null where there is none */
export function take_code() {
  const found = /^#pair=([\w-]+)$/.exec(location.hash);
  if (found) {
    history.replaceState(null, "", location.pathname);
  }
  return found ? found[1] : null;
}

async function exchanged(code) {
  const response = await fetch("/api/key", {
    method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ once: code }),
  });
  return response.ok ? (await response.json()).key : null;
}

/** Takes key or code out of the address, so that neither stays in a history. \returns the day to open, or null */
export async function take_key() {
  const link = new Map(location.hash.slice(1).split("&").map((part) => part.split("=").map(decoded)));
  if (!link.has("key") && !link.has("once")) {
    return null;
  }
  history.replaceState(null, "", location.pathname);
  const found = link.get("key") ?? await exchanged(link.get("once"));
  if (found) {
    sessionStorage.setItem(place, found);
  }
  return link.get("open") ?? null;
}
