// What was there before: whole texts, so that one way back serves the form and the text.

const most = 300;
const together = 800; // ms: letters typed without a longer pause are one step

export function make_history(first) {
  const texts = [first];
  const self = { at: 0, from: "", when: 0 };
  return {
    keep(text, from) {
      const now = Date.now();
      const same = from === self.from && (from === "typing" || from.startsWith("form ")) && now - self.when < together;
      texts.length = self.at + 1;
      if (same && self.at > 0) { texts[self.at] = text; } else { texts.push(text); }
      texts.splice(0, Math.max(0, texts.length - most));
      Object.assign(self, { at: texts.length - 1, from, when: now });
    },
    back() {
      self.from = "";
      return self.at > 0 ? texts[--self.at] : null;
    },
    forward() {
      self.from = "";
      return self.at + 1 < texts.length ? texts[++self.at] : null;
    },
    can: () => ({ undo: self.at > 0, redo: self.at + 1 < texts.length }),
  };
}
