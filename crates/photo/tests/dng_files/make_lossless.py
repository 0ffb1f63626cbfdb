"""Makes lossless.dng: a mosaic of known numbers, packed by libraries that share nothing with ours.

Ten tiles as lossless JPEG: the seven predictors and two tiles of two components by
libjpeg-turbo, one tile by liblj92, in a container by tifffile.
Made with: pip install tifffile==2026.3.3 imagecodecs==2026.3.6 numpy==2.4.6
Run: python3 make_lossless.py
"""

from pathlib import Path

import imagecodecs
import numpy as np
import tifffile

WIDTH, HEIGHT, TILE_WIDTH, TILE_HEIGHT, BITS = 240, 128, 48, 64, 14

y, x = np.mgrid[0:HEIGHT, 0:WIDTH]
grain = (7 * x * x + 13 * y * y + 3 * x * y) % 64
mosaic = (512 + 5 * x + 9 * y + grain + 400 * (x % 2) + 300 * (y % 2)).astype(np.uint16)


def tiles():
    for k in range(10):
        top, left = k // 5 * TILE_HEIGHT, k % 5 * TILE_WIDTH
        tile = mosaic[top : top + TILE_HEIGHT, left : left + TILE_WIDTH].copy()
        if k < 7:
            yield imagecodecs.jpeg8_encode(tile, lossless=True, predictor=k + 1, bitspersample=BITS)
        elif k < 9:
            pairs = tile.reshape(TILE_HEIGHT, TILE_WIDTH // 2, 2)
            yield imagecodecs.jpeg8_encode(pairs, lossless=True, predictor=8 - k + 3, bitspersample=BITS)
        else:
            yield imagecodecs.ljpeg_encode(tile, bitspersample=BITS)


with tifffile.TiffWriter(Path(__file__).with_name("lossless.dng"), byteorder="<") as tiff:
    tiff.write(
        tiles(),
        shape=(HEIGHT, WIDTH),
        dtype=np.uint16,
        bitspersample=BITS,
        tile=(TILE_HEIGHT, TILE_WIDTH),
        photometric=32803,
        compression=7,
        metadata=None,
        software=False,
        extratags=[
            (50706, 1, 4, bytes([1, 4, 0, 0]), True),
            (33421, 3, 2, (2, 2), True),
            (33422, 1, 4, bytes([0, 1, 1, 2]), True),
            (50714, 3, 1, 512, True),
            (50717, 3, 1, 4095, True),
            (50728, 5, 3, (1, 1, 1, 1, 1, 1), True),
        ],
    )
