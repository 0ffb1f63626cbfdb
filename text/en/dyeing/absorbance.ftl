## absorbance.rs

l-mol-cm = L/(mol cm)
above-0 = above 0
lights-path = light's path
molar-mass = molar mass
the-two-dyes-absorb-alike-at-both = the two dyes absorb alike at both wavelengths; measure where they differ more
number-of-standards = number of standards
spread-of-the-standards = spread of the standards
number-of-readings = number of readings
three-standards-at-least-are-needed = three standards at least are needed
absorbance = absorbance
n-0-or-more = 0 or more
absorptivity = absorptivity
n-3-or-more = 3 or more
slope = slope
n-1-or-more = 1 or more
