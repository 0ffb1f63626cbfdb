## rinse.rs

liquor-that-the-cloth-holds = liquor that the cloth holds
fresh-water = fresh water
above-0 = above 0
of-the-dye = of the dye
above-0-and-below-1 = above 0 and below 1
share-to-be-left = share to be left
share-left-by-a-rinse = share left by a rinse
water-run-through = water run through
water-in-the-vessel = water in the vessel
n-0-or-more = 0 or more
affinity = affinity
