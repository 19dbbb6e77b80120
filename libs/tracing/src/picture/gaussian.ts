import type { GrayPicture } from './gray-picture.js';

function kernelOf(sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(3 * sigma));
  const kernel = Float32Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma * sigma)),
  );
  const total = kernel.reduce((sum, value) => sum + value, 0);
  return kernel.map((value) => value / total);
}

/** Rows smoothed and written as columns: twice of it is a blur in both directions. */
function smoothTransposed({ width, height, data }: GrayPicture, kernel: Float32Array): GrayPicture {
  const reach = (kernel.length - 1) / 2;
  const out = new Float32Array(width * height);
  const row = new Float32Array(width + 2 * reach);
  for (let y = 0; y < height; y++) {
    row.set(data.subarray(y * width, (y + 1) * width), reach);
    row.fill(data[y * width]!, 0, reach);
    row.fill(data[(y + 1) * width - 1]!, width + reach);
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = 0; k < kernel.length; k++) sum += kernel[k]! * row[x + k]!;
      out[x * height + y] = sum;
    }
  }
  return { width: height, height: width, data: out };
}

/** Gaussian blur; the border goes on outside. `sigma` in pixels. */
export function gaussianBlur(picture: GrayPicture, sigma: number): GrayPicture {
  const kernel = kernelOf(sigma);
  return smoothTransposed(smoothTransposed(picture, kernel), kernel);
}
