## heat.rs

power-of-the-heater = power of the heater
above-0 = above 0
