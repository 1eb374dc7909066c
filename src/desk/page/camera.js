// The camera: looks for a code in what it sees, until one is found or nobody looks any longer.

import { el, say } from "./ui.js";

const frame_pause = 200; // ms from one look to the next, so that the computer has time for other things
const largest = { width: 1280, height: 720 };

/** An RGBA picture as grey bytes: the weights of ITU-R BT.601 (from memory), in parts of 256. */
export function to_grey(rgba) {
  const grey = new Uint8Array(rgba.length / 4);
  for (let from = 0, to = 0; to < grey.length; from += 4, to += 1) {
    grey[to] = (77 * rgba[from] + 150 * rgba[from + 1] + 29 * rgba[from + 2]) >> 8;
  }
  return grey;
}

/** The size of a frame as it is sent: no larger than needed, in its own shape. */
export function frame_size({ videoWidth, videoHeight }) {
  const part = Math.min(1, largest.width / videoWidth, largest.height / videoHeight);
  return { width: Math.floor(videoWidth * part), height: Math.floor(videoHeight * part) };
}

function grab(video, canvas) {
  const { width, height } = frame_size(video);
  Object.assign(canvas, { width, height });
  const context = canvas.getContext("2d", { willReadFrequently: true });
  context.drawImage(video, 0, 0, width, height);
  return { width, height, bytes: to_grey(context.getImageData(0, 0, width, height).data) };
}

/** Why there is no camera, in words. */
function why_not(failure) {
  const reasons = { NotAllowedError: "bag.camera_refused", SecurityError: "bag.camera_refused",
    NotReadableError: "bag.camera_busy" };
  return say(reasons[failure?.name] ?? "bag.no_camera");
}

async function opened() {
  if (!navigator.mediaDevices?.getUserMedia) {
    throw new Error("no camera here");
  }
  const { width, height } = largest;
  return navigator.mediaDevices.getUserMedia({
    audio: false, video: { facingMode: { ideal: "environment" }, width: { ideal: width }, height: { ideal: height } },
  });
}

const pause = (time) => new Promise((over) => setTimeout(over, time));

/** Looks until a code is found, or `looking.stopped`. \returns the answer, or null */
async function look(desk, video, looking) {
  const canvas = document.createElement("canvas");
  while (!looking.stopped) {
    const begun = performance.now();
    if (video.videoWidth > 0 && !document.hidden) {
      const { width, height, bytes } = grab(video, canvas);
      const path = `/api/read?as=frame&width=${width}&height=${height}`;
      const answer = await desk.ask("POST", path, bytes, { signal: looking.abort.signal });
      if (answer.bags) {
        return answer;
      }
    }
    await pause(Math.max(0, frame_pause - (performance.now() - begun)));
  }
  return null;
}

/** A box in which the camera's picture stands while it looks; `found` gets the answer.
 *  \returns {box, start, stop} */
export function camera(desk, { found, ended }) {
  const video = el("video", { muted: true, playsInline: true, autoplay: true,
    "aria-label": say("bag.camera_picture") });
  const box = el("div", { class: "camera", hidden: true }, video, el("p", { role: "status" }, say("bag.camera_looks")));
  const now = { looking: null };
  const stop = () => {
    if (now.looking) {
      now.looking.stopped = true;
      now.looking.abort.abort();
      now.looking = null;
    }
    video.srcObject?.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
    box.hidden = true;
    ended();
  };
  const start = async () => {
    const looking = { stopped: false, abort: new AbortController() };
    now.looking = looking;
    try {
      const stream = await opened();
      if (looking.stopped) {
        stream.getTracks().forEach((track) => track.stop());
        return;
      }
      video.srcObject = stream;
      box.hidden = false;
      const answer = await look(desk, video, looking);
      if (answer) {
        stop();
        found(answer);
      }
    } catch (failure) {
      if (failure.name !== "AbortError") {
        stop();
        desk.tell(failure.messages ? failure : [{ severity: "caution", text: why_not(failure), hints: [] }]);
      }
    }
  };
  return { box, start, stop };
}
