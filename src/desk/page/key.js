// The key of this run of the program: taken out of the link that opened the page, and kept for this tab only.

const place = "thawslip-key";

/** The key, or "" where there is none. */
export function key() {
  return sessionStorage.getItem(place) ?? "";
}

async function exchanged(code) {
  const response = await fetch("/api/key", {
    method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ once: code }),
  });
  return response.ok ? (await response.json()).key : null;
}

/** Takes key or code out of the address, so that neither stays in a history. \returns the day to open, or null */
export async function take_key() {
  const link = new Map(location.hash.slice(1).split("&").map((part) => part.split("=").map(decodeURIComponent)));
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
