/**
 * The same photograph as a new file: a comment segment is put in after the start
 * of the image, which changes the file's hash and no pixel (ISO/IEC 10918-1, COM).
 */
export function withComment(jpeg, comment) {
  if (jpeg[0] !== 0xff || jpeg[1] !== 0xd8) throw new Error("not a JPEG");
  const text = Buffer.from(comment, "latin1");
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(text.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
}
