import sharp from 'sharp';

/** Arms of 120 degrees from (400, 380), 20 pixels per mm; light lines on a dark plate. */
export async function platePhotograph() {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600">
    <rect width="800" height="600" fill="#303848"/>
    <path d="M270 304.94 L400 380 L530 304.94" fill="none" stroke="#e8e4d8" stroke-width="6"/>
  </svg>`;
  return { name: 'plate.png', mimeType: 'image/png', buffer: await sharp(Buffer.from(svg)).png().toBuffer() };
}
