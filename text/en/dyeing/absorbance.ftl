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
