/** Longest side of a kept picture, in px: a strand is seen, and twelve of them are small. */
const LONGEST = 1280;
/** Of JPEG, by choice: fine enough for strands, small enough to keep. */
const QUALITY = 0.82;
/** What the salon keeps at most, in base64 letters. */
const MOST = 600_000;

export class NoPicture extends Error {}

const KEPT = { longest: LONGEST, quality: QUALITY, most: MOST };

/** Draws the picture anew, so that nothing of place, time or camera comes along; base64 of a JPEG. */
export async function plainJpeg(file: Blob, { longest: side, quality, most } = KEPT): Promise<string> {
  let drawn: ImageBitmap;
  try {
    drawn = await createImageBitmap(file);
  } catch {
    throw new NoPicture();
  }
  for (const longest of [side, side / 2]) {
    const scale = Math.min(1, longest / Math.max(drawn.width, drawn.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(drawn.width * scale));
    canvas.height = Math.max(1, Math.round(drawn.height * scale));
    const context = canvas.getContext('2d');
    if (!context) throw new NoPicture();
    context.drawImage(drawn, 0, 0, canvas.width, canvas.height);
    const text = canvas.toDataURL('image/jpeg', quality).split(',')[1] ?? '';
    if (text && text.length <= most) return text;
  }
  throw new NoPicture();
}
