// A printed label as a picture, and as a film for a camera that is none.

import fs from "node:fs";

/** A portable greymap (netpbm, PGM "P5"), as pdftoppm -gray writes it. */
export function read_greymap(file) {
  const bytes = fs.readFileSync(file);
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  return { width: Number(width), height: Number(height), grey: bytes.subarray(head.length) };
}

/** White, with a picture in its middle. */
function in_the_middle({ width, height, grey }, whole_width, whole_height) {
  const whole = Buffer.alloc(whole_width * whole_height, 235);
  const [left, top] = [Math.floor((whole_width - width) / 2), Math.floor((whole_height - height) / 2)];
  for (let row = 0; row < height; row += 1) {
    grey.copy(whole, (top + row) * whole_width + left, row * width, (row + 1) * width);
  }
  return whole;
}

/** One frame in YUV4MPEG2, 4:2:0, without colour; the browser shows it again and again. */
export function write_film(picture, file, width = 1280, height = 720) {
  const chroma = Buffer.alloc((width * height) / 2, 128);
  const head = `YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`;
  fs.writeFileSync(file, Buffer.concat([Buffer.from(`${head}FRAME\n`), in_the_middle(picture, width, height), chroma]));
}
