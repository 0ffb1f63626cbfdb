## margin_pair.rs

a-blue-cloth-and-the-same-faded = A blue cloth and the same faded by { $de00 } CIEDE2000, side by side
