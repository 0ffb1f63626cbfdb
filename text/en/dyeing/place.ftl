## place.rs

dye = dye
auxiliary = auxiliary
after-treatment = after-treatment
arm = arm
named = { $kind } "{ $name }"
spent-bath = spent bath
rinse = rinse { $number }
calibration = calibration
standard = standard { $number }

# What an entry of a reading is called.
volume = volume
strength = strength
volume-spread = volume spread
looks-like = looks like
absorbance = absorbance
concentration = concentration
dilution = dilution
spread = spread
