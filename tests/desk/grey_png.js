// A picture of a page as a small PNG: the page has no colour, and sixteen greys are enough for it.

import fs from "node:fs";
import zlib from "node:zlib";

const greys = 16;

function checksum(bytes) {
  let sum = 0xffffffff; // W3C, Portable Network Graphics (Third Edition), annex D
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) {
      sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
    }
  }
  return (sum ^ 0xffffffff) >>> 0;
}

function chunk(kind, body) {
  const named = Buffer.concat([Buffer.from(kind, "latin1"), body]);
  const whole = Buffer.alloc(named.length + 8);
  whole.writeUInt32BE(body.length, 0);
  named.copy(whole, 4);
  whole.writeUInt32BE(checksum(named), named.length + 4);
  return whole;
}

/** Two pixels a byte, each row behind its filter's number: none. */
function packed({ width, height, grey }) {
  const length = 1 + Math.ceil(width / 2);
  const rows = Buffer.alloc(length * height);
  for (let at = 0; at < grey.length; at += 1) {
    const [x, y] = [at % width, Math.floor(at / width)];
    const level = Math.round((grey[at] * (greys - 1)) / 255);
    rows[y * length + 1 + (x >> 1)] |= x % 2 === 0 ? level << 4 : level;
  }
  return rows;
}

export function write_png(file, picture) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(picture.width, 0);
  head.writeUInt32BE(picture.height, 4);
  head[8] = 4; // bits a pixel
  const body = zlib.deflateSync(packed(picture), { level: 9, memLevel: 9 });
  fs.writeFileSync(file, Buffer.concat([Buffer.from("\x89PNG\r\n\x1a\n", "latin1"), chunk("IHDR", head), chunk("IDAT", body),
    chunk("IEND", Buffer.alloc(0))]));
}

/** What a page shows, in grey: the browser reads its own picture. */
export async function picture_of(page, clip) {
  const png = (await page.screenshot({ clip, animations: "disabled" })).toString("base64");
  const { width, height, grey } = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext("2d");
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    let letters = "";
    for (let at = 1; at < data.length; at += 4) { // green stands for grey: there is no colour
      letters += String.fromCharCode(data[at]);
    }
    return { width: image.width, height: image.height, grey: btoa(letters) };
  }, png);
  return { width, height, grey: Buffer.from(grey, "base64") };
}
