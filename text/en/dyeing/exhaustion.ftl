## exhaustion.rs

above-0 = above 0
above-0-and-below-1 = above 0 and below 1
share-taken-up = share taken up
of-the-dye = of the dye
the-cloth-takes-up-about = The cloth takes up about { $after } % of the dye instead of { $before } %
the-depth-stays-the-same-within-2 = { $shares }: the depth stays the same within 2 %.
the-shade-comes-out-about = { $shares }: the shade comes out about { $abs } % { $way } from the same weight of dye. Hold the liquor ratio, or take { $depth_ratio } times the dye.
dye-at-the-start = dye at the start
dye-at-the-end = dye at the end
partition = partition
paler = paler
deeper = deeper
n-0-or-more-and-not-above = 0 or more and not above that at the start; check dilutions and blanks
