// Only the last question counts: an answer that comes after another was asked, or after none is wanted any longer, is none.

/** Turns of a part of the page. `begin()` begins one and makes those before it late, `now()` joins the one that runs;
 *  each gives a function that says whether that turn is still the last. */
export function turns() {
  let last = 0;
  const now = () => {
    const mine = last;
    return () => mine === last;
  };
  return {
    now,
    begin() {
      last += 1;
      return now();
    },
  };
}
